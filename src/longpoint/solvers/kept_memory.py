"""Memory of tables that are gone, kept for those that come next.

A search makes thousands of tables of some megabytes, one set after the other. Memory that is given
back to the system and asked for again is handed out page by page as it is touched, which takes
longer than all sums and comparisons of a table. So the last blocks are kept.
"""

from types import ModuleType
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from numpy.typing import NDArray

_MOST_KEPT: Final = 2
"""Blocks: new tables are mostly made before the last ones are gone."""
_LARGEST: Final = 1 << 28
"""What is larger isn't kept. [byte]"""
_SPARE: Final = 8
"""A new block is larger than was asked for by this part of it."""

_KEPT: Final = list[Any]()


def kept_rows(
    numpy: ModuleType, shape: tuple[int, int], number: str
) -> tuple["NDArray[Any]", "NDArray[Any]"]:
    """Return a block of memory, and rows of numbers in it that hold anything at all.

    Args:
        numpy: The library.
        shape: How many rows, and how many numbers in each.
        number: Type of the numbers, by numpy's name.
    """
    size = shape[0] * shape[1] * numpy.dtype(number).itemsize
    try:
        block = _KEPT.pop()
    except IndexError:
        block = None
    if block is None or block.nbytes < size:
        # Not by numpy, which asks for large pages: those are made ready whole, and that takes long.
        block = numpy.frombuffer(bytearray(size + size // _SPARE), dtype="uint8")
    return block, block[:size].view(number).reshape(shape)


def give_back(block: "NDArray[Any]") -> None:
    """Keep a block of which nothing is needed any longer."""
    if len(_KEPT) < _MOST_KEPT and block.nbytes <= _LARGEST:
        _KEPT.append(block)
