"""Pieces and joints in steps of a grid, as the tables of sequences take them."""

from types import ModuleType
from typing import TYPE_CHECKING, Any, NamedTuple

from longpoint.sticks.batch.parts_of_sticks import ManyPieces

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
    """

    groups: "NDArray[Any]"
    turned: "NDArray[Any]"
    needs: "NDArray[Any]"
    lefts: "NDArray[Any]"
    rights: "NDArray[Any]"
    gaps: "NDArray[Any]"
    tips: tuple["NDArray[Any]", "NDArray[Any]"]
    rooms: list[int]


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
    return Items(
        groups,
        turned,
        numpy.maximum(1, numpy.array(many.needs)[groups] // grid),
        numpy.where(turned, rights, lefts),
        numpy.where(turned, lefts, rights),
        numpy.array(many.gaps) // grid,
        (numpy.array(many.left_tips) // grid, numpy.array(many.right_tips) // grid),
        [room // grid for room in many.rooms],
    )
