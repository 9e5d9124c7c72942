"""How the pieces lie: every gap, step and quirk as seen, and what each tap does to it."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.forecast.fitup.frame import MOVES, FitLimits, Frame, FrameRow, RowKind, frame_rows
from longpoint.forecast.tapping.seen import SeenFrame

GAPS: Final = frozenset({RowKind.HEEL_GAP, RowKind.TOE_GAP})


class TapPlace(StrEnum):
    """Where a piece is tapped; of each piece three, in this order."""

    SLIDE = "slide"
    """On its end, so that it goes along its side; positive anticlockwise."""
    START = "start"
    """On the edge at its first end, which goes out (positive) or in; the other end stays."""
    END = "end"
    """On the edge at its other end."""


PLACES: Final = tuple(TapPlace)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tap:
    """One tap, or a few in the same place.

    Attributes:
        piece: Index of the piece in the frame.
        place: Where it is tapped.
        move_mm: How far it goes there; sign as in `TapPlace`.
    """

    piece: int
    place: TapPlace
    move_mm: float

    @property
    def column(self) -> int:
        """Where this kind of tap stands among all of the frame's."""
        return len(PLACES) * self.piece + PLACES.index(self.place)


@dataclass(frozen=True, slots=True, kw_only=True)
class LieRow:
    """One gap, step or quirk.

    Attributes:
        kind: What it is.
        place: Index of its joint; of its side for a quirk.
        now_mm: As seen; for what was not read, what stands in for it.
        is_read: Whether it was read.
        taps: Change per millimetre of each tap, (3 n,).
        low_mm: How far below 0 it may be at a fit ratio of 1, as a positive number.
        high_mm: How far above.
    """

    kind: RowKind
    place: int
    now_mm: float
    is_read: bool
    taps: tuple[float, ...]
    low_mm: float
    high_mm: float

    @property
    def is_gap(self) -> bool:
        """Tell whether it is an end of a joint."""
        return self.kind in GAPS

    def after_mm(self, moves_mm: tuple[float, ...]) -> float:
        """Return what it becomes. [mm]"""
        return self.now_mm + self.change_mm(moves_mm)

    def change_mm(self, moves_mm: tuple[float, ...]) -> float:
        """Return what the taps add to it. [mm]"""
        return math.fsum(a * m for a, m in zip(self.taps, moves_mm, strict=True))

    def ratio(self, value_mm: float) -> float:
        """Return a value of this row over what is allowed of it; a gap below 0 counts nothing."""
        allowed_mm = self.high_mm if value_mm > 0.0 else self.low_mm
        return abs(value_mm) / allowed_mm if allowed_mm > 0.0 else 0.0


def lie_of(frame: Frame, seen: SeenFrame, limits: FitLimits) -> tuple[LieRow, ...]:
    """Return how the pieces lie.

    Args:
        frame: The set.
        seen: What was read of it, checked.
        limits: What counts as a fit.

    Returns:
        Of each joint heel gap, toe gap, step at the heel and step at the toe; of each side the
        quirk at start, middle and end. A step not read is taken as flush, and the toe's, which
        never is, as the heel's; a quirk not read as the mean of the others of its side, and as
        planned without any.
    """
    values = (*_joint_values(seen), *_quirk_values(frame, seen))
    rows = frame_rows(frame, limits)
    return tuple(
        LieRow(
            kind=row.kind,
            place=row.place,
            now_mm=now_mm,
            is_read=is_read,
            taps=_taps(frame, row.moves),
            low_mm=opposite.limit_mm,
            high_mm=row.limit_mm,
        )
        for (now_mm, is_read), row, opposite in zip(values, rows[0::2], rows[1::2], strict=True)
    )


def reading_rows(frame: Frame) -> tuple[FrameRow, ...]:
    """Return the rows of a frame that stand for readings, in the order of `lie_of`."""
    return frame_rows(frame, FitLimits(gap_mm=1.0))[0::2]


def moves_of(count: int, taps: Iterable[Tap]) -> tuple[float, ...]:
    """Return what a number of taps come to, by place, (3 n,). [mm]"""
    moves_mm = [0.0] * (len(PLACES) * count)
    for tap in taps:
        moves_mm[tap.column] += tap.move_mm
    return tuple(moves_mm)


def _taps(frame: Frame, moves: tuple[float, ...]) -> tuple[float, ...]:
    """Turn changes per slide, shift and turn into changes per tap.

    References:
        Start out by a and end out by b: shift (a + b) / 2, turn anticlockwise (a - b) / length.
    """
    out: list[float] = []
    for index, side in enumerate(frame.sides):
        slide, shift, turn = moves[MOVES * index : MOVES * (index + 1)]
        per_mm = turn / side.start.distance_mm(side.end)
        out += (slide, shift / 2.0 + per_mm, shift / 2.0 - per_mm)
    return tuple(out)


def _joint_values(seen: SeenFrame) -> Iterable[tuple[float, bool]]:
    for joint in seen.joints:
        for value in (joint.heel_mm, joint.toe_mm, joint.step_mm):
            yield (0.0 if value is None else value, value is not None)
        yield (joint.step_mm or 0.0, False)


def _quirk_values(frame: Frame, seen: SeenFrame) -> Iterable[tuple[float, bool]]:
    for index in range(len(frame.sides)):
        quirks = seen.quirks_of(index)
        values = (quirks.start_mm, quirks.middle_mm, quirks.end_mm)
        known = [value for value in values if value is not None]
        mean_mm = math.fsum(known) / len(known) if known else 0.0
        for value in values:
            yield (mean_mm if value is None else value, value is not None)
