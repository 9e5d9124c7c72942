"""Pieces round shapes of any number of sides, and round arches, put together from their records.

What the saw is told of each piece is drawn by shapely where lines of its own want it to lie; the
segments of an arch are then trimmed to the two circles, as the template does it.
"""

import random
from dataclasses import replace
from itertools import combinations

import pytest
from shapely.ops import unary_union

from tests.laid_shapes import Set, arch_set, drawn_arch, drawn_polygon, polygon_set

CLOSE_MM = 0.01


def check_closed(found: Set, width_mm: float) -> None:
    ring = found.whole.difference(found.hole)
    for a, b in combinations(found.trim, 2):
        assert a.intersection(b).area < CLOSE_MM * 4.0 * width_mm
    together = unary_union(found.trim)
    perimeter_mm = found.whole.length
    # A straight cut at a springing leaves nothing open: both pieces are cut along it.
    assert together.symmetric_difference(ring).area < CLOSE_MM * perimeter_mm
    assert together.difference(found.whole.buffer(CLOSE_MM)).area < 1e-6
    assert together.intersection(found.hole.buffer(-CLOSE_MM)).area < 1e-6


def test_the_pieces_of_any_convex_shape_fill_the_ring_round_it() -> None:
    draw = random.Random("polygons")
    counts = set()
    for _ in range(120):
        corners = drawn_polygon(draw)
        counts.add(len(corners))
        width_mm = draw.uniform(30.0, 120.0)
        check_closed(polygon_set(corners, draw.uniform(2.0, 12.0), width_mm), width_mm)
    assert counts == {3, 5, 6, 7, 8, 12}


@pytest.mark.parametrize("segments", [2, 3, 4, 6])
def test_legs_and_segments_of_any_arch_fill_the_ring_round_it(segments: int) -> None:
    draw = random.Random(f"arches {segments}")
    for _ in range(6):
        corners, rise_mm = drawn_arch(draw)
        width_mm, quirk_mm = draw.uniform(40.0, 110.0), draw.uniform(2.0, 10.0)
        check_closed(arch_set(corners, rise_mm, quirk_mm, width_mm, segments), width_mm)


def test_a_saw_half_a_degree_off_is_seen() -> None:
    draw = random.Random("off")
    corners = drawn_polygon(draw)
    found = polygon_set(corners, 5.0, 66.0)
    first = found.laid[0]
    end = replace(first.piece.left, mitre_deg=first.piece.left.mitre_deg + 0.5)
    wrong = replace(first, piece=replace(first.piece, left=end)).polygon()
    with pytest.raises(AssertionError):
        check_closed(replace(found, trim=(wrong, *found.trim[1:])), 66.0)
