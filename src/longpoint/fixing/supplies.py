"""What else is used up: glue, pins, filler, abrasives, packers.

References:
    200 ml of glue to the square metre of each face: common practice, no source; the same for both
    faces of a mitre gives about 2.5 ml for a window of four mitres in 57 x 19 trim. A bead of 4 mm
    along the back takes its own section. One millilitre of filler for 20 holes, one 120-grit disc
    for 12 to 20 mitres, a bead of 4 x 4 mm of caulk along each edge: common practice, no source.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from longpoint.fixing.nailing import NailedPiece, Nailing, Treatment
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.speech.said import say
from longpoint.survey.house import House

GLUE_ML_PER_MM2: Final = 200.0 / 1e6
BACK_BEAD_MM: Final = 4.0
BACK_BEAD_ML_PER_MM: Final = math.pi / 4.0 * BACK_BEAD_MM**2 / 1000.0
HOLES_PER_ML: Final = 20
MITRES_PER_DISC: Final = (12, 20)
CAULK_ML_PER_MM: Final = 4.0 * 4.0 / 2.0 / 1000.0
PIN_SPACING_MM: Final = 200.0
LEAST_PACKED_MM: Final = 0.75
"""A corner of the lining nearer to the wall's face than that is left alone."""

_JOINED: Final = frozenset({CutKind.MITRE, CutKind.COMPOUND, CutKind.BEVEL})
_ON_FLOOR: Final = frozenset({Role.RUN})


@dataclass(frozen=True, slots=True, kw_only=True)
class Packer:
    """One corner where the lining isn't flush with the wall.

    Attributes:
        opening: Mark of the opening.
        corner: Which corner, in words.
        thickness_mm: How thick the packer or wedge is. > 0. [mm]
        is_behind_inner: True under the inner edge (the lining sits shy), False under the outer.
    """

    opening: str
    corner: str
    thickness_mm: float
    is_behind_inner: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Supplies:
    """What is used up at some pieces.

    Attributes:
        holes: Nail holes.
        mitres: Joints that are glued.
        glue_ml: For those joints. [ml]
        back_glue_ml: For backs that no nail holds. [ml]
        pins: One across each mitre, and those that hold a glued back.
        filler_ml: For the holes. [ml]
        discs: Least and most sanding discs.
        caulk_mm: Edges to caulk. [mm]
        caulk_ml: What that takes. [ml]
    """

    holes: int
    mitres: int
    glue_ml: float
    back_glue_ml: float
    pins: int
    filler_ml: float
    discs: tuple[int, int]
    caulk_mm: float
    caulk_ml: float


def supplies_for(nailing: Nailing, pieces: Iterable[NailedPiece]) -> Supplies:
    """Return what is used up at some pieces of a house.

    Args:
        nailing: How the house is nailed.
        pieces: Those pieces.
    """
    here = tuple(pieces)
    joined = [
        (nailed.piece, end)
        for nailed in here
        for end in (nailed.piece.left, nailed.piece.right)
        if end.kind in _JOINED
    ]
    mitres = (len(joined) + 1) // 2
    glued_mm = sum(_glued_back_mm(nailing, nailed) for nailed in here)
    holes = sum(nails_in(nailing, nailed) for nailed in here)
    caulk_mm = sum(caulk_edges_mm(nailed) for nailed in here)
    low, high = MITRES_PER_DISC
    return Supplies(
        holes=holes,
        mitres=mitres,
        glue_ml=sum(end_glue_ml(piece, end) for piece, end in joined),
        back_glue_ml=glued_mm * BACK_BEAD_ML_PER_MM,
        pins=mitres + math.ceil(glued_mm / PIN_SPACING_MM),
        filler_ml=holes / HOLES_PER_ML,
        discs=(math.ceil(mitres / high), math.ceil(mitres / low)),
        caulk_mm=caulk_mm,
        caulk_ml=caulk_mm * CAULK_ML_PER_MM,
    )


def end_glue_ml(piece: Piece, end: EndCut) -> float:
    """Return the glue on the face of one mitred end. [ml]

    Example:
        >>> from longpoint.pieces.piece import SQUARE_CUT
        >>> mitre = EndCut(kind=CutKind.MITRE, mitre_deg=45.0)
        >>> trim = Piece(
        ...     mark="W1-head",
        ...     role=Role.HEAD,
        ...     profile="OG57",
        ...     width_mm=57,
        ...     thickness_mm=19,
        ...     inner_mm=1000,
        ...     outer_mm=1114,
        ...     back_mm=1114,
        ...     left=mitre,
        ...     right=mitre,
        ... )
        >>> round(8 * end_glue_ml(trim, mitre), 2)
        2.45
    """
    across_mm = piece.width_mm / math.cos(math.radians(end.mitre_deg))
    through_mm = piece.thickness_mm / math.cos(math.radians(end.bevel_deg))
    return across_mm * through_mm * GLUE_ML_PER_MM2


def nails_in(nailing: Nailing, nailed: NailedPiece) -> int:
    """Return how many nails go into a piece; a line on which no nail does counts none."""
    section = nailing.section(nailed.section)
    if section is None:
        return 0
    pairs = zip(section.lines, nailed.counts, strict=True)
    return sum(count for line, count in pairs if line.nail is not None)


def caulk_edges_mm(nailed: NailedPiece) -> float:
    """Return the edges of a piece that meet the wall and are caulked. [mm]

    Of a set its outer edge, of skirting its upper edge, of other trim on a wall both.
    """
    piece = nailed.piece
    match nailed.treatment:
        case Treatment.SET:
            return 0.0 if piece.role is Role.CORNER_BLOCK else piece.outer_mm
        case Treatment.CEILING:
            return piece.outer_mm + piece.inner_mm
        case Treatment.WALL:
            return piece.outer_mm if piece.role in _ON_FLOOR else piece.outer_mm + piece.inner_mm
        case _:
            return 0.0


def packers(house: House) -> tuple[Packer, ...]:
    """Return the corners where the lining isn't flush, with what goes behind the trim there.

    Where the lining sits shy, the trim is packed off it by as much; where it stands proud, the
    outer edge is packed off the wall by as much, or the cut relieved: the other sheets say which.
    """
    found = []
    for opening in house.openings:
        plane = opening.readings.plane
        if plane is None:
            continue
        named = zip(_CORNERS, plane.corners_mm(), strict=True)
        found += [
            Packer(
                opening=opening.mark,
                corner=corner,
                thickness_mm=abs(out_mm),
                is_behind_inner=out_mm < 0,
            )
            for corner, out_mm in named
            if abs(out_mm) >= LEAST_PACKED_MM
        ]
    return tuple(found)


_CORNERS: Final = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))


def _glued_back_mm(nailing: Nailing, nailed: NailedPiece) -> float:
    """Return how long a bead of glue goes on the back of a piece that no nail holds there. [mm]"""
    if nailed.treatment in (Treatment.PINNED, Treatment.GLUED):
        return nailed.piece.long_mm
    section = nailing.section(nailed.section)
    if section is None:
        return 0.0
    without = sum(line.nail is None for line in section.lines)
    return without * nailed.piece.long_mm
