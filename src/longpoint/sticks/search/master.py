"""The linear master: how often each pattern is cut, and what pieces and sticks are worth."""

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolution,
    LinearSolver,
    LinearStatus,
)
from longpoint.sticks.effort import never
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.plan import StickSource
from longpoint.sticks.search.knapsack import TablesMaker, tables_maker
from longpoint.sticks.search.patterns import Counts, Layout, Pattern


@dataclass(frozen=True, slots=True, kw_only=True)
class Sharpness:
    """How exactly a master and its knapsacks are solved.

    Attributes:
        sticks_weigh: What all new sticks of a plan weigh beside their cost, in steps of cost, so
            that among plans of one cost the one with the fewest sticks is best.
        worthwhile: In steps of cost: patterns that gain no more are left out.
        tolerance: By how much the prices may be off, in steps of cost; None: as the solver likes.
        fine: Whether every digit of the prices counts in the knapsacks.
    """

    sticks_weigh: float
    worthwhile: float
    tolerance: float | None
    fine: bool


USUAL: Final = Sharpness(sticks_weigh=0.2, worthwhile=1e-6, tolerance=None, fine=False)
SHARP: Final = Sharpness(sticks_weigh=0.0, worthwhile=1e-11, tolerance=1e-10, fine=True)


@dataclass(frozen=True, slots=True)
class Prices:
    """What the linear master says things are worth, in steps of cost.

    Attributes:
        pieces: One per group, >= 0.
        sticks: One per length, <= 0; 0 for lengths without a count.
    """

    pieces: tuple[float, ...]
    sticks: tuple[float, ...]

    def worth(self, counts: Counts) -> float:
        """Return what the pieces of a pattern are worth."""
        return sum(self.pieces[group] * count for group, count in counts)

    def mixed(self, other: "Prices", share: float) -> "Prices":
        """Return prices with this share of the other's."""

        def mix(ours: Sequence[float], theirs: Sequence[float]) -> tuple[float, ...]:
            pairs = zip(ours, theirs, strict=True)
            return tuple(our + share * (their - our) for our, their in pairs)

        return Prices(mix(self.pieces, other.pieces), mix(self.sticks, other.sticks))


@dataclass(frozen=True, slots=True)
class Remaining:
    """What is still to be cut, and from what.

    Attributes:
        pieces: How many of each group.
        sticks: How many of each length; None: as many as needed.
    """

    pieces: tuple[int, ...]
    sticks: tuple[int | None, ...]

    def holds(self, pattern: Pattern) -> bool:
        """Tell whether a pattern can still be cut without a piece too many."""
        left = self.sticks[pattern.bar]
        return (left is None or left > 0) and all(
            count <= self.pieces[group] for group, count in pattern.counts
        )

    def less(self, pattern: Pattern) -> "Remaining":
        """Return what remains when a pattern is cut once more."""
        pieces, sticks = list(self.pieces), list(self.sticks)
        for group, count in pattern.counts:
            pieces[group] -= count
        left = sticks[pattern.bar]
        if left is not None:
            sticks[pattern.bar] = left - 1
        return Remaining(tuple(pieces), tuple(sticks))


