"""The contract of the linear port, for every adapter and for an independent reference."""

import math
import random
from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from scipy import optimize, sparse

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolution,
    LinearSolver,
    LinearStatus,
)
from longpoint.solvers.called_solver import CalledSolver
from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.installed import linear_solver
from tests import called_engines

ADAPTERS: list[Callable[[], LinearSolver]] = [
    HighsSolver,
    lambda: CalledSolver(called_engines.solve),
]


@pytest.fixture(params=ADAPTERS)
def solver(request: pytest.FixtureRequest) -> LinearSolver:
    adapter: Callable[[], LinearSolver] = request.param
    return adapter()


def cover(seed: int, *, integral: bool) -> LinearProblem:
    """A random covering problem, like the masters of the nester."""
    draw = random.Random(seed)
    rows = 12
    columns = [
        LinearColumn(
            cost=float(draw.randint(5, 20)),
            rows=tuple((row, float(draw.randint(1, 2))) for row in draw.sample(range(rows), 4)),
        )
        for _ in range(40)
    ]
    columns += [LinearColumn(cost=30.0, rows=((row, 1.0),)) for row in range(rows)]
    return LinearProblem(
        columns=tuple(columns),
        rows=tuple(LinearRow(lower=float(draw.randint(1, 3))) for _ in range(rows)),
        integral=integral,
    )


def by_scipy(problem: LinearProblem) -> float:
    matrix = sparse.lil_matrix((len(problem.rows), len(problem.columns)))
    for number, column in enumerate(problem.columns):
        for row, value in column.rows:
            matrix[row, number] = value
    found = optimize.milp(
        c=[column.cost for column in problem.columns],
        constraints=optimize.LinearConstraint(
            matrix.tocsr(),
            [-np.inf if row.lower is None else row.lower for row in problem.rows],
            [np.inf if row.upper is None else row.upper for row in problem.rows],
        ),
        integrality=[1 if problem.integral else 0] * len(problem.columns),
        bounds=optimize.Bounds(
            [column.lower for column in problem.columns],
            [np.inf if column.upper is None else column.upper for column in problem.columns],
        ),
    )
    return float(found.fun)


def assert_keeps_rows(problem: LinearProblem, solution: LinearSolution) -> None:
    for number, row in enumerate(problem.rows):
        total = sum(
            value * dict(column.rows).get(number, 0.0)
            for value, column in zip(solution.values, problem.columns, strict=True)
        )
        assert row.lower is None or total >= row.lower - 1e-6
        assert row.upper is None or total <= row.upper + 1e-6


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("integral", [False, True])
def test_the_optimum_is_that_of_an_independent_solver(
    solver: LinearSolver, seed: int, integral: bool
) -> None:
    problem = cover(seed, integral=integral)
    solution = solver.solve(problem)
    assert solution.status is LinearStatus.OPTIMAL
    assert solution.objective == pytest.approx(by_scipy(problem))
    assert solution.bound == pytest.approx(solution.objective)
    assert_keeps_rows(problem, solution)
    if integral:
        assert all(math.isclose(value, round(value), abs_tol=1e-6) for value in solution.values)
        assert solution.duals == ()


@pytest.mark.parametrize("seed", range(8))
def test_duals_price_every_column_at_or_below_its_cost(solver: LinearSolver, seed: int) -> None:
    problem = cover(seed, integral=False)
    solution = solver.solve(problem)
    assert len(solution.duals) == len(problem.rows)
    assert all(dual >= -1e-9 for dual in solution.duals)
    for column in problem.columns:
        worth = sum(solution.duals[row] * value for row, value in column.rows)
        assert worth <= column.cost + 1e-6
    total = sum(d * (r.lower or 0.0) for d, r in zip(solution.duals, problem.rows, strict=True))
    assert total == pytest.approx(solution.objective)


def test_an_upper_limit_has_a_price_below_zero(solver: LinearSolver) -> None:
    problem = LinearProblem(
        columns=(
            LinearColumn(cost=1.0, rows=((0, 1.0), (1, 1.0))),
            LinearColumn(cost=3.0, rows=((0, 1.0),)),
        ),
        rows=(LinearRow(lower=5.0), LinearRow(upper=2.0)),
    )
    solution = solver.solve(problem)
    assert solution.objective == pytest.approx(11.0)
    assert solution.duals == pytest.approx((3.0, -2.0))


def test_adding_columns_gives_the_same_as_starting_afresh(solver: LinearSolver) -> None:
    whole = cover(3, integral=False)
    part = LinearProblem(columns=whole.columns[20:], rows=whole.rows)
    more = LinearProblem(columns=(*part.columns, *whole.columns[:20]), rows=whole.rows)
    first = solver.solve(part)
    assert solver.solve(more).objective == pytest.approx(by_scipy(more))
    assert first.objective == pytest.approx(by_scipy(part))


