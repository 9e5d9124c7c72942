import random

import pytest

from longpoint.sticks.search.generation import first_bound
from longpoint.sticks.search.master import Prices
from longpoint.sticks.search.needs import least_needs, likely_needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced, whole_steps
from tests.random_sticks import architrave_piece, house_of, house_pieces
from tests.unit.sticks.nests import nest


def test_patterns_found_can_be_cut_and_gain() -> None:
    master, floor, numbers, _ = nest(house_pieces(4, openings=12), house_of(reversible=True))
    needs = likely_needs(master.layout, floor, 0.4)
    prices = master.prices(master.solve(numbers, master.whole))
    assert prices is not None
    found = Priced(master, needs, prices, master.whole, 100).patterns(prices)
    assert found
    for pattern in found:
        room = master.layout.bars[pattern.bar].room
        assert master.layout.fitting(pattern.counts, room)[0] == pattern.counts
        assert master.gain(pattern, prices) > 0


@pytest.mark.parametrize("grid", [10, 100, 500])
def test_any_prices_give_a_bound_below_every_plan(grid: int) -> None:
    master, floor, _, cost = nest(house_pieces(4, openings=12), house_of(reversible=True))
    least = least_needs(master.layout, floor)
    draw = random.Random(grid)
    for _ in range(5):
        prices = Prices(
            tuple(need * draw.uniform(0.5, 2.0) / 30000 for need in least.pieces),
            tuple(0.0 for _ in master.steps),
        )
        assert Priced(master, least, prices, master.whole, grid).bound() <= cost


def test_offcuts_and_counted_sticks_are_in_the_bound() -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 1200.0, 45, 45) for n in range(4))
    house = house_of(lengths_mm=(2700.0,), offcuts=((2700.0, 1),))
    master, floor, _, cost = nest(pieces, house)
    least = least_needs(master.layout, floor)
    prices = Prices(tuple(0.5 for _ in master.whole.pieces), (0.0, 0.0))
    assert cost == 1
    assert whole_steps(Priced(master, least, prices, master.whole, 10).bound()) == 1


def test_without_a_stick_left_nothing_is_found() -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 1200.0, 45, 45) for n in range(2))
    master, floor, _, _ = nest(pieces, house_of(lengths_mm=(2700.0,), counts=(1,)))
    needs = likely_needs(master.layout, floor, 1.0)
    prices = Prices((1.0,), (0.0,))
    none_left = type(master.whole)(master.whole.pieces, (0,))
    assert Priced(master, needs, prices, none_left, 100).patterns(prices) == []


@pytest.mark.parametrize("reversible", [False, True])
def test_patterns_that_hold_a_group_are_those_of_all_that_do(reversible: bool) -> None:
    master, floor, _, cost = nest(house_pieces(4, openings=3), house_of(reversible=reversible))
    least = least_needs(master.layout, floor)
    prices = first_bound(master, least, 20).prices
    priced = Priced(master, least, prices, master.whole, 20)
    listed = priced.losing_least(cost, 100_000)
    assert listed
    ways = priced.ways(cost, 1_000_000)
    assert ways is not None
    for groups in ((0,), (1, 2)):
        wanted = [p for p in listed if any(group in dict(p.counts) for group in groups)]
        found = priced.holding(groups, cost, 100_000)
        assert found is not None
        assert sorted(found, key=repr) == sorted(wanted, key=repr)
        assert 0 < len(wanted) < len(listed)
        for group in groups:
            assert ways.holding[group] >= sum(group in dict(p.counts) for p in listed)
    assert priced.holding((0,), cost, 3) is None


def test_below_the_bound_no_pattern_is_counted_or_holds_a_piece() -> None:
    master, floor, _, _ = nest(house_pieces(4, openings=3), house_of())
    least = least_needs(master.layout, floor)
    priced = Priced(master, least, first_bound(master, least, 20).prices, master.whole, 20)
    ways = priced.ways(0, 1_000_000)
    assert ways is not None
    assert ways.sets == 0
    assert not any(ways.holding.values())
    assert priced.holding((0,), 0, 100) == []


@pytest.mark.parametrize("reversible", [False, True])
def test_of_a_part_those_are_listed_that_lose_no_more_than_it(reversible: bool) -> None:
    master, floor, _, cost = nest(house_pieces(4, openings=3), house_of(reversible=reversible))
    least = least_needs(master.layout, floor)
    near = first_bound(master, least, 50)
    priced = Priced(master, least, near.prices, master.whole, 50)

    def listed(part: int) -> list[Pattern]:
        found = priced.listed(cost, 100_000, part)
        assert found is not None
        return [found.pattern(place) for place in range(len(found))]

    every, few = listed(1), listed(4)
    assert 0 < len(few) < len(every)
    assert set(few) <= set(every)
    # What a set loses is told to a ten-thousandth by prices that aren't rounded to the tables.
    spare = (cost - near.exact) / 4
    losses = {p: master.steps[p.bar] - near.prices.worth(p.counts) for p in every}
    assert all(losses[p] <= spare + 1e-3 for p in few)
    assert all(losses[p] >= spare - 1e-3 for p in set(every) - set(few))
