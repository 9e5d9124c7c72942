"""Pieces and joints in steps of a grid, as the tables of sequences take them."""

from collections.abc import Sequence
from itertools import pairwise
from types import ModuleType
from typing import TYPE_CHECKING, Any, NamedTuple

from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Turned

if TYPE_CHECKING:
    from numpy.typing import NDArray


class Items(NamedTuple):
    """Groups as they may lie: all of them unturned, then those that may be turned.

    Attributes:
        groups: Number of each item's group.
        turned: Whether it lies turned.
        needs: What it needs, at least one. [steps of the grid]
        lefts: Class of the end that lies left.
        rights: Class of the end that lies right.
        gaps: What is lost between a right end (row) and a left one (column). [steps]
        tips: What a left end costs at the end of a stick, and what a right end does. [steps]
        rooms: What a stick of each length holds. [steps]
        alike: By item: items with the same number need the same on the grid, between ends of the
            same classes, so that only the dearest of them need be looked at.
    """

    groups: "NDArray[Any]"
    turned: "NDArray[Any]"
    needs: "NDArray[Any]"
    lefts: "NDArray[Any]"
    rights: "NDArray[Any]"
    gaps: "NDArray[Any]"
    tips: tuple["NDArray[Any]", "NDArray[Any]"]
    rooms: list[int]
    alike: "NDArray[Any]"

    def dearest(self, numpy: ModuleType, values: "NDArray[Any]") -> "NDArray[Any]":
        """Return the dearest of the items that are alike, one of each, in their order."""
        order = numpy.lexsort((-values, self.alike))
        first = numpy.concatenate([[True], numpy.diff(self.alike[order]) != 0])
        found: NDArray[Any] = numpy.sort(order[first])
        return found

    def holds(self, bar: int, pieces: Sequence[Turned]) -> bool:
        """Return whether a stick of this length holds pieces from left to right."""
        groups = [piece.group for piece in pieces]
        ends = [
            (self.lefts[group], self.rights[group])[:: -1 if turned else 1]
            for group, turned in pieces
        ]
        used = int(self.needs[groups].sum() + self.tips[0][ends[0][0]] + self.tips[1][ends[-1][1]])
        used += sum(int(self.gaps[one[1], other[0]]) for one, other in pairwise(ends))
        return used <= self.rooms[bar]


def items_on_grid(numpy: ModuleType, many: ManyPieces, grid: int) -> Items:
    """Return all on a grid, rounded down, so that nothing that fits is taken not to.

    Args:
        numpy: The library.
        many: The pieces, what is lost between them, the sticks.
        grid: Step of the lengths. > 0. [0.01 mm]
    """
    turns = numpy.nonzero(many.can_turn)[0]
    groups = numpy.concatenate([numpy.arange(len(many.needs)), turns])
    turned = numpy.arange(len(groups)) >= len(many.needs)
    lefts, rights = numpy.array(many.lefts)[groups], numpy.array(many.rights)[groups]
    needs = numpy.maximum(1, numpy.array(many.needs)[groups] // grid)
    left, right = numpy.where(turned, rights, lefts), numpy.where(turned, lefts, rights)
    _, alike = numpy.unique(numpy.stack([needs, left, right]), axis=1, return_inverse=True)
    return Items(
        groups,
        turned,
        needs,
        left,
        right,
        numpy.array(many.gaps) // grid,
        (numpy.array(many.left_tips) // grid, numpy.array(many.right_tips) // grid),
        [room // grid for room in many.rooms],
        alike.reshape(-1),
    )
