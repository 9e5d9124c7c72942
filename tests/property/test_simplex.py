"""The built-in solver of linear programmes finds what HiGHS finds."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolution,
    LinearStatus,
)
from longpoint.linear.simplex import SimplexSolver
from longpoint.solvers.highs import HighsSolver

HIGHS = HighsSolver()
# Whole numbers make ties and degenerate corners; odd ones break them.
small = st.one_of(st.integers(-3, 3).map(float), st.integers(-300, 300).map(lambda n: n / 97.0))


@st.composite
def problems(draw: st.DrawFn) -> LinearProblem:
    row_count = draw(st.integers(1, 9))
    columns = []
    for _ in range(draw(st.integers(1, 7))):
        lower = draw(st.sampled_from((0.0, -math.inf, -1.0, 2.0)))
        upper = draw(st.sampled_from((None, None, 3.0, 5.0)))
        entries = draw(st.lists(small, min_size=row_count, max_size=row_count))
        columns.append(
            LinearColumn(
                cost=draw(small),
                rows=tuple((i, entry) for i, entry in enumerate(entries) if entry),
                lower=lower,
                upper=upper,
            )
        )
    rows = []
    for _ in range(row_count):
        kind = draw(st.sampled_from(("least", "most", "both", "equal", "free")))
        one, other = sorted((draw(small), draw(small)))
        rows.append(
            LinearRow(
                lower=one if kind in ("least", "both", "equal") else None,
                upper={"most": other, "both": other, "equal": one}.get(kind),
            )
        )
    return LinearProblem(columns=tuple(columns), rows=tuple(rows))


@given(problems())
def test_the_built_in_solver_agrees_with_highs(problem: LinearProblem) -> None:
    ours, theirs = SimplexSolver().solve(problem), HIGHS.solve(problem)
    if theirs.status is LinearStatus.INFEASIBLE:
        assert ours.status is LinearStatus.INFEASIBLE
    elif theirs.status is LinearStatus.OPTIMAL:
        assert ours.status is LinearStatus.OPTIMAL
        assert ours.objective == pytest.approx(theirs.objective, rel=1e-9, abs=1e-9)
        assert_kept(problem, ours)
        assert_duals_prove(problem, ours)
    else:
        assert ours.status is LinearStatus.UNSOLVED


def assert_kept(problem: LinearProblem, solved: LinearSolution) -> None:
    sums = [0.0] * len(problem.rows)
    for column, value in zip(problem.columns, solved.values, strict=True):
        assert value >= column.lower - 1e-7
        assert column.upper is None or value <= column.upper + 1e-7
        for row, coefficient in column.rows:
            sums[row] += coefficient * value
    for row_limits, total in zip(problem.rows, sums, strict=True):
        assert row_limits.lower is None or total >= row_limits.lower - 1e-6
        assert row_limits.upper is None or total <= row_limits.upper + 1e-6


def assert_duals_prove(problem: LinearProblem, solved: LinearSolution) -> None:
    """Hold that no solution can cost less: weighed by the duals, limits add up to the cost."""
    proved = 0.0
    for row, dual in zip(problem.rows, solved.duals, strict=True):
        limit = row.lower if dual > 0.0 else row.upper
        assert limit is not None or abs(dual) < 1e-9
        proved += dual * (limit or 0.0)
    for column in problem.columns:
        left = column.cost - math.fsum(solved.duals[row] * a for row, a in column.rows)
        limit = column.lower if left > 0.0 else column.upper
        has_limit = limit is not None and math.isfinite(limit)
        assert has_limit or abs(left) < 1e-7
        proved += left * (limit if has_limit and limit is not None else 0.0)
    assert proved == pytest.approx(solved.objective, rel=1e-7, abs=1e-7)
