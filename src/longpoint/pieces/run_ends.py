"""How a skirting board's end is cut, and what that does to its back and face.

Theta is the corner inside the room: under 180 internal, over 180 external. A corner cut across the
thickness t leaves the face shorter than the back by t cot(theta / 2) at that end; negative, so
longer, at an external corner.
"""

import math
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.boards import Stop
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut
from longpoint.survey.rooms import RunEnd
from longpoint.trims.skirting_joints import (
    Seat,
    WallCut,
    along_lean_cut,
    corner_cut,
    flat_cut,
    rake_mitre_deg,
    through_cut,
)

RETURN_BEVEL_DEG: Final = -45.0
"""A return goes back to the wall square, so both pieces take half of it."""


LEAST_CLIMB_MM: Final = 0.5
"""A board whose end would be less out of plumb over its height is cut as if it lay level."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutEnd:
    """One end of a board, cut.

    Attributes:
        cut: The cut, for the board lying on its back.
        back_mm: How far the back's lower edge stops short of what the end stops at; negative where
            it runs past.
        face_mm: The same of the face's lower edge.
        top_mm: How much further out than the lower edges the upper ones reach.
    """

    cut: EndCut
    back_mm: float = 0.0
    face_mm: float = 0.0
    top_mm: float = 0.0


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


def cut_end(stop: Stop, mine: Seat, *, runs_through: bool) -> CutEnd:
    """Return how an end is cut.

    Args:
        stop: What the end stops at.
        mine: How the board lies; one that hardly climbs is taken as level.
        runs_through: At an internal corner, True when this board runs through to the wall and the
            other is scribed over it. Of no meaning elsewhere.

    Returns:
        The cut end. A board that runs through stops short of a corner under 90 and of a wall that
        leans into the room, so that it does not jam.

    Example:
        >>> board = Seat(width_mm=90.0, thickness_mm=19.0)
        >>> end = cut_end(Stop(kind=RunEnd.INTERNAL), board, runs_through=False)
        >>> end.cut.kind.value, end.cut.bevel_deg, end.back_mm, round(end.face_mm, 3)
        ('scribe', 45.0, 0.0, 19.0)

    References:
        Plan geometry: the face lines of two boards of thickness t meet t cot(theta / 2) from the
        corner, measured along either wall; for walls that lean see `trims.skirting_joints`.
    """
    if mine.width_mm * math.tan(math.radians(abs(mine.climb_deg))) < LEAST_CLIMB_MM:
        mine = replace(mine, climb_deg=0.0)
    match stop.kind:
        case RunEnd.SQUARE | RunEnd.ARCHITRAVE:
            return _made(along_lean_cut(mine, stop.lean_deg), CutKind.MITRE)
        case RunEnd.RETURN:
            cut = EndCut(kind=CutKind.BEVEL, bevel_deg=RETURN_BEVEL_DEG)
            return CutEnd(cut=cut, back_mm=mine.thickness_mm)
        case RunEnd.RAKE:
            mitre_deg = rake_mitre_deg(stop.rake_deg - mine.climb_deg)
            return _made(flat_cut(mine, mitre_deg), CutKind.MITRE)
        case RunEnd.INTERNAL if runs_through:
            return _through(stop, mine)
        case RunEnd.INTERNAL | RunEnd.EXTERNAL:
            return _corner(stop, mine)


def _through(stop: Stop, mine: Seat) -> CutEnd:
    other = replace(mine, lean_deg=stop.lean_deg, climb_deg=0.0)
    if _is_plain(stop, mine):
        jam_mm = mine.thickness_mm / math.tan(math.radians(stop.corner_deg))
        short_mm = max(0.0, jam_mm)
        return CutEnd(cut=SQUARE_CUT, back_mm=short_mm, face_mm=short_mm)
    return _made(through_cut(stop.corner_deg, mine, other), CutKind.MITRE)


def _corner(stop: Stop, mine: Seat) -> CutEnd:
    is_internal = stop.kind is RunEnd.INTERNAL
    if _is_plain(stop, mine):
        bevel_deg = corner_bevel_deg(stop.corner_deg)
        return CutEnd(
            cut=EndCut(kind=CutKind.SCRIBE if is_internal else CutKind.BEVEL, bevel_deg=bevel_deg),
            face_mm=mine.thickness_mm * math.tan(math.radians(bevel_deg)),
        )
    other = replace(mine, lean_deg=stop.lean_deg, climb_deg=0.0)
    cut = corner_cut(stop.corner_deg, mine, other)
    return _made(cut, CutKind.SCRIBE if is_internal else CutKind.COMPOUND)


def _is_plain(stop: Stop, mine: Seat) -> bool:
    """Tell whether both walls are plumb and the board lies level."""
    return stop.lean_deg == 0 and mine.lean_deg == 0 and mine.climb_deg == 0


def _made(cut: WallCut, kind: CutKind) -> CutEnd:
    """Return an end from its geometry; one that comes out square is square."""
    mitre_deg, bevel_deg = (round(angle, 9) + 0.0 for angle in cut.angles)
    is_square = mitre_deg == 0 and bevel_deg == 0
    if kind is CutKind.COMPOUND and mitre_deg == 0:
        kind = CutKind.BEVEL
    return CutEnd(
        cut=SQUARE_CUT
        if is_square
        else EndCut(kind=kind, mitre_deg=mitre_deg, bevel_deg=bevel_deg),
        back_mm=cut.short.back_bottom_mm,
        face_mm=cut.short.face_bottom_mm,
        top_mm=cut.short.back_bottom_mm - cut.short.back_top_mm,
    )
