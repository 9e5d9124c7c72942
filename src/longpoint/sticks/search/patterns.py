"""Patterns: which pieces come out of one stick, and a check that they really do."""

from array import array
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.fit import Filled, Packing, put_in
from longpoint.sticks.lay.laying import Place, Workload, used_length
from longpoint.sticks.lay.ordering import best_order
from longpoint.sticks.search.table_sets import ListedSets, listed_sets

_QUICK_STATES: Final = 400

Counts = tuple[tuple[int, int], ...]
"""(group, how many) pairs, groups ascending."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """Pieces, by group, that one stick gives.

    Attributes:
        bar: Number of the stick's length.
        counts: How many of which group.
    """

    bar: int
    counts: Counts


@dataclass(frozen=True, slots=True)
class PatternList:
    """A list of patterns that can be long: a hundred thousand, as numbers one behind the other.

    Attributes:
        bars: Number of the length of each pattern.
        sets: Groups of its pieces, one number for each piece.
    """

    bars: "array[int]"
    sets: ListedSets

    def __len__(self) -> int:
        """Return how many patterns there are."""
        return len(self.bars)

    def pattern(self, place: int) -> Pattern:
        """Return one of them."""
        return Pattern(self.bars[place], _counts(self.sets.of(place)))


def joined_lists(one: PatternList, other: PatternList, more: int) -> PatternList:
    """Return two lists as one; the patterns of the other one have one piece more.

    Args:
        one: A list.
        other: The list behind it.
        more: Group of the piece that each pattern of the other list has beside its own; above all
            of theirs.
    """
    ends = array("q", (*one.sets.ends, *other.sets.ends))
    starts, numbers = array("q", one.sets.starts), array("q", one.sets.numbers)
    for place in range(len(other)):
        numbers.extend(other.sets.of(place))
        numbers.append(more)
        starts.append(len(numbers))
    return PatternList(array("q", (*one.bars, *other.bars)), ListedSets(ends, starts, numbers))


def pattern_list(patterns: Iterable[Pattern]) -> PatternList:
    """Return patterns as a list."""
    bars = array("q")
    sets = list[tuple[int, tuple[int, ...]]]()
    for pattern in patterns:
        bars.append(pattern.bar)
        sets.append((pattern.bar, tuple(g for g, n in pattern.counts for _ in range(n))))
    return PatternList(bars, listed_sets(sets))


def _counts(groups: Iterable[int]) -> Counts:
    found: dict[int, int] = {}
    for group in groups:
        found[group] = found.get(group, 0) + 1
    return tuple(sorted(found.items()))


def groups_of(work: Workload) -> tuple[tuple[int, ...], ...]:
    """Return the pieces in groups that are alike in everything the nester looks at."""
    groups: dict[tuple[object, ...], list[int]] = {}
    for number, demand in enumerate(work.demands):
        alike = (demand.mid, demand.low, demand.left, demand.right, demand.can_turn)
        groups.setdefault(alike, []).append(number)
    return tuple(tuple(members) for members in groups.values())


@dataclass(slots=True)
class Layout:
    """Lays sets of groups on sticks, and remembers.

    Attributes:
        work: The pieces.
        bars: The lengths.
        groups: Groups of pieces alike.
    """

    work: Workload
    bars: Sequence[Bar]
    groups: tuple[tuple[int, ...], ...]
    _known: dict[tuple[Counts, int], tuple[Place, ...]] = field(default_factory=dict)

    def counts(self, groups: Iterable[int]) -> Counts:
        """Return group numbers, one per piece, as counts."""
        return _counts(groups)

    def known(self, places: Sequence[Place], room: int) -> Counts:
        """Remember an order that keeps within a room; return its counts."""
        group_of = {piece: n for n, group in enumerate(self.groups) for piece in group}
        seen: dict[int, int] = {}
        stand_ins = []
        for place in places:
            group = group_of[place.piece]
            stand_ins.append(Place(self.groups[group][seen.get(group, 0)], place.turned))
            seen[group] = seen.get(group, 0) + 1
        counts = tuple(sorted(seen.items()))
        self._known[counts, room] = tuple(stand_ins)
        return counts

    def places(self, counts: Counts, room: int) -> tuple[Place, ...]:
        """Return an order of these pieces; the first found within the room, else the best."""
        key = (counts, room)
        if key not in self._known:
            self._known[key] = self._places(counts, room)
        return self._known[key]

    def fitting(self, counts: Counts, room: int) -> tuple[Counts, int]:
        """Return the counts, and the length used, less the smallest pieces if they don't fit."""
        while True:
            used = used_length(self.work, self.places(counts, room))
            if used <= room or not counts:
                return counts, used
            smallest = max(group for group, _ in counts)
            counts = tuple(
                (group, count - (group == smallest))
                for group, count in counts
                if count > (group == smallest)
            )

    def packing(self, patterns: Iterable[Pattern]) -> Packing:
        """Return patterns as sticks, with real pieces in the places of their groups."""
        unused = [list(reversed(group)) for group in self.groups]
        stand_ins = {piece: number for number, group in enumerate(self.groups) for piece in group}
        sticks = []
        for pattern in patterns:
            places = tuple(
                Place(unused[stand_ins[place.piece]].pop(), place.turned)
                for place in self.places(pattern.counts, self.bars[pattern.bar].room)
            )
            sticks.append(Filled(pattern.bar, places, used_length(self.work, places)))
        return Packing(tuple(sticks))

    def _places(self, counts: Counts, room: int) -> tuple[Place, ...]:
        pieces = [piece for group, count in counts for piece in self.groups[group][:count]]
        if self.work.plain_kerf is not None:
            return tuple(Place(piece, turned=False) for piece in reversed(pieces))
        for order in (pieces, pieces[::-1], pieces[1::2] + pieces[::2]):
            found = self._inserted(order, room)
            if found is not None:
                return found
        return best_order(self.work, pieces, _QUICK_STATES)

    def _inserted(self, pieces: Sequence[int], room: int) -> tuple[Place, ...] | None:
        stick = Filled(0, (), 0)
        for piece in pieces:
            longer = put_in(self.work, stick, piece, room)
            if longer is None:
                return None
            stick = longer
        return stick.places
