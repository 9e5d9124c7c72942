"""The stretches of a stick at the saw that can still be used."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.sticks.news.at_the_saw import StickAtSaw
from longpoint.sticks.news.remains import behind_point_mm, stretch
from longpoint.sticks.plan import StickSource
from longpoint.survey.house import House

_PER_MM: Final = 100.0
_ROUNDING: Final = 1e-6
_LEAST_MM: Final = 1.0


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a stick that can still be used, as an offcut that loses a kerf at each end."""

    stick: StickAtSaw
    start_mm: float
    length_mm: float


def widest_cuts(pieces: Iterable[Piece]) -> dict[str, float]:
    """Return by profile how much of the stick a unit of kerf takes at most.

    Whichever piece comes next behind a cut, its own end may slant more than that cut.
    """
    widest: dict[str, float] = {}
    for piece in pieces:
        steeper = max(stretch(piece.left), stretch(piece.right))
        widest[piece.profile] = max(widest.get(piece.profile, 1.0), steeper)
    return widest


def usable_parts(stick: StickAtSaw, house: House, widest: Mapping[str, float]) -> list[Part]:
    """Return what can still be used of a stick behind the pieces that stay on it.

    A bad zone parts it. The cut behind the last piece takes its kerf, and a new stick keeps
    its end trims; a part is then taken as an offcut, which loses a kerf at each of its ends.

    Args:
        stick: The stick.
        house: Its saw and profiles.
        widest: From `widest_cuts`.
    """
    kerf_mm = house.saw.kerf_mm
    is_stock = stick.source is StickSource.STOCK
    trim_mm = max(house.saw.end_trim_mm, kerf_mm) if is_stock else kerf_mm
    stays = (*stick.done, *stick.next)
    start_mm, lost_mm = trim_mm - kerf_mm, trim_mm - kerf_mm
    if stick.rest is not None:
        profile = house.profile(stick.profile)
        size = (profile.width_mm, profile.thickness_mm)
        start_mm = max(behind_point_mm(stick.rest.left, *size))
        lost_mm = max(behind_point_mm(stick.rest.right, *size))
    if stays or stick.is_begun:
        ends = [laid.end_mm for laid in stays]
        slant = widest.get(stick.profile, 1.0) - 1.0
        start_mm = max(stick.spent_mm, *ends, 0.0) + kerf_mm * slant
    stretches = [(start_mm, stick.length_mm - lost_mm)]
    for from_mm, to_mm in sorted(stick.bad):
        stretches = [
            (start, end)
            for low, high in stretches
            for start, end in ((low, min(high, from_mm)), (max(low, to_mm), high))
            if end > start
        ]
    return [
        Part(stick, start, math.floor((end - start) * _PER_MM + _ROUNDING) / _PER_MM)
        for start, end in stretches
        if end - start > 2.0 * kerf_mm + _LEAST_MM
    ]
