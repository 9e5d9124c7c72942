"""In what respect a frame is to fit, and which of its rows that concerns."""

from collections.abc import Sequence
from enum import StrEnum

from longpoint.forecast.fitup.frame import FrameRow, RowKind


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
            return tuple(row for row in rows if _is_quirk_or_overlap(row))
        case Respect.IN_PLANE:
            return tuple(rows)


def _is_quirk_or_overlap(row: FrameRow) -> bool:
    if row.kind is RowKind.QUIRK:
        return True
    return row.kind in (RowKind.HEEL_GAP, RowKind.TOE_GAP) and row.limit_mm == 0.0
