"""Frames and sets of their rows to be weighed: some have weights, others don't."""

from collections.abc import Iterator, Sequence

from longpoint.forecast.fitup.frame import FitLimits, FrameRow, frame_rows
from longpoint.forecast.fitup.known_sets import known_sets
from longpoint.forecast.fitup.respect import Respect, rows_of
from tests.fit_up_draws import Set

FRAMES = (Set(), Set(is_door=True), Set(room_in_mm=0.6), Set(lean_mm=60.0))


def frames_to_weigh() -> Iterator[tuple[tuple[FrameRow, ...], list[Sequence[int]]]]:
    """Yield rows and sets: those known, smaller ones first, and some that have no weights."""
    for each in FRAMES:
        frame = each.frame()
        for respect in Respect:
            rows = rows_of(frame_rows(frame, FitLimits(gap_mm=0.5)), respect)
            sets: list[Sequence[int]] = [*known_sets(frame, rows, respect)]
            sets += [(0,), (0, 1), (0, 1, 2), tuple(range(len(rows)))]
            yield rows, sorted(sets, key=len)
