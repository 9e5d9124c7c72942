from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import Finding, Severity
from longpoint.shape.swapped_diagonals import check_diagonals
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings
from tests.drawn_openings import Corners, house_of, opening_of, quadrilateral, read, readings_of

pytestmark = pytest.mark.no_cover

WRITTEN = readings_of(top=887, bottom=882, left=1196, right=1198, rising=1492, falling=1484)


def said(readings: OpeningReadings, *angles: AngleReading) -> tuple[Finding, ...]:
    read_too = replace(readings, angles=angles)
    opening = opening_of("W5", read_too)
    return tuple(check_diagonals(house_of(opening), opening, read_too))


def bevel(value_deg: float, u_deg: float = 0.25) -> AngleReading:
    return AngleReading(gauge=Gauge.BEVEL_BL, value_deg=value_deg, u_deg=u_deg)


def leaning(lean_mm: float) -> Corners:
    return quadrilateral(width_mm=885.0, height_mm=1197.0, lean_mm=lean_mm)


def test_a_bevel_that_fits_only_the_swapped_diagonals_holds_the_opening() -> None:
    (found,) = said(WRITTEN, bevel(90.5))
    assert found.severity is Severity.STOP
    assert "lean" in found.do
    assert "1492" in found.read
    assert "90.5" in found.read


def test_a_bevel_that_fits_the_diagonals_as_written_is_silent() -> None:
    assert not said(WRITTEN, bevel(89.5))


def test_a_coarse_bevel_can_not_hold_it() -> None:
    assert not [f for f in said(WRITTEN, bevel(90.5, 0.5)) if f.severity is Severity.STOP]


def test_without_a_gauge_nothing_can_tell() -> None:
    assert not said(WRITTEN)


def test_equal_diagonals_can_not_be_swapped() -> None:
    square = readings_of(top=800, bottom=800, left=600, right=600, rising=1000, falling=1000)
    assert not said(square, bevel(92.0))


@pytest.mark.parametrize("lean_mm", [-8.0, 8.0])
def test_plumb_and_level_tell_as_well(lean_mm: float) -> None:
    readings = read(leaning(lean_mm), Random(1))
    level = AngleReading(gauge=Gauge.LEVEL_FLOOR, value_deg=0.0, u_deg=0.1)
    lean_deg = 0.383 * (1 if lean_mm > 0 else -1)
    honest = AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=lean_deg, u_deg=0.1)
    assert not said(readings, honest, level)
    (found,) = said(readings, replace(honest, value_deg=-lean_deg), level)
    assert found.severity is Severity.STOP


def test_an_honest_bevel_seldom_rings() -> None:
    rng = Random(9)
    stops = 0
    for _ in range(600):
        lean_mm = rng.gauss(0.0, 6.0)
        corner_deg = 90.0 - lean_mm / 1197.0 * 57.3
        angle = bevel(corner_deg + rng.gauss(0.0, 0.25))
        found = said(read(leaning(lean_mm), rng), angle)
        stops += any(f.severity is Severity.STOP for f in found)
    # At most 7 in 1000 for the worst lean; 12 of 600 would be far beyond chance.
    assert stops < 12
