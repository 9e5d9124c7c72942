r"""What a piece asks of a stick: a midline and two leaning ends, in hundredths of a millimetre.

A stick lies along x. All pieces of one profile are looked at in one plane:

- FACE: seen from above as the piece lies on its back, face up. The outer edge (skirting: top edge)
  is up on the page, away from you; the depth is the face width.
- THICKNESS: seen from above as the piece stands on its bottom edge, its back at the fence, its
  face to you. The back is up on the page; the depth is the thickness. For a bevel the back plays
  the part that the outer edge plays for a mitre.

An end is a straight cut of slope s = tan(angle off square): s > 0 leans like "/", s < 0 like "\".
With a positive angle where the upper edge is the longer, s = +tan(angle) at a right end and
-tan(angle) at a left end. Its lean is the x of the upper edge less that of the midline, s x depth
/ 2.

A piece that also leans in the other plane is replaced by its shadow on the plane chosen: as long
at each end as the longest of its edges. Shadows a kerf apart belong to pieces at least a kerf
apart, so this is always safe; nothing is gained from the lean that isn't seen.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.pieces.piece import EndCut, Piece
from longpoint.survey.profiles import Profile

PER_MM: Final = 100
"""Units of the nester in one millimetre."""

_ROUNDING: Final = 1e-6


class Plane(StrEnum):
    """The plane in which the pieces of a profile are laid side by side."""

    FACE = "face"
    THICKNESS = "thickness"


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a piece on its stick.

    Attributes:
        lean: x of the upper edge less x of the midline, rounded. [0.01 mm]
        lean_mm: The same, not rounded. [mm]
        kerf: What one cut along this end takes of the stick's length, rounded up, with a hundredth
            more where the end leans, which covers the rounding of two leans. [0.01 mm]
    """

    lean: int
    lean_mm: float
    kerf: int

    @property
    def tip(self) -> int:
        """How far the end's point may stand out past its midline. [0.01 mm]"""
        return abs(self.lean) + (1 if self.lean_mm else 0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """One piece as the nester sees it.

    Attributes:
        mark: Mark of the piece.
        mid: Length along the midline, rounded up so that every edge is covered. [0.01 mm]
        low: Length along the centre of the section, rounded down, for bounds. [0.01 mm]
        left: Its left end, as it lies unturned.
        right: Its right end.
        can_turn: True when it may lie turned end for end: the ends then swap places, their slopes
            stay.
    """

    mark: str
    mid: int
    low: int
    left: End
    right: End
    can_turn: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ProfileDemand:
    """All pieces of one profile, longest first, in an order that doesn't depend on the input's."""

    profile: str
    plane: Plane
    demands: tuple[Demand, ...]


@dataclass(frozen=True, slots=True)
class _Slopes:
    across: float
    through: float

    @property
    def stretch(self) -> float:
        return math.sqrt(1.0 + self.across**2 + self.through**2)


def round_up(length_mm: float) -> int:
    """Return a demand in whole hundredths, rounded up.

    Example:
        >>> round_up(1255.301), round_up(1255.30)
        (125531, 125530)
    """
    return math.ceil(length_mm * PER_MM - _ROUNDING)


def round_down(length_mm: float) -> int:
    """Return a stock length in whole hundredths, rounded down."""
    return math.floor(length_mm * PER_MM + _ROUNDING)


def profile_demand(pieces: Sequence[Piece], profile: Profile, kerf_mm: float) -> ProfileDemand:
    """Return what the pieces of one profile ask of its sticks.

    The plane is the one in which their ends lean more, all together.

    Args:
        pieces: Pieces of this profile.
        profile: Says whether a piece may be turned end for end; only a lean in the face plane
            gains from that.
        kerf_mm: Width of cut, square to the blade. > 0. [mm]
    """
    plane = _plane(pieces)
    can_turn = profile.reversible and plane is Plane.FACE
    demands = [_demand(piece, plane, kerf_mm, can_turn) for piece in pieces]
    return ProfileDemand(
        profile=profile.name,
        plane=plane,
        demands=tuple(sorted(demands, key=_longest_first)),
    )


def _longest_first(demand: Demand) -> tuple[int, int, int, str]:
    return (-demand.mid, demand.left.lean, demand.right.lean, demand.mark)


def _plane(pieces: Sequence[Piece]) -> Plane:
    across_mm = through_mm = 0.0
    for piece in pieces:
        for cut in (piece.left, piece.right):
            slopes = _slopes(cut)
            across_mm += piece.width_mm * abs(slopes.across)
            through_mm += piece.thickness_mm * abs(slopes.through)
    return Plane.THICKNESS if through_mm > across_mm else Plane.FACE


def _slopes(cut: EndCut) -> _Slopes:
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    return _Slopes(math.tan(mitre), math.tan(bevel) / math.cos(mitre))


def _demand(piece: Piece, plane: Plane, kerf_mm: float, can_turn: bool) -> Demand:
    left, right = _slopes(piece.left), _slopes(piece.right)
    width_mm, thickness_mm = piece.width_mm, piece.thickness_mm
    face_mm = (piece.inner_mm + piece.outer_mm) / 2.0
    # Edges that don't agree with the angles are covered, not judged.
    odd_mm = abs(piece.outer_mm - piece.inner_mm - width_mm * (left.across + right.across)) / 2.0
    if plane is Plane.FACE:
        hidden_mm = thickness_mm * (max(0.0, left.through) + max(0.0, right.through))
        ends = (-left.across * width_mm / 2.0, right.across * width_mm / 2.0)
        mid_mm = face_mm + hidden_mm
    else:
        hidden_mm = width_mm * (abs(left.across) + abs(right.across)) / 2.0
        ends = (-left.through * thickness_mm / 2.0, right.through * thickness_mm / 2.0)
        mid_mm = face_mm + hidden_mm + thickness_mm * (left.through + right.through) / 2.0
    return Demand(
        mark=piece.mark,
        mid=round_up(mid_mm + odd_mm),
        low=round_down(face_mm + thickness_mm * (left.through + right.through) / 2.0),
        left=_end(ends[0], left.stretch, kerf_mm),
        right=_end(ends[1], right.stretch, kerf_mm),
        can_turn=can_turn,
    )


def _end(lean_mm: float, stretch: float, kerf_mm: float) -> End:
    lean = round(lean_mm * PER_MM)
    if lean_mm and not lean:
        # However little it leans, it has a point, and the point needs room at the stick's end.
        lean = 1 if lean_mm > 0 else -1
    spare = 1 if lean_mm else 0
    return End(lean=lean, lean_mm=lean_mm, kerf=round_up(kerf_mm * stretch) + spare)
