import math

import pytest

from longpoint.shape.point import Point, interior_angles_deg
from longpoint.trims.butts import butted_ring, inner_line, outer_line
from longpoint.trims.outline import TrimOutline, TrimSide, trim_outline
from longpoint.trims.rings import Ring

HEAD_OVER = frozenset({2})
DOOR = (
    TrimSide(inner_mm=0.0, width_mm=0.0),
    TrimSide(inner_mm=5.0, width_mm=66.0),
    TrimSide(inner_mm=4.0, width_mm=90.0),
    TrimSide(inner_mm=5.0, width_mm=57.0),
)
LEANING = (Point(0, 0), Point(820, 0), Point(840, 2050), Point(8, 2041))


def ring(side: int, horn_mm: float = 0.0) -> tuple[TrimOutline, Ring]:
    outline = trim_outline(LEANING, DOOR)
    return outline, butted_ring(outline, DOOR, side, HEAD_OVER, {2: horn_mm})


def off_line_mm(point: Point, line: tuple[Point, Point]) -> float:
    (ax, ay), (bx, by) = line
    cross = (bx - ax) * (point.y_mm - ay) - (by - ay) * (point.x_mm - ax)
    return abs(cross) / math.hypot(bx - ax, by - ay)


def test_a_leg_ends_on_the_heads_inner_line_and_on_the_floor() -> None:
    outline, leg = ring(3)
    for corner in (leg.inner_start, leg.outer_start):
        assert off_line_mm(corner, inner_line(outline, 2)) == pytest.approx(0.0, abs=1e-9)
    assert (leg.inner_end.y_mm, leg.outer_end.y_mm) == pytest.approx((0.0, 0.0))


def test_a_head_without_horns_ends_on_the_legs_outer_lines() -> None:
    outline, head = ring(2)
    for corner in (head.inner_start, head.outer_start):
        assert off_line_mm(corner, outer_line(outline, 1)) == pytest.approx(0.0, abs=1e-9)
    for corner in (head.inner_end, head.outer_end):
        assert off_line_mm(corner, outer_line(outline, 3)) == pytest.approx(0.0, abs=1e-9)


def test_both_pieces_end_90_less_the_corner_off_square() -> None:
    corner_deg = interior_angles_deg(LEANING)
    head, right, left = (ring(side)[1].edges() for side in (2, 1, 3))
    assert right.end_deg == pytest.approx(90.0 - corner_deg[2])
    assert left.start_deg == pytest.approx(90.0 - corner_deg[3])
    assert head.start_deg == pytest.approx(90.0 - corner_deg[2])
    assert head.end_deg == pytest.approx(90.0 - corner_deg[3])
    # The bottom corners give the feet.
    assert right.start_deg == pytest.approx(90.0 - corner_deg[1])
    assert left.end_deg == pytest.approx(90.0 - corner_deg[0])


def test_horns_are_square_and_stand_past_the_legs_at_the_heads_inner_edge() -> None:
    _, plain = ring(2)
    _, horned = ring(2, 20.0)
    edges = horned.edges()
    assert edges.inner_mm == pytest.approx(plain.edges().inner_mm + 40.0)
    assert edges.outer_mm == pytest.approx(edges.inner_mm)
    assert (edges.start_deg, edges.end_deg) == pytest.approx((0.0, 0.0))
    assert horned.inner_start.distance_mm(plain.inner_start) == pytest.approx(20.0)


def test_round_a_window_the_sill_piece_runs_through_too() -> None:
    sides = (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4
    window = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
    outline = trim_outline(window, sides)
    found = [butted_ring(outline, sides, side, frozenset({0, 2}), {}).edges() for side in range(4)]
    assert [edges.inner_mm for edges in found] == pytest.approx([1042, 610, 1042, 610])
    assert [edges.outer_mm for edges in found] == pytest.approx([1042, 610, 1042, 610])
