import math

import pytest

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolver,
    LinearStatus,
)
from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.highs import HighsSolver

SOLVERS: tuple[LinearSolver, ...] = (SimplexSolver(), HighsSolver())


def problem(
    costs: tuple[float, ...],
    rows: tuple[tuple[tuple[float, ...], float | None, float | None], ...],
    bounds: tuple[tuple[float, float | None], ...] | None = None,
    *,
    integral: bool = False,
) -> LinearProblem:
    limits = bounds or ((0.0, None),) * len(costs)
    return LinearProblem(
        columns=tuple(
            LinearColumn(
                cost=cost,
                rows=tuple((i, row[0][k]) for i, row in enumerate(rows)),
                lower=limits[k][0],
                upper=limits[k][1],
            )
            for k, cost in enumerate(costs)
        ),
        rows=tuple(LinearRow(lower=lower, upper=upper) for _, lower, upper in rows),
        integral=integral,
    )


@pytest.mark.parametrize("solver", SOLVERS)
def test_two_products_from_two_stocks_as_worked_by_hand(solver: LinearSolver) -> None:
    # Most of 3x + 2y with x + y <= 4, x + 3y <= 6 and x <= 3: x 3, y 1 (3 + 3 = 6), worth 11.
    solved = solver.solve(
        problem((-3.0, -2.0), (((1, 1), None, 4), ((1, 3), None, 6)), ((0, 3), (0, None)))
    )
    assert solved.status is LinearStatus.OPTIMAL
    assert solved.values == pytest.approx((3.0, 1.0))
    assert solved.objective == pytest.approx(-11.0)
    assert solved.objective == solved.bound


@pytest.mark.parametrize("solver", SOLVERS)
def test_a_dual_is_the_change_of_the_cost_per_unit_of_its_rows_limit(
    solver: LinearSolver,
) -> None:
    solved = solver.solve(problem((2.0, 3.0), (((1, 1), 4, None), ((1, 0), None, 3))))
    assert solved.values == pytest.approx((3.0, 1.0))
    assert solved.duals == pytest.approx((3.0, -1.0))


@pytest.mark.parametrize("solver", SOLVERS)
def test_an_unknown_without_limits_goes_below_nought(solver: LinearSolver) -> None:
    solved = solver.solve(
        problem((1.0,), (((1,), -7.5, None),), ((-math.inf, None),)),
    )
    assert solved.values == pytest.approx((-7.5,))
    assert solved.duals == pytest.approx((1.0,))


@pytest.mark.parametrize("solver", SOLVERS)
def test_an_unknown_with_an_upper_limit_only_stops_there(solver: LinearSolver) -> None:
    solved = solver.solve(problem((-1.0,), (((1,), None, 9.0),), ((-math.inf, 2.5),)))
    assert solved.values == pytest.approx((2.5,))


@pytest.mark.parametrize("solver", SOLVERS)
def test_an_equation_is_kept(solver: LinearSolver) -> None:
    solved = solver.solve(problem((1.0, 1.0), (((2, 1), 6, 6), ((1, -1), 0, 0))))
    assert solved.values == pytest.approx((2.0, 2.0))


def test_rows_against_each_other_are_infeasible() -> None:
    solved = SimplexSolver().solve(problem((1.0,), (((1,), 4, None), ((1,), None, 3))))
    assert solved.status is LinearStatus.INFEASIBLE
    assert solved.values == ()
    assert solved.objective == math.inf


def test_a_cost_without_a_floor_is_unsolved() -> None:
    solved = SimplexSolver().solve(problem((-1.0, 0.0), (((1, -1), None, 1),)))
    assert solved.status is LinearStatus.UNSOLVED


def test_whole_numbers_are_unsolved() -> None:
    solved = SimplexSolver().solve(problem((1.0,), (((1,), 1, None),), integral=True))
    assert solved.status is LinearStatus.UNSOLVED


def test_a_problem_that_makes_the_largest_saving_rule_go_round_in_circles_ends() -> None:
    # E. M. L. Beale, "Cycling in the dual simplex algorithm" (1955); numbers from memory.
    solved = SimplexSolver().solve(
        problem(
            (-0.75, 150.0, -0.02, 6.0),
            (
                ((0.25, -60.0, -1 / 25, 9.0), None, 0.0),
                ((0.5, -90.0, -1 / 50, 3.0), None, 0.0),
                ((0.0, 0.0, 1.0, 0.0), None, 1.0),
            ),
        )
    )
    assert solved.status is LinearStatus.OPTIMAL
    assert solved.objective == pytest.approx(-0.05)
