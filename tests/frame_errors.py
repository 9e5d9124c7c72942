"""Chosen errors of a frame, and what its limits measure, for tests of the fit-up."""

import math
from collections.abc import Mapping, Sequence

from longpoint.forecast.fitup.frame import SLOTS, Frame, FrameRow, RowKind, Slot

ENDS = ((Slot.TURN_START, -1.0), (Slot.TURN_END, 1.0))


def errors_of(frame: Frame, sizes: Mapping[tuple[int, Slot], float]) -> tuple[float, ...]:
    """Return errors over the slots of a frame, nought but for those given by side and slot."""
    slots = [0.0] * (SLOTS * len(frame.sides))
    for (side, slot), size in sizes.items():
        slots[SLOTS * side + slot] = size
    return tuple(slots)


def saw_scale(frame: Frame, by_deg: float) -> tuple[float, ...]:
    """Every cut past its angle."""
    turn = math.radians(by_deg)
    sides = range(len(frame.sides))
    return errors_of(frame, {(i, slot): turn for i in sides for slot, _ in ENDS})


def saw_fence(frame: Frame, by_deg: float) -> tuple[float, ...]:
    """The cuts of one swing past their angle, those of the other short of it."""
    turn = math.radians(by_deg)
    sides = range(len(frame.sides))
    return errors_of(frame, {(i, slot): sign * turn for i in sides for slot, sign in ENDS})


def out_of_square(frame: Frame, by_mm: float) -> tuple[float, ...]:
    """A reveal that leans to the right by so much over its height, about its middle; window."""
    half = by_mm / 2.0
    return errors_of(
        frame,
        {
            (1, Slot.REVEAL_START): -half,
            (1, Slot.REVEAL_END): half,
            (3, Slot.REVEAL_START): -half,
            (3, Slot.REVEAL_END): half,
        },
    )


def measured(
    rows: Sequence[FrameRow], moves: Sequence[float], errors: Sequence[float]
) -> tuple[float, ...]:
    """Return what each row measures. [mm]"""
    return tuple(
        math.fsum(a * x for a, x in zip(row.moves, moves, strict=True))
        + math.fsum(a * e for a, e in zip(row.errors, errors, strict=True))
        for row in rows
    )


def upper(rows: Sequence[FrameRow], found: Sequence[float], kind: RowKind) -> dict[int, float]:
    """Return by place what the first row of a kind measures there: a gap, a step, a quirk's start.

    Of each place the first row counts upwards.
    """
    by_place: dict[int, float] = {}
    for row, value in zip(rows, found, strict=True):
        if row.kind is kind:
            by_place.setdefault(row.place, value)
    return by_place
