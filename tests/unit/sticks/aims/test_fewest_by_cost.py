from itertools import combinations_with_replacement

import pytest

from longpoint.sticks.aims.fewest_by_cost import fewest_by_cost
from longpoint.sticks.lay.bars import Bars, bars_of
from tests.random_sticks import house_of

PRICES = ("9.95", "13.60", "17.35")
STEPS = (995, 1360, 1735)


def bars(*, offcuts: tuple[tuple[float, int], ...] = ()) -> Bars:
    house = house_of(lengths_mm=(3000.0, 4200.0, 5400.0), prices=PRICES, offcuts=offcuts)
    return bars_of("OG", house.stock, house.offcuts, house.saw)


def by_trial(low: int, high: int, most: int) -> int:
    """Try every number of sticks of each price, in cents."""
    for sticks in range(most):
        if any(low <= sum(some) <= high for some in combinations_with_replacement(STEPS, sticks)):
            return sticks
    return most


@pytest.mark.parametrize("low", range(0, 9_000, 485))
@pytest.mark.parametrize("wide", [0, 5, 300])
def test_it_is_what_trying_all_numbers_of_sticks_finds(low: int, wide: int) -> None:
    at = bars(offcuts=((1500.0, 2),))
    cents = at.per_unit // 100
    assert fewest_by_cost(at, low * cents, (low + wide) * cents, 7) == by_trial(low, low + wide, 7)


def test_of_plans_of_too_many_steps_nothing_is_told() -> None:
    assert fewest_by_cost(bars(), 10**12, 10**12, 10**6) == 0


def test_a_cost_that_five_sticks_come_near_to_needs_six() -> None:
    at = bars()
    cents = at.per_unit // 100
    assert fewest_by_cost(at, 8535 * cents, 8535 * cents, 6) == 6
    assert fewest_by_cost(at, 8300 * cents, 8535 * cents, 6) == 5
