"""What share of every piece can be cut, in parts of sticks, from so many sticks of each length.

A linear program over patterns: each is cut in parts, no length more often than there are sticks,
and of every piece at least the same share, the largest there is. Where it is less than one there is
no plan with these sticks. Its duals say what pieces are worth, all together one, and what a stick
of each length holds of that; one knapsack at such prices gives a condition that every plan keeps
(`longpoint.sticks.search.stick_numbers`), which these sticks break, or a bound on what a plan with
them may lose.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import (
    LinearColumn,
    LinearProblem,
    LinearRow,
    LinearSolver,
    LinearStatus,
)
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced
from longpoint.sticks.search.stick_numbers import Condition, Numbers

_ROUNDS: Final = 40
_CALM: Final = 0.5
_CALMER: Final = 0.1
_LEAST_CALM: Final = 0.2
_WORTHWHILE: Final = 1e-9
_CENTRAL_ROUNDS: Final = 8
_NEAR: Final = 0.05
_OFF: Final = 2e-6
"""The share is sure enough where what prices say of it is no further above, in parts of what it is
above one, and beside that."""


@dataclass(frozen=True, slots=True)
class Worth:
    """What pieces are worth, all together one, and what is held of it. All >= 0.

    Attributes:
        pieces: One per group.
        sticks: What a stick of each length holds.
    """

    pieces: tuple[float, ...]
    sticks: tuple[float, ...]

    def mixed(self, other: "Worth", share: float) -> "Worth":
        """Return worths with this share of the other's."""

        def mix(ours: Sequence[float], theirs: Sequence[float]) -> tuple[float, ...]:
            pairs = zip(ours, theirs, strict=True)
            return tuple(our + share * (their - our) for our, their in pairs)

        return Worth(mix(self.pieces, other.pieces), mix(self.sticks, other.sticks))

    def of(self, pattern: Pattern) -> float:
        """Return by how much a pattern holds more than its stick is said to."""
        held = sum(self.pieces[group] * count for group, count in pattern.counts)
        return held - self.sticks[pattern.bar]


@dataclass(frozen=True, slots=True)
class CutShare:
    """What is known of some numbers of sticks.

    Attributes:
        conditions: Conditions that every plan keeps, found on the way; the last one may be broken
            by these numbers: then there is no such plan.
        worth: The worth at which they spare least.
        is_short: Whether the last condition is broken.
    """

    conditions: tuple[Condition, ...]
    worth: Worth
    is_short: bool


