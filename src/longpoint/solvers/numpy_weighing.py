"""Many sets of a frame's rows weighed at once by arrays, behind the core's port."""

from collections.abc import Iterator, Sequence
from itertools import groupby
from types import ModuleType
from typing import TYPE_CHECKING, Any

from longpoint.forecast.fitup.frame import FrameRow
from longpoint.forecast.fitup.weighing import SMALL, FitLine, columns_of
from longpoint.solvers.one_thread import numpy_in_one_thread

if TYPE_CHECKING:
    from numpy.typing import NDArray


def numpy_weighed_lines(rows: Sequence[FrameRow], sets: Sequence[Sequence[int]]) -> list[FitLine]:
    """Return the lines of those sets that have weights, smaller sets first.

    References:
        As `longpoint.forecast.fitup.weighing.row_weights`, each step for all sets of one size.
    """
    if not sets:
        return []
    numpy = numpy_in_one_thread()
    columns = numpy.array(columns_of(rows))
    errors = numpy.array([row.errors for row in rows])
    lines: list[FitLine] = []
    for alike in _by_size(sets, columns.shape[1]):
        chosen = numpy.array(alike)
        is_sound, weights = _weights(numpy, columns[chosen])
        found = numpy.einsum("sk,ske->se", weights[is_sound], errors[chosen[is_sound]])
        lines.extend(map(tuple, found.tolist()))
    return lines


def _by_size(sets: Sequence[Sequence[int]], most: int) -> Iterator[list[Sequence[int]]]:
    """Yield sets of one size together; those of more rows than equations have no single answer."""
    for size, alike in groupby(sorted(sets, key=len), key=len):
        if size <= most:
            yield list(alike)


def _weights(numpy: ModuleType, columns: "NDArray[Any]") -> "tuple[NDArray[Any], NDArray[Any]]":
    """Return which sets have weights, (sets,), and the weights, (sets, size).

    Args:
        numpy: The library.
        columns: Of each row of each set its moves and limit, (sets, size, moves + 1).
    """
    sets, size, count = columns.shape
    equations = numpy.zeros((sets, count, size + 1))
    equations[:, :, :size] = columns.transpose(0, 2, 1)
    equations[:, -1, size] = 1.0
    is_sound = numpy.ones(sets, bool)
    for step in range(size):
        pivots = step + numpy.abs(equations[:, step:, step]).argmax(axis=1)
        swapped = equations[:, step].copy()
        equations[:, step] = equations[range(sets), pivots]
        equations[range(sets), pivots] = swapped
        leads = equations[:, step, step]
        is_sound &= numpy.abs(leads) >= SMALL
        equations[:, step] /= numpy.where(is_sound, leads, 1.0)[:, None]
        below = equations[:, step + 1 :]
        below -= below[:, :, step, None] * equations[:, None, step]
    is_sound &= (numpy.abs(equations[:, size:, size]) <= SMALL).all(axis=1)
    weights = equations[:, :size, size].copy()
    for step in range(size - 1, 0, -1):
        weights[:, :step] -= equations[:, :step, step] * weights[:, step, None]
    is_sound &= weights.min(axis=1) >= -SMALL * numpy.maximum(1.0, weights.max(axis=1))
    return is_sound, numpy.maximum(weights, 0.0)
