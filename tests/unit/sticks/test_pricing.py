import random

import pytest

from longpoint.sticks.master import Prices
from longpoint.sticks.needs import least_needs, likely_needs
from longpoint.sticks.pricing import Priced, whole_steps
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
