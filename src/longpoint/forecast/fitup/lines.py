"""The fit ratio of a frame as the largest of finitely many lines over its errors.

By duality the best fit-up of any errors is ruled by one of a fixed list of weightings of the rows
in which no move has a say. A weighting is known by its rows; in another frame of the same kind the
same rows, weighed anew, do. A weighting that is missing from the list can only make the ratio too
small, and the chance of a fit too large, so lists are audited against exact programmes.
"""

import math
import random
from collections.abc import Iterable, Sequence
from functools import lru_cache
from operator import mul
from typing import Final

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import SLOTS, FitLimits, Frame, FrameRow, Slot, frame_rows
from longpoint.forecast.fitup.known_sets import known_sets
from longpoint.forecast.fitup.respect import Respect, rows_of
from longpoint.forecast.fitup.weighing import FitLine, Weigher, line_of, weighed_lines
from longpoint.linear.port import LinearSolver
from longpoint.linear.simplex import SimplexSolver

__all__ = ["FitLine", "Respect", "fit_lines", "learned_lines", "missing_lines", "ratio_by"]

LEARNING_DRAWS: Final = 400
"""Most programmes solved to learn the lines of a frame of which no list is known."""
QUIET_DRAWS: Final = 60
"""A list is taken as learned once so many draws in a row brought nothing new."""

_NEAR: Final = (0.7, 1.0)
"""Where a ratio by the list is worth an exact programme: a missing line only makes it too small."""
_REMEMBERED: Final = 96
"""Lists kept for the next forecast: three for each face of a house whose readings come in one
by one. They take some 10 MB."""
_SHORT: Final = 1e-6
_SEED: Final = 4


def fit_lines(
    frame: Frame,
    limits: FitLimits,
    respect: Respect,
    solver: LinearSolver | None = None,
    weigh: Weigher = weighed_lines,
) -> tuple[FitLine, ...]:
    """Return lines whose largest is the fit ratio of a frame, or 0 where all are below.

    Args:
        frame: The frame.
        limits: What counts as a fit.
        respect: In what respect.
        solver: For frames of which no list is known; None: the built-in one.
        weigh: Weighs the sets of a list.

    Returns:
        Lines over the frame's errors, (lines, 8 n).
    """
    lines = _known_lines(frame, limits, respect, weigh)
    return lines or learned_lines(frame, limits, respect, solver or SimplexSolver())


@lru_cache(maxsize=_REMEMBERED)
def _known_lines(
    frame: Frame, limits: FitLimits, respect: Respect, weigh: Weigher
) -> tuple[FitLine, ...]:
    """Return the lines of a frame by the list of its kind; empty where none is known."""
    rows = rows_of(frame_rows(frame, limits), respect)
    return _distinct(weigh(rows, known_sets(frame, rows, respect)))


def learned_lines(
    frame: Frame,
    limits: FitLimits,
    respect: Respect,
    solver: LinearSolver,
    lines: Sequence[FitLine] = (),
) -> tuple[FitLine, ...]:
    """Return lines with those added that exact programmes of spread errors bring to light.

    Args:
        frame: The frame.
        limits: What counts as a fit.
        respect: In what respect.
        solver: Solves the programmes.
        lines: Those known beforehand.

    Returns:
        The lines known, and the new ones; the same on every machine with the same solver.
    """
    rows = rows_of(frame_rows(frame, limits), respect)
    stream = random.Random(_SEED)
    found, quiet = list(lines), 0
    for _ in range(LEARNING_DRAWS):
        new = _missing(rows, found, _spread_errors(frame, stream), solver)
        found += new
        quiet = 0 if new else quiet + 1
        if quiet == QUIET_DRAWS:
            break
    return _distinct(found)


def missing_lines(
    frame: Frame,
    limits: FitLimits,
    respect: Respect,
    lines: Sequence[FitLine],
    draws: Iterable[Sequence[float]],
    solver: LinearSolver,
) -> tuple[FitLine, ...]:
    """Return lines that a list lacks, found where given errors just seem to fit.

    Args:
        frame: The frame.
        limits: What counts as a fit.
        respect: In what respect.
        lines: The list.
        draws: Errors of the frame, (draws, 8 n); those whose ratio by the list is near 1 are
            solved exactly.
        solver: Solves the programmes.

    Returns:
        Lines to add to the list; empty when it was right for every draw.
    """
    rows = rows_of(frame_rows(frame, limits), respect)
    known, left = list(lines), list(draws)
    # A line found for one draw may bring others near 1 that seemed to fit with ease.
    while True:
        near = [_seems_to_fit(known, errors) for errors in left]
        if not any(near):
            return tuple(known[len(lines) :])
        seeming = [errors for errors, is_near in zip(left, near, strict=True) if is_near]
        left = [errors for errors, is_near in zip(left, near, strict=True) if not is_near]
        for errors in seeming:
            known += _missing(rows, known, errors, solver)


def ratio_by(lines: Iterable[FitLine], errors: Sequence[float]) -> float:
    """Return the fit ratio of given errors by a list of lines, >= 0."""
    sums = (sum(map(mul, line, errors)) for line in lines)
    return max(0.0, max(sums, default=0.0))


def _seems_to_fit(lines: Sequence[FitLine], errors: Sequence[float]) -> bool:
    """Tell whether a list finds errors just allowed."""
    return _NEAR[0] <= ratio_by(lines, errors) <= _NEAR[1]


def _missing(
    rows: Sequence[FrameRow],
    lines: Sequence[FitLine],
    errors: Sequence[float],
    solver: LinearSolver,
) -> list[FitLine]:
    """Return the line that rules these errors, if none of the list reaches as high."""
    fit = best_fit_up(rows, errors, solver)
    if not math.isfinite(fit.ratio) or fit.ratio <= ratio_by(lines, errors) + _SHORT:
        return []
    return [line_of(rows, tuple((i, w) for i, w in enumerate(fit.weights) if w > 0.0))]


def _distinct(lines: Iterable[FitLine]) -> tuple[FitLine, ...]:
    return tuple({tuple(round(x, 9) for x in line): line for line in lines}.values())


def _spread_errors(frame: Frame, stream: random.Random) -> tuple[float, ...]:
    """Return errors of a size and mixture that bring every kind of limit into play."""
    errors = [0.0] * (SLOTS * len(frame.sides))
    scale, fence = (math.radians(stream.gauss(0.0, 0.15)) for _ in range(2))
    size_mm = stream.gauss(0.0, 1.0)
    for index in range(len(frame.sides)):
        at = SLOTS * index
        for slot, sign in ((Slot.TURN_START, -1.0), (Slot.TURN_END, 1.0)):
            errors[at + slot] = scale + sign * fence + math.radians(stream.gauss(0.0, 0.1))
        for slot in (Slot.LENGTH_START, Slot.LENGTH_END):
            errors[at + slot] = size_mm / 2.0 + stream.gauss(0.0, 0.5)
        errors[at + Slot.WIDTH] = stream.gauss(0.0, 0.3)
        for slot in (Slot.REVEAL_START, Slot.REVEAL_MIDDLE, Slot.REVEAL_END):
            errors[at + slot] = stream.gauss(0.0, 1.0)
    return tuple(errors)