def test_columns_that_come_by_and_by_and_go_again_are_all_solved_to_the_best(
    solver: LinearSolver,
) -> None:
    """More columns only, then some gone, then other limits, then more again."""
    whole = cover(6, integral=False)
    count, step = len(whole.columns), max(1, len(whole.columns) // 6)
    shown = [whole.columns[count - step * n :] for n in range(2, 6)]
    others = tuple(replace(row, lower=(row.lower or 0.0) + 1.0) for row in whole.rows)
    for columns, rows in (
        *((columns, whole.rows) for columns in shown),
        (shown[1], whole.rows),
        (shown[1], others),
        (whole.columns, others),
        (whole.columns, whole.rows),
    ):
        problem = LinearProblem(columns=columns, rows=rows)
        assert solver.solve(problem).objective == pytest.approx(by_scipy(problem))


def test_other_rows_are_not_taken_for_the_same_problem(solver: LinearSolver) -> None:
    whole = cover(4, integral=False)
    solver.solve(whole)
    dearer = LinearProblem(columns=whole.columns, rows=(LinearRow(lower=9.0), *whole.rows[1:]))
    assert solver.solve(dearer).objective == pytest.approx(by_scipy(dearer))


@pytest.mark.parametrize("integral", [False, True])
def test_a_problem_without_a_solution_is_said_to_have_none(
    solver: LinearSolver, integral: bool
) -> None:
    problem = LinearProblem(
        columns=(LinearColumn(cost=1.0, rows=((0, 1.0),), upper=1.0),),
        rows=(LinearRow(lower=2.0),),
        integral=integral,
    )
    solution = solver.solve(problem)
    assert solution.status is LinearStatus.INFEASIBLE
    assert solution.values == ()


def test_a_good_enough_start_is_kept(solver: LinearSolver) -> None:
    problem = cover(5, integral=True)
    best = solver.solve(problem)
    started = LinearProblem(
        columns=problem.columns,
        rows=problem.rows,
        integral=True,
        start=best.values,
        enough=best.objective + 0.5,
        node_limit=1,
        seconds=5.0,
    )
    again = solver.solve(started)
    assert again.objective <= best.objective + 0.5
    assert again.bound <= again.objective + 1e-6
    assert_keeps_rows(problem, again)


def test_the_time_limit_counts_from_each_call(solver: LinearSolver) -> None:
    problem = cover(6, integral=False)
    for _ in range(3):
        timed = LinearProblem(columns=problem.columns, rows=problem.rows, seconds=0.5)
        assert solver.solve(timed).status is LinearStatus.OPTIMAL


def test_the_solver_names_itself_with_its_version(solver: LinearSolver) -> None:
    assert solver.solve(cover(0, integral=False)).solver.split()[-1][0].isdigit()


def test_a_solver_is_silent(capfd: pytest.CaptureFixture[str]) -> None:
    HighsSolver().solve(cover(0, integral=True))
    assert capfd.readouterr() == ("", "")


def test_the_installed_solver_is_found() -> None:
    assert isinstance(linear_solver(), HighsSolver)


def two_priced_alike() -> LinearProblem:
    """One column covers two rows: their prices add up to its cost, however it is shared out."""
    return LinearProblem(
        columns=(LinearColumn(cost=1.0, rows=((0, 1.0), (1, 1.0))),),
        rows=(LinearRow(lower=1.0), LinearRow(lower=1.0)),
    )


def test_central_prices_lie_in_the_middle_of_all_that_are_best(solver: LinearSolver) -> None:
    corner = solver.solve(two_priced_alike())
    middle = solver.solve(replace(two_priced_alike(), central=True, tolerance=1e-10))
    again = solver.solve(two_priced_alike())
    assert sorted(corner.duals) == pytest.approx([0.0, 1.0])
    assert middle.duals == pytest.approx([0.5, 0.5], abs=1e-4)
    assert sum(middle.duals) == pytest.approx(1.0, abs=1e-9)
    assert again.duals == corner.duals


@pytest.mark.parametrize("seed", range(4))
def test_prices_to_a_tolerance_leave_no_column_that_gains_more(
    solver: LinearSolver, seed: int
) -> None:
    problem = replace(cover(seed, integral=False), tolerance=1e-10)
    solution = solver.solve(problem)
    for column in problem.columns:
        worth = sum(solution.duals[row] * value for row, value in column.rows)
        assert worth <= column.cost + 1e-9
    assert solution.objective == pytest.approx(by_scipy(problem), rel=1e-9)
