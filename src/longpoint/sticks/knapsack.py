"""The most valuable set of pieces for every length of stick at once.

A table holds, for every length in whole grid steps, the largest value of a set of pieces that
needs no more. All its entries sit side by side in one whole number, 32 bits each, so that one
addition, shift or comparison of Python works on a whole table: ten to twenty times faster than a
loop, and it runs wherever Python does.

Besides its length a set has a *lean state*, where pieces may be turned. Let the leans of all ends
be parted by one gap on the + side and one on the - side of square. Laid on a stick, a set makes a
walk over the leans that starts and ends at square: pieces take it from one of their ends to the
other, joints from the right end of one to the left end of the next, and a joint pays for the way
it goes. Every gap is crossed an even number of times in all, so where the pieces cross it an odd
number of times, a joint crosses it too. And a set of leaning pieces none of which ends at square
must be left and reached from square by joints. So the tables are

    PLAIN   both gaps crossed an even number of times: costs nothing
    LOOSE   the same, pieces lean, but none has one end at square: twice the smaller gap
    BOTH    both crossed an odd number of times: both gaps
    PLUS    only the + gap odd: that gap; MINUS likewise

with pieces in the order: those that don't link square with a lean first, then those that do.
"""

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import IntEnum, StrEnum
from itertools import pairwise
from typing import Final, NamedTuple, Protocol

_FIELD_BITS: Final = 24
_FIELD: Final = (1 << _FIELD_BITS) - 1
_GUARD_BIT: Final = 23
REACHED: Final = 1 << 22
"""Added to the value of every set that can be had; without it a value means nothing."""
MOST_VALUE: Final = REACHED - 1
"""The values of all pieces together must not be more than this."""


class Lean(StrEnum):
    """How a piece changes the lean state of its set."""

    SQUARE = "square"
    """Both ends within the gaps."""
    SAME = "same"
    """Both ends beyond one gap."""
    ACROSS = "across"
    """One end beyond each gap."""
    PLUS = "plus"
    """One end within, one beyond the + gap."""
    MINUS = "minus"
    """One end within, one beyond the - gap."""


class State(IntEnum):
    """The tables, by number."""

    PLAIN = 0
    LOOSE = 1
    BOTH = 2
    PLUS = 3
    MINUS = 4


MOVES: Final[dict[Lean, tuple[tuple[State, tuple[State, ...]], ...]]] = {
    Lean.SQUARE: (
        (State.PLAIN, (State.PLAIN,)),
        (State.LOOSE, (State.LOOSE,)),
        (State.BOTH, (State.BOTH,)),
    ),
    Lean.SAME: ((State.LOOSE, (State.PLAIN, State.LOOSE)), (State.BOTH, (State.BOTH,))),
    Lean.ACROSS: ((State.BOTH, (State.PLAIN, State.LOOSE)), (State.LOOSE, (State.BOTH,))),
    Lean.PLUS: (
        (State.PLAIN, (State.PLUS,)),
        (State.PLUS, (State.PLAIN, State.LOOSE)),
        (State.MINUS, (State.BOTH,)),
        (State.BOTH, (State.MINUS,)),
    ),
    Lean.MINUS: (
        (State.PLAIN, (State.MINUS,)),
        (State.MINUS, (State.PLAIN, State.LOOSE)),
        (State.PLUS, (State.BOTH,)),
        (State.BOTH, (State.PLUS,)),
    ),
}
_LINKS: Final = (Lean.PLUS, Lean.MINUS)


def state_of(leans: Iterable[Lean]) -> State:
    """Return the lean state of a set of pieces."""
    plus = minus = linked = leaning = False
    for lean in leans:
        plus ^= lean in (Lean.PLUS, Lean.ACROSS)
        minus ^= lean in (Lean.MINUS, Lean.ACROSS)
        linked |= lean in _LINKS
        leaning |= lean is not Lean.SQUARE
    if plus and minus:
        return State.BOTH
    if plus or minus:
        return State.PLUS if plus else State.MINUS
    return State.LOOSE if leaning and not linked else State.PLAIN


