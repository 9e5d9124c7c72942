import pytest

from longpoint.linear.port import LinearSolution, LinearStatus
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.goal_program import Duals, GoalProgram, Stock, charges
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.lay.demand import profile_demand
from longpoint.sticks.lay.laying import workload
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of
from tests.random_sticks import architrave_piece, house_of

HOUSE = house_of(lengths_mm=(1800.0, 3600.0), offcuts=((1000.0, 1),), kerf_mm=0.0, end_trim_mm=0.0)


@pytest.fixture
def stock() -> Stock:
    """Pieces of 1700 and 900; lengths 1000 (one offcut), 1800 (1 step) and 3600 (2 steps)."""
    solver = HighsSolver()
    pieces = [architrave_piece(f"W{n}-head", mm, 0, 0) for n, mm in enumerate((1700.0, 900.0))]
    work = workload(profile_demand(pieces, HOUSE.profiles[0], 0.0).demands)
    bars = bars_of("OG", HOUSE.stock, HOUSE.offcuts, HOUSE.saw)
    layout = Layout(work, bars.bars, groups_of(work))
    return Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)


LONG_ALONE = Pattern(1, ((0, 1),))
BOTH = Pattern(2, ((0, 1), (1, 1)))
SHORT_OFF_RACK = Pattern(0, ((1, 1),))


def test_offcuts_cost_nothing_and_are_not_new(stock: Stock) -> None:
    assert (stock.steps, stock.new) == ((0, 1, 2), (0, 1, 1))
    assert stock.cost([SHORT_OFF_RACK, LONG_ALONE]) == stock.sticks([SHORT_OFF_RACK, BOTH]) == 1


def test_few_sticks_are_asked_for_among_plans_that_cost_no_more(stock: Stock) -> None:
    program = GoalProgram(stock, 1)
    assert program.add([LONG_ALONE, BOTH, LONG_ALONE]) == 2
    assert program.add([SHORT_OFF_RACK, BOTH]) == 1
    assert program.patterns == [LONG_ALONE, BOTH, SHORT_OFF_RACK]
    solution = program.solve()
    assert solution.objective == pytest.approx(1.0)
    duals = program.duals(solution)
    assert duals is not None
    assert duals.stick == 1.0
    assert min(duals.pieces) >= 0.0 >= max(duals.lengths)


def test_a_program_without_a_solution_has_no_duals(stock: Stock) -> None:
    program = GoalProgram(stock, 1)
    assert program.duals(LinearSolution(status=LinearStatus.INFEASIBLE, solver="none")) is None


def test_lengths_are_charged_for_their_steps_and_for_being_new(stock: Stock) -> None:
    at = charges(stock, Duals((1.0, 1.0), (0.0, 0.0, 0.0), 1.0, 2.0))
    assert at is not None
    # 3 to 4, in whole steps of what both are multiples of.
    assert at.master.steps == (0, 3, 4)
    assert at.most(2, 1) == 4
    assert at.prices.pieces == pytest.approx((1.0, 1.0))
    assert charges(stock, Duals((1.0, 1.0), (0.0, 0.0, 0.0), 0.0, 0.0)) is None


def test_duals_are_mixed_share_by_share() -> None:
    one, other = Duals((1.0,), (0.0,), 2.0, 4.0), Duals((3.0,), (-2.0,), 4.0, 0.0)
    assert one.mixed(other, 0.5) == Duals((2.0,), (-1.0,), 3.0, 2.0)
