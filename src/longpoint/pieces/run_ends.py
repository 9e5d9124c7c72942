"""How a skirting board's end is cut, and what that does to its back and face.

Theta is the corner inside the room: under 180 internal, over 180 external. A corner cut across the
thickness t leaves the face shorter than the back by t cot(theta / 2) at that end; negative, so
longer, at an external corner.
"""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.boards import Stop
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut
from longpoint.survey.rooms import RunEnd

RETURN_BEVEL_DEG: Final = -45.0
"""A return goes back to the wall square, so both pieces take half of it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutEnd:
    """One end of a board, cut.

    Attributes:
        cut: The cut, for the board lying on its back.
        back_mm: How far the back stops short of what the end stops at; >= 0.
        face_mm: The same of the face; negative where the face runs past.
    """

    cut: EndCut
    back_mm: float = 0.0
    face_mm: float = 0.0


def corner_bevel_deg(corner_deg: float) -> float:
    """Return the bevel that halves a corner, for a board lying flat on its back.

    Args:
        corner_deg: Corner inside the room, 0 to 360. [deg]

    Returns:
        Off square: positive leaves the back longer (internal), negative the face (external).

    Example:
        >>> corner_bevel_deg(90.0), corner_bevel_deg(269.5), corner_bevel_deg(225.0)
        (45.0, -44.75, -22.5)
    """
    return 90.0 - corner_deg / 2.0


def cut_end(stop: Stop, thickness_mm: float, *, runs_through: bool) -> CutEnd:
    """Return how an end is cut.

    Args:
        stop: What the end stops at.
        thickness_mm: Thickness of the board. > 0. [mm]
        runs_through: At an internal corner, True when this board runs through to the wall and the
            other is scribed over it. Of no meaning elsewhere.

    Returns:
        The cut end. A board that runs through into a corner under 90 stops t cot(theta) short, so
        that its face does not jam against the other wall.

    Example:
        >>> end = cut_end(Stop(kind=RunEnd.INTERNAL), 19.0, runs_through=False)
        >>> end.cut.kind.value, end.cut.bevel_deg, end.back_mm, round(end.face_mm, 3)
        ('scribe', 45.0, 0.0, 19.0)

    References:
        Plan geometry: the face lines of two boards of thickness t meet t cot(theta / 2) from the
        corner, measured along either wall.
    """
    match stop.kind:
        case RunEnd.SQUARE | RunEnd.ARCHITRAVE:
            return CutEnd(cut=SQUARE_CUT)
        case RunEnd.RETURN:
            cut = EndCut(kind=CutKind.BEVEL, bevel_deg=RETURN_BEVEL_DEG)
            return CutEnd(cut=cut, back_mm=thickness_mm)
        case RunEnd.INTERNAL if runs_through:
            jam_mm = thickness_mm / math.tan(math.radians(stop.corner_deg))
            short_mm = max(0.0, jam_mm)
            return CutEnd(cut=SQUARE_CUT, back_mm=short_mm, face_mm=short_mm)
        case RunEnd.INTERNAL | RunEnd.EXTERNAL:
            kind = CutKind.SCRIBE if stop.kind is RunEnd.INTERNAL else CutKind.BEVEL
            bevel_deg = corner_bevel_deg(stop.corner_deg)
            return CutEnd(
                cut=EndCut(kind=kind, bevel_deg=bevel_deg),
                face_mm=thickness_mm * math.tan(math.radians(bevel_deg)),
            )
