"""Sticks and offcuts among plans of one cost: a linear program in which the cost is a row.

Prices of a step of cost and of a new stick, each >= 0, give every length a *charge*: what its steps
and the stick itself come to. To plan at the least charge is a cut plan like any other, and what any
plan is charged at least, by the knapsack (`longpoint.sticks.search.pricing`), is true at any
prices:

    charge of a plan = price of a step x its cost + price of a stick x its new sticks >= bound.

Good prices are the duals of the linear program over patterns in which the cost is a row, and where
offcuts are asked for, the new sticks are another.
"""

from collections.abc import Iterable, Sequence
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
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.plan import StickSource
from longpoint.sticks.search.master import Master, Prices, Sharpness
from longpoint.sticks.search.patterns import Layout, Pattern

_CHARGES: Final = 100_000
"""Of the length that is charged most, in whole numbers; more where it costs many steps."""
_OF_A_STEP: Final = 8
"""A step of cost is charged about so much at least, else little would be left of it in rounding."""
_SHORT: Final = 20_000
_FINER: Final = 3
_FINEST: Final = 5
_BY_CHARGE: Final = Sharpness(sticks_weigh=0.0, worthwhile=1e-6, tolerance=None, fine=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """What the goals are asked of.

    Attributes:
        layout: The pieces in their groups.
        bars: The lengths.
        solver: Solves the programs.
        effort: Limits.
    """

    layout: Layout
    bars: Bars
    solver: LinearSolver
    effort: Effort

    @property
    def steps(self) -> tuple[int, ...]:
        """Cost of a stick of each length, in steps of cost."""
        return tuple(bar.cost // self.bars.step for bar in self.bars.bars)

    @property
    def new(self) -> tuple[int, ...]:
        """1 for each length that is new stock, 0 for offcuts."""
        return tuple(int(bar.source is StickSource.STOCK) for bar in self.bars.bars)

    @property
    def grid(self) -> int:
        """Step of the knapsack's lengths, fine enough for a bound. [0.01 mm]"""
        if self.bars.longest_room <= _SHORT:
            return 1
        return max(1, self.effort.grid // (_FINER if any(self.layout.work.can_turn) else _FINEST))

    def cost(self, patterns: Iterable[Pattern]) -> int:
        """Return the cost of patterns. [steps]"""
        return sum(self.steps[pattern.bar] for pattern in patterns)

    def sticks(self, patterns: Iterable[Pattern]) -> int:
        """Return how many of the patterns open a new stick."""
        return sum(self.new[pattern.bar] for pattern in patterns)


@dataclass(frozen=True, slots=True)
class Duals:
    """What things are worth, in the unit of the objective.

    Attributes:
        pieces: One per group, >= 0.
        lengths: One per length, <= 0; 0 for lengths without a count.
        step: Of a step of cost, >= 0.
        stick: Of a new stick, >= 0.
    """

    pieces: tuple[float, ...]
    lengths: tuple[float, ...]
    step: float
    stick: float

    def mixed(self, other: "Duals", share: float) -> "Duals":
        """Return duals with this share of the other's."""

        def mix(ours: Sequence[float], theirs: Sequence[float]) -> tuple[float, ...]:
            pairs = zip(ours, theirs, strict=True)
            return tuple(our + share * (their - our) for our, their in pairs)

        step, stick = mix((self.step, self.stick), (other.step, other.stick))
        return Duals(mix(self.pieces, other.pieces), mix(self.lengths, other.lengths), step, stick)


@dataclass(frozen=True, slots=True)
class Charges:
    """The lengths at what they are charged, as a master of a plan at the least charge.

    Attributes:
        master: The master; its steps of cost are charges.
        prices: What pieces and counted lengths are worth, in its steps.
        step: Charge of a step of cost; a whole number.
        stick: Charge of a new stick; a whole number.
        whole: Every length is charged a multiple of this.
        unit: What one of the program's objective is charged, in the master's steps.
    """

    master: Master
    prices: Prices
    step: int
    stick: int
    whole: int
    unit: float

    def most(self, cost: int, sticks: int) -> int:
        """Return the most that plans of this cost and so few new sticks are charged, in steps."""
        return (self.step * cost + self.stick * sticks) // self.whole


def charges(stock: Stock, duals: Duals) -> Charges | None:
    """Return the charges at some prices; None where every length is free."""
    most = max(
        duals.step * step + duals.stick * new
        for step, new in zip(stock.steps, stock.new, strict=True)
    )
    if most <= 0.0:
        return None
    scale = max(_CHARGES, _OF_A_STEP * max(stock.steps)) / most
    step, stick = round(duals.step * scale), round(duals.stick * scale)
    bars = replace(
        stock.bars,
        bars=tuple(
            replace(bar, cost=step * steps + stick * new)
            for bar, steps, new in zip(stock.bars.bars, stock.steps, stock.new, strict=True)
        ),
    )
    effort = stock.effort
    master = Master(stock.layout, bars, stock.solver, effort.seconds, _BY_CHARGE, effort.stop)
    unit = scale / bars.step
    prices = Prices(
        tuple(price * unit for price in duals.pieces),
        tuple(price * unit for price in duals.lengths),
    )
    return Charges(master, prices, step, stick, bars.step, unit)


class GoalProgram:
    """Patterns, and the linear program over them.

    Without `sticks` it asks for the fewest new sticks; with it, for the longest that one of the
    sticks leaves, where no more than so many are opened.

    Args:
        stock: What is asked.
        cost: Most that a plan may cost. [steps]
        sticks: Most new sticks; None: as few as can be is what is wanted.
    """

    def __init__(self, stock: Stock, cost: int, sticks: int | None = None) -> None:
        self._stock, self._sticks = stock, sticks
        self._groups = len(stock.layout.groups)
        counted = [n for n, bar in enumerate(stock.bars.bars) if bar.count is not None]
        self._row_of_bar = {bar: self._groups + n for n, bar in enumerate(counted)}
        self._cost_row = self._groups + len(counted)
        rows = [LinearRow(lower=float(len(group))) for group in stock.layout.groups]
        rows += [LinearRow(upper=float(stock.bars.bars[bar].count or 0)) for bar in counted]
        rows.append(LinearRow(upper=float(cost)))
        if sticks is not None:
            rows += [LinearRow(upper=float(sticks)), LinearRow(lower=1.0, upper=1.0)]
        self._rows = tuple(rows)
        self._steps, self._new = stock.steps, stock.new
        self._columns: dict[tuple[Pattern, int | None], LinearColumn] = {}

    @property
    def patterns(self) -> list[Pattern]:
        """The patterns, those whose offcut counts left out."""
        return [pattern for pattern, left in self._columns if left is None]

    def add(self, patterns: Iterable[Pattern], left: int | None = None) -> int:
        """Add patterns; return how many are new.

        Args:
            patterns: The patterns.
            left: What they leave, where it may be the offcut that counts; None elsewhere. [0.01 mm]
        """
        before = len(self._columns)
        for pattern in patterns:
            if (pattern, left) not in self._columns:
                self._columns[pattern, left] = self._column(pattern, left)
        return len(self._columns) - before

    def solve(self) -> LinearSolution:
        """Solve it."""
        return self._stock.solver.solve(
            LinearProblem(
                columns=tuple(self._columns.values()),
                rows=self._rows,
                seconds=self._stock.effort.seconds,
            )
        )

    def duals(self, solution: LinearSolution) -> Duals | None:
        """Return the duals of a solution; None where it has none."""
        if solution.status is not LinearStatus.OPTIMAL or not solution.duals:
            return None
        found, after = solution.duals, self._cost_row
        lengths = [0.0] * len(self._steps)
        for bar, row in self._row_of_bar.items():
            lengths[bar] = min(0.0, found[row])
        return Duals(
            tuple(max(0.0, dual) for dual in found[: self._groups]),
            tuple(lengths),
            max(0.0, -found[after]),
            1.0 if self._sticks is None else max(0.0, -found[after + 1]),
        )

    def _column(self, pattern: Pattern, left: int | None) -> LinearColumn:
        bar = pattern.bar
        entries = [(group, float(count)) for group, count in pattern.counts]
        if bar in self._row_of_bar:
            entries.append((self._row_of_bar[bar], 1.0))
        if self._steps[bar]:
            entries.append((self._cost_row, float(self._steps[bar])))
        if self._sticks is None:
            return LinearColumn(cost=float(self._new[bar]), rows=tuple(entries))
        if self._new[bar]:
            entries.append((self._cost_row + 1, 1.0))
        if left is None:
            return LinearColumn(cost=0.0, rows=tuple(entries))
        entries.append((self._cost_row + 2, 1.0))
        return LinearColumn(cost=-float(left), rows=tuple(entries))
