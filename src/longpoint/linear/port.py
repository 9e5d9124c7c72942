"""The port through which linear and integer programs are solved."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Protocol


class LinearStatus(StrEnum):
    """How a solve ended."""

    OPTIMAL = "optimal"
    """The values are a best solution, within the solver's tolerances."""
    FEASIBLE = "feasible"
    """The values keep every row; a limit was met before they were proved best."""
    INFEASIBLE = "infeasible"
    """There is no solution."""
    UNSOLVED = "unsolved"
    """A limit was met, or the solver failed, before any solution was found."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearColumn:
    """One unknown.

    Attributes:
        cost: Its part of the objective.
        rows: (row, coefficient) pairs, no row twice.
        lower: Least value.
        upper: Largest value; None: none.
    """

    cost: float
    rows: tuple[tuple[int, float], ...]
    lower: float = 0.0
    upper: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearRow:
    """One condition: lower <= sum of coefficients x values <= upper; None: no limit."""

    lower: float | None = None
    upper: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearProblem:
    """Minimise the cost of the columns, keeping every row.

    Attributes:
        columns: The unknowns.
        rows: The conditions.
        integral: True when every column must be whole.
        start: Values to start from, one per column, or None. Only a hint, and only for whole ones.
        enough: Integer only: stop at a solution that costs no more than this; None: go on.
        node_limit: Integer only: most branch-and-bound nodes; None: no limit.
        tolerance: Linear only: by how much a column may still lower the cost, per unit, in what is
            called a best solution; None: the solver's own habit. Only a hint.
        central: Linear only: take duals from the middle of all best ones, not from a corner. Only
            a hint; the values are then from the middle as well.
        seconds: Longest time; None: no limit. Meeting it may make a result not repeat.
    """

    columns: tuple[LinearColumn, ...]
    rows: tuple[LinearRow, ...]
    integral: bool = False
    start: tuple[float, ...] | None = None
    enough: float | None = None
    node_limit: int | None = None
    tolerance: float | None = None
    central: bool = False
    seconds: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LinearSolution:
    """What a solver found.

    Attributes:
        status: How the solve ended.
        values: One per column; empty without a solution.
        duals: One per row, the change of the cost per unit of the row's limit; empty for whole
            columns and without a solution.
        objective: Cost of the values; infinite without a solution.
        bound: No solution costs less, as far as the solver knows; minus infinity if it knows none.
        solver: Name and version of who solved it.
    """

    status: LinearStatus
    values: tuple[float, ...] = ()
    duals: tuple[float, ...] = ()
    objective: float = float("inf")
    bound: float = float("-inf")
    solver: str


class LinearSolver(Protocol):
    """Solves linear programs, whole or not; holds nothing between two calls."""

    def solve(self, problem: LinearProblem) -> LinearSolution:
        """Return the best solution found within the problem's limits."""
        ...
