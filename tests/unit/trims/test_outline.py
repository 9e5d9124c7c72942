import math

import pytest

from longpoint.errors import PieceError
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, offset_corners, trim_outline
from tests.fitted_houses import quad, rectangle

FACE = TrimSide(inner_mm=5.0, width_mm=66.0)


def regular(corners: int, radius_mm: float = 400.0) -> tuple[Point, ...]:
    turns = [2.0 * math.pi * index / corners for index in range(corners)]
    return tuple(Point(radius_mm * math.cos(t), radius_mm * math.sin(t)) for t in turns)


@pytest.mark.parametrize(
    ("corners", "saw_deg"), [(3, 60.0), (4, 45.0), (6, 30.0), (8, 22.5), (12, 15.0)]
)
def test_a_regular_frame_is_sawn_at_180_over_its_sides(corners: int, saw_deg: float) -> None:
    outline = trim_outline(regular(corners), (FACE,) * corners)
    for side in range(corners):
        edges = outline.edges(side)
        assert (edges.start_deg, edges.end_deg) == pytest.approx((saw_deg, saw_deg))


def test_equal_faces_round_a_rectangle_add_the_quirk_and_the_face_at_each_end() -> None:
    outline = trim_outline(rectangle(1180.0, 620.0), (FACE,) * 4)
    lengths = [(outline.edges(s).inner_mm, outline.edges(s).outer_mm) for s in range(4)]
    assert lengths == [pytest.approx(pair) for pair in [(1190, 1322), (630, 762)] * 2]


def test_unequal_faces_meet_point_to_point() -> None:
    sides = (FACE, TrimSide(inner_mm=5.0, width_mm=57.0), FACE, FACE)
    outline = trim_outline(rectangle(1180.0, 620.0), sides)
    right, head = outline.edges(1), outline.edges(2)
    assert right.end_deg == pytest.approx(49.18, abs=0.005)
    assert head.start_deg == pytest.approx(40.82, abs=0.005)


def test_a_bare_side_is_one_line_that_its_neighbours_end_on() -> None:
    bare = TrimSide(inner_mm=0.0, width_mm=0.0)
    outline = trim_outline(rectangle(820.0, 2040.0), (bare, FACE, FACE, FACE))
    foot = outline.edges(1)
    assert foot.start_deg == pytest.approx(0.0)
    assert (foot.inner_mm, foot.outer_mm) == pytest.approx((2045.0, 2111.0))
    assert outline.edges(0).outer_mm == pytest.approx(820.0 + 2 * 71.0)


def test_a_floor_falling_to_the_right_lengthens_the_outer_edge_of_the_right_leg() -> None:
    bare = TrimSide(inner_mm=0.0, width_mm=0.0)
    falling = quad((0, 0), (820, -10), (820, 2040), (0, 2040))
    outline = trim_outline(falling, (bare, FACE, FACE, FACE))
    fall_deg = math.degrees(math.atan2(10.0, 820.0))
    assert outline.edges(1).start_deg == pytest.approx(fall_deg)
    assert outline.edges(3).end_deg == pytest.approx(-fall_deg)


def test_nothing_is_left_when_the_floor_cover_is_higher_than_the_opening() -> None:
    cover = TrimSide(inner_mm=-2100.0, width_mm=0.0)
    with pytest.raises(PieceError):
        trim_outline(rectangle(820.0, 2040.0), (cover, FACE, FACE, FACE))


def test_two_sides_in_one_line_make_no_corner() -> None:
    flat = (Point(0, 0), Point(500, 0), Point(1000, 0), Point(500, 800))
    with pytest.raises(PieceError, match="in one line"):
        offset_corners(flat, (5.0,) * 4)


def test_a_side_without_a_length_is_refused_as_a_piece_would_be() -> None:
    with pytest.raises(PieceError):
        trim_outline(quad((0, 0), (0, 0), (500, 500), (0, 500)), (FACE,) * 4)
