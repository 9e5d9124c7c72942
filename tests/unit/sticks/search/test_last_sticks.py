import itertools

import pytest

from longpoint.sticks.search.last_sticks import LastEffort, last_sticks
from longpoint.sticks.search.master import Master, Prices
from longpoint.sticks.search.needs import Needs, least_needs
from longpoint.sticks.search.patterns import Pattern
from tests.random_sticks import architrave_piece, house_of
from tests.unit.sticks.nests import nest

LENGTHS_MM = (1210.0, 1010.0, 830.0, 640.0, 470.0, 330.0)


def few() -> tuple[Master, Needs]:
    pieces = tuple(
        architrave_piece(f"W{n}-head", length_mm, 45, 45) for n, length_mm in enumerate(LENGTHS_MM)
    )
    master, floor, _, _ = nest(pieces, house_of(lengths_mm=(1800.0, 2400.0)))
    return master, least_needs(master.layout, floor)


def least_steps(master: Master) -> int:
    """The cheapest of all ways to share six pieces out."""
    groups = tuple(range(len(LENGTHS_MM)))

    def cost(part: tuple[int, ...]) -> int:
        counts = master.layout.counts(part)
        fitting = [
            master.steps[number]
            for number, bar in enumerate(master.layout.bars)
            if master.layout.fitting(counts, bar.room)[0] == counts
        ]
        return min(fitting, default=999)

    def best(rest: tuple[int, ...]) -> int:
        if not rest:
            return 0
        return min(
            cost((rest[0], *some)) + best(tuple(g for g in rest[1:] if g not in some))
            for size in range(len(rest))
            for some in itertools.combinations(rest[1:], size)
        )

    return best(groups)


def test_within_a_wide_budget_the_pieces_are_shared_out_exactly() -> None:
    master, least = few()
    prices = Prices(tuple(need / 60000 for need in least.pieces), (0.0, 0.0))
    worth = sum(prices.pieces)
    steps = least_steps(master)
    found = last_sticks(master, least, prices, master.whole, steps + 0.3 - worth)
    assert found is not None
    assert sum(master.steps[pattern.bar] for pattern in found) == steps
    remaining = master.whole
    for pattern in found:
        assert remaining.holds(pattern)
        remaining = remaining.less(pattern)
    assert not any(remaining.pieces)


def test_with_little_effort_nothing_is_found_rather_than_something_wrong() -> None:
    master, least = few()
    prices = Prices(tuple(need / 60000 for need in least.pieces), (0.0, 0.0))
    budget = least_steps(master) + 0.3 - sum(prices.pieces)
    for effort in (LastEffort(listed=0, tried=1000), LastEffort(listed=1000, tried=0)):
        assert last_sticks(master, least, prices, master.whole, budget, effort=effort) is None


def test_below_the_least_cost_nothing_is_found() -> None:
    master, least = few()
    prices = Prices(tuple(need / 60000 for need in least.pieces), (0.0, 0.0))
    budget = least_steps(master) - 0.5 - sum(prices.pieces)
    assert last_sticks(master, least, prices, master.whole, budget) is None


def test_counted_sticks_are_not_used_up_twice() -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 1000.0 + n, 45, 45) for n in range(3))
    house = house_of(lengths_mm=(1800.0, 2700.0), counts=(3, 1))
    master, floor, _, _ = nest(pieces, house)
    least = least_needs(master.layout, floor)
    prices = Prices(tuple(1.0 for _ in least.pieces), (0.0, 0.0))
    found = last_sticks(master, least, prices, master.whole, 5.0)
    assert found is not None
    assert [pattern.bar for pattern in found].count(1) <= 1


@pytest.mark.parametrize("reversible", [False, True])
def test_every_last_stick_can_be_cut(reversible: bool) -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 500.0 + 37 * n, 45, 45) for n in range(8))
    master, floor, _, _ = nest(pieces, house_of(reversible=reversible))
    least = least_needs(master.layout, floor)
    prices = Prices(tuple(need / 30000 for need in least.pieces), tuple(0.0 for _ in master.steps))
    found = last_sticks(master, least, prices, master.whole, 6.0)
    assert found is not None
    for pattern in found:
        assert isinstance(pattern, Pattern)
        room = master.layout.bars[pattern.bar].room
        assert master.layout.fitting(pattern.counts, room)[0] == pattern.counts