class Master:
    """All patterns known so far, and the linear master over some of them.

    Args:
        layout: The pieces in their groups.
        bars: The lengths and their costs.
        solver: Solves the masters.
        seconds: Longest time of one call of the solver; None: no limit.
        sharpness: How exactly it is solved.
        stop: Tells between two steps of a search that it must end.

    Attributes:
        sharpness: As given.
        stop: As given.
        whole: All pieces and all sticks.
        steps: Cost of a stick of each length, in steps of cost.
        weights: The same, with a little more for every new stick opened.
        all_sticks_weigh: The most that all new sticks of a plan weigh beside their cost.
        patterns: The patterns known so far.
        solved_by: Name of the solver, once it was asked.
    """

    def __init__(
        self,
        layout: Layout,
        bars: Bars,
        solver: LinearSolver,
        seconds: float | None = None,
        sharpness: Sharpness = USUAL,
        stop: Callable[[], bool] = never,
    ) -> None:
        self.layout, self.bars, self.sharpness = layout, bars, sharpness
        self.stop = stop
        self._solver, self._seconds = solver, seconds
        self.tables: TablesMaker = tables_maker(solver, fine=sharpness.fine)
        self.whole = Remaining(
            tuple(len(group) for group in layout.groups), tuple(bar.count for bar in bars.bars)
        )
        self.steps = tuple(bar.cost // bars.step for bar in bars.bars)
        self.all_sticks_weigh = sharpness.sticks_weigh
        tick = sharpness.sticks_weigh / (1 + sum(self.whole.pieces))
        self.weights = tuple(
            step + (tick if bar.source is StickSource.STOCK else 0.0)
            for step, bar in zip(self.steps, bars.bars, strict=True)
        )
        self.patterns: list[Pattern] = []
        self.solved_by = ""
        self._known: dict[Pattern, int] = {}
        self._columns: list[LinearColumn] = []

    def most_weight(self, spend: int, pieces: int) -> float:
        """Return what new sticks weigh at most beside their cost, in steps.

        Args:
            spend: Most that they cost, in steps.
            pieces: How many pieces they hold, each one at least.
        """
        new = [
            (step, weight - step)
            for step, weight in zip(self.steps, self.weights, strict=True)
            if weight > step
        ]
        if not new:
            return 0.0
        cheapest = min(step for step, _ in new)
        return max(weight for _, weight in new) * min(pieces, spend // max(1, cheapest))

    def numbers_of(self, patterns: Iterable[Pattern]) -> list[int]:
        """Return the numbers of patterns; new ones are remembered."""
        numbers = []
        for pattern in patterns:
            if pattern not in self._known:
                self._known[pattern] = len(self.patterns)
                self.patterns.append(pattern)
            numbers.append(self._known[pattern])
        return numbers

    def sharper(self) -> "Master":
        """Return a master without patterns that is solved to the last digit."""
        return Master(self.layout, self.bars, self._solver, self._seconds, SHARP, self.stop)

    def solve(
        self, numbers: Sequence[int], remaining: Remaining, *, central: bool = False
    ) -> LinearSolution:
        """Solve the linear master over some patterns for what remains.

        Args:
            numbers: Numbers of the patterns.
            remaining: What is still to be cut.
            central: Whether prices are wanted from the middle of all that are best.
        """
        columns, rows = self._program(numbers, remaining)
        return self._solve(
            LinearProblem(
                columns=columns,
                rows=rows,
                tolerance=self.sharpness.tolerance,
                central=central,
                seconds=self._seconds,
            )
        )

    def solve_whole(
        self,
        numbers: Sequence[int],
        remaining: Remaining,
        enough: float,
        nodes: int,
        most: int | None = None,
    ) -> LinearSolution:
        """Solve the master in whole numbers over some patterns, for what remains.

        Args:
            numbers: Numbers of the patterns.
            remaining: What is still to be cut.
            enough: A cost at which to stop, in steps, with what sticks weigh.
            nodes: Most nodes of the search.
            most: Most that the plan may cost, in steps, without what sticks weigh; None: any.
        """
        columns, rows = self._program(numbers, remaining)
        if most is not None:
            costs = (float(self.steps[self.patterns[number].bar]) for number in numbers)
            columns = tuple(
                replace(column, rows=(*column.rows, (len(rows), cost)))
                for column, cost in zip(columns, costs, strict=True)
            )
            rows = (*rows, LinearRow(upper=float(most)))
        return self._solve(
            LinearProblem(
                columns=columns,
                rows=rows,
                integral=True,
                enough=enough,
                node_limit=nodes,
                seconds=self._seconds,
            )
        )

    def prices(self, solution: LinearSolution) -> Prices | None:
        """Return the prices of a linear solution; None where it has none."""
        if solution.status is not LinearStatus.OPTIMAL or not solution.duals:
            return None
        groups = len(self.whole.pieces)
        sticks = [0.0] * len(self.steps)
        for place, bar in enumerate(self._counted()):
            sticks[bar] = min(0.0, solution.duals[groups + place])
        return Prices(tuple(max(0.0, dual) for dual in solution.duals[:groups]), tuple(sticks))

    def gain(self, pattern: Pattern, prices: Prices) -> float:
        """Return by how much a pattern is worth more than its stick."""
        return prices.worth(pattern.counts) + prices.sticks[pattern.bar] - self.weights[pattern.bar]

    def pure_cost(self, numbers: Sequence[int], solution: LinearSolution) -> float:
        """Return the cost of a solution in steps, without what sticks weigh beside it."""
        if not solution.values:
            return math.inf
        return sum(
            value * self.steps[self.patterns[number].bar]
            for value, number in zip(solution.values, numbers, strict=True)
        )

    def _counted(self) -> list[int]:
        return [number for number, count in enumerate(self.whole.sticks) if count is not None]

    def _program(
        self, numbers: Sequence[int], remaining: Remaining
    ) -> tuple[tuple[LinearColumn, ...], tuple[LinearRow, ...]]:
        rows = [LinearRow(lower=float(count)) for count in remaining.pieces]
        counted = self._counted()
        rows += [LinearRow(upper=float(remaining.sticks[bar] or 0)) for bar in counted]
        row_of_bar = {bar: len(remaining.pieces) + place for place, bar in enumerate(counted)}
        for pattern in self.patterns[len(self._columns) :]:
            entries = [(group, float(count)) for group, count in pattern.counts]
            if pattern.bar in row_of_bar:
                entries.append((row_of_bar[pattern.bar], 1.0))
            self._columns.append(LinearColumn(cost=self.weights[pattern.bar], rows=tuple(entries)))
        return tuple(self._columns[number] for number in numbers), tuple(rows)

    def _solve(self, problem: LinearProblem) -> LinearSolution:
        solution = self._solver.solve(problem)
        self.solved_by = solution.solver
        return solution


def residual_numbers(master: Master, numbers: Sequence[int], remaining: Remaining) -> list[int]:
    """Return the patterns that can still be cut from what remains."""
    return [number for number in numbers if remaining.holds(master.patterns[number])]
