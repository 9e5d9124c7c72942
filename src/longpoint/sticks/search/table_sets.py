"""The port of the knapsack, and how its sets are looked up."""

from array import array
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple, Protocol

from longpoint.sticks.lay.lean_states import LINKS, MOVES, Lean, State


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
    return tuple(sorted((i for i in items if i.need <= longest), key=lambda i: i.lean in LINKS))


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


@dataclass(frozen=True, slots=True)
class ListedSets:
    """A list of sets, one behind the other, in the order of their ends and then of their numbers.

    Attributes:
        ends: Number of the end of each set.
        starts: Where the numbers of each set begin, and where those of the last one end.
        numbers: Numbers of all sets, those of one set ascending.
    """

    ends: "array[int]"
    starts: "array[int]"
    numbers: "array[int]"

    def __len__(self) -> int:
        """Return how many sets there are."""
        return len(self.ends)

    def of(self, place: int) -> tuple[int, ...]:
        """Return the numbers of one set."""
        return tuple(self.numbers[self.starts[place] : self.starts[place + 1]])

    def one_by_one(self) -> Iterator[tuple[int, tuple[int, ...]]]:
        """Yield end and numbers of each set."""
        for place, end in enumerate(self.ends):
            yield end, self.of(place)


def listed_sets(sets: Iterable[tuple[int, tuple[int, ...]]]) -> ListedSets:
    """Return (end, numbers) pairs, in order, as a list."""
    found = ListedSets(array("q"), array("q", (0,)), array("q"))
    for end, numbers in sets:
        found.ends.append(end)
        found.numbers.extend(numbers)
        found.starts.append(len(found.numbers))
    return found


@dataclass(frozen=True, slots=True)
class Lengths:
    """What sets need to the hundredth, where a grid is too coarse to tell. [0.01 mm]

    Attributes:
        needs: What each number needs.
        rooms: What there is at each end.
    """

    needs: Sequence[int]
    rooms: Sequence[int]


@dataclass(frozen=True, slots=True)
class Ways:
    """In how many sets the pieces may stand; never fewer than there are.

    Attributes:
        sets: How many sets there are at most, as far as they are told apart.
        holding: In how many of them each number stands at most, likewise.
    """

    sets: int
    holding: dict[int, int]


class Tables(Protocol):
    """The port of the knapsack: tables over all lengths, and the sets behind their entries."""

    def value(self, state: State, length: int) -> int:
        """Return the largest value in a state within a length; -1 where there is no set."""
        ...

    def best_set(self, state: State, length: int) -> tuple[int, ...]:
        """Return the numbers of a most valuable set; it must exist."""
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
        self,
        ends: Sequence[tuple[State, int]],
        charges: Sequence[int],
        most: int,
        lengths: Lengths | None = None,
    ) -> ListedSets | None:
        """Return every set worth at least its end's charge, but for that of nothing.

        Sets of the same numbers count once.

        Args:
            ends: (state, length) pairs.
            charges: What a set must be worth at each end.
            most: Most sets; None is returned where there are more.
            lengths: Which of them, at last, are too long all the same; None: none are.
        """
        ...

    def ways(
        self, ends: Sequence[tuple[State, int]], charges: Sequence[int], most: int
    ) -> Ways | None:
        """Return in how many sets worth at least their end's charge each number stands at most.

        None where more than `most` steps would have to be looked at.
        """
        ...


class TableSets:
    """Looks up sets in tables, whatever these are made of.

    Attributes:
        items: Pieces to choose from, in the order in which the tables took them in.
    """

    items: tuple[Item, ...]

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
        """Return the largest value of a set of the first items; -1 where there is none."""
        raise NotImplementedError
