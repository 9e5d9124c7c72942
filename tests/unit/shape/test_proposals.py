from dataclasses import replace

import pytest

from longpoint.shape.proposals import propose
from longpoint.survey.house import House
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.readings import OpeningReadings, Place
from tests.drawn_openings import exact_mm, house_of, opening_of, quadrilateral, readings_of

DOOR = OpeningKind.DOOR

LEFT_SWAPPED = readings_of(top=704, bottom=706, left=1096, right=1071, rising=1283, falling=1279)


def first_proposal(house: House, opening: Opening) -> tuple[Place, float]:
    best = propose(house, opening, opening.readings)[0]
    return best.reading.place, best.slip.value_mm


def test_a_hundred_lost_on_a_leg_is_no_raked_head() -> None:
    opening = opening_of("D1", _door({Place.LEFT: -100.0}), kind=DOOR)
    assert first_proposal(house_of(opening), opening) == (Place.LEFT, 2034.0)


def test_a_repeated_reading_is_not_changed_by_a_proposal() -> None:
    lengths = _window({Place.TOP: 9.0}).lengths
    twice = replace(_window({}), lengths=(*lengths, lengths[2]))
    opening = opening_of("W1", twice)
    proposals = propose(house_of(opening), opening, twice)
    assert all(p.reading.place is not Place.TOP for p in proposals)


def test_proposals_are_ranked_and_none_is_a_hundred_times_less_likely() -> None:
    opening = opening_of("W1", LEFT_SWAPPED)
    penalties = [p.penalty for p in propose(house_of(opening), opening, opening.readings)]
    assert penalties == sorted(penalties)
    assert penalties[-1] - penalties[0] < 9.2


@pytest.mark.parametrize("place", [Place.TOP, Place.RISING])
def test_a_tape_started_at_the_inch_mark_is_found(place: Place) -> None:
    opening = opening_of("W1", _window({place: 25.4}))
    found, value_mm = first_proposal(house_of(opening), opening)
    assert found is place
    assert value_mm == pytest.approx(round(_WINDOW[place]))


def test_a_proposal_that_leaves_an_unbelievable_opening_is_not_made() -> None:
    # 34 on the top: some swap of a diagonal would close the loop, with sides 34 apart.
    opening = opening_of("W1", _window({Place.TOP: 34.0}))
    assert propose(house_of(opening), opening, opening.readings) == ()


_WINDOW = exact_mm(quadrilateral(width_mm=1203.0, height_mm=605.0))


def _rounded(exact: dict[Place, float], off_mm: dict[Place, float]) -> OpeningReadings:
    return readings_of(**{p.value: round(mm) + off_mm.get(p, 0.0) for p, mm in exact.items()})


def _window(off_mm: dict[Place, float]) -> OpeningReadings:
    return _rounded(_WINDOW, off_mm)


def _door(off_mm: dict[Place, float]) -> OpeningReadings:
    corners = quadrilateral(width_mm=819.0, height_mm=2034.0, floor_rise_mm=3.0)
    return _rounded(exact_mm(corners), off_mm)
