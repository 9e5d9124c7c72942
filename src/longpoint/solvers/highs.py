"""HiGHS behind the linear port."""

import importlib
import importlib.util
from collections.abc import Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import Final, NamedTuple

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolution,
    LinearStatus,
)
from longpoint.solvers.highs_options import highs_options
from longpoint.solvers.numpy_knapsack import (
    MOST_VALUE,
    FineNumpyKnapsack,
    NumpyKnapsack,
)
from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.part_plans import plan_in_parts
from longpoint.solvers.set_search import choose_sets
from longpoint.speech.said import say
from longpoint.sticks.search.knapsack import MOST_FINE_VALUE, TablesMaker

_DUAL, _PRIMAL = 1, 4
"""HiGHS' numbers for its two ways: more columns leave a solution feasible, other limits don't."""
_MOST_BARRED: Final = 8
"""A program is made afresh where this part of its columns would be barred, less one."""


class _Columns(NamedTuple):
    """Columns as HiGHS takes them: one array per attribute, the matrix column by column."""

    costs: object
    lowers: object
    uppers: object
    starts: object
    indices: object
    values: object
    entries: int

    def as_added(self) -> tuple[object, ...]:
        """Return them in the order in which columns are added."""
        return (*self[:3], self.entries, *self[3:6])


class HighsSolver:
    """Solves linear and integer programs with HiGHS: one thread, fixed seed, silent.

    A linear program with as many rows as the one before it, as in column generation and in dives,
    is made from that one: new columns are added, those that are gone are barred, limits of rows
    are changed. The solver then starts from where it stood: where there are only more columns, by
    the primal simplex, which goes on from a solution that is still one.

    `highspy` and numpy are imported when the first solver is made, so that a plan without one
    doesn't wait for them.
    """

    tables = TablesMaker(NumpyKnapsack, MOST_VALUE)
    """What the nester prices its patterns with."""
    fine_tables = TablesMaker(FineNumpyKnapsack, MOST_FINE_VALUE)
    """The same for prices of which every digit counts."""
    choose_sets = staticmethod(choose_sets)
    """How it chooses among many listed sets."""
    plan_in_parts = staticmethod(plan_in_parts)
    """How it plans thousands of pieces, in parts of sticks."""

    def __init__(self) -> None:
        # Before highspy, which imports numpy itself.
        self._numpy: ModuleType = numpy_in_one_thread()
        self._highspy: ModuleType = importlib.import_module("highspy")
        # The friendly class writes a banner before it can be told to be silent; its base doesn't.
        self._highs = self._highspy.highs._Highs()
        self._highs.setOptionValue("output_flag", False)
        self._known = _Known((), [], {}, set(), {})

    @staticmethod
    def is_installed() -> bool:
        """Tell whether `highspy` can be imported."""
        return importlib.util.find_spec("highspy") is not None

    def solve(self, problem: LinearProblem) -> LinearSolution:
        """Return the best solution found within the problem's limits."""
        highspy, highs = self._highspy, self._highs
        self._load(problem)
        if problem.seconds is not None:
            # The limit counts from the first run of this instance.
            highs.setOptionValue("time_limit", highs.getRunTime() + problem.seconds)
        highs.run()
        name = say("HiGHS {version}", version=highs.version())
        ended, statuses = highs.getModelStatus(), highspy.HighsModelStatus
        if ended in (statuses.kInfeasible, statuses.kUnboundedOrInfeasible):
            return LinearSolution(status=LinearStatus.INFEASIBLE, solver=name)
        info, found = highs.getInfo(), highs.getSolution()
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            return LinearSolution(status=LinearStatus.UNSOLVED, solver=name)
        best = ended == statuses.kOptimal
        objective = float(info.objective_function_value)
        linear_bound = objective if best else float("-inf")
        values = found.col_value
        if not problem.integral:
            places = self._known.places
            values = [values[places[id(column)]] for column in problem.columns]
        return LinearSolution(
            status=LinearStatus.OPTIMAL if best else LinearStatus.FEASIBLE,
            values=tuple(values),
            duals=tuple(found.row_dual) if best and not problem.integral else (),
            objective=objective,
            bound=float(info.mip_dual_bound) if problem.integral else linear_bound,
            solver=name,
        )

    def _load(self, problem: LinearProblem) -> None:
        """Give HiGHS the problem, or only what is new in it."""
        known = self._known
        if not problem.integral and known.serves(problem):
            self._change(known, problem)
            return
        self._known = _Known((), [], {}, set(), {})
        highs, options = self._highs, highs_options(problem)
        highs.clear()
        highs.setOptionValue("output_flag", False)
        for option, value in options.items():
            highs.setOptionValue(option, value)
        highs.passModel(self._model(problem))
        if problem.integral and problem.start is not None:
            start = self._highspy.HighsSolution()
            start.col_value = list(problem.start)
            highs.setSolution(start)
        if not problem.integral:
            columns = list(problem.columns)
            places = {id(column): place for place, column in enumerate(columns)}
            self._known = _Known(problem.rows, columns, places, set(), options)

    def _change(self, known: "_Known", problem: LinearProblem) -> None:
        """Make the problem of the one that HiGHS holds."""
        new = [column for column in problem.columns if id(column) not in known.places]
        if new:
            self._highs.addCols(len(new), *self._columns(new).as_added())
        for column in new:
            known.places[id(column)] = len(known.columns)
            known.columns.append(column)
        wanted = {known.places[id(column)] for column in problem.columns}
        barred = set(range(len(known.columns))) - wanted
        changed = sorted(barred ^ known.barred)
        if changed:
            infinity = self._highspy.kHighsInf
            columns = [known.columns[place] for place in changed]
            uppers = [
                0.0 if place in barred else infinity if column.upper is None else column.upper
                for place, column in zip(changed, columns, strict=True)
            ]
            lowers = [
                0.0 if place in barred else column.lower
                for place, column in zip(changed, columns, strict=True)
            ]
            self._highs.changeColsBounds(len(changed), *self._arrays(changed, lowers, uppers))
        known.barred = barred
        rows = [row for row, limits in enumerate(problem.rows) if limits != known.rows[row]]
        if rows:
            lows, highs = self._row_limits([problem.rows[row] for row in rows])
            for row, low, high in zip(rows, lows, highs, strict=True):
                self._highs.changeRowBounds(row, low, high)
            known.rows = problem.rows
        only_more = new and not changed and not rows
        self._highs.setOptionValue("simplex_strategy", _PRIMAL if only_more else _DUAL)

    def _arrays(
        self, places: Sequence[int], lowers: Sequence[float], uppers: Sequence[float]
    ) -> tuple[object, object, object]:
        numpy = self._numpy
        return (
            numpy.array(places, dtype=numpy.int32),
            numpy.array(lowers, dtype=numpy.double),
            numpy.array(uppers, dtype=numpy.double),
        )

    def _row_limits(self, rows: Sequence[LinearRow]) -> tuple[list[float], list[float]]:
        infinity = self._highspy.kHighsInf
        return (
            [-infinity if row.lower is None else row.lower for row in rows],
            [infinity if row.upper is None else row.upper for row in rows],
        )

    def _model(self, problem: LinearProblem) -> object:
        highspy, numpy = self._highspy, self._numpy
        columns = self._columns(problem.columns)
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(problem.columns), len(problem.rows)
        model.col_cost_, model.col_lower_, model.col_upper_ = columns[:3]
        lowers, uppers = self._row_limits(problem.rows)
        model.row_lower_ = numpy.array(lowers, dtype=numpy.double)
        model.row_upper_ = numpy.array(uppers, dtype=numpy.double)
        matrix = model.a_matrix_
        matrix.format_ = highspy.MatrixFormat.kColwise
        matrix.start_ = numpy.append(columns.starts, columns.entries).astype(numpy.int32)
        matrix.index_, matrix.value_ = columns.indices, columns.values
        if problem.integral:
            model.integrality_ = [highspy.HighsVarType.kInteger] * len(problem.columns)
        return model

    def _columns(self, columns: Sequence[LinearColumn]) -> _Columns:
        numpy, infinity = self._numpy, self._highspy.kHighsInf
        entries = [entry for column in columns for entry in column.rows]
        lengths = [len(column.rows) for column in columns]
        uppers = [infinity if column.upper is None else column.upper for column in columns]
        return _Columns(
            numpy.array([column.cost for column in columns], dtype=numpy.double),
            numpy.array([column.lower for column in columns], dtype=numpy.double),
            numpy.array(uppers, dtype=numpy.double),
            numpy.cumsum([0, *lengths[:-1]]).astype(numpy.int32),
            numpy.array([row for row, _ in entries], dtype=numpy.int32),
            numpy.array([value for _, value in entries], dtype=numpy.double),
            len(entries),
        )


@dataclass(slots=True)
class _Known:
    """The linear program that HiGHS holds.

    Attributes:
        rows: Its rows.
        columns: Its columns, barred ones too; kept, so that their identities stay theirs.
        places: Where each stands, by identity.
        barred: Places of the columns held at nought.
        options: How it is to be solved.
    """

    rows: tuple[LinearRow, ...]
    columns: list[LinearColumn]
    places: dict[int, int]
    barred: set[int]
    options: dict[str, int | float | str]

    def serves(self, problem: LinearProblem) -> bool:
        """Tell whether the problem is near enough to be made of this one."""
        if len(self.rows) != len(problem.rows) or not self.columns:
            return False
        if self.options != highs_options(problem):
            return False
        shared = sum(id(column) in self.places for column in problem.columns)
        return len(self.columns) <= _MOST_BARRED * (shared + 1)