class ShareProgram:
    """Patterns, and the linear program over them; sets that can't be cut may be among them.

    Args:
        master: The pieces, the lengths and what they cost.
        least: Needs that no pattern undercuts.
        solver: Solves it.
        grid: Step of the knapsack's lengths. [0.01 mm]
    """

    def __init__(self, master: Master, least: Needs, solver: LinearSolver, grid: int) -> None:
        self._master, self._least, self._solver, self._grid = master, least, solver, grid
        self._pieces = master.whole.pieces
        self._share = LinearColumn(
            cost=-1.0,
            rows=tuple((group, -float(count)) for group, count in enumerate(self._pieces)),
        )
        self._columns: dict[Pattern, LinearColumn] = {}

    def add(self, patterns: Iterable[Pattern]) -> int:
        """Add patterns; return how many are new."""
        before, groups = len(self._columns), len(self._pieces)
        for pattern in patterns:
            if pattern not in self._columns:
                counts = ((group, float(count)) for group, count in pattern.counts)
                rows = (*counts, (groups + pattern.bar, 1.0))
                self._columns[pattern] = LinearColumn(cost=0.0, rows=rows)
        return len(self._columns) - before

    def worth(self, prices: Sequence[float]) -> Worth:
        """Return what sticks hold at some prices of the pieces, one per group."""
        total = sum(price * count for price, count in zip(prices, self._pieces, strict=True))
        none = tuple(0.0 for _ in self._master.steps)
        return self._told(Worth(tuple(price / total for price in prices), none))[0]

    def priced(self, worth: Worth, numbers: Numbers | None = None) -> Priced:
        """Return the knapsack at a worth; of these numbers of sticks, or of all there are."""
        whole = self._master.whole
        if numbers is not None:
            whole = Remaining(whole.pieces, numbers)
        prices = Prices(worth.pieces, tuple(0.0 for _ in worth.sticks))
        return Priced(self._master, self._least, prices, whole, self._grid)

    def share(self, numbers: Numbers, near: Worth) -> CutShare:
        """Return whether so many sticks may hold all pieces, as far as parts of sticks tell.

        Args:
            numbers: How many sticks of each length.
            near: A worth near to which that of these numbers may be.
        """
        best, condition = self._told(near)
        conditions, calm = [condition], _CALM
        for _ in range(_ROUNDS):
            if self._master.stop() or not condition.keeps(numbers):
                break
            solved = self._solved(numbers)
            if solved is None:
                break
            share, ours = solved
            new = 0
            while True:
                mixed, condition, new = self._round(ours, best, calm)
                conditions.append(condition)
                if not condition.keeps(numbers):
                    return CutShare(tuple(conditions), mixed, is_short=True)
                if _spare(mixed, numbers) < _spare(best, numbers):
                    best = mixed
                if new or calm == 0.0:
                    break
                calm = calm / 2 if calm > _LEAST_CALM else 0.0
            if not new or _spare(best, numbers) <= (1.0 + _NEAR) * (share - 1.0) + _OFF:
                break
            calm = min(_CALM, calm + _CALMER)
        return CutShare(tuple(conditions), best, is_short=not condition.keeps(numbers))

    def from_the_middle(self, numbers: Numbers, near: Worth) -> Worth:
        """Return a worth from the middle of all that are best, at which fewer sets lose nothing.

        Args:
            numbers: How many sticks of each length; enough, as far as parts of sticks tell.
            near: The best worth known, given back where there is no better one.
        """
        for _ in range(_CENTRAL_ROUNDS):
            solved = self._solved(numbers, central=True)
            if solved is None or self._master.stop():
                break
            middle, _, new = self._round(solved[1], solved[1], 0.0)
            if not new:
                return middle
        return near

    def _solved(self, numbers: Numbers, *, central: bool = False) -> tuple[float, Worth] | None:
        """The share, and the worth that its duals give."""
        rows = [LinearRow(lower=0.0) for _ in self._pieces]
        rows += [LinearRow(upper=float(number)) for number in numbers]
        solution = self._solver.solve(
            LinearProblem(
                columns=(self._share, *self._columns.values()), rows=tuple(rows), central=central
            )
        )
        if solution.status is not LinearStatus.OPTIMAL or not solution.duals:
            return None
        groups = len(self._pieces)
        worth = Worth(
            tuple(max(0.0, dual) for dual in solution.duals[:groups]),
            tuple(max(0.0, -dual) for dual in solution.duals[groups:]),
        )
        return -solution.objective, worth

    def _round(self, ours: Worth, near: Worth, calm: float) -> tuple[Worth, Condition, int]:
        """A knapsack between two worths: what it tells, and how many patterns are new."""
        mixed = ours.mixed(near, calm)
        priced = self.priced(mixed)
        new = self.add(priced.gaining(mixed.sticks, ours.of, _WORTHWHILE))
        condition = priced.condition()
        return _with_sticks(mixed, condition), condition, new

    def _told(self, worth: Worth) -> tuple[Worth, Condition]:
        condition = self.priced(worth).condition()
        return _with_sticks(worth, condition), condition


def _with_sticks(worth: Worth, condition: Condition) -> Worth:
    pieces = max(1, condition.pieces)
    return Worth(worth.pieces, tuple(most / pieces for most in condition.sticks))


def _spare(worth: Worth, numbers: Numbers) -> float:
    """What so many sticks hold more than all pieces are worth, as a share of that."""
    held = sum(most * number for most, number in zip(worth.sticks, numbers, strict=True))
    return held - 1.0
