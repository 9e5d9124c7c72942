from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import Finding, Severity
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.shape.opening_fit import fit_openings
from longpoint.shape.proposals import propose
from longpoint.shape.slips import check_closure
from longpoint.survey.house import House
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings, Place, Reading
from tests.drawn_openings import (
    drawn_window,
    exact_mm,
    house_of,
    opening_of,
    quadrilateral,
    readings_of,
)

WINDOW, DOOR = OpeningKind.WINDOW, OpeningKind.DOOR

SLIPPED = {
    "digits of the top swapped": (
        WINDOW,
        readings_of(top=1187, bottom=1178, left=598, right=599, rising=1322, falling=1322),
        (Place.TOP, 1178.0),
    ),
    "digits of the left swapped": (
        WINDOW,
        readings_of(top=704, bottom=706, left=1096, right=1071, rising=1283, falling=1279),
        (Place.LEFT, 1069.0),
    ),
    "digits of a door's right swapped": (
        DOOR,
        readings_of(top=709, bottom=712, left=1981, right=1947, rising=2105, falling=2097),
        (Place.RIGHT, 1974.0),
    ),
    "digits swapped, read to the half": (
        WINDOW,
        readings_of(top=594, bottom=593.5, left=1094, right=1049, rising=1243.5, falling=1247),
        (Place.RIGHT, 1094.0),
    ),
    "a centimetre miscounted": (
        DOOR,
        readings_of(top=722.5, bottom=725.5, left=2030.5, right=2042, rising=2165, falling=2166),
        (Place.LEFT, 2040.5),
    ),
    "a metre lost by swapped digits": (
        WINDOW,
        readings_of(top=886, bottom=886, left=1012, right=1010, rising=3146, falling=1344),
        (Place.RISING, 1346.0),
    ),
}


def said(*openings: Opening) -> dict[str, Finding]:
    house = house_of(*openings)
    fitted, _ = fit_openings(house)
    return {f.code: f for f in check_closure(house, fitted)}


def first_proposal(house: House, opening: Opening) -> tuple[Place, float]:
    best = propose(house, opening, opening.readings)[0]
    return best.reading.place, best.slip.value_mm


@pytest.mark.parametrize(("kind", "readings", "meant"), SLIPPED.values(), ids=SLIPPED)
def test_a_slip_holds_the_opening_and_the_right_one_is_proposed_first(
    kind: OpeningKind, readings: OpeningReadings, meant: tuple[Place, float]
) -> None:
    opening = opening_of("X", readings, kind=kind)
    found = said(opening)["misclosure"]
    assert found.severity is Severity.STOP
    assert first_proposal(house_of(opening), opening) == meant
    assert "nothing was changed" in found.do


def test_a_misclosure_says_what_was_read_and_by_how_much_it_misses() -> None:
    _, readings, _ = SLIPPED["digits of the top swapped"]
    found = said(opening_of("W3", readings))["misclosure"]
    for figure in ("1187", "1178", "598", "599", "1322"):
        assert figure in found.read
    # Worked by hand: with the other five the falling diagonal comes out 6.7 longer.
    assert "1328.7" in found.wrong
    assert "top 1187 should be 1178 mm (digits swapped)" in found.do


def test_a_slip_of_no_known_kind_is_detected_and_not_located() -> None:
    opening = opening_of("W1", _window({Place.TOP: 34.0}))
    assert propose(house_of(opening), opening, opening.readings) == ()
    assert "any one of the six" in said(opening)["misclosure"].do.lower()


def test_readings_that_miss_by_2_6_units_raise_no_alarm() -> None:
    readings = readings_of(
        top=593, bottom=593, left=1094, right=1092.5, rising=1244.5, falling=1245.5
    )
    assert not said(opening_of("1-W2", readings))


def test_between_noise_and_slip_it_is_a_note_and_the_lengths_stand() -> None:
    readings = readings_of(top=761, bottom=757, left=1985, right=1980, rising=2127, falling=2123)
    found = said(opening_of("D3", readings, kind=DOOR))
    assert set(found) == {"closes-poorly"}
    assert found["closes-poorly"].severity is Severity.WARNING


