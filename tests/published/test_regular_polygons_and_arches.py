"""Regular shapes on the steel square, and the radius of a segmental arch.

Sources: a public-domain carpentry school text of 1916 (section 35: 5 on 12 for an octagon), read;
that the mitre of a regular shape of n sides is 180 / n, and 7 on 12 for a hexagon, from memory of
steel square handbooks, not read. The radius of an arch from span and rise is plane geometry (the
crossing chords of Euclid, Elements, III.35), so it is proved here rather than quoted.
"""

import math
from pathlib import Path

import pytest

from longpoint.shape.point import Point, interior_angles_deg
from longpoint.trims.arch import arch_radius_mm, arch_trim
from longpoint.trims.arch_segments import arch_segments, segment_sizes
from longpoint.trims.outline import TrimSide, trim_outline
from tests.published.reference import rows


def regular(count: int, radius_mm: float = 700.0) -> tuple[Point, ...]:
    turns = (2.0 * math.pi * k / count for k in range(count))
    return tuple(Point(radius_mm * math.cos(t), radius_mm * math.sin(t)) for t in turns)


@pytest.mark.parametrize("count", [3, 4, 5, 6, 7, 8, 10, 12, 24])
def test_the_mitre_of_a_regular_shape_is_180_over_the_number_of_its_sides(count: int) -> None:
    """From memory."""
    side = TrimSide(inner_mm=5.0, width_mm=66.0)
    outline = trim_outline(regular(count), (side,) * count)
    for index in range(count):
        edges = outline.edges(index)
        assert edges.start_deg == pytest.approx(180.0 / count)
        assert edges.end_deg == pytest.approx(180.0 / count)
    assert math.fsum(interior_angles_deg(regular(count))) == pytest.approx(180.0 * (count - 2))


@pytest.mark.parametrize(
    ("count", "on_12_in", "allowed_deg"), [(8, 5.0, 0.15), (6, 7.0, 0.3), (4, 12.0, 1e-9)]
)
def test_the_steel_square_gives_the_mitre_of_a_regular_shape_on_12(
    count: int, on_12_in: float, allowed_deg: float
) -> None:
    """5 on 12 for an octagon: read; 7 on 12 for a hexagon: from memory."""
    side = TrimSide(inner_mm=0.0, width_mm=50.0)
    edges = trim_outline(regular(count), (side,) * count).edges(0)
    by_square_deg = math.degrees(math.atan2(on_12_in, 12.0))
    assert edges.start_deg == pytest.approx(by_square_deg, abs=allowed_deg)


@pytest.mark.parametrize(
    ("span_mm", "rise_mm"), [(914.0, 286.0), (900.0, 150.0), (1000.0, 500.0), (2400.0, 60.0)]
)
def test_the_chords_of_an_arch_cross_as_euclid_has_it(span_mm: float, rise_mm: float) -> None:
    """Elements III.35: half span times half span is rise times the rest of the diameter."""
    radius_mm = arch_radius_mm(span_mm, rise_mm)
    assert span_mm / 2.0 * span_mm / 2.0 == pytest.approx(rise_mm * (2.0 * radius_mm - rise_mm))


def test_the_cut_of_a_semicircle_of_n_segments_is_that_of_a_regular_shape_of_2n_sides() -> None:
    corners = (Point(0, 0), Point(900, 0), Point(900, 1000), Point(0, 1000))
    trim = arch_trim(corners, 450.0, (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4)
    for count in (2, 3, 4, 6):
        assert segment_sizes(trim, count).saw_deg == pytest.approx(180.0 / (2 * count))
        edges = arch_segments(trim, count)[0].blank(300.0).edges()
        assert edges.end_deg == pytest.approx(90.0 / count)


def test_the_octagon_here_is_that_of_the_reference_values(shared: Path) -> None:
    row = rows(shared)["CMP-08"]
    assert row.value.startswith("5 in 12 (22.62 vs exact 22.5 deg)")
    assert row.how_known == "read"
