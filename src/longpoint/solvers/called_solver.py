"""A solver that is called outside of Python, behind the linear port: HiGHS of a browser's page.

Across goes a problem as plain arrays, back comes a text: what is called needs to know nothing of
the port's records.
"""

import json
from array import array
from collections.abc import Sequence
from itertools import accumulate
from math import inf
from typing import Protocol

from longpoint.linear.port import LinearProblem, LinearRow, LinearSolution, LinearStatus
from longpoint.solvers.highs_options import highs_options


class SolverCall(Protocol):
    """What is called: the problem column by column in, a text out.

    The text is a JSON object: `status` as the port names it, `values`, `duals`, `objective` and
    `bound` (null: none known), `solver`.
    """

    def __call__(
        self,
        costs: "array[float]",
        lowers: "array[float]",
        uppers: "array[float]",
        starts: "array[int]",
        rows: "array[int]",
        coefficients: "array[float]",
        row_lowers: "array[float]",
        row_uppers: "array[float]",
        start: "array[float]",
        told: str,
        /,
    ) -> str:
        """Solve a problem.

        Args:
            costs: Per column.
            lowers: Per column.
            uppers: Per column; infinite: none.
            starts: Where each column's entries begin, and a last one: where they end.
            rows: Row of each entry.
            coefficients: Of each entry.
            row_lowers: Per row; minus infinity: none.
            row_uppers: Per row; infinite: none.
            start: Values to start from; empty: none.
            told: JSON object: `integral`, and `options` by the names of HiGHS.
        """
        ...


class CalledSolver:
    """Solves linear and integer programs by a call; holds nothing between two calls."""

    def __init__(self, call: SolverCall) -> None:
        self._call = call

    def solve(self, problem: LinearProblem) -> LinearSolution:
        """Return the best solution found within the problem's limits."""
        columns = problem.columns
        options = highs_options(problem)
        if problem.seconds is not None:
            options["time_limit"] = problem.seconds
        text = self._call(
            array("d", [column.cost for column in columns]),
            array("d", [column.lower for column in columns]),
            array("d", [inf if c.upper is None else c.upper for c in columns]),
            array("i", accumulate((len(column.rows) for column in columns), initial=0)),
            array("i", [row for column in columns for row, _ in column.rows]),
            array("d", [value for column in columns for _, value in column.rows]),
            *_row_limits(problem.rows),
            array("d", problem.start or ()),
            json.dumps({"integral": problem.integral, "options": options}),
        )
        found = json.loads(text)
        status = LinearStatus(found["status"])
        if status in (LinearStatus.INFEASIBLE, LinearStatus.UNSOLVED):
            return LinearSolution(status=status, solver=found["solver"])
        bound = found["bound"]
        return LinearSolution(
            status=status,
            values=tuple(map(float, found["values"])),
            duals=tuple(map(float, found["duals"])),
            objective=float(found["objective"]),
            bound=-inf if bound is None else float(bound),
            solver=found["solver"],
        )


def _row_limits(rows: Sequence[LinearRow]) -> "tuple[array[float], array[float]]":
    return (
        array("d", [-inf if row.lower is None else row.lower for row in rows]),
        array("d", [inf if row.upper is None else row.upper for row in rows]),
    )
