"""A small solver of linear programmes, for where no library can go: dense, exact enough, plain."""

import math
from typing import Final

from longpoint.linear.port import (
    LinearProblem,
    LinearSolution,
    LinearStatus,
)

NAME: Final = "built-in simplex"

_TINY: Final = 1e-9
_BLAND_AFTER: Final = 400
_MOST_PIVOTS: Final = 20_000


class SimplexSolver:
    """Solves linear programmes of some dozens of rows; whole numbers are beyond it.

    References:
        Dual simplex without costs until every row holds, then primal simplex with them; Bland's
        rule once a solve drags on, so that it ends.
    """

    def solve(self, problem: LinearProblem) -> LinearSolution:
        """Return the best solution, UNSOLVED for whole columns and for costs without a floor."""
        if problem.integral:
            return LinearSolution(status=LinearStatus.UNSOLVED, solver=NAME)
        form = _StandardForm(problem)
        tableau = _Tableau(form.rows, form.limits, len(form.costs))
        status = tableau.make_feasible()
        if status is LinearStatus.OPTIMAL:
            status = tableau.minimise(form.costs)
        if status is not LinearStatus.OPTIMAL:
            return LinearSolution(status=status, solver=NAME)
        values = form.values(tableau.solution())
        cost = math.fsum(c.cost * v for c, v in zip(problem.columns, values, strict=True))
        return LinearSolution(
            status=LinearStatus.OPTIMAL,
            values=values,
            duals=form.duals(tableau.slack_costs()),
            objective=cost,
            bound=cost,
            solver=NAME,
        )


class _StandardForm:
    """The same programme with unknowns from 0 up and rows that are limited from above."""

    def __init__(self, problem: LinearProblem) -> None:
        self.problem = problem
        # Each column: first unknown, sign, origin, whether a second unknown goes the other way.
        self.parts: list[tuple[int, float, float, bool]] = []
        self.costs: list[float] = []
        for column in problem.columns:
            at = len(self.costs)
            if column.lower > -math.inf:
                self.parts.append((at, 1.0, column.lower, False))
            elif column.upper is not None:
                self.parts.append((at, -1.0, column.upper, False))
            else:
                self.parts.append((at, 1.0, 0.0, True))
                self.costs.append(column.cost)
                self.costs.append(-column.cost)
                continue
            self.costs.append(self.parts[-1][1] * column.cost)
        self.rows: list[list[float]] = []
        self.limits: list[float] = []
        self.of_row: list[tuple[int, float]] = []
        self._limit_rows()
        self._limit_columns()

    def values(self, solution: list[float]) -> tuple[float, ...]:
        """Return the columns' own values."""
        return tuple(
            origin + sign * (solution[at] - (solution[at + 1] if has_other else 0.0))
            for at, sign, origin, has_other in self.parts
        )

    def duals(self, slack_costs: list[float]) -> tuple[float, ...]:
        """Return the change of the cost per unit of each row's limit."""
        found = [0.0] * len(self.problem.rows)
        for (row, sign), cost in zip(self.of_row, slack_costs, strict=False):
            found[row] -= sign * cost
        return tuple(found)

    def _limit_rows(self) -> None:
        dense = [[0.0] * len(self.costs) for _ in self.problem.rows]
        fixed = [0.0] * len(self.problem.rows)
        for column, (at, sign, origin, has_other) in zip(
            self.problem.columns, self.parts, strict=True
        ):
            for at_row, coefficient in column.rows:
                dense[at_row][at] += sign * coefficient
                if has_other:
                    dense[at_row][at + 1] -= coefficient
                fixed[at_row] += coefficient * origin
        for index, row in enumerate(self.problem.rows):
            if row.upper is not None and row.upper < math.inf:
                self._add(dense[index], row.upper - fixed[index], index, 1.0)
            if row.lower is not None and row.lower > -math.inf:
                self._add([-x for x in dense[index]], fixed[index] - row.lower, index, -1.0)

    def _limit_columns(self) -> None:
        for column, (at, sign, _, has_other) in zip(self.problem.columns, self.parts, strict=True):
            if has_other or sign < 0.0 or column.upper is None or column.upper == math.inf:
                continue
            row = [0.0] * len(self.costs)
            row[at] = 1.0
            self.rows.append(row)
            self.limits.append(column.upper - column.lower)

    def _add(self, row: list[float], limit: float, index: int, sign: float) -> None:
        self.rows.append(row)
        self.limits.append(limit)
        self.of_row.append((index, sign))


