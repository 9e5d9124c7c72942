"""The fit ratio of a frame as the largest of finitely many lines over its errors.

By duality the best fit-up of any errors is ruled by one of a fixed list of weightings of the rows
in which no move has a say. A weighting is known by its rows; for another size of the same kind of
frame the same rows, weighed anew, do. A weighting that is missing from the list can only make the
ratio too small, and the chance of a fit too large, so lists are audited against exact programmes.
"""

import math
import random
from collections.abc import Iterable, Sequence
from enum import StrEnum
from typing import Final

from longpoint.forecast.fitup.exact import best_fit_up
from longpoint.forecast.fitup.frame import (
    SLOTS,
    FitLimits,
    Frame,
    FrameRow,
    RowKind,
    Slot,
    frame_rows,
)
from longpoint.forecast.fitup.known_sets import known_sets
from longpoint.linear.port import LinearSolver
from longpoint.linear.simplex import SimplexSolver

FitLine = tuple[float, ...]
"""Change of the fit ratio per unit of each error slot, (8 n,)."""

LEARNING_DRAWS: Final = 400
ALREADY_SEEN: Final = 60
"""A list is taken as learned once so many draws in a row brought nothing new."""

_SMALL: Final = 1e-7
_SEED: Final = 4


class Respect(StrEnum):
    """In what respect a frame is to fit."""

    GAPS = "gaps"
    """Its joints close and their edges meet, whatever that asks of the quirk."""
    QUIRK = "quirk"
    """Its quirks stay in their bands, its pieces don't overlap; joints may stand open."""
    IN_PLANE = "in-plane"
    """Both."""


def rows_of(rows: Sequence[FrameRow], respect: Respect) -> tuple[FrameRow, ...]:
    """Return the rows that count in a respect."""
    match respect:
        case Respect.GAPS:
            return tuple(row for row in rows if row.kind is not RowKind.QUIRK)
        case Respect.QUIRK:
            return tuple(row for row in rows if row.kind is RowKind.QUIRK or not row.limit_mm)
        case Respect.IN_PLANE:
            return tuple(rows)


def fit_lines(
    frame: Frame, limits: FitLimits, respect: Respect, solver: LinearSolver | None = None
) -> tuple[FitLine, ...]:
    """Return lines whose largest is the fit ratio of a frame, and 0.

    Args:
        frame: The frame.
        limits: What counts as a fit.
        respect: In what respect.
        solver: For frames of which no list is known; None: the built-in one.

    Returns:
        Lines over the frame's errors.
    """
    rows = rows_of(frame_rows(frame, limits), respect)
    known = known_sets(len(frame.sides), len(frame.joints), respect.value, _tightness(rows))
    weighed = [weights for chosen in known if (weights := row_weights(rows, chosen)) is not None]
    lines = _distinct(_line(rows, chosen) for chosen in weighed)
    if lines:
        return lines
    return learned_lines(frame, rows, solver or SimplexSolver())


def learned_lines(
    frame: Frame, rows: Sequence[FrameRow], solver: LinearSolver, lines: Sequence[FitLine] = ()
) -> tuple[FitLine, ...]:
    """Return lines with those added that exact programmes of spread errors bring to light.

    Args:
        frame: The frame.
        rows: Its rows in one respect.
        solver: Solves the programmes.
        lines: Those known beforehand.
    """
    stream = random.Random(_SEED)
    found = list(lines)
    quiet = 0
    for _ in range(LEARNING_DRAWS):
        errors = _spread_errors(frame, stream)
        fit = best_fit_up(rows, errors, solver)
        if not math.isfinite(fit.ratio) or fit.ratio <= 0.0:
            continue
        if fit.ratio > ratio_by(found, errors) * (1.0 + 1e-6) + 1e-9:
            found.append(_line(rows, tuple(enumerate(fit.active))))
            quiet = 0
        else:
            quiet += 1
        if quiet == ALREADY_SEEN:
            break
    return tuple(found)


def ratio_by(lines: Iterable[FitLine], errors: Sequence[float]) -> float:
    """Return the largest of some lines at given errors, at least 0."""
    return max(
        (math.fsum(a * e for a, e in zip(line, errors, strict=True)) for line in lines),
        default=0.0,
    )


Weights = tuple[tuple[int, float], ...]


def row_weights(rows: Sequence[FrameRow], chosen: Sequence[int]) -> Weights | None:
    """Return weights of chosen rows with which no move changes their sum, and limits add to 1.

    Returns:
        (row, weight) pairs, weights >= 0; None where the rows allow none in this frame.
    """
    count = len(chosen)
    moves = len(rows[0].moves)
    system = [[rows[i].moves[k] for i in chosen] + [0.0] for k in range(moves)]
    system.append([rows[i].limit_mm for i in chosen] + [1.0])
    _scale(system)
    for column in range(count):
        pivot_row = max(range(column, len(system)), key=lambda r: abs(system[r][column]))
        pivot = system[pivot_row][column]
        if abs(pivot) < _SMALL:
            return None
        system[column], system[pivot_row] = system[pivot_row], system[column]
        lead = [x / pivot for x in system[column]]
        system[column] = lead
        for r, row in enumerate(system):
            factor = row[column]
            if r != column and factor:
                system[r] = [x - factor * y for x, y in zip(row, lead, strict=True)]
    if any(abs(row[-1]) > _SMALL for row in system[count:]):
        return None
    weights = [row[-1] for row in system[:count]]
    largest = max(weights)
    if min(weights) < -_SMALL * max(1.0, largest):
        return None
    return tuple((i, w) for i, w in zip(chosen, weights, strict=True) if w > 0.0)


def _scale(system: list[list[float]]) -> None:
    """Bring turns, which are per radian, to the size of the other rows."""
    for index, row in enumerate(system[:-1]):
        largest = max(abs(x) for x in row)
        if largest > 0.0:
            system[index] = [x / largest for x in row]


def _line(rows: Sequence[FrameRow], weights: Weights) -> FitLine:
    total = [0.0] * len(rows[0].errors)
    for index, weight in weights:
        if weight > 0.0:
            total = [t + weight * e for t, e in zip(total, rows[index].errors, strict=True)]
    return tuple(total)


def _distinct(lines: Iterable[FitLine]) -> tuple[FitLine, ...]:
    return tuple({tuple(round(x, 9) for x in line): line for line in lines}.values())


def _tightness(rows: Sequence[FrameRow]) -> float:
    """Return the least room of a quirk against the gap allowed; infinite without quirks."""
    quirk = min((r.limit_mm for r in rows if r.kind is RowKind.QUIRK), default=math.inf)
    gap = max((r.limit_mm for r in rows if r.kind is RowKind.HEEL_GAP), default=0.0)
    return quirk / gap if gap else math.inf


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
