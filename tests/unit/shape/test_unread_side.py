import math
from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import Finding, Severity
from longpoint.shape.network import fit_network
from longpoint.shape.opening_fit import fit_opening, fit_openings
from longpoint.shape.sightings import assumptions, first_guess, tape_sightings
from longpoint.shape.slips import check_closure
from longpoint.survey.openings import OpeningKind
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings
from tests.drawn_openings import house_of, opening_of, readings_of

TOP, LEG = 763.0, 2041.0
DIAGONAL = 2179.0


def door(
    *, left: float = LEG, rising: float = DIAGONAL, falling: float = DIAGONAL
) -> OpeningReadings:
    """Return the readings of a door whose threshold wasn't read."""
    return readings_of(top=TOP, left=left, right=LEG, rising=rising, falling=falling)


def said(readings: OpeningReadings, *, raked: bool = False) -> dict[str, Finding]:
    house = house_of(replace(opening_of("D1", readings, kind=OpeningKind.DOOR), raked=raked))
    return {f.code: f for f in check_closure(house, fit_openings(house)[0])}


def threshold_mm(readings: OpeningReadings) -> float:
    """Return the threshold that closes the other five, by two circles about each upper corner."""
    top, left, right, rising, falling = (
        next(r.value_mm for r in readings.lengths if r.place.value == place)
        for place in ("top", "left", "right", "rising", "falling")
    )

    def below(leg_mm: float, diagonal_mm: float) -> complex:
        along_mm = (top**2 + leg_mm**2 - diagonal_mm**2) / (2.0 * top)
        return complex(along_mm, -math.sqrt(leg_mm**2 - along_mm**2))

    from_left, from_right = below(left, rising), below(right, falling)
    return abs(from_left - complex(top - from_right.real, from_right.imag))


@pytest.mark.parametrize(
    "readings",
    [
        door(rising=DIAGONAL + 9.0, falling=DIAGONAL + 9.0),
        door(rising=DIAGONAL - 9.0, falling=DIAGONAL - 9.0),
        door(falling=DIAGONAL + 9.0),
        door(left=LEG - 10.0),
    ],
    ids=["both diagonals long", "both short", "one long", "a leg miscounted by a centimetre"],
)
def test_five_readings_that_ask_for_a_threshold_no_door_has_are_held(
    readings: OpeningReadings,
) -> None:
    found = said(readings)["side-unlikely"]
    assert found.severity is Severity.STOP
    apart_mm = threshold_mm(readings) - TOP
    way = "longer" if apart_mm > 0 else "shorter"
    assert f"bottom, which wasn't read, would be {round(2 * abs(apart_mm)) / 2:g} mm {way}" in (
        found.wrong
    )


def test_the_shape_then_goes_by_the_readings_and_not_between_them_and_what_is_assumed() -> None:
    readings = door(rising=DIAGONAL + 9.0, falling=DIAGONAL + 9.0)
    house = house_of(opening_of("D1", readings, kind=OpeningKind.DOOR))
    fitted = fit_opening("D1", readings, house.tape("T1")).fitted
    assert [r.residual for r in fitted.residuals] == pytest.approx([0.0] * 5, abs=1e-6)
    assert fitted.side_mm.first == pytest.approx(threshold_mm(readings), abs=1e-6)
    # It is said once that nothing checks them, and no diagonal is asked for that was read.
    _, notes = fit_openings(house)
    assert [f.code for f in notes] == []


@pytest.mark.parametrize(
    "readings",
    [door(), door(rising=DIAGONAL + 0.5, falling=DIAGONAL + 0.5), door(rising=DIAGONAL - 1.0)],
    ids=["exact", "half a millimetre", "a millimetre"],
)
def test_a_threshold_about_as_long_as_the_head_is_none_of_it(readings: OpeningReadings) -> None:
    assert "side-unlikely" not in said(readings)


@pytest.mark.no_cover
def test_clean_doors_lie_as_far_from_what_is_assumed_as_a_normal_error() -> None:
    """Drawn as the tape and the taper are; beyond four lies then one in 16,000."""
    rng, limits = Random(4), [0, 0, 0]
    tape = house_of().tape("T1")
    u_mm = tape.private_u_mm(1)
    for _ in range(1000):
        bottom = TOP + rng.gauss(0.0, 1.0)
        lean = rng.gauss(0.0, 3.0)
        drawn = readings_of(
            top=TOP + rng.gauss(0.0, u_mm),
            left=math.hypot(LEG, lean) + rng.gauss(0.0, u_mm),
            right=math.hypot(LEG, lean + TOP - bottom) + rng.gauss(0.0, u_mm),
            rising=math.hypot(LEG, TOP + lean) + rng.gauss(0.0, u_mm),
            falling=math.hypot(LEG, lean - bottom) + rng.gauss(0.0, u_mm),
        )
        seen, start = tape_sightings(drawn, tape), first_guess(drawn)
        ((_, over_u),) = fit_network(start, (*seen, *assumptions(start, seen))).idle()
        limits = [n + (over_u > at) for n, at in zip(limits, (1.0, 2.0, 3.0), strict=True)]
    assert limits[0] / 1000 == pytest.approx(0.3173, abs=0.06)
    assert limits[1] / 1000 == pytest.approx(0.0455, abs=0.026)
    assert limits[2] / 1000 < 0.012


def test_a_raked_opening_may_have_any_side() -> None:
    readings = door(left=LEG - 300.0, rising=2001.0, falling=DIAGONAL)
    assert "side-unlikely" in said(readings)
    assert "side-unlikely" not in said(readings, raked=True)


def test_a_gauge_that_contradicts_is_still_left_out_first() -> None:
    plumb = AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=4.0, u_deg=0.1)
    level = AngleReading(gauge=Gauge.LEVEL_FLOOR, value_deg=0.0, u_deg=0.1)
    readings = replace(door(), angles=(plumb, level))
    house = house_of(opening_of("D1", readings, kind=OpeningKind.DOOR))
    fit = fit_opening("D1", readings, house.tape("T1"))
    assert [odd.name for odd in fit.left_out]
    assert fit.fitted.unread is None
