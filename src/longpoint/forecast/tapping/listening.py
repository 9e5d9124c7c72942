"""What the readings of a set say of a sum of its errors, however the pieces are nailed."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.fitup.frame import MOVES, SLOTS, FitLimits, Frame, FrameRow, RowKind, Slot
from longpoint.forecast.tapping.lie import GAPS, lie_of, reading_rows
from longpoint.forecast.tapping.seen import SeenFrame
from longpoint.shape.least_squares import solve

# What is supposed before anything is read: wide for how the pieces are nailed and for what may be
# wrong with them, so that the readings decide; all assumed.
NAILED_MM: Final = 15.0
NAILED_TURN_RAD: Final = 0.015
SHARED_TURN_RAD: Final = math.radians(1.0)
LENGTH_END_MM: Final = 2.0
REVEAL_MM: Final = 0.5
WIDTH_MM: Final = 0.15

LINEAR_U_MM: Final = 0.02
"""Of the frame's linear rows against true polygons, for moves of a millimetre or so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What the readings say of one sum of errors.

    Attributes:
        value: Its best estimate, in the sum's own unit.
        u: Its standard uncertainty, from feeler, rule, and what was not read.
    """

    value: float
    u: float


def listen(
    frame: Frame,
    seen: SeenFrame,
    sums: tuple[tuple[float, ...], ...],
    *,
    cut_u_rad: float,
) -> tuple[Heard, ...]:
    """Return what the readings say of sums of errors.

    Args:
        frame: The set.
        seen: What was read, checked; something must be.
        sums: Weights of the errors, slot after slot as in the frame, (k, 8 n).
        cut_u_rad: How far single cuts may be off on their own. [rad]

    Returns:
        One estimate per sum; with nothing to tell it, a value near 0 and a wide u.

    References:
        Linear least squares with weak priors: moves m ~ (0, P), errors e ~ (0, K), readings
        y = A m + B e + noise N; with C = A P A' + B K B' + N the estimate of f'e is f'K B' C^-1 y,
        its variance f'K f - f'K B' C^-1 B K f.
    """
    rows, values = _read(frame, seen)
    noise = tuple(_noise(row, seen) for row in rows)
    moved = tuple(_scaled(row.moves, _move_scales(frame)) for row in rows)
    scales = _error_scales(frame, cut_u_rad)
    off = tuple((*_scaled(row.errors, scales), _shared(row.errors)) for row in rows)
    # One long row per reading: its moves and errors, each in units of what is supposed of it.
    whole = tuple((*m, *e) for m, e in zip(moved, off, strict=True))
    size = range(len(rows))
    half = [[_dot(whole[i], whole[j]) for j in range(i + 1)] for i in size]
    covariance = [
        tuple(half[max(i, j)][min(i, j)] + (noise[i] if i == j else 0.0) for j in size)
        for i in size
    ]
    heard = []
    for weights in sums:
        own = (*_scaled(weights, scales), _shared(weights))
        with_rows = tuple(_dot(own, row) for row in off)
        gains = solve(covariance, with_rows)
        variance = _dot(own, own) - _dot(gains, with_rows)
        heard.append(Heard(value=_dot(gains, values), u=math.sqrt(max(variance, 0.0))))
    return tuple(heard)


def _read(frame: Frame, seen: SeenFrame) -> tuple[tuple[FrameRow, ...], tuple[float, ...]]:
    lie = lie_of(frame, seen, FitLimits(gap_mm=1.0))
    read = [
        (row, seen_row.now_mm)
        for row, seen_row in zip(reading_rows(frame), lie, strict=True)
        if seen_row.is_read
    ]
    return tuple(row for row, _ in read), tuple(value for _, value in read)


def _noise(row: FrameRow, seen: SeenFrame) -> float:
    """Return the variance of one reading."""
    if row.kind in GAPS:
        return seen.feeler_mm**2 / 12.0 + LINEAR_U_MM**2
    u_mm = seen.quirk_u_mm if row.kind is RowKind.QUIRK else seen.step_u_mm
    return u_mm**2 + LINEAR_U_MM**2


def _move_scales(frame: Frame) -> tuple[float, ...]:
    return (NAILED_MM, NAILED_MM, NAILED_TURN_RAD)[:MOVES] * len(frame.sides)


def _error_scales(frame: Frame, cut_u_rad: float) -> tuple[float, ...]:
    of_slot = {
        Slot.LENGTH_START: LENGTH_END_MM,
        Slot.LENGTH_END: LENGTH_END_MM,
        Slot.TURN_START: cut_u_rad,
        Slot.TURN_END: cut_u_rad,
        Slot.WIDTH: WIDTH_MM,
        Slot.REVEAL_START: REVEAL_MM,
        Slot.REVEAL_MIDDLE: REVEAL_MM,
        Slot.REVEAL_END: REVEAL_MM,
    }
    return tuple(of_slot[slot] for slot in Slot) * len(frame.sides)


def _shared(errors: tuple[float, ...]) -> float:
    """Return what all cuts turned alike, as by one saw, do to a row; in units of its prior."""
    turns = math.fsum(errors[Slot.TURN_START :: SLOTS]) + math.fsum(errors[Slot.TURN_END :: SLOTS])
    return SHARED_TURN_RAD * turns


def _scaled(values: tuple[float, ...], scales: tuple[float, ...]) -> tuple[float, ...]:
    return tuple(a * b for a, b in zip(values, scales, strict=True))


def _dot(left: tuple[float, ...], right: tuple[float, ...]) -> float:
    return math.fsum(a * b for a, b in zip(left, right, strict=True))
