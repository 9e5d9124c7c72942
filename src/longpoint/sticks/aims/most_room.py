"""The most room that so many sticks offer for so much money.

Numbers of sticks of each length are gone through, the length that offers most for its cost first.
Sticks that may be parted offer at least as much as whole ones: the most is then a line drawn over
the points (cost, room) of the lengths that are left, and numbers that can't come above what was
found are left out.
"""

import math
from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Final

MOST_NUMBERS: Final = 20_000
"""Numbers of sticks that are gone through; what is then open is told by parted sticks."""


@dataclass(frozen=True, slots=True)
class Length:
    """One length of new stick.

    Attributes:
        cost: Cost of one, in any whole unit. >= 0.
        room: What it offers. [0.01 mm]
        count: How many there are; None: as many as needed.
    """

    cost: int
    room: int
    count: int | None = None


@dataclass(slots=True)
class RoomForMoney:
    """Tells the most room of up to some number of sticks that together cost no more than `cost`.

    Attributes:
        lengths: The lengths.
        cost: Most that the sticks may cost, in the unit of the lengths. >= 0.
        most_numbers: Numbers of sticks that are gone through for an answer; where they don't do,
            the answer is what sticks offer that may be parted: never too low.
    """

    lengths: Sequence[Length]
    cost: int
    most_numbers: int = MOST_NUMBERS
    _order: list[Length] = field(init=False)
    _lines: list[list[tuple[int, int]]] = field(init=False)
    _best: int = field(init=False, default=0)
    _enough: float = field(init=False, default=math.inf)
    _left: int = field(init=False, default=0)

    def __post_init__(self) -> None:
        """Draw the line over each length and those behind it."""
        usable = (length for length in self.lengths if length.room > 0)
        self._order = sorted(usable, key=lambda each: (-each.room / max(1, each.cost), each.cost))
        self._lines = [_line(self._order[first:]) for first in range(len(self._order))]

    def most(self, sticks: int) -> int:
        """Return the most room of up to so many sticks. [0.01 mm]"""
        return self._searched(sticks, 0, math.inf)

    def reaches(self, sticks: int, room: int) -> bool:
        """Tell whether up to so many sticks may offer so much room. [0.01 mm]"""
        return room <= 0 or self._searched(sticks, room - 1, room) >= room

    def fewest(self, room: int, most: int) -> int:
        """Return how few sticks may offer so much room; `most` where fewer than that don't."""
        return bisect_left(range(most), True, key=lambda sticks: self.reaches(sticks, room))

    def _searched(self, sticks: int, beyond: int, enough: float) -> int:
        """The most room above `beyond`; any that is enough will do."""
        self._best, self._left, self._enough = beyond, self.most_numbers, enough
        self._go(0, self.cost, sticks, 0)
        if self._left > 0 or self._best >= enough:
            return self._best
        return max(beyond, self._parted(0, self.cost, sticks))

    def _go(self, first: int, cost: int, sticks: int, held: int) -> None:
        self._left -= 1
        if held + self._parted(first, cost, sticks) <= self._best:
            return
        self._best = max(self._best, held)
        if first == len(self._order):
            return
        length = self._order[first]
        number = sticks if length.count is None else min(sticks, length.count)
        if length.cost:
            number = min(number, cost // length.cost)
        for taken in range(number, -1, -1):
            if self._best >= self._enough or self._left <= 0:
                return
            self._go(
                first + 1,
                cost - taken * length.cost,
                sticks - taken,
                held + taken * length.room,
            )

    def _parted(self, first: int, cost: int, sticks: int) -> int:
        """What sticks offer that may be parted, from one length on. [0.01 mm]"""
        if first == len(self._order):
            return 0
        line = self._lines[first]
        for (low, less), (high, more) in pairwise(line):
            if cost < sticks * high:
                return (sticks * less * (high - low) + (cost - sticks * low) * (more - less)) // (
                    high - low
                )
        return sticks * line[-1][1]


def _line(lengths: Iterable[Length]) -> list[tuple[int, int]]:
    """Corners (cost, room) of the lowest line over nothing and all lengths that bends one way."""
    most_at = {0: 0}
    for length in lengths:
        most_at[length.cost] = max(most_at.get(length.cost, 0), length.room)
    corners: list[tuple[int, int]] = []
    for corner in sorted(most_at.items()):
        if corners and corner[1] <= corners[-1][1]:
            continue
        while len(corners) > 1 and _is_under(corners[-2], corners[-1], corner):
            corners.pop()
        corners.append(corner)
    return corners


def _is_under(before: tuple[int, int], corner: tuple[int, int], after: tuple[int, int]) -> bool:
    """Tell whether a corner lies on or under the line from the one before to the one after."""
    return (corner[1] - before[1]) * (after[0] - before[0]) <= (after[1] - before[1]) * (
        corner[0] - before[0]
    )
