"""Cuts on three pieces: where sets are whole, at least two of them hold three pieces.

Half of the condition of each of three groups, added up and rounded up set by set, holds for whole
sticks: a set with one or two of three pieces counts once, one with all three twice, and together
they must count as many as half the pieces, rounded up. A solution in parts that halves three sets,
each with two of the pieces, breaks it.

References:
    Subset-row cuts: Jepsen, Petersen, Spoorendonk and Pisinger (2008), Operations Research 56(2).
"""

from typing import TYPE_CHECKING, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.set_program import Relaxed, SetProgram

if TYPE_CHECKING:
    from typing import Any

    from numpy.typing import NDArray

_BROKEN: Final = 1e-2
_MOST: Final = 60
_MOST_OF_ONE: Final = 6
_MOST_GROUPS: Final = 160
"""Of more than these groups not all cuts are looked at: they would take much memory."""


def broken_cuts(program: SetProgram, relaxed: Relaxed) -> list[tuple[int, ...]]:
    """Return groups of three whose cut the solution breaks, the most broken first."""
    numpy = numpy_in_one_thread()
    parts = abs(relaxed.values - relaxed.values.round()) > _BROKEN
    held = program.held[:, relaxed.numbers[parts]]
    # Of pieces that are only in whole sets no cut is broken.
    able = numpy.nonzero(held.any(axis=1) & (program.pieces == 1))[0][:_MOST_GROUPS]
    shared = shared_parts(program, relaxed)[numpy.ix_(able, able)]
    three = shared[:, :, None] + shared[:, None, :] + shared[None, :, :]
    for column, value in zip(held[able].T, relaxed.values[parts], strict=True):
        inside = numpy.nonzero(column)[0]
        if len(inside) > 2:
            three[numpy.ix_(inside, inside, inside)] -= 2.0 * value
    # Each of the three pieces is in sets that add up to one, so what they share is too much.
    first, second, third = numpy.nonzero(three > 1.0 + _BROKEN)
    ascending = (first < second) & (second < third)
    first, second, third = first[ascending], second[ascending], third[ascending]
    order = numpy.lexsort((third, second, first, -three[first, second, third].round(6)))
    known = set(program.cuts)
    used = numpy.zeros(len(able), dtype=int)
    cuts = list[tuple[int, ...]]()
    for place in order:
        places = [int(first[place]), int(second[place]), int(third[place])]
        cut = tuple(int(group) for group in able[places])
        if cut in known or max(used[places]) >= _MOST_OF_ONE:
            continue
        cuts.append(cut)
        used[places] += 1
        if len(cuts) >= _MOST:
            break
    return cuts


def shared_parts(program: SetProgram, relaxed: Relaxed) -> "NDArray[Any]":
    """Return how much of the sets that hold one group also hold the other; nought with itself."""
    numpy = numpy_in_one_thread()
    held = (program.held[:, relaxed.numbers] > 0).astype(numpy.double)
    shared: NDArray[Any] = (held * relaxed.values) @ held.T
    numpy.fill_diagonal(shared, 0.0)
    return shared
