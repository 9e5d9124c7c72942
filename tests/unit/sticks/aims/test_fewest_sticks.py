import random

import pytest

from longpoint.linear.port import LinearSolver
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.fewest_sticks import FewestSticks, fewest_sticks
from longpoint.sticks.aims.goal_program import Stock
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bars, bars_of
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.fit import Packing, filled
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.search.patterns import Layout, groups_of
from tests.random_sticks import architrave_piece, house_of
from tests.small_plans import patterns_of

HOUSE = house_of(lengths_mm=(1800.0, 3600.0), kerf_mm=0.0, end_trim_mm=0.0)


class SolverAlone(HighsSolver):
    """Solves programs; brings no search among sets, as on a phone."""

    choose_sets = None  # type: ignore[assignment]


def square(*lengths_mm: float) -> tuple[Workload, Bars]:
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate(lengths_mm)]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    return work, bars_of("OG", HOUSE.stock, (), HOUSE.saw)


def asked(
    work: Workload, bars: Bars, sticks: list[tuple[int, list[int]]], solver: LinearSolver
) -> tuple[FewestSticks, Stock]:
    layout = Layout(work, bars.bars, groups_of(work))
    stock = Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)
    packing = Packing(
        tuple(
            filled(work, bar, [Place(piece, turned=False) for piece in pieces])
            for bar, pieces in sticks
        )
    )
    plan = patterns_of(stock, packing)
    return fewest_sticks(stock, floor_of(work, bars.bars), plan, ()), stock


@pytest.mark.parametrize("solver", [HighsSolver(), SolverAlone()])
def test_one_long_stick_is_found_where_two_short_ones_cost_as_much(
    solver: LinearSolver,
) -> None:
    work, bars = square(1700.0, 1600.0)
    found, stock = asked(work, bars, [(0, [0]), (0, [1])], solver)
    assert found.floor == stock.sticks(found.patterns) == 1
    assert stock.cost(found.patterns) == 2


@pytest.mark.parametrize("solver", [HighsSolver(), SolverAlone()])
def test_short_sticks_that_no_long_ones_replace_are_proved(solver: LinearSolver) -> None:
    """Three pieces of 1700: two on a long stick, one on a short; by sums 5.1 m want two as well.

    Then three of 1250 more, no two of which lie on one short stick: a long one holds two.
    """
    work, bars = square(1700.0, 1700.0, 1700.0, 1250.0, 1250.0, 1250.0)
    plan = [(1, [0, 1]), (1, [3, 4]), (0, [2]), (0, [5])]
    found, stock = asked(work, bars, plan, solver)
    assert found.floor == stock.sticks(found.patterns) == 3


def test_fewer_sticks_of_many_pieces_are_found_at_the_same_cost() -> None:
    """No three lie on a long stick, any two do: half the sticks will do."""
    draw = random.Random(3)
    work, bars = square(*(float(draw.randint(1201, 1790)) for _ in range(18)))
    apart = [(0, [piece]) for piece in range(18)]
    found, stock = asked(work, bars, apart, HighsSolver())
    assert found.floor == stock.sticks(found.patterns) == 9
