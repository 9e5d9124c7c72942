"""Prices of thousands of pieces by a few hundred numbers: a line between knots.

A price for every length is too many unknowns, and one for a whole class of lengths takes its
longest piece for all. A line between two knots gives every piece its own price; what a piece is
worth more for its ends is one number for each kind of ends. What a sequence is worth is then a sum
over these numbers: each piece stands for parts of its two neighbours, and for its kind.
"""

from collections.abc import Sequence
from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread

if TYPE_CHECKING:
    from numpy.typing import NDArray

_STEP: Final = 100
"""Prices may jump within a millimetre, where one piece more or less fits a stick. [0.01 mm]"""
_JUMPS: Final = (1, 2, 3)
"""Parts of a stick beyond which a price jumps: a piece that must be alone, two, three."""


class PriceLines:
    """The knots, and where each group of pieces stands between them.

    Args:
        needs: What a piece of each group needs. [0.01 mm]
        kinds: What its ends are like.
        rooms: What a stick of each length holds. [0.01 mm]
        knots: About how many.
        apart: Whether each kind has a line of its own; else only a number of its own.

    Attributes:
        needs: Need at each knot, and nought for each kind. [0.01 mm]
        lower: The knot below each group; the next one is the knot above.
        share: Part of the knot above in each group, 0 to 1.
    """

    def __init__(
        self,
        needs: Sequence[int],
        kinds: Sequence[object],
        rooms: Sequence[int],
        knots: int,
        *,
        apart: bool,
    ) -> None:
        numpy: ModuleType = numpy_in_one_thread()
        self._numpy = numpy
        wanted = numpy.array(needs, dtype=numpy.int64)
        places = {kind: place for place, kind in enumerate(dict.fromkeys(kinds))}
        kind = numpy.array([places[own] for own in kinds], dtype=numpy.int64)
        lines = (
            [numpy.nonzero(kind == place)[0] for place in range(len(places))]
            if apart
            else [numpy.arange(len(needs))]
        )
        self.lower = numpy.zeros(len(needs), dtype=numpy.int64)
        self.share = numpy.zeros(len(needs))
        found = list[Any]()
        for here in lines:
            at = self._knots(wanted[here], rooms, max(3, knots * len(here) // len(needs)))
            below = numpy.searchsorted(at, wanted[here], side="right") - 1
            below = numpy.clip(below, 0, len(at) - 2)
            self.lower[here] = below + sum(map(len, found))
            self.share[here] = (wanted[here] - at[below]) / (at[below + 1] - at[below])
            found.append(at)
        self._at, at = found, numpy.concatenate(found)
        self._kind = len(at) + kind
        self.needs = numpy.concatenate([at, numpy.zeros(len(places), dtype=numpy.int64)])

    def prices(self, numbers: "NDArray[Any]") -> "NDArray[Any]":
        """Return the price of each group from the numbers of all knots and kinds."""
        low, high = numbers[self.lower], numbers[self.lower + 1]
        line = low * (1.0 - self.share) + high * self.share
        found: NDArray[Any] = self._numpy.maximum(0.0, line + numbers[self._kind])
        return found

    def carried(self, numbers: "NDArray[Any]", others: "PriceLines") -> "NDArray[Any]":
        """Return the numbers that give about the same prices at the knots of other lines.

        Args:
            numbers: Those of all knots and kinds here.
            others: Lines of the same groups and kinds, with other knots.
        """
        found, start = list[Any](), 0
        for at, wanted in zip(self._at, others._at, strict=True):
            found.append(self._numpy.interp(wanted, at, numbers[start : start + len(at)]))
            start += len(at)
        carried: NDArray[Any] = self._numpy.concatenate([*found, numbers[start:]])
        return carried

    def sums(self, groups: Sequence[int], copies: Sequence[float]) -> "NDArray[Any]":
        """Return what pieces of groups, so many of each, come to at the knots and kinds."""
        numpy = self._numpy
        which, many = numpy.array(groups, dtype=numpy.int64), numpy.array(copies, dtype=float)
        found: NDArray[Any] = numpy.zeros(len(self.needs))
        numpy.add.at(found, self.lower[which], many * (1.0 - self.share[which]))
        numpy.add.at(found, self.lower[which] + 1, many * self.share[which])
        numpy.add.at(found, self._kind[which], many)
        return found

    def _knots(self, needs: "NDArray[Any]", rooms: Sequence[int], knots: int) -> "NDArray[Any]":
        """At even counts of pieces, and on both sides of each jump; at least two."""
        numpy = self._numpy
        even = numpy.quantile(needs, numpy.linspace(0.0, 1.0, knots)).astype(numpy.int64)
        low, high = int(needs.min()), int(needs.max())
        jumps = [
            at
            for room in rooms
            for part in _JUMPS
            for at in (room // part, room // part + _STEP)
            if low < at < high
        ]
        found: NDArray[Any] = numpy.unique([low, *even.tolist(), *jumps, high])
        return found if len(found) > 1 else numpy.array([low, low + 1])