class _Tableau:
    """Rows a . x + slack = limit, the basic unknowns solved for; slacks come after the unknowns."""

    def __init__(self, rows: list[list[float]], limits: list[float], count: int) -> None:
        self.count = count
        self.basis = [self.count + i for i in range(len(rows))]
        self.nonbasic = list(range(self.count))
        self.body = [[*row, limit] for row, limit in zip(rows, limits, strict=True)]
        self.foot: list[float] = []
        self.pivots = 0

    def make_feasible(self) -> LinearStatus:
        """Pivot until every basic unknown is at least 0 (dual simplex, no costs)."""
        while self.pivots < _MOST_PIVOTS:
            scale = max((abs(row[-1]) for row in self.body), default=0.0)
            lacking = [i for i, row in enumerate(self.body) if row[-1] < -_TINY * max(1.0, scale)]
            if not lacking:
                return LinearStatus.OPTIMAL
            if self.pivots > _BLAND_AFTER:
                leaving = min(lacking, key=lambda i: self.basis[i])
            else:
                leaving = min(lacking, key=lambda i: self.body[i][-1])
            row = self.body[leaving]
            usable = [j for j in range(len(self.nonbasic)) if row[j] < -_TINY]
            if not usable:
                return LinearStatus.INFEASIBLE
            if self.pivots > _BLAND_AFTER:
                entering = min(usable, key=lambda j: self.nonbasic[j])
            else:
                entering = min(usable, key=lambda j: row[j])
            self._pivot(leaving, entering)
        return LinearStatus.UNSOLVED

    def minimise(self, costs: list[float]) -> LinearStatus:
        """Pivot until no cost can be saved (primal simplex from a feasible start)."""
        self.foot = self._reduced(costs)
        self.pivots = 0
        while self.pivots < _MOST_PIVOTS:
            saving = [j for j in range(len(self.nonbasic)) if self.foot[j] < -_TINY]
            if not saving:
                return LinearStatus.OPTIMAL
            if self.pivots > _BLAND_AFTER:
                entering = min(saving, key=lambda j: self.nonbasic[j])
            else:
                entering = min(saving, key=lambda j: self.foot[j])
            leaving = self._tightest(entering)
            if leaving is None:
                return LinearStatus.UNSOLVED
            self._pivot(leaving, entering)
        return LinearStatus.UNSOLVED

    def solution(self) -> list[float]:
        """Return the unknowns, those not in the basis 0."""
        values = [0.0] * (self.count + len(self.body))
        for name, row in zip(self.basis, self.body, strict=True):
            values[name] = row[-1]
        return values

    def slack_costs(self) -> list[float]:
        """Return what the cost rises by per unit that a row's slack is held open."""
        costs = [0.0] * len(self.body)
        for j, name in enumerate(self.nonbasic):
            if name >= self.count:
                costs[name - self.count] = self.foot[j]
        return costs

    def _reduced(self, costs: list[float]) -> list[float]:
        all_costs = [*costs, *([0.0] * len(self.body))]
        foot = [all_costs[name] for name in self.nonbasic] + [0.0]
        for name, row in zip(self.basis, self.body, strict=True):
            cost = all_costs[name]
            if cost:
                foot = [f - cost * a for f, a in zip(foot, row, strict=True)]
        return foot

    def _tightest(self, entering: int) -> int | None:
        best: tuple[float, int] | None = None
        found = None
        for i, row in enumerate(self.body):
            if row[entering] > _TINY:
                ratio = (max(row[-1], 0.0) / row[entering], self.basis[i])
                if best is None or ratio < best:
                    best, found = ratio, i
        return found

    def _pivot(self, leaving: int, entering: int) -> None:
        row = self.body[leaving]
        pivot = row[entering]
        row[entering] = 1.0
        scaled = [x / pivot for x in row]
        for i, other in enumerate(self.body):
            factor = other[entering]
            if i == leaving or factor == 0.0:
                continue
            other[entering] = 0.0
            self.body[i] = [x - factor * y for x, y in zip(other, scaled, strict=True)]
        self.body[leaving] = scaled
        if self.foot:
            factor = self.foot[entering]
            self.foot[entering] = 0.0
            self.foot = [x - factor * y for x, y in zip(self.foot, scaled, strict=True)]
        self.basis[leaving], self.nonbasic[entering] = (
            self.nonbasic[entering],
            self.basis[leaving],
        )
        self.pivots += 1
