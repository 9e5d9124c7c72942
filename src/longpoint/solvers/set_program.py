"""The linear program over a long list of sets: HiGHS holds a few, arrays price the others."""

import importlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.sticks.search.sets_to_choose import SetChoice

if TYPE_CHECKING:
    from numpy.typing import NDArray

EXACT: Final = 1e-7
"""By how much a set may still lower the cost in what is called a best solution. [steps]"""
_FIRST: Final = 8
_AT_ONCE: Final = 200
_DEARER: Final = 16.0
_NEVER: Final = 1e9
_USED: Final = 1e-6
_OPTIONS: Final = (
    ("output_flag", False),
    ("threads", 1),
    ("random_seed", 0),
    # Shaking the costs a little when it starts takes longer here than it saves.
    ("dual_simplex_cost_perturbation_multiplier", 0.0),
)
_DUAL: Final = 1
_PRIMAL: Final = 4
"""HiGHS' numbers for its two ways: more sets leave a solution feasible, cuts don't."""


@dataclass(frozen=True, slots=True)
class Relaxed:
    """A best solution in parts of sticks.

    Attributes:
        cost: What it costs. [steps]
        reduced: By how much each set would make it dearer; sets that aren't allowed: very much.
        numbers: The sets used.
        values: How often.
    """

    cost: float
    reduced: "NDArray[Any]"
    numbers: "NDArray[Any]"
    values: "NDArray[Any]"


