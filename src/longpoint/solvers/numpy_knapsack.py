"""The knapsack's tables as arrays of numpy, behind the same port as those in whole numbers."""

import weakref
from array import array
from collections.abc import Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, ClassVar, Final, NamedTuple

from longpoint.solvers.kept_memory import give_back, kept_rows
from longpoint.solvers.numpy_endings import best_endings
from longpoint.solvers.numpy_ways import count_ways
from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.speech.said import say
from longpoint.sticks.lay.lean_states import MOVES, State
from longpoint.sticks.search.knapsack import MOST_FINE_VALUE
from longpoint.sticks.search.table_sets import (
    Ending,
    Item,
    Lengths,
    ListedSets,
    TableSets,
    Ways,
    copy_of_next,
    first_copy,
    in_order_of_links,
    listed_sets,
)

if TYPE_CHECKING:
    from numpy.typing import NDArray

MOST_VALUE: Final = (1 << 30) - 1
"""The values of all pieces together must not be more than this."""

_Tables = list["NDArray[Any] | None"]


class _Rows(NamedTuple):
    """Sets in the making, one in each place of the arrays.

    Attributes:
        ends: Number of the end they are for.
        states: Lean state that the items still to come must give.
        lengths: Length left to those.
        charges: What those must be worth.
        taken: Whether the item before was taken.
        links: What was taken last, as a place among the links; -1: nothing.
    """

    ends: "NDArray[Any]"
    states: "NDArray[Any]"
    lengths: "NDArray[Any]"
    charges: "NDArray[Any]"
    taken: "NDArray[Any]"
    links: "NDArray[Any]"

    def only(self, which: "NDArray[Any]") -> "_Rows":
        """Return some of them."""
        return _Rows(*(array[which] for array in self))

    def changed(self, **arrays: "NDArray[Any]") -> "_Rows":
        """Return them with other arrays."""
        return self._replace(**arrays)


class NumpyKnapsack(TableSets):
    """Tables over all lengths, and the sets behind their entries; answers as `Knapsack` does.

    Args:
        items: Pieces to choose from; every item once.
        longest: Longest length, in grid steps.
    """

    _number: ClassVar[str] = "int32"
    _most_value: ClassVar[int] = MOST_VALUE

    def __init__(self, items: Sequence[Item], longest: int) -> None:
        if sum(item.value for item in items) > self._most_value:
            raise OverflowError(
                say("the values of all pieces together are too large for the tables")
            )
        self._numpy: ModuleType = numpy_in_one_thread()
        self.items = in_order_of_links(items, longest)
        self._longest = longest
        shape = (_rows_of(self.items), longest + 1)
        block, table = kept_rows(self._numpy, shape, self._number)
        weakref.finalize(self, give_back, block)
        self._free = iter(table)
        self._taken = self._numpy.empty(longest + 1, dtype=self._number)
        plain = next(self._free)
        plain[:] = 0
        tables: _Tables = [plain, None, None, None, None]
        self._history = [tables]
        for item in self.items:
            tables = self._with_item(tables, item)
            self._history.append(tables)

    def _with_item(self, tables: _Tables, item: Item) -> _Tables:
        numpy, need, value = self._numpy, item.need, item.value
        room = self._longest + 1 - need
        after = list(tables)
        for target, sources in MOVES[item.lean]:
            befores = [before for source in sources if (before := tables[source]) is not None]
            if not befores:
                continue
            longer, best = next(self._free), tables[target]
            behind = longer[need:]
            numpy.add(befores[0][:room], value, out=behind)
            for before in befores[1:]:
                taken = numpy.add(before[:room], value, out=self._taken[:room])
                numpy.maximum(behind, taken, out=behind)
            if best is None:
                # Stays below nought whatever is added to it.
                longer[:need] = -self._most_value - 2
            else:
                longer[:need] = best[:need]
                numpy.maximum(behind, best[need:], out=behind)
            after[target] = longer
        return after

    def endings(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int]
    ) -> tuple[Ending, ...]:
        """Return for each item the set ending in it that gains most; see the port."""
        return best_endings(self.items, self._history, ends, charges)

    def sets_worth(
        self,
        ends: Sequence[tuple[State, int]],
        charges: Sequence[int],
        most: int,
        lengths: Lengths | None = None,
    ) -> ListedSets | None:
        """Return every set worth at least its end's charge; see the port."""
        numpy, count = self._numpy, len(self.items)
        able = [
            end
            for end, (state, length) in enumerate(ends)
            if self._entry(count, state, length) >= max(0, charges[end])
        ]
        if not able:
            return listed_sets(())
        rows = _Rows(
            numpy.array(able, dtype=numpy.int64),
            numpy.array([int(ends[end][0]) for end in able], dtype=numpy.int64),
            numpy.array([ends[end][1] for end in able], dtype=numpy.int64),
            numpy.array([charges[end] for end in able], dtype=numpy.int64),
            numpy.zeros(len(able), dtype=bool),
            numpy.full(len(able), -1, dtype=numpy.int64),
        )
        links = _Links()
        for index in range(count - 1, -1, -1):
            rows = self._with_and_without(index, rows, links)
            if len(rows.ends) > most:
                return None
        return links.listed(rows.ends, rows.links, lengths)

    def ways(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int], most: int
    ) -> Ways | None:
        """Return in how many sets worth at least their end's charge each number stands at most.

        None where more than `most` steps would have to be looked at.
        """
        return count_ways(self.items, self._reaches, ends, charges, most)

    def _with_and_without(self, index: int, rows: _Rows, links: "_Links") -> _Rows:
        """Go on from sets chosen among the items behind this one: without it, and with it."""
        numpy, item = self._numpy, self.items[index]
        parts = []
        only_after_next = copy_of_next(self.items, index)
        before = first_copy(self.items, index)
        moves = dict(MOVES[item.lean])
        for state in State:
            here = rows.only(rows.states == state)
            if not len(here.ends):
                continue
            without = here.only(self._reaches(before, state, here.lengths, here.charges))
            parts.append(without.changed(taken=numpy.zeros(len(without.ends), dtype=bool)))
            eager = here.only(here.taken) if only_after_next else here
            lengths, charges = eager.lengths - item.need, eager.charges - item.value
            for source in moves.get(state, ()):
                reaches = self._reaches(index, source, lengths, charges)
                taken = eager.only(reaches)
                parts.append(
                    taken.changed(
                        states=numpy.full(len(taken.ends), int(source), dtype=numpy.int64),
                        lengths=lengths[reaches],
                        charges=charges[reaches],
                        taken=numpy.ones(len(taken.ends), dtype=bool),
                        links=links.added(taken.links, item.number),
                    )
                )
        return _Rows(*(numpy.concatenate(arrays) for arrays in zip(*parts, strict=True)))

    def _reaches(
        self, count: int, state: State, lengths: "NDArray[Any]", charges: "NDArray[Any]"
    ) -> "NDArray[Any]":
        numpy, table = self._numpy, self._history[count][state]
        if table is None:
            none: NDArray[Any] = numpy.zeros(len(lengths), dtype=bool)
            return none
        enough = table[numpy.maximum(lengths, 0)] >= numpy.maximum(charges, 0)
        reached: NDArray[Any] = (lengths >= 0) & enough
        return reached

    def _entry(self, count: int, state: State, length: int) -> int:
        table = self._history[count][state]
        if table is None or length < 0:
            return -1
        return max(int(table.item(length)), -1)


