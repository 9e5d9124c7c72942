"""The forecast beside simulated houses, whose truth is worked out without it.

Seeds are fixed; bounds are some standard errors wide, counted by houses.
"""

import math
from dataclasses import replace

import pytest

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import BudgetLine, ErrorName
from longpoint.survey.house import House
from tests.calibration.judged import (
    FEWEST_HOUSES,
    Judged,
    JudgedHouse,
    Office,
    Share,
    by_tenth,
    false_batch,
    judged_house,
    judged_houses,
    openings_of,
    share,
)
from tests.calibration.taught import taught_crews
from tests.simulated_houses import ONE_EACH, TrueCrew, World, draw_house

FEW = World(
    faces_mm=(70,),
    quirks_mm=(3.0,),
    gaps_mm=(0.5,),
    windows_mm=((910, 610), (1200, 1050)),
    doors_mm=((838, 2040),),
)
"""Three kinds of frame: their lines are worked out once."""

SURE = 0.10
"""Of openings said to be safe, at most so many don't fit: one less what the crew asks for."""

WIDE = 3.3
"""A right forecast is further off than so many standard errors once in a thousand seeds."""

FEWEST_OPENINGS = 100


@pytest.fixture(scope="module")
def office() -> Office:
    return Office(draws=1000)


@pytest.fixture(scope="module")
def few_houses(office: Office) -> tuple[JudgedHouse, ...]:
    return judged_houses(office, 30, FEW)


def test_openings_fit_as_often_as_was_said(few_houses: tuple[JudgedHouse, ...]) -> None:
    found = share(openings_of(few_houses))
    assert found.u < 0.05
    assert abs(found.off) <= WIDE * found.u


def test_openings_that_were_said_to_be_safe_are(few_houses: tuple[JudgedHouse, ...]) -> None:
    found = false_batch(openings_of(few_houses))
    assert found.count >= 100
    assert 1.0 - found.seen < SURE


def test_misfits_come_in_batches_as_was_said(few_houses: tuple[JudgedHouse, ...]) -> None:
    chances = [h.all_fit for h in few_houses]
    u = math.sqrt(sum(p * (1.0 - p) for p in chances))
    seen = sum(h.misfits == 0 for h in few_houses)
    assert abs(seen - sum(chances)) <= 2.6 * u


KNOWN = {
    "readings too large and marks as much too short": (0.0, 1.5, -1.5, 0.8, 1.0),
    "readings too large and marks too long": (0.0, 1.2, 1.2, 0.0, 0.5),
    "a fence that lengthens what marks make too short": (-0.15, 0.0, -2.2, 0.6, 1.0),
    "a fence that lengthens what marks make too long": (-0.15, 0.0, 2.2, 0.0, 0.45),
}
"""Of the fence [deg], of readings and of marks [mm]; then the least and most that may fit."""


@pytest.mark.parametrize("name", KNOWN)
def test_known_errors_add_up_or_cancel_as_they_do_in_wood(name: str, office: Office) -> None:
    fence_deg, reading_mm, mark_mm, least, most = KNOWN[name]
    crew = TrueCrew(scale_deg=0.0, fence_deg=fence_deg, reading_mm=reading_mm, mark_mm=mark_mm)

    def as_known(house: House) -> tuple[BudgetLine, ...]:
        known = {
            ErrorName.SAW_SCALE: 0.0,
            ErrorName.SAW_FENCE: fence_deg,
            ErrorName.INSIDE_READING: reading_mm,
            ErrorName.MARK_OFFSET: mark_mm,
        }
        budget = house_budget(house)
        return tuple(replace(budget.line(n), bias=b, u=0.0) for n, b in known.items())

    judged: list[Judged] = []
    for number in range(4):
        true = replace(draw_house(3, number, FEW), crew=crew, places=ONE_EACH)
        judged += judged_house(office, true, as_known).openings
    found = share(judged)
    assert least <= found.seen <= most
    # With all that is shared known, openings are independent.
    u = math.sqrt(sum(o.chance * (1.0 - o.chance) for o in judged)) / found.count
    assert abs(found.off) <= WIDE * u


def _beyond(found: Share) -> float:
    """How far off a share is for certain: less what luck of the draw may make of it."""
    return max(0.0, abs(found.off) - 1.96 * found.u)


@pytest.mark.long
def test_500_houses_fit_as_often_as_was_said() -> None:
    houses = judged_houses(Office(), 500)
    judged = openings_of(houses)
    for tenth, found in by_tenth(judged).items():
        if found.count >= FEWEST_OPENINGS and found.clusters >= FEWEST_HOUSES:
            assert _beyond(found) <= 0.05, f"{tenth}: {found}"
    assert _beyond(share(judged)) <= 0.01
    safe = false_batch(judged)
    assert 1.0 - safe.seen + 1.96 * safe.u < SURE
    said = sum(h.misfits_mean for h in houses)
    assert abs(sum(h.misfits for h in houses) / said - 1.0) < 0.2


@pytest.mark.long
def test_60_crews_are_told_the_truth_once_they_have_learned() -> None:
    taught = taught_crews(Office(), 60)
    for tenth, found in by_tenth(taught.after).items():
        if found.count >= FEWEST_OPENINGS and found.clusters >= FEWEST_HOUSES:
            assert _beyond(found) <= 0.05, f"{tenth}: {found}"
    safe = false_batch(taught.after)
    assert 1.0 - safe.seen + 1.96 * safe.u < SURE
