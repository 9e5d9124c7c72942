import math

import pytest

from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline
from longpoint.trims.rings import Ring, mitred_ring

RACKED = (Point(0, 0), Point(1180, 0), Point(1190, 622), Point(12, 618))
SIDES = (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4


def leaning(start_mm: float, end_mm: float) -> Ring:
    """Return a piece 100 long and 20 wide whose outer edge runs past so far at either end."""
    return Ring(
        inner_start=Point(0, 0),
        inner_end=Point(100, 0),
        outer_start=Point(-start_mm, -20),
        outer_end=Point(100 + end_mm, -20),
    )


@pytest.mark.parametrize("side", range(4))
def test_a_mitred_ring_has_the_edges_of_the_outline(side: int) -> None:
    outline = trim_outline(RACKED, SIDES)
    assert mitred_ring(outline, side).edges() == outline.edges(side)


def test_an_outer_edge_that_runs_past_gives_a_positive_angle_at_its_own_end() -> None:
    edges = leaning(20.0, -5.0).edges()
    assert edges.start_deg == pytest.approx(45.0)
    assert edges.end_deg == pytest.approx(-math.degrees(math.atan(5.0 / 20.0)))
    assert (edges.inner_mm, edges.outer_mm) == (100.0, 115.0)


@pytest.mark.parametrize(("start_mm", "end_mm"), [(4, 6), (-4, 6), (4, -6), (-4, -6)])
def test_a_squared_piece_ends_where_its_shorter_edge_did(start_mm: float, end_mm: float) -> None:
    ring = leaning(start_mm, end_mm).squared(at_start=True, at_end=True)
    edges = ring.edges()
    assert edges.inner_mm == edges.outer_mm == 100 + min(0, start_mm) + min(0, end_mm)
    assert (edges.start_deg, edges.end_deg) == (0.0, 0.0)


def test_only_the_end_asked_for_is_squared() -> None:
    edges = leaning(4.0, 6.0).squared(at_start=False, at_end=True).edges()
    assert edges.start_deg > 0.0
    assert edges.end_deg == 0.0


def test_its_corners_go_round() -> None:
    ring = leaning(4.0, 6.0)
    assert ring.corners == (Point(0, 0), Point(100, 0), Point(106, -20), Point(-4, -20))