def test_exact_readings_close() -> None:
    rng = Random(2)
    for _ in range(20):
        assert not said(opening_of("W1", _of(exact_mm(drawn_window(rng, 1.5)))))


@pytest.mark.parametrize("place", [Place.RISING, Place.TOP, Place.LEFT])
def test_gauges_to_spare_let_one_reading_stand_out(place: Place) -> None:
    level = tuple(
        AngleReading(gauge=gauge, value_deg=0.0, u_deg=0.1)
        for gauge in (Gauge.PLUMB_LEFT, Gauge.PLUMB_RIGHT, Gauge.LEVEL_HEAD, Gauge.LEVEL_FLOOR)
    )
    readings = replace(_window({place: 15.0}), angles=level)
    found = said(opening_of("W1", readings))["misclosure"]
    assert f"by the others the {place.value}" in found.wrong
    assert place.value in found.do


def test_a_raked_opening_that_closes_is_a_note_and_no_alarm() -> None:
    readings = readings_of(bottom=1386, left=1124, right=1642, top=1480, rising=2149, falling=1784)
    found = said(opening_of("W9", readings))
    assert set(found) == {"raked-head"}
    assert found["raked-head"].severity is Severity.NOTE


def test_a_raked_opening_that_says_so_is_not_spoken_of() -> None:
    readings = readings_of(bottom=1386, left=1124, right=1642, top=1480, rising=2149, falling=1784)
    assert not said(replace(opening_of("W9", readings), raked=True))


def test_readings_without_a_shape_are_told_the_slip_that_gives_them_one() -> None:
    _, readings, _ = SLIPPED["a metre lost by swapped digits"]
    house = house_of(opening_of("W2", readings))
    fitted, findings = fit_openings(house)
    assert fitted == ()
    assert [f.code for f in findings] == ["no-shape"]
    (found,) = check_closure(house, fitted)
    assert "rising 3146 should be 1346 mm (digits swapped)" in found.do


def test_readings_without_a_shape_that_no_slip_mends_are_left_to_the_fit() -> None:
    house = house_of(opening_of("W1", _window({Place.FALLING: -930.0})))
    assert fit_openings(house)[0] == ()
    assert check_closure(house, ()) == ()


def test_each_face_is_checked_by_itself_and_named() -> None:
    good, bad = _door({}), _door({Place.RIGHT: 27.0})
    opening = replace(opening_of("D2", good, kind=DOOR), faces=2, readings_b=bad)
    assert "(face b)" in said(opening)["misclosure"].read


def test_a_house_in_inches_gets_its_proposal_in_inches() -> None:
    written = {"top": 46.5, "bottom": 46.5, "left": 24.0, "right": 24.0, "falling": 52.3125}
    lengths = tuple(
        Reading(place=Place(name), value_mm=inches * MM_PER_INCH, written=f"{inches}")
        for name, inches in {**written, "rising": 53.3125}.items()
    )
    opening = opening_of("W1", OpeningReadings(lengths=lengths, tape="T1"))
    house = house_of(opening, units=Units.INCH)
    fitted, _ = fit_openings(house)
    (found,) = check_closure(house, fitted)
    assert "52 5/16 in (tape started at the 1 inch mark)" in found.do


def _of(lengths_mm: dict[Place, float]) -> OpeningReadings:
    return OpeningReadings(
        lengths=tuple(
            Reading(place=p, value_mm=mm, written=f"{mm:.6f}") for p, mm in lengths_mm.items()
        ),
        tape="T1",
    )


def _rounded(corners_mm: dict[Place, float], off_mm: dict[Place, float]) -> OpeningReadings:
    return readings_of(**{p.value: round(mm) + off_mm.get(p, 0.0) for p, mm in corners_mm.items()})


def _window(off_mm: dict[Place, float]) -> OpeningReadings:
    return _rounded(exact_mm(quadrilateral(width_mm=1203.0, height_mm=605.0)), off_mm)


def _door(off_mm: dict[Place, float]) -> OpeningReadings:
    corners = quadrilateral(width_mm=819.0, height_mm=2034.0, floor_rise_mm=3.0)
    return _rounded(exact_mm(corners), off_mm)