def _rows_of(items: Sequence[Item]) -> int:
    """How many tables there are in all: one for each state that an item changes."""
    rows, reached = 1, {State.PLAIN}
    for item in items:
        changed = {t for t, sources in MOVES[item.lean] if not reached.isdisjoint(sources)}
        rows += len(changed)
        reached |= changed
    return rows


class _Links:
    """What was taken by the sets in the making, each link with the one before it."""

    def __init__(self) -> None:
        self._numpy: ModuleType = numpy_in_one_thread()
        self._before: list[NDArray[Any]] = []
        self._numbers: list[int] = []
        self._many = 0

    def added(self, before: "NDArray[Any]", number: int) -> "NDArray[Any]":
        """Return new links, one after each of these, by which the same number was taken."""
        numpy, first = self._numpy, self._many
        self._before.append(before)
        self._numbers.append(number)
        self._many += len(before)
        new: NDArray[Any] = numpy.arange(first, self._many, dtype=numpy.int64)
        return new

    def listed(
        self, ends: "NDArray[Any]", last: "NDArray[Any]", lengths: Lengths | None
    ) -> ListedSets:
        """Return the sets behind the last links, in order, less those that are too long."""
        numpy = self._numpy
        sizes = [len(before) for before in self._before]
        before = numpy.concatenate([*self._before, numpy.full(1, -1)])
        numbers = numpy.append(numpy.repeat(numpy.array(self._numbers, dtype=int), sizes), -1)
        columns = list[Any]()
        # The link of nothing is the last one of the arrays.
        while (last >= 0).any():
            columns.append(numbers[last])
            last = before[last]
        none = numpy.iinfo(numpy.int64).max
        table = numpy.stack(columns or [numpy.full(len(ends), -1)])
        table = numpy.sort(numpy.where(table < 0, none, table), axis=0)
        taken = table < none
        kept = taken[0]
        if lengths is not None:
            needs = numpy.append(numpy.array(lengths.needs, dtype=numpy.int64), 0)
            rooms = numpy.array(lengths.rooms, dtype=numpy.int64)
            needed = needs[numpy.where(taken, table, len(needs) - 1)].sum(axis=0)
            kept = kept & (needed <= rooms[ends])
        # A set that is the beginning of another one comes before it.
        order = numpy.lexsort((*numpy.where(taken, table, -1)[::-1], ends))
        order = order[kept[order]]
        table, taken = table[:, order].T, taken[:, order].T
        starts = numpy.concatenate([numpy.zeros(1, dtype=numpy.int64), taken.sum(axis=1).cumsum()])
        parts = (ends[order], starts, table[taken])
        return ListedSets(*(array("q", part.astype(numpy.int64).tobytes()) for part in parts))


class FineNumpyKnapsack(NumpyKnapsack):
    """The same with twice the digits and twice the memory."""

    _number: ClassVar[str] = "int64"
    _most_value: ClassVar[int] = MOST_FINE_VALUE