@dataclass(frozen=True, slots=True)
class Gaps:
    """The gaps among the leans of all ends. [0.01 mm]

    Attributes:
        plus: (from, to) of the gap on the + side, or None.
        minus: (from, to) of the gap on the - side, sizes taken as positive, or None.
    """

    plus: tuple[int, int] | None
    minus: tuple[int, int] | None

    def lean(self, one: int, other: int) -> Lean:
        """Return how a piece with these two leans changes the state of its set."""
        sides = {self.side(one), self.side(other)}
        if sides == {0}:
            return Lean.SQUARE
        if sides == {-1, 1}:
            return Lean.ACROSS
        if 0 not in sides:
            return Lean.SAME
        return Lean.PLUS if 1 in sides else Lean.MINUS

    def cost(self, state: State) -> int:
        """Return what joints cost at least in this state. [0.01 mm]"""
        plus = self.plus[1] - self.plus[0] if self.plus else 0
        minus = self.minus[1] - self.minus[0] if self.minus else 0
        match state:
            case State.PLAIN:
                return 0
            case State.LOOSE:
                return 2 * min(one for one in (plus, minus) if one) if plus or minus else 0
            case State.BOTH:
                return plus + minus
            case State.PLUS:
                return plus
            case State.MINUS:
                return minus

    def side(self, lean: int) -> int:
        """Return on which side of the gaps a lean lies: -1, 0 within them, 1."""
        if self.plus and lean >= self.plus[1]:
            return 1
        return -1 if self.minus and -lean >= self.minus[1] else 0


def gaps_of(leans: Sequence[int]) -> Gaps:
    """Return the gap on either side of square that costs most if it is crossed once too often."""
    return Gaps(_gap([lean for lean in leans if lean > 0]), _gap([-x for x in leans if x < 0]))


def _gap(sizes: Sequence[int]) -> tuple[int, int] | None:
    ordered = sorted({0, *sizes})
    if len(ordered) == 1:
        return None
    return max(
        pairwise(ordered),
        key=lambda gap: (gap[1] - gap[0]) * sum(size >= gap[1] for size in sizes),
    )


@dataclass(frozen=True, slots=True)
class Item:
    """One piece to choose.

    Attributes:
        number: The caller's number for it; the same one may come several times.
        need: Length it needs, in grid steps. > 0.
        value: What it is worth. >= 0.
        lean: How it changes the lean state.
    """

    number: int
    need: int
    value: int
    lean: Lean


def in_order_of_links(items: Iterable[Item], longest: int) -> tuple[Item, ...]:
    """Return the items that fit, those that link square with a lean behind the others."""
    return tuple(sorted((i for i in items if i.need <= longest), key=lambda i: i.lean in _LINKS))


def copy_of_next(items: Sequence[Item], index: int) -> bool:
    """Tell whether an item is one more copy of the one behind it; then that is taken first."""
    return index + 1 < len(items) and items[index + 1].number == items[index].number


def first_copy(items: Sequence[Item], index: int) -> int:
    """Return the place of the first copy of an item: without it, no copy before it is taken."""
    while index and items[index - 1].number == items[index].number:
        index -= 1
    return index


class Ending(NamedTuple):
    """The best set whose last item is a certain one.

    Attributes:
        gain: Its value less the charge of its end.
        end: Number of its end among those asked about.
        place: Place of its last item among the items.
        source: Lean state without the last item.
        rest: Length left to the other items.
    """

    gain: int
    end: int
    place: int
    source: State
    rest: int


class Tables(Protocol):
    """The port of the knapsack: tables over all lengths, and the sets behind their entries."""

    def value(self, state: State, length: int) -> int:
        """Return the largest value in a state within a length; -1 where there is no set."""
        ...

    def endings(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int]
    ) -> tuple[Ending, ...]:
        """Return for each item the set ending in it that gains most over its end's charge."""
        ...

    def ending_set(self, ending: Ending) -> tuple[int, ...]:
        """Return the numbers of the set behind an ending."""
        ...

    def sets_worth(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int], most: int
    ) -> tuple[tuple[int, tuple[int, ...]], ...] | None:
        """Return every set worth at least its end's charge, as (end, numbers, ascending), in order.

        Sets of the same numbers count once. None where there are more than `most`.
        """
        ...


