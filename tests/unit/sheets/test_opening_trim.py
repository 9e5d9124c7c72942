from dataclasses import replace

import pytest

from longpoint.pieces.piece import SQUARE_CUT, Piece, Role
from longpoint.shape.point import Point
from longpoint.sheets.opening_trim import trim_rings
from longpoint.survey.openings import Joint, Layout, PerSide
from tests.unit.sheets.sample import FACE, OPENINGS, PIECES, QUIRK_MM, by_mark

WINDOW = OPENINGS[1]
SQUARE = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
ROUND = by_mark("W2-left-leg", "W2-head", "W2-right-leg", "W2-sill")


def span(ring: tuple[Point, ...]) -> tuple[float, float, float, float]:
    xs, ys = [p.x_mm for p in ring], [p.y_mm for p in ring]
    return (min(xs), max(xs), min(ys), max(ys))


def test_each_piece_lies_a_quirk_outside_its_side() -> None:
    sill, right, head, left = trim_rings(WINDOW, "", SQUARE, ROUND)
    out = QUIRK_MM + FACE
    assert span(sill) == pytest.approx((-out, 900 + out, -out, -QUIRK_MM))
    assert span(head) == pytest.approx((-out, 900 + out, 600 + QUIRK_MM, 600 + out))
    assert span(left) == pytest.approx((-out, -QUIRK_MM, -out, 600 + out))
    assert span(right) == pytest.approx((900 + QUIRK_MM, 900 + out, -out, 600 + out))


def test_legs_of_a_door_end_on_the_floor() -> None:
    right, _head, left = trim_rings(OPENINGS[3], "", SQUARE, ROUND[:3])
    assert span(left)[2] == span(right)[2] == 0.0


def test_the_second_face_has_its_quirks_the_other_way_round() -> None:
    uneven = replace(WINDOW, quirk_mm=PerSide(head=5.0, right=9.0, bottom=5.0, left=3.0))
    left = trim_rings(uneven, "b", SQUARE, ROUND)[3]
    assert span(left)[1] == pytest.approx(-9.0)


def test_a_board_stands_on_its_apron_and_runs_past_it_by_the_horns() -> None:
    apron, board = (
        Piece(
            mark=f"W2-{role.value}",
            role=role,
            opening="W2",
            profile="OG57",
            width_mm=57.0,
            thickness_mm=25.0,
            inner_mm=1000.0,
            outer_mm=1000.0,
            back_mm=1000.0,
            left=SQUARE_CUT,
            right=SQUARE_CUT,
        )
        for role in (Role.APRON, Role.BOARD)
    )
    stool = replace(WINDOW, layout=Layout.BOARD_AND_APRON, horn_mm=40.0)
    *_, shelf, below = trim_rings(stool, "", SQUARE, (*ROUND[:3], apron, board))
    assert span(shelf)[3] - span(shelf)[2] == pytest.approx(25.0)
    assert span(below)[3] == pytest.approx(span(shelf)[2])
    assert span(below)[0] - span(shelf)[0] == pytest.approx(40.0)


def test_a_shape_without_corners_is_drawn_without_trim() -> None:
    flat = (Point(0, 0), Point(900, 0), Point(900.0, 0.0001), Point(0, 0.0001))
    assert trim_rings(WINDOW, "", (flat[0], flat[1], Point(1800, 0), flat[3]), ROUND) == []


def test_no_piece_gives_no_outline() -> None:
    assert trim_rings(WINDOW, "", SQUARE, tuple(p for p in PIECES if p.run)) == []


def block_of(role: Role, width_mm: float) -> Piece:
    """Return a piece of which only role and face width count here."""
    return Piece(
        mark=f"W2-{role.value}",
        role=role,
        opening="W2",
        profile="OG57",
        width_mm=width_mm,
        thickness_mm=25.0,
        inner_mm=width_mm,
        outer_mm=width_mm,
        back_mm=width_mm,
        left=SQUARE_CUT,
        right=SQUARE_CUT,
    )


def test_a_butt_head_is_drawn_over_its_legs_with_its_horns() -> None:
    butted = replace(OPENINGS[3], joint=Joint.BUTT, head_horn_mm=20.0)
    right, head, left = trim_rings(butted, "", SQUARE, ROUND[:3])
    out = QUIRK_MM + FACE
    assert span(head) == pytest.approx((-out - 20, 900 + out + 20, 600 + QUIRK_MM, 600 + out))
    assert span(left)[3] == span(right)[3] == pytest.approx(600 + QUIRK_MM)


def test_corner_blocks_are_drawn_square_between_shorter_pieces() -> None:
    blocked = replace(WINDOW, joint=Joint.BLOCKS)
    rings = trim_rings(blocked, "", SQUARE, (*ROUND, block_of(Role.CORNER_BLOCK, FACE + 6)))
    assert len(rings) == 8
    head, top_right = rings[2], rings[6]
    assert span(head)[:2] == pytest.approx((-QUIRK_MM + 3, 900 + QUIRK_MM - 3))
    low, high = 900 + QUIRK_MM - 3, 900 + QUIRK_MM + FACE + 3
    assert span(top_right)[:2] == pytest.approx((low, high))


def test_a_leg_is_drawn_standing_on_its_plinth() -> None:
    standing = replace(OPENINGS[3], plinth_height_mm=150.0)
    rings = trim_rings(standing, "", SQUARE, (*ROUND[:3], block_of(Role.PLINTH_BLOCK, FACE + 5)))
    right, _head, left, *plinths = rings
    assert span(left)[2] == span(right)[2] == pytest.approx(150.0)
    assert [span(ring)[2:] for ring in plinths] == [(0.0, 150.0), (0.0, 150.0)]
    assert max(span(ring)[1] for ring in plinths) == pytest.approx(900 + QUIRK_MM + FACE + 5)


def test_a_back_band_is_drawn_round_the_outer_edges_and_the_board_reaches_to_it() -> None:
    band = block_of(Role.BACK_BAND, 20.0)
    rings = trim_rings(WINDOW, "", SQUARE, (*ROUND, band))
    out = QUIRK_MM + FACE
    assert len(rings) == 8
    assert span(rings[6]) == pytest.approx((-out - 20, 900 + out + 20, 600 + out, 620 + out))
    stool = replace(WINDOW, layout=Layout.BOARD_AND_APRON, horn_mm=40.0)
    shelf = trim_rings(stool, "", SQUARE, (*ROUND[:3], band))[-1]
    assert span(shelf)[:2] == pytest.approx((-out - 60, 900 + out + 60))
