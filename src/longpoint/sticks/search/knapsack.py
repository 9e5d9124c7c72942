"""The most valuable set of pieces for every length of stick at once.

A table holds, for every length in whole grid steps, the largest value of a set of pieces that
needs no more. All its entries sit side by side in one whole number, 24 bits each, so that one
addition, shift or comparison of Python works on a whole table: ten to twenty times faster than a
loop, and it runs wherever Python does.
"""

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Final

from longpoint.speech.said import say
from longpoint.sticks.lay.lean_states import MOVES, State
from longpoint.sticks.search.counted_ways import count_ways
from longpoint.sticks.search.table_sets import (
    Item,
    Lengths,
    ListedSets,
    Tables,
    TableSets,
    Ways,
    copy_of_next,
    first_copy,
    in_order_of_links,
    listed_sets,
)

MOST_VALUE: Final = (1 << 22) - 1
"""The values of all pieces together must not be more than this."""
MOST_FINE_VALUE: Final = (1 << 53) - 1
"""The same for fine tables: as fine as the prices are themselves."""


class Knapsack(TableSets):
    """Tables over all lengths, and the sets behind their entries.

    Args:
        items: Pieces to choose from; every item once.
        longest: Longest length, in grid steps.
    """

    _most_value: ClassVar[int] = MOST_VALUE

    def __init__(self, items: Sequence[Item], longest: int) -> None:
        if sum(item.value for item in items) > self._most_value:
            raise OverflowError(
                say("the values of all pieces together are too large for the tables")
            )
        self._longest = longest
        self.items = in_order_of_links(items, longest)
        # Added to the value of every set that can be had; without it a value means nothing.
        self._reached = self._most_value + 1
        self._guard_bit = self._reached.bit_length()
        self._bits = bits = self._guard_bit + 1
        ones = ((1 << (bits * (longest + 1))) - 1) // ((1 << bits) - 1)
        tables: list[int | None] = [self._reached * ones, None, None, None, None]
        self._history = [tuple(tables)]
        for item in self.items:
            tables = self._with_item(tables, item, ones)
            self._history.append(tuple(tables))

    def _with_item(self, tables: Sequence[int | None], item: Item, ones: int) -> list[int | None]:
        guards = ones << self._guard_bit
        # The longest length has the lowest place, so that a piece's own length is shifted away
        # below; above, where the piece can't be had, zeros come in: unreached.
        shift = self._bits * item.need
        worth = item.value * ones >> shift
        after = list(tables)
        for target, sources in MOVES[item.lean]:
            best = tables[target]
            for source in sources:
                table = tables[source]
                if table is not None:
                    taken = (table >> shift) + worth
                    best = taken if best is None else self._larger(best, taken, guards)
            after[target] = best
        return after

    def sets_worth(
        self,
        ends: Sequence[tuple[State, int]],
        charges: Sequence[int],
        most: int,
        lengths: Lengths | None = None,
    ) -> ListedSets | None:
        """Return every set worth at least its end's charge; see the port."""
        found: list[tuple[int, tuple[int, ...]]] = []
        for end, (state, length) in enumerate(ends):
            for numbers in self._listed(state, length, charges[end]):
                found.append((end, numbers))
                if len(found) > most:
                    return None
        return listed_sets(
            (end, numbers)
            for end, numbers in sorted(found)
            if numbers
            and (lengths is None or sum(lengths.needs[n] for n in numbers) <= lengths.rooms[end])
        )

    def _listed(self, state: State, length: int, charge: int) -> Iterator[tuple[int, ...]]:
        items = self.items
        if self._entry(len(items), state, length) < max(0, charge):
            return
        stack: list[tuple[int, State, int, int, bool, tuple[int, ...]]]
        stack = [(len(items), state, length, charge, False, ())]
        while stack:
            count, state, length, charge, taken, numbers = stack.pop()
            if count == 0:
                yield tuple(sorted(numbers))
                continue
            item = items[count - 1]
            before = first_copy(items, count - 1)
            if self._entry(before, state, length) >= max(0, charge):
                stack.append((count - 1, state, length, charge, False, numbers))
            if not taken and copy_of_next(items, count - 1):
                continue
            rest, left = length - item.need, charge - item.value
            for source in dict(MOVES[item.lean]).get(state, ()):
                if self._entry(count - 1, source, rest) >= max(0, left):
                    more = (*numbers, item.number)
                    stack.append((count - 1, source, rest, left, True, more))

    def ways(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int], most: int
    ) -> Ways | None:
        """Return in how many sets worth at least their end's charge each number stands at most.

        None where more than `most` steps would have to be looked at.
        """
        return count_ways(self.items, self._entry, ends, charges, most)

    def _entry(self, count: int, state: State, length: int) -> int:
        if length < 0:
            return -1
        table = self._history[count][state]
        if table is None:
            return -1
        entry = table >> (self._bits * (self._longest - length)) & ((1 << self._bits) - 1)
        return max(entry - self._reached, -1)

    def _larger(self, one: int, other: int, guards: int) -> int:
        """Entry by entry the larger of two tables, whose top bits are all free."""
        above = (one | guards) - other
        higher = above & guards
        return other + (above & (higher - (higher >> self._guard_bit)))


class FineKnapsack(Knapsack):
    """The same with more digits: slower by as much."""

    _most_value: ClassVar[int] = MOST_FINE_VALUE


@dataclass(frozen=True, slots=True)
class TablesMaker:
    """Who makes the tables.

    Attributes:
        make: Makes them from the items and the longest length, in grid steps.
        most_value: The values of all pieces together must not be more than this.
    """

    make: Callable[[Sequence[Item], int], Tables]
    most_value: int


PLAIN_TABLES: Final = TablesMaker(Knapsack, MOST_VALUE)
FINE_TABLES: Final = TablesMaker(FineKnapsack, MOST_FINE_VALUE)


def tables_maker(solver: object, *, fine: bool = False) -> TablesMaker:
    """Return the maker that a solver brings along, else that in whole numbers.

    Args:
        solver: May have makers as `tables` and `fine_tables`.
        fine: Whether every digit of the prices counts.
    """
    maker: TablesMaker
    if fine:
        maker = getattr(solver, "fine_tables", FINE_TABLES)
    else:
        maker = getattr(solver, "tables", PLAIN_TABLES)
    return maker


def whole_values(
    values: Sequence[float], copies: Sequence[int], most: int = MOST_VALUE
) -> tuple[tuple[int, ...], int | Fraction]:
    """Return values as whole numbers that fit the tables, rounded down, and their scale.

    A scale below 1, for many sticks or prices that are dear in their smallest coin, makes bounds
    less sharp, never wrong.
    """
    total = math.fsum(
        value * copy for value, copy in zip(values, copies, strict=True) if value > 0.0
    )
    half = most // 2
    scale: int | Fraction = 1
    if total > half:
        scale = Fraction(1, math.ceil(total / half))
    elif total > 0.0:
        scale = int(half / total)
    return tuple(max(0, math.floor(value * scale)) for value in values), scale


def state_lengths(rooms: Sequence[int], costs: Sequence[int]) -> Iterator[tuple[int, State, int]]:
    """Yield (room's number, state, length left to the pieces) for every state that has room."""
    for number, room in enumerate(rooms):
        for state in State:
            if room >= costs[state]:
                yield number, state, room - costs[state]
