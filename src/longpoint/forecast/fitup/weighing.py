"""Weights of rows with which no move has a say: what a fit ratio can't get below."""

from collections.abc import Sequence
from operator import mul
from typing import Final, Protocol

from longpoint.forecast.fitup.frame import FrameRow

FitLine = tuple[float, ...]
"""Change of the fit ratio per unit of each error slot, (8 n,)."""

Weights = tuple[tuple[int, float], ...]
"""(row, weight) pairs, weights > 0."""

SMALL: Final = 1e-7
"""A pivot, what is left of an equation, or a weight below nought: this small it is rounding."""

Columns = tuple[tuple[float, ...], ...]
"""Of each row what every move changes in it, in sizes that can be compared, and its limit."""


class Weigher(Protocol):
    """Weighs many sets of a frame's rows: in plain Python, by arrays, or outside of Python."""

    def __call__(self, rows: Sequence[FrameRow], sets: Sequence[Sequence[int]]) -> list[FitLine]:
        """Return the lines of those sets that have weights, as `row_weights` and `line_of` do.

        Args:
            rows: Rows of a frame.
            sets: Indices of rows, rising.
        """
        ...

    def __hash__(self) -> int:
        """Lines are remembered with what weighed them."""
        ...


def weighed_lines(rows: Sequence[FrameRow], sets: Sequence[Sequence[int]]) -> list[FitLine]:
    """Return the lines of those sets that have weights, one set after the other."""
    columns = columns_of(rows)
    found = (row_weights(columns, chosen) for chosen in sets)
    return [line_of(rows, weights) for weights in found if weights]


def columns_of(rows: Sequence[FrameRow]) -> Columns:
    """Return rows of a frame, ready to be weighed."""
    # A turn counts per radian: bring it to the size of the other moves.
    sizes = [
        max(map(abs, moves)) or 1.0 for moves in zip(*(row.moves for row in rows), strict=True)
    ]
    return tuple(
        (*(x / size for x, size in zip(row.moves, sizes, strict=True)), row.limit_mm)
        for row in rows
    )


def row_weights(columns: Columns, chosen: Sequence[int]) -> Weights | None:
    """Return weights of chosen rows that cancel every move, and whose limits add up to 1.

    Args:
        columns: Rows of a frame, as made ready.
        chosen: Indices of some of them.

    Returns:
        The weights, or None where there is no single answer without a negative one.

    References:
        Gaussian elimination with row pivots, one equation per move and one for the limits.
    """
    equations = _equations(columns, chosen)
    solved: list[list[float]] = []
    for _ in chosen:
        equations.sort(key=_lead, reverse=True)
        if not equations or _lead(equations[0]) < SMALL:
            return None
        pivot, *rest = equations[0]
        rest = [x / pivot for x in rest]
        solved.append(rest)
        equations = [_without_lead(equation, rest) for equation in equations[1:]]
    if any(abs(off[0]) > SMALL for off in equations):
        return None
    weights: list[float] = []
    for *others, value in reversed(solved):
        weights.insert(0, value - sum(map(mul, others, weights)))
    if min(weights) < -SMALL * max(1.0, *weights):
        return None
    return tuple((i, w) for i, w in zip(chosen, weights, strict=True) if w > 0.0)


def line_of(rows: Sequence[FrameRow], weights: Weights) -> FitLine:
    """Return what errors change in the weighted sum of rows."""
    total = [0.0] * len(rows[0].errors)
    for index, weight in weights:
        total = [t + weight * e for t, e in zip(total, rows[index].errors, strict=True)]
    return tuple(total)


def _equations(columns: Columns, chosen: Sequence[int]) -> list[list[float]]:
    """Return the equations: each move cancelled, and the limits; the right-hand side last."""
    sides = [0.0] * (len(columns[0]) - 1) + [1.0]
    return [list(row) for row in zip(*(columns[i] for i in chosen), sides, strict=True)]


def _lead(equation: list[float]) -> float:
    return abs(equation[0])


def _without_lead(equation: list[float], lead: list[float]) -> list[float]:
    """Return an equation with its first unknown put in."""
    factor, *rest = equation
    if factor == 0.0:
        return rest
    return [x - factor * y for x, y in zip(rest, lead, strict=True)]
