"""The knapsack's tables as arrays of numpy, behind the same port as those in whole numbers."""

from collections.abc import Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.sticks.knapsack import MOVES, Ending, Item, Lean, State, in_order_of_links

if TYPE_CHECKING:
    from numpy.typing import NDArray

MOST_VALUE: Final = (1 << 30) - 1
"""The values of all pieces together must not be more than this."""

_UNREACHED: Final = -(1 << 30) - 1
"""Stays below nought whatever is added to it."""

_Tables = list["NDArray[Any] | None"]


class NumpyKnapsack:
    """Tables over all lengths, and the sets behind their entries; answers as `Knapsack` does.

    Args:
        items: Pieces to choose from; every item once.
        longest: Longest length, in grid steps.
    """

    most_value: int = MOST_VALUE

    def __init__(self, items: Sequence[Item], longest: int) -> None:
        if sum(item.value for item in items) > MOST_VALUE:
            raise OverflowError("the values of all pieces together are too large for the tables")
        self._numpy: ModuleType = numpy_in_one_thread()
        self.items = in_order_of_links(items, longest)
        self._longest = longest
        plain = self._numpy.zeros(longest + 1, dtype=self._numpy.int32)
        tables: _Tables = [plain, None, None, None, None]
        self._history = [tables]
        for item in self.items:
            tables = self._with_item(tables, item)
            self._history.append(tables)

    def _with_item(self, tables: _Tables, item: Item) -> _Tables:
        numpy, need, value = self._numpy, item.need, item.value
        after = list(tables)
        for target, sources in MOVES[item.lean]:
            owned = False
            for source in sources:
                before = tables[source]
                if before is None:
                    continue
                taken = before[: self._longest + 1 - need] + value
                best = after[target]
                if best is None:
                    best = numpy.full(self._longest + 1, _UNREACHED, dtype=numpy.int32)
                elif not owned:
                    best = best.copy()
                numpy.maximum(best[need:], taken, out=best[need:])
                after[target], owned = best, True
        return after

    def value(self, state: State, length: int) -> int:
        """Return the largest value in a state within a length; -1 where there is no set."""
        return self._entry(len(self.items), state, length)

    def best_set(self, state: State, length: int) -> tuple[int, ...]:
        """Return the numbers of a most valuable set; it must exist."""
        return self._walk(len(self.items), state, length)

    def endings(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int]
    ) -> tuple[Ending, ...]:
        """Return for each item the set ending in it that gains most over its end's charge."""
        return tuple(
            found
            for index in range(len(self.items))
            if (found := self._ending(index, ends, charges)) is not None
        )

    def _ending(
        self, index: int, ends: Sequence[tuple[State, int]], charges: Sequence[int]
    ) -> Ending | None:
        item = self.items[index]
        best: Ending | None = None
        moves = dict(MOVES[item.lean])
        for end, (state, length) in enumerate(ends):
            for source in moves.get(state, ()):
                before = self._entry(index, source, length - item.need)
                gain = before + item.value - charges[end]
                if before >= 0 and (best is None or gain > best.gain):
                    best = Ending(gain, end, index, source, length - item.need)
        return best

    def ending_set(self, ending: Ending) -> tuple[int, ...]:
        """Return the numbers of the set behind an ending."""
        rest = self._walk(ending.index, ending.source, ending.rest)
        return (self.items[ending.index].number, *rest)

    def _walk(self, count: int, state: State, length: int) -> tuple[int, ...]:
        numbers = []
        value = self._entry(count, state, length)
        while (count := self._first_with(value, count, state, length)) > 0:
            item = self.items[count - 1]
            count, length, value = count - 1, length - item.need, value - item.value
            state = next(
                source
                for source in dict(MOVES[item.lean])[state]
                if self._entry(count, source, length) == value
            )
            numbers.append(item.number)
        return tuple(numbers)

    def _first_with(self, value: int, count: int, state: State, length: int) -> int:
        """Return after how many items this entry first had this value; it never falls."""
        least = 0
        while least < count:
            middle = (least + count) // 2
            if self._entry(middle, state, length) == value:
                count = middle
            else:
                least = middle + 1
        return count

    def _entry(self, count: int, state: State, length: int) -> int:
        table = self._history[count][state]
        if table is None or length < 0:
            return -1
        return max(table.item(length), -1)