class Knapsack:
    """Tables over all lengths, and the sets behind their entries.

    Args:
        items: Pieces to choose from; every item once.
        longest: Longest length, in grid steps.
    """

    def __init__(self, items: Sequence[Item], longest: int) -> None:
        if sum(item.value for item in items) > MOST_VALUE:
            raise OverflowError("the values of all pieces together are too large for the tables")
        self._longest = longest
        self.items = in_order_of_links(items, longest)
        ones = ((1 << (_FIELD_BITS * (longest + 1))) - 1) // ((1 << _FIELD_BITS) - 1)
        tables: list[int | None] = [REACHED * ones, None, None, None, None]
        self._history = [tuple(tables)]
        for item in self.items:
            tables = self._with_item(tables, item, ones)
            self._history.append(tuple(tables))

    def _with_item(self, tables: Sequence[int | None], item: Item, ones: int) -> list[int | None]:
        guards = ones << _GUARD_BIT
        # The longest length has the lowest place, so that a piece's own length is shifted away
        # below; above, where the piece can't be had, zeros come in: unreached.
        shift = _FIELD_BITS * item.need
        worth = item.value * ones >> shift
        after = list(tables)
        for target, sources in MOVES[item.lean]:
            best = tables[target]
            for source in sources:
                table = tables[source]
                if table is not None:
                    taken = (table >> shift) + worth
                    best = taken if best is None else _larger(best, taken, guards)
            after[target] = best
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
        """Return for each item the set ending in it that gains most over its end's charge.

        Args:
            ends: (state, length) pairs.
            charges: What a set must be worth at each end to gain nothing.
        """
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
        rest = self._walk(ending.place, ending.source, ending.rest)
        return (self.items[ending.place].number, *rest)

    def sets_worth(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int], most: int
    ) -> tuple[tuple[int, tuple[int, ...]], ...] | None:
        """Return every set worth at least its end's charge, as (end, numbers, ascending), in order.

        Sets of the same numbers count once. None where there are more than `most`.
        """
        found: list[tuple[int, tuple[int, ...]]] = []
        for end, (state, length) in enumerate(ends):
            for numbers in self._listed(state, length, charges[end]):
                found.append((end, numbers))
                if len(found) > most:
                    return None
        return tuple(sorted(found))

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
        if length < 0:
            return -1
        table = self._history[count][state]
        if table is None:
            return -1
        return max((table >> (_FIELD_BITS * (self._longest - length)) & _FIELD) - REACHED, -1)


def _larger(one: int, other: int, guards: int) -> int:
    """Entry by entry the larger of two tables, whose top bits are all free."""
    above = (one | guards) - other
    higher = above & guards
    return other + (above & (higher - (higher >> _GUARD_BIT)))


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


def tables_maker(solver: object) -> TablesMaker:
    """Return the maker that a solver brings along as `tables`, else that in whole numbers."""
    maker: TablesMaker = getattr(solver, "tables", PLAIN_TABLES)
    return maker


def whole_values(
    values: Sequence[float], copies: Sequence[int], most: int = MOST_VALUE
) -> tuple[tuple[int, ...], int]:
    """Return values as whole numbers that fit the tables, rounded down, and their scale."""
    total = math.fsum(
        value * copy for value, copy in zip(values, copies, strict=True) if value > 0.0
    )
    scale = int((most // 2) / total) if total > 0.0 else 1
    scale = max(1, scale)
    return tuple(max(0, math.floor(value * scale)) for value in values), scale


def state_lengths(rooms: Sequence[int], costs: Sequence[int]) -> Iterator[tuple[int, State, int]]:
    """Yield (room's number, state, length left to the pieces) for every state that has room."""
    for number, room in enumerate(rooms):
        for state in State:
            if room >= costs[state]:
                yield number, state, room - costs[state]
