"""HiGHS behind the linear port."""

import importlib
import importlib.util
from collections.abc import Sequence
from operator import is_
from types import ModuleType
from typing import NamedTuple

from longpoint.linear.port import LinearColumn, LinearProblem, LinearSolution, LinearStatus
from longpoint.solvers.one_thread import numpy_in_one_thread


class _Columns(NamedTuple):
    """Columns as HiGHS takes them: one array per attribute, the matrix column by column."""

    costs: object
    lowers: object
    uppers: object
    starts: object
    indices: object
    values: object
    entries: int


class HighsSolver:
    """Solves linear and integer programs with HiGHS: one thread, fixed seed, silent.

    Where a linear program only adds columns to the one before it, as in column generation, the
    solver starts from that one's solution.

    `highspy` and numpy are imported when the first solver is made, so that a plan without one
    doesn't wait for them.
    """

    def __init__(self) -> None:
        # Before highspy, which imports numpy itself.
        self._numpy: ModuleType = numpy_in_one_thread()
        self._highspy: ModuleType = importlib.import_module("highspy")
        # The friendly class writes a banner before it can be told to be silent; its base doesn't.
        self._highs = self._highspy.highs._Highs()
        self._highs.setOptionValue("output_flag", False)
        self._last: LinearProblem | None = None

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
        name = f"HiGHS {highs.version()}"
        ended, statuses = highs.getModelStatus(), highspy.HighsModelStatus
        if ended in (statuses.kInfeasible, statuses.kUnboundedOrInfeasible):
            return LinearSolution(status=LinearStatus.INFEASIBLE, solver=name)
        info, found = highs.getInfo(), highs.getSolution()
        if info.primal_solution_status != highspy.SolutionStatus.kSolutionStatusFeasible:
            return LinearSolution(status=LinearStatus.UNSOLVED, solver=name)
        best = ended == statuses.kOptimal
        objective = float(info.objective_function_value)
        linear_bound = objective if best else float("-inf")
        return LinearSolution(
            status=LinearStatus.OPTIMAL if best else LinearStatus.FEASIBLE,
            values=tuple(found.col_value),
            duals=tuple(found.row_dual) if best and not problem.integral else (),
            objective=objective,
            bound=float(info.mip_dual_bound) if problem.integral else linear_bound,
            solver=name,
        )

    def _load(self, problem: LinearProblem) -> None:
        """Give HiGHS the problem, or only what is new in it."""
        last, self._last = self._last, None if problem.integral else problem
        if last is not None and _only_adds_columns(last, problem):
            new = self._columns(problem.columns[len(last.columns) :])
            if count := len(problem.columns) - len(last.columns):
                self._highs.addCols(
                    count,
                    new.costs,
                    new.lowers,
                    new.uppers,
                    new.entries,
                    new.starts,
                    new.indices,
                    new.values,
                )
            return
        highs = self._highs
        highs.clear()
        highs.setOptionValue("output_flag", False)
        for option, value in _options(problem).items():
            highs.setOptionValue(option, value)
        highs.passModel(self._model(problem))
        if problem.integral and problem.start is not None:
            start = self._highspy.HighsSolution()
            start.col_value = list(problem.start)
            highs.setSolution(start)

    def _model(self, problem: LinearProblem) -> object:
        highspy, numpy = self._highspy, self._numpy
        infinity, columns = highspy.kHighsInf, self._columns(problem.columns)
        model = highspy.HighsLp()
        model.num_col_, model.num_row_ = len(problem.columns), len(problem.rows)
        model.col_cost_, model.col_lower_, model.col_upper_ = columns[:3]
        model.row_lower_ = numpy.array(
            [-infinity if row.lower is None else row.lower for row in problem.rows],
            dtype=numpy.double,
        )
        model.row_upper_ = numpy.array(
            [infinity if row.upper is None else row.upper for row in problem.rows],
            dtype=numpy.double,
        )
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


def _only_adds_columns(last: LinearProblem, problem: LinearProblem) -> bool:
    known = len(last.columns)
    return (
        not problem.integral
        and known <= len(problem.columns)
        and last.rows == problem.rows
        and all(map(is_, last.columns, problem.columns[:known]))
    )


def _options(problem: LinearProblem) -> dict[str, object]:
    options: dict[str, object] = {"threads": 1, "random_seed": 0}
    if problem.integral:
        options |= {"mip_rel_gap": 0.0}
        if problem.node_limit is not None:
            options["mip_max_nodes"] = problem.node_limit
        if problem.enough is not None:
            options["objective_target"] = problem.enough
    else:
        # The masters are small and already lean: presolve costs more than it saves.
        options["presolve"] = "off"
    return options
