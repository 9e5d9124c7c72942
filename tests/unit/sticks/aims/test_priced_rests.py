import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.goal_program import Charges, Duals, Stock, charges
from longpoint.sticks.aims.priced_rests import PricedRests
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.search.needs import least_needs
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of
from tests.random_sticks import architrave_piece, house_of

HOUSE = house_of(lengths_mm=(3600.0,), kerf_mm=0.0, end_trim_mm=0.0)


@pytest.fixture
def priced() -> tuple[Charges, PricedRests]:
    """Pieces of 1700 and 900 on sticks of 3600, each worth its length of a stick."""
    solver = HighsSolver()
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate((1700.0, 900.0))]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    bars = bars_of("OG", HOUSE.stock, (), HOUSE.saw)
    layout = Layout(work, bars.bars, groups_of(work))
    stock = Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)
    at = charges(stock, Duals((1700.0, 900.0), (0.0,), 3600.0, 0.0))
    assert at is not None
    least = least_needs(layout, floor_of(work, bars.bars))
    return at, PricedRests(at.master, least, at.prices, at.master.whole, stock.grid)


def test_a_plan_of_one_stick_leaves_what_its_pieces_leave(
    priced: tuple[Charges, PricedRests],
) -> None:
    """2600 of 3600 are worth something, so a plan of one stick may lose 1000: what it leaves."""
    at, knapsack = priced
    assert knapsack.longest(at.most(1, 1), 0) == pytest.approx(100000, abs=100)
    assert knapsack.longest(at.most(0, 0), 0) == -1


def test_with_two_sticks_one_may_hold_the_smaller_piece_alone(
    priced: tuple[Charges, PricedRests],
) -> None:
    """Nothing at all on a stick is no plan's stick, but its charge could be borne: 3600 - 0."""
    at, knapsack = priced
    longest = knapsack.longest(at.most(2, 2), 0)
    assert 270000 <= longest <= 360000 + 100


def test_sets_are_parted_into_those_that_leave_so_much_and_the_others(
    priced: tuple[Charges, PricedRests],
) -> None:
    at, knapsack = priced
    listed = knapsack.sets_leaving(at.most(2, 2), 180000, 0, 100)
    assert listed is not None
    others, leaving = ([found.pattern(place) for place in range(len(found))] for found in listed)
    assert leaving == [Pattern(0, ((0, 1),)), Pattern(0, ((1, 1),))]
    assert Pattern(0, ((0, 1), (1, 1))) in others
    assert knapsack.sets_leaving(at.most(2, 2), 180000, 0, 1) is None
    none = knapsack.sets_leaving(at.most(1, 1), 180000, 0, 100)
    assert none is not None
    assert [len(found) for found in none] == [0, 0]


def test_what_is_left_is_weighed_against_pieces(priced: tuple[Charges, PricedRests]) -> None:
    at, knapsack = priced
    assert knapsack.leaving(0.0) == [Pattern(0, ((0, 1), (1, 1)))]
    # Worth twice what pieces are worth: hardly a piece is cut.
    assert knapsack.leaving(at.prices.pieces[1] / 90000 * 2) != knapsack.leaving(0.0)


def test_a_length_that_costs_nothing_may_be_left_whole() -> None:
    """No price of the pieces holds where a stick is free and there is no end to them."""
    house = house_of(lengths_mm=(3600.0, 2400.0), prices=("0", "5"), kerf_mm=0.0, end_trim_mm=0.0)
    pieces = [architrave_piece("W1-head", 1700.0, 0, 0)]
    work = workload(profile_demand(pieces, house.profiles[0], 0.0).demands)
    bars = bars_of("OG", house.stock, (), house.saw)
    layout = Layout(work, bars.bars, groups_of(work))
    stock = Stock(layout=layout, bars=bars, solver=HighsSolver(), effort=QUICK)
    at = charges(stock, Duals((1.0,), (0.0, 0.0), 1.0, 0.0))
    assert at is not None
    least = least_needs(layout, floor_of(work, bars.bars))
    knapsack = PricedRests(at.master, least, at.prices, at.master.whole, stock.grid)
    assert knapsack.longest(at.most(0, 1), 0) == 360000
