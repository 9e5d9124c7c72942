"""The most valuable sequence of pieces for every length at once, each piece as often as it fits.

With thousands of pieces of all lengths it hardly matters that each is there but once. A sequence
grows by one piece at its right end; what the joint costs depends on two classes of ends. No piece
is shorter than the shortest, so as many lengths as that has steps are worked out at once, each
item being one row.
"""

from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.speech.said import say

if TYPE_CHECKING:
    from numpy.typing import NDArray

MOST_VALUE: Final = 1 << 28
"""No sequence may be worth more."""
_NEVER: Final = -(1 << 30)
_ROWS: Final = 4_000_000
"""Entries of the arrays that are worked on at once: the memory they take."""


class SequenceTables:
    """Tables over all lengths, in whole numbers.

    Args:
        needs: What each item needs, in grid steps. > 0.
        ends: Classes of the left ends, and of the right ends.
        values: What each is worth. >= 0.
        gaps: By class of right end and of left end, in grid steps.
        tips: What a left end costs at the left of the stick, and a right end at the right, by
            class, in grid steps.
        longest: Longest length, in grid steps.

    Raises:
        OverflowError: A sequence might be worth more than MOST_VALUE.

    Attributes:
        before: By class: the most that is worth what stands before a piece whose left end is of
            that class and begins at this length; far below nought where nothing can.
    """

    def __init__(
        self,
        needs: "NDArray[Any]",
        ends: tuple["NDArray[Any]", "NDArray[Any]"],
        values: "NDArray[Any]",
        gaps: "NDArray[Any]",
        tips: tuple["NDArray[Any]", "NDArray[Any]"],
        longest: int,
    ) -> None:
        numpy: ModuleType = numpy_in_one_thread()
        if len(needs) and float((values / needs).max()) * longest > MOST_VALUE:
            raise OverflowError(
                say("the values of all pieces together are too large for the tables")
            )
        self._numpy = numpy
        self._needs, self._gaps, self._values = needs, gaps, values
        (self._lefts, self._rights), (left_tips, self._tips) = ends, tips
        classes, size = len(left_tips), longest + 1
        self._worth = numpy.full((classes, size), _NEVER, dtype=numpy.int32)
        self.before = numpy.full((classes, size), _NEVER, dtype=numpy.int32)
        for kind, tip in enumerate(left_tips):
            self.before[kind, tip:] = 0
        ways = [
            (left, right, which)
            for left in range(classes)
            for right in range(classes)
            if len(which := numpy.nonzero(self._between(left, right))[0])
        ]
        pace = int(needs.min()) if len(needs) else size
        for start in range(0, size, pace):
            end = min(start + pace, size)
            for left, right, which in ways:
                self._grow(left, right, which[needs[which] < end], start, end)
            self._join(start, end)

    def value(self, room: int) -> int:
        """Return the largest value of a sequence within a room; 0: of none."""
        return max((0, *self._endings(room)))

    def sequence(self, kind: int, length: int) -> tuple[int, ...]:
        """Return the items that stand before a piece, from left to right.

        Args:
            kind: Class of the piece's left end.
            length: Where it begins; there must be something that can stand before it, or nothing.
        """
        found = []
        while (joint := self._joint(kind, length)) is not None:
            right, length = joint
            item = self._item(right, length)
            found.append(item)
            length -= int(self._needs[item])
            kind = int(self._lefts[item])
        return tuple(reversed(found))

    def _joint(self, kind: int, length: int) -> tuple[int, int] | None:
        """The right end before a piece, and where it ends; None where there is none."""
        worth = int(self.before[kind, length])
        if worth > 0:
            for right, gap in enumerate(self._gaps[:, kind].tolist()):
                if length >= gap and int(self._worth[right, length - gap]) == worth:
                    return right, length - gap
        return None

    def _item(self, right: int, length: int) -> int:
        """The item that ends there."""
        numpy = self._numpy
        rest = length - self._needs
        able = numpy.nonzero((self._rights == right) & (rest >= 0) & (self._values > 0))[0]
        worth = self.before[self._lefts[able], rest[able]] + self._values[able]
        return int(able[(worth == self._worth[right, length]).argmax()])

    def _between(self, left: int, right: int) -> "NDArray[Any]":
        found: NDArray[Any] = (self._lefts == left) & (self._rights == right) & (self._values > 0)
        return found

    def _endings(self, room: int) -> list[int]:
        return [
            int(self._worth[kind, room - tip]) for kind, tip in enumerate(self._tips) if room >= tip
        ]

    def _grow(self, left: int, right: int, which: "NDArray[Any]", start: int, end: int) -> None:
        """Put each item behind the best that can stand before it."""
        numpy = self._numpy
        here = self._worth[right, start:end]
        nothing = numpy.full(end - start, _NEVER, dtype=numpy.int32)
        padded = numpy.concatenate([nothing, self.before[left, :end]])
        windows = numpy.lib.stride_tricks.sliding_window_view(padded, end - start)
        rows = max(1, _ROWS // (end - start))
        for first in range(0, len(which), rows):
            some = which[first : first + rows]
            tried = windows[end - self._needs[some]]
            tried += self._values[some][:, None]
            numpy.maximum(here, tried.max(axis=0), out=here)

    def _join(self, start: int, end: int) -> None:
        """See what can stand before a piece that begins at these lengths."""
        numpy = self._numpy
        for right in range(len(self._tips)):
            for left in range(len(self._tips)):
                gap = int(self._gaps[right, left])
                first = max(start, gap)
                if first >= end:
                    continue
                here = self.before[left, first:end]
                numpy.maximum(here, self._worth[right, first - gap : end - gap], out=here)
