"""Ends that lean about alike, taken as one: what thousands of pieces ask of sticks, made simple.

Along one line of the stick (`longpoint.sticks.lay.bound`) a piece has its base, half a kerf for
each of its ends included. With p the lean of a right end and q that of the left end that follows
it, a joint then takes |p - q| - line x (p - q) more, and nothing on the line where it loses
nothing; an end at the end of the stick takes its tip, and gives back half its kerf.
"""

from collections.abc import Collection, Mapping, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from longpoint.sticks.batch.parts_of_sticks import ManyPieces
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import ROUNDED_UP, best_line, floor_of
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search.patterns import groups_of

_APART: Final = 200
_MOST: Final = 6
"""Leans so far apart are of two classes, while there are no more classes. [0.01 mm]"""


class _Range(NamedTuple):
    """Least and largest lean of a class, and its kerfs. [0.01 mm]"""

    low: int
    high: int
    least_kerf: int
    most_kerf: int


def many_pieces(work: Workload, bars: Bars) -> ManyPieces:
    """Return what pieces ask of sticks, each a little less than it does."""
    groups = groups_of(work)
    firsts = [group[0] for group in groups]
    classes = _classes((*work.left_lean, *work.right_lean))
    ends = {
        *zip(work.left_lean, work.left_kerf, strict=True),
        *zip(work.right_lean, work.right_kerf, strict=True),
    }
    ranges = _ranges(ends, classes)
    line, bases = best_line(work), floor_of(work, bars.bars).bases
    kerf = max((*work.left_kerf, *work.right_kerf))
    return ManyPieces(
        needs=tuple(max(1, bases[piece]) for piece in firsts),
        lefts=tuple(classes[work.left_lean[piece]] for piece in firsts),
        rights=tuple(classes[work.right_lean[piece]] for piece in firsts),
        can_turn=tuple(work.can_turn[piece] for piece in firsts),
        copies=tuple(len(group) for group in groups),
        gaps=tuple(tuple(_gap(right, left, line) for left in ranges) for right in ranges),
        left_tips=tuple(_tip(some, -line, kerf) for some in ranges),
        right_tips=tuple(_tip(some, line, kerf) for some in ranges),
        # Half the widest kerf is given back at either end; what an end gives less is in its tip.
        rooms=tuple(bar.room + kerf + ROUNDED_UP for bar in bars.bars),
        costs=tuple(bar.cost // bars.step for bar in bars.bars),
        limits=tuple(bar.count for bar in bars.bars),
    )


def _ranges(ends: Collection[tuple[int, int]], classes: Mapping[int, int]) -> tuple[_Range, ...]:
    found: dict[int, list[tuple[int, int]]] = {}
    for lean, kerf in ends:
        found.setdefault(classes[lean], []).append((lean, kerf))
    return tuple(
        _Range(
            min(lean for lean, _ in some),
            max(lean for lean, _ in some),
            min(kerf for _, kerf in some),
            max(kerf for _, kerf in some),
        )
        for _, some in sorted(found.items())
    )


def _gap(right: _Range, left: _Range, line: int) -> int:
    """The least that is lost between two ends of these classes. [0.01 mm]"""
    kerf = max(right.least_kerf - left.most_kerf, left.least_kerf - right.most_kerf, 0) // 2
    return kerf + _least(right.low - left.high, right.high - left.low, line)


def _tip(some: _Range, line: int, kerf: int) -> int:
    """The least that an end of a class takes at the end of a stick. [0.01 mm]"""
    return (kerf - some.most_kerf) // 2 + _least(some.low, some.high, line)


def _least(low: int, high: int, line: int) -> int:
    """The least of |x| - line x. [0.01 mm]"""
    # It falls towards nought from either side, or stays.
    nearest = min(max(low, 0), high)
    return abs(nearest) - line * nearest


def _classes(leans: Sequence[int]) -> dict[int, int]:
    """The class of each lean: parted at the widest gaps."""
    ordered = sorted(set(leans))
    apart = sorted(
        ((high - low, high) for low, high in pairwise(ordered) if high - low >= _APART),
        reverse=True,
    )[: _MOST - 1]
    firsts = sorted(high for _, high in apart)
    return {lean: sum(first <= lean for first in firsts) for lean in ordered}
