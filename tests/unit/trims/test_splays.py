import math

import pytest

from longpoint.errors import PieceError
from longpoint.shape.point import Point
from longpoint.trims.splays import (
    RevealJoint,
    RevealSide,
    back_corners,
    reveal_board,
    splay_between_deg,
)
from tests.fitted_houses import quad, rectangle

HOLE = rectangle(900.0, 1200.0)


def sides(*splays_deg: float, thick_mm: float = 18.0) -> tuple[RevealSide, ...]:
    """Return boards by their splays: sill, right, head, left; head and sill over the legs."""
    return tuple(
        RevealSide(splay_deg=splay, thickness_mm=thick_mm, runs_over=index % 2 == 0)
        for index, splay in enumerate(splays_deg)
    )


def test_boards_square_to_the_wall_meet_like_skirting_in_an_internal_corner() -> None:
    head = reveal_board(HOLE, sides(0, 0, 0, 0), 100.0, 2, RevealJoint.MITRE)
    assert (head.inner_mm, head.front_mm, head.back_mm) == pytest.approx((900.0, 900.0, 936.0))
    for cut in (head.left, head.right):
        assert (cut.mitre_deg, cut.bevel_deg) == pytest.approx((0.0, 45.0))


def test_a_head_over_the_legs_is_square_and_as_long_as_their_backs_are_apart() -> None:
    head = reveal_board(HOLE, sides(0, 0, 0, 0), 100.0, 2)
    left = reveal_board(HOLE, sides(0, 0, 0, 0), 100.0, 3)
    assert (head.inner_mm, left.inner_mm) == pytest.approx((936.0, 1200.0))
    assert head.left == pytest.approx((0.0, 0.0))


def test_equal_splays_follow_the_rule_of_the_hopper() -> None:
    """Boards of slope s on a square plan: tan mitre = sin s, sin bevel = sin 45 cos s.

    The trade's rule for a hopper whose boards lean s off upright; from memory, and by hand: the
    mitre plane of a square plan is the diagonal, (1, 1, 0) / root 2.
    """
    for splay_deg in (5.0, 12.5, 30.0, 45.0):
        splay = math.radians(splay_deg)
        for side in range(4):
            board = reveal_board(HOLE, sides(*[splay_deg] * 4), 120.0, side, RevealJoint.MITRE)
            for cut in (board.left, board.right):
                assert math.tan(math.radians(cut.mitre_deg)) == pytest.approx(math.sin(splay))
                assert math.sin(math.radians(cut.bevel_deg)) == pytest.approx(
                    math.cos(splay) / math.sqrt(2.0)
                )


def test_splayed_legs_under_a_level_head_shorten_the_head_at_the_frame_alone() -> None:
    lined = sides(0.0, 20.0, 0.0, 10.0)
    head = reveal_board(HOLE, lined, 150.0, 2, RevealJoint.MITRE)
    narrower = 150.0 * (math.tan(math.radians(20.0)) + math.tan(math.radians(10.0)))
    assert head.front_mm == pytest.approx(900.0)
    assert head.inner_mm == pytest.approx(900.0 - narrower)
    assert head.face_mm == head.blank_mm == pytest.approx(150.0)


def test_a_blank_is_wider_than_its_face_by_what_its_bevel_takes() -> None:
    left = reveal_board(HOLE, sides(0.0, 20.0, 0.0, 10.0), 150.0, 3)
    splay = math.radians(10.0)
    assert left.face_mm == pytest.approx(150.0 / math.cos(splay))
    assert left.blank_mm == pytest.approx(150.0 / math.cos(splay) + 18.0 * math.tan(splay))
    assert left.rip_deg == 10.0


def test_a_bare_side_ends_its_neighbours_on_its_face() -> None:
    lined = (RevealSide(thickness_mm=0.0), *sides(0, 15, 0, 15)[1:])
    left = reveal_board(HOLE, lined, 120.0, 3, RevealJoint.MITRE)
    assert left.left == pytest.approx((0.0, 0.0))
    assert left.inner_mm == left.front_mm == pytest.approx(1200.0)


def test_unequal_thicknesses_share_the_plane_from_inner_to_outer_corner() -> None:
    head_mm, leg_mm = 12.0, 18.0
    lined = tuple(RevealSide(thickness_mm=thick) for thick in (head_mm, leg_mm, head_mm, leg_mm))
    head = reveal_board(HOLE, lined, 100.0, 2, RevealJoint.MITRE)
    leg = reveal_board(HOLE, lined, 100.0, 3, RevealJoint.MITRE)
    # In section the plane runs 18 along the head and 12 along the leg.
    assert head.left.bevel_deg == pytest.approx(math.degrees(math.atan2(leg_mm, head_mm)))
    assert leg.right.bevel_deg == pytest.approx(math.degrees(math.atan2(head_mm, leg_mm)))
    assert (head.inner_mm, head.back_mm) == pytest.approx((900.0, 936.0))
    assert (leg.inner_mm, leg.back_mm) == pytest.approx((1200.0, 1224.0))


def test_the_frame_seen_from_the_room_is_smaller_by_depth_and_splay() -> None:
    back = back_corners(HOLE, sides(5.0, 20.0, 10.0, 30.0), 100.0)
    bottom, right, top, left = (100.0 * math.tan(math.radians(s)) for s in (5, 20, 10, 30))
    expected = [
        (left, bottom),
        (900 - right, bottom),
        (900 - right, 1200 - top),
        (left, 1200 - top),
    ]
    for found, wanted in zip(back, expected, strict=True):
        assert found == pytest.approx(wanted)


def test_the_length_at_the_frame_is_that_between_the_corners_there() -> None:
    racked = quad((0, 0), (900, 12), (893, 1210), (-9, 1195))
    lined = sides(3.0, 22.0, 8.0, 15.0)
    back = back_corners(racked, lined, 130.0)
    for side in range(4):
        board = reveal_board(racked, lined, 130.0, side, RevealJoint.MITRE)
        assert board.inner_mm == pytest.approx(back[side].distance_mm(back[(side + 1) % 4]))
        front_mm = racked[side].distance_mm(racked[(side + 1) % 4])
        assert board.front_mm == pytest.approx(front_mm)


def test_widths_at_wall_and_frame_give_the_splay_back() -> None:
    back = back_corners(HOLE, sides(0.0, 14.0, 0.0, 14.0), 160.0)
    assert splay_between_deg(900.0, back[0].distance_mm(back[1]), 160.0) == pytest.approx(14.0)
    assert splay_between_deg(840.0, 900.0, 160.0) < 0


def test_a_reveal_that_closes_before_the_frame_is_refused() -> None:
    with pytest.raises(PieceError):
        reveal_board(rectangle(200.0, 1200.0), sides(0, 45, 0, 45), 150.0, 2, RevealJoint.MITRE)


def test_sides_in_one_line_are_refused() -> None:
    flat = (Point(0, 0), Point(450, 0), Point(900, 0), Point(0, 900))
    for joint in RevealJoint:
        with pytest.raises(PieceError):
            reveal_board(flat, sides(0, 0, 0, 0), 100.0, 0, joint)
    with pytest.raises(PieceError):
        reveal_board((HOLE[0], HOLE[0], *HOLE[2:]), sides(0, 0, 0, 0), 100.0, 0)
