"""Plans of full sticks: every piece once, nothing too full, and nothing where order matters."""

import random

import pytest

from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import floor_of, simple_bound
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.full_sticks import full_sticks
from longpoint.sticks.lay.laying import Workload, used_length, workload
from longpoint.sticks.profile_plan import BY_FULL, plan_profile
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of

KERF_MM = 2.5
"""Of `house_of`."""


def square(house: House, *lengths_mm: float, mitre_deg: float = 0.0) -> tuple[Workload, Bars]:
    pieces = [
        architrave_piece(f"W{number}", length_mm, mitre_deg, mitre_deg)
        for number, length_mm in enumerate(lengths_mm)
    ]
    demand = profile_demand(pieces, house.profiles[0], house.saw.kerf_mm)
    return workload(demand.demands), bars_of("OG", house.stock, house.offcuts, house.saw)


def test_a_stick_is_filled_to_the_end_trim_with_its_cuts() -> None:
    house = house_of(lengths_mm=(3000.0,), end_trim_mm=KERF_MM)
    lengths = (1600.0, 1392.5, 995.0, 995.0, 1000.0)
    work, bars = square(house, *lengths)
    found = full_sticks(work, bars.bars, 0)
    assert found is not None
    assert [len(stick.places) for stick in found.sticks] == [2, 3]
    # 3000 less two trims of 2.5, and what the cuts between the pieces take.
    assert [stick.used for stick in found.sticks] == [299500, 299500]


@pytest.mark.parametrize("seed", range(6))
def test_every_piece_lies_once_on_a_stick_that_holds_it(seed: int) -> None:
    draw = random.Random(seed)
    house = house_of(lengths_mm=(4200.0,))
    work, bars = square(house, *(draw.randint(300, 2500) for _ in range(60)))
    found = full_sticks(work, bars.bars, 0)
    assert found is not None
    laid = sorted(place.piece for stick in found.sticks for place in stick.places)
    assert laid == list(range(60))
    for stick in found.sticks:
        assert stick.used == used_length(work, stick.places) <= bars.bars[0].room


def test_leaning_ends_several_lengths_and_counted_sticks_are_left_to_others() -> None:
    house = house_of(lengths_mm=(3000.0,))
    work, bars = square(house, 900.0, 800.0, mitre_deg=45.0)
    assert full_sticks(work, bars.bars, 0) is None
    work, bars = square(house_of(lengths_mm=(3000.0, 4200.0)), 900.0)
    assert full_sticks(work, bars.bars, 0) is None
    work, bars = square(house_of(lengths_mm=(3000.0,), offcuts=((2000.0, 1),)), 900.0)
    assert full_sticks(work, bars.bars, 0) is None
    work, bars = square(house, 3100.0)
    assert full_sticks(work, bars.bars, 0) is None


def test_a_plan_that_meets_the_sums_needs_no_solver_and_says_so() -> None:
    draw = random.Random(11)
    house = house_of(lengths_mm=(4200.0,))
    work, bars = square(house, *(draw.randint(300, 900) for _ in range(40)))
    plan = plan_profile("OG", work, bars, None, QUICK)
    assert plan.proof.optimal
    assert plan.proof.solver == BY_FULL
    bound = simple_bound(floor_of(work, bars.bars), bars)
    assert plan.proof.lower_bound * bars.per_unit == bound