class SetProgram:
    """Each piece in exactly one set, or in parts of several that add up to one.

    Args:
        choice: The list and what is asked of it.
        kept: Which sets of the list may be used at all.

    Attributes:
        held: How many pieces of a group (row) a set (column) holds.
        bars: Number of the length of each set.
        pieces: How many pieces there are of each group.
        cuts: Groups whose sets are counted in halves, rounded up; see `set_cuts`.
        names: Numbers of the sets in the list that was given.
        work: Sets priced so far, counted as often as they were.
    """

    def __init__(self, choice: SetChoice, kept: "NDArray[Any]") -> None:
        self._numpy: ModuleType = numpy_in_one_thread()
        self._highspy: ModuleType = importlib.import_module("highspy")
        numpy = self._numpy
        groups = len(choice.pieces)
        sets = choice.patterns.sets
        self.names = numpy.nonzero(kept)[0]
        sizes = numpy.diff(numpy.array(sets.starts, dtype=numpy.int64))
        # What the sets hold, one piece after the other, to add up what they are worth.
        self._flat = numpy.array(sets.numbers, dtype=numpy.int64)[numpy.repeat(kept, sizes)]
        self._sizes = sizes[kept]
        self._starts = numpy.cumsum(self._sizes) - self._sizes
        self.held = numpy.zeros((groups, len(self.names)), dtype=numpy.uint8)
        columns = numpy.repeat(numpy.arange(len(self.names)), self._sizes)
        numpy.add.at(self.held, (self._flat, columns), 1)
        self.bars = numpy.array(choice.patterns.bars, dtype=numpy.int64)[kept]
        self._rows = groups + len(choice.costs) + 1
        self.pieces = numpy.array(choice.pieces, dtype=numpy.int64)
        self._costs = numpy.array(choice.costs, dtype=numpy.double)[self.bars]
        self.work = 0
        self.cuts: list[tuple[int, ...]] = []
        self._cut_parts = list[Any]()
        self._loaded = numpy.zeros(len(self.names), dtype=bool)
        self._numbers = numpy.zeros(0, dtype=numpy.int64)
        self._open = numpy.zeros(0, dtype=bool)
        self._taken: Mapping[int, int] = {}
        self._begin(choice)

    def solve(
        self,
        allowed: "NDArray[Any]",
        lows: Sequence[int],
        highs: Sequence[float],
        most: float,
        taken: Mapping[int, int],
    ) -> Relaxed | None:
        """Return a best solution, or None where there is none that costs no more than `most`.

        Args:
            allowed: Which sets may be used.
            lows: Least number of sticks of each length, and of all lengths together.
            highs: Most of them.
            most: The most that it may cost. [steps]
            taken: Sets that are used at least so often; each was in a solution before.
        """
        numpy, highs_, groups = self._numpy, self._highs, len(self.pieces)
        for place, (low, high) in enumerate(zip(lows, highs, strict=True)):
            highs_.changeRowBounds(groups + place, float(low), float(high))
        self._allow(allowed)
        self._take(taken)
        highs_.setOptionValue("simplex_strategy", _DUAL)
        while True:
            highs_.run()
            if highs_.getModelStatus() != self._highspy.HighsModelStatus.kOptimal:
                return None
            solution = highs_.getSolution()
            reduced = self._reduced(numpy.array(solution.row_dual))
            reduced[~allowed] = _NEVER
            gaining = numpy.nonzero((reduced < -EXACT) & ~self._loaded)[0]
            if len(gaining):
                order = numpy.argsort(reduced[gaining], kind="stable")
                self._load(gaining[order[:_AT_ONCE]])
                highs_.setOptionValue("simplex_strategy", _PRIMAL)
                continue
            values = numpy.array(solution.col_value)
            cost = float(highs_.getInfo().objective_function_value)
            if cost > most:
                return None
            if not (values[: self._rows] > _USED).any():
                break
            self._miss_for(_DEARER * self._dear)
        values = values[self._rows :]
        used = values > _USED
        return Relaxed(cost, reduced, self._numbers[used], values[used])

    def _miss_for(self, dear: float) -> None:
        """Say what it costs where something is missing: so dear that nothing is in vain."""
        self._dear = dear
        places = self._numpy.arange(self._rows, dtype=self._numpy.int32)
        costs = self._numpy.full(len(places), dear)
        self._highs.changeColsCost(len(places), places, costs)

    def add_cuts(self, cuts: Sequence[tuple[int, ...]]) -> None:
        """Ask that the sets which hold pieces of these groups are enough, counted in whole sets."""
        numpy = self._numpy
        for cut in cuts:
            parts = (self.held[list(cut)].sum(axis=0, dtype=numpy.uint8) + 1) // 2
            least = -(-int(self.pieces[list(cut)].sum()) // 2)
            here = parts[self._numbers].astype(numpy.double)
            places = numpy.nonzero(here)[0]
            columns = (places + self._rows).astype(numpy.int32)
            # What stands for a missing piece helps as much as any piece.
            columns = numpy.concatenate([numpy.array(cut, dtype=numpy.int32), columns])
            here = numpy.concatenate([numpy.ones(len(cut)), here[places]])
            self._highs.addRow(float(least), self._highspy.kHighsInf, len(columns), columns, here)
            self.cuts.append(cut)
            self._cut_parts.append(parts)

    def keep(self, kept: "NDArray[Any]") -> None:
        """Forget all sets but these; those left have new numbers, in the same order."""
        numpy = self._numpy
        self._take({})
        gone = numpy.nonzero(~kept[self._numbers])[0]
        if len(gone):
            self._highs.deleteCols(len(gone), (gone + self._rows).astype(numpy.int32))
        stays = kept[self._numbers]
        self._numbers = (numpy.cumsum(kept) - 1)[self._numbers[stays]]
        self._open = self._open[stays]
        self._flat = self._flat[numpy.repeat(kept, self._sizes)]
        self._sizes = self._sizes[kept]
        self._starts = numpy.cumsum(self._sizes) - self._sizes
        self.held, self.bars, self._costs = self.held[:, kept], self.bars[kept], self._costs[kept]
        self._cut_parts = [parts[kept] for parts in self._cut_parts]
        self._loaded, self.names = self._loaded[kept], self.names[kept]

    def _begin(self, choice: SetChoice) -> None:
        numpy, infinity = self._numpy, self._highspy.kHighsInf
        self._highs = self._highspy.highs._Highs()
        for option, value in _OPTIONS:
            self._highs.setOptionValue(option, value)
        none = (0, numpy.zeros(0, dtype=numpy.int32), numpy.zeros(0))
        for count in choice.pieces:
            self._highs.addRow(float(count), float(count), *none)
        for _ in range(len(choice.costs) + 1):
            self._highs.addRow(0.0, infinity, *none)
        # One unknown for each row stands for what is missing, so that there is always a solution.
        self._dear = 4.0 * max(choice.costs) + 1.0
        places = numpy.arange(self._rows, dtype=numpy.int32)
        self._highs.addCols(
            self._rows,
            numpy.full(self._rows, self._dear),
            numpy.zeros(self._rows),
            numpy.full(self._rows, infinity),
            self._rows,
            places,
            places,
            numpy.ones(self._rows),
        )
        worth = numpy.add.reduceat(numpy.array(choice.prices)[self._flat], self._starts)
        order = numpy.argsort(self._costs - worth, kind="stable")
        self._load(order[: _FIRST * len(choice.pieces)])

    def _reduced(self, duals: "NDArray[Any]") -> "NDArray[Any]":
        numpy, groups = self._numpy, len(self.pieces)
        self.work += len(self.bars)
        worth = numpy.add.reduceat(duals[:groups][self._flat], self._starts)
        reduced: NDArray[Any] = self._costs - worth
        after = len(duals) - len(self._cut_parts)
        sticks = duals[groups : after - 1] + duals[after - 1]
        reduced -= sticks[self.bars]
        for dual, parts in zip(duals[after:], self._cut_parts, strict=True):
            if dual:
                reduced -= dual * parts
        return reduced

    def _load(self, numbers: "NDArray[Any]") -> None:
        """Give HiGHS some sets."""
        numpy, groups, rows = self._numpy, len(self.pieces), self._rows
        parts = numpy.zeros((len(numbers), rows + len(self.cuts)))
        parts[:, :groups] = self.held[:, numbers].T
        parts[numpy.arange(len(numbers)), groups + self.bars[numbers]] = 1.0
        parts[:, rows - 1] = 1.0
        for place, whole in enumerate(self._cut_parts):
            parts[:, rows + place] = whole[numbers]
        sets, entries = numpy.nonzero(parts)
        starts = numpy.searchsorted(sets, numpy.arange(len(numbers)))
        self._highs.addCols(
            len(numbers),
            self._costs[numbers],
            numpy.zeros(len(numbers)),
            numpy.full(len(numbers), self._highspy.kHighsInf),
            len(sets),
            starts.astype(numpy.int32),
            entries.astype(numpy.int32),
            parts[sets, entries],
        )
        self._loaded[numbers] = True
        self._numbers = numpy.concatenate([self._numbers, numbers])
        self._open = numpy.concatenate([self._open, numpy.ones(len(numbers), dtype=bool)])

    def _allow(self, allowed: "NDArray[Any]") -> None:
        """Bar the sets that HiGHS has and that aren't allowed, and let in those that are again."""
        numpy = self._numpy
        wanted = allowed[self._numbers]
        changed = numpy.nonzero(wanted != self._open)[0]
        if len(changed):
            uppers = numpy.where(wanted[changed], self._highspy.kHighsInf, 0.0)
            self._highs.changeColsBounds(
                len(changed),
                (changed + self._rows).astype(numpy.int32),
                numpy.zeros(len(changed)),
                uppers,
            )
            self._open = wanted

    def _take(self, taken: Mapping[int, int]) -> None:
        """Have some sets used at least so often, and those of the time before no longer."""
        for number in sorted({*self._taken, *taken}):
            place = int(self._numpy.nonzero(self._numbers == number)[0][0])
            upper = self._highspy.kHighsInf if self._open[place] else 0.0
            low = float(taken.get(number, 0))
            self._highs.changeColBounds(place + self._rows, low, upper)
        self._taken = taken
