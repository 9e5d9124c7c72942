"""Every piece of a house with its lines of nails, alike sections taken together."""

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.fixing.nail_count import apart_mm, nails_along
from longpoint.fixing.nail_lines import (
    END_COVER_MM,
    INTO_LINING_MM,
    INTO_STUD_MM,
    Bed,
    Into,
    NailLine,
    Nails,
    nail_line,
    no_nail,
)
from longpoint.fixing.other_beds import (
    CORNICE_EDGE_MM,
    EDGE_SHARE,
    PACKED_APART_MM,
    packed_bed,
    spring_deg,
    sprung_beds,
)
from longpoint.fixing.wall_behind import WallBehind, wall_behind
from longpoint.pieces.piece import Piece, Role
from longpoint.speech.said import say
from longpoint.survey.house import House

LINING_BACK_MM: Final = 2.5
"""Timber left between a line and the lining's back."""
FURTHEST_IN_MM: Final = 20.0
"""The inner line stands no further from the trim's inner edge."""
NEAREST_EDGE_MM: Final = 6.0
"""No line stands nearer to an edge of the trim or of a stud. All three: common practice."""
OUTER_EDGE_MM: Final = 12.0
ONE_LINE_MM: Final = 60.0
"""Trim along a wall that is no higher takes one line of nails, higher trim two."""


class Treatment(StrEnum):
    """How a piece is fixed."""

    SET = "two lines: lining and stud"
    WALL = "to the studs"
    UNDER = "to what it covers"
    PINNED = "glue and pins"
    GLUED = "glue alone"
    CEILING = "to wall and ceiling"
    LINED = "through packers to the stud"
    BACKED = "to what lies behind a splay"
    BEDDED = "on packers and adhesive"
    BATTENS = "on battens"
    BRACKETS = "on brackets"
    """The last four have no nails here: it hangs on what is behind, or on a maker's word."""


NAILED: Final = frozenset(
    {Treatment.SET, Treatment.WALL, Treatment.UNDER, Treatment.CEILING, Treatment.LINED}
)
"""Those whose nails are worked out here."""
_LININGS: Final = {"jamb-lining": Treatment.LINED, "extension-lining": Treatment.PINNED}


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """Pieces of one profile over one kind of edge, nailed alike.

    Attributes:
        name: Its letter on the sheet.
        treatment: How its pieces are fixed.
        profile: Name of the profile.
        width_mm: Face width of the profile.
        thickness_mm: Its thickness.
        thin_mm: Its thickness at the inner edge.
        spring_deg: Angle between a cornice's back and the wall; 0 for all else.
        quirk_mm: Lining left showing; 0 where there is no lining.
        lining_mm: Thickness of the lining's edge; 0 where there is none.
        lines: Its lines of nails, the inner (lower) first.
    """

    name: str
    treatment: Treatment
    profile: str
    width_mm: float
    thickness_mm: float
    thin_mm: float
    quirk_mm: float
    lining_mm: float
    lines: tuple[NailLine, ...]
    spring_deg: float = 0.0

    @property
    def in_a_row(self) -> int:
        """How many nails stand side by side along a line: a lining takes them in pairs."""
        return 2 if self.treatment is Treatment.LINED and self.width_mm > ONE_LINE_MM else 1


@dataclass(frozen=True, slots=True, kw_only=True)
class NailedPiece:
    """One piece with what goes into it.

    Attributes:
        piece: The piece.
        section: Letter of its section; empty where no nails are worked out.
        treatment: How it is fixed.
        counts: Nails along each line of its section.
        apart_mm: How far apart they stand along each line.
    """

    piece: Piece
    section: str
    treatment: Treatment
    counts: tuple[int, ...] = ()
    apart_mm: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Nailing:
    """How the pieces of a house are nailed.

    Attributes:
        wall: What stands behind the trim.
        sections: Kinds of section, in the order of the house.
        pieces: Every piece.
    """

    wall: WallBehind
    sections: tuple[Section, ...]
    pieces: tuple[NailedPiece, ...]

    def section(self, name: str) -> Section | None:
        """Return the section of a letter; None where there is none."""
        return next((each for each in self.sections if each.name == name), None)


_Key = tuple[Treatment, str, float, float, float]


def nail_house(house: House, pieces: Iterable[Piece]) -> Nailing:
    """Return how every piece of a house is nailed.

    Args:
        house: The readings, with what they tell of nails and walls.
        pieces: Its pieces.

    Returns:
        Sections, lettered in the order in which they are met, and every piece.
    """
    wall = wall_behind(house)
    sections: dict[_Key, Section] = {}
    nailed = []
    for piece in pieces:
        entry = next((each for each in house.trims if each.mark == piece.trim), None)
        treatment = treatment_of(piece, entry.kind if entry else "")
        if treatment not in NAILED:
            nailed.append(NailedPiece(piece=piece, section="", treatment=treatment))
            continue
        quirk_mm, lining_mm = _edge(house, wall, piece, treatment)
        leans_deg = spring_deg(entry) if treatment is Treatment.CEILING else 0.0
        key = (treatment, piece.profile, quirk_mm, lining_mm, leans_deg)
        if key not in sections:
            sections[key] = _section(house, wall, piece, key, letter(len(sections)))
        nailed.append(_nailed(piece, sections[key], wall))
    return Nailing(wall=wall, sections=tuple(sections.values()), pieces=tuple(nailed))


def treatment_of(piece: Piece, kind: str = "") -> Treatment:
    """Return how a piece is fixed, by its role.

    Args:
        piece: The piece.
        kind: Kind of other trim it belongs to, by its name in the catalogue; empty for none.
    """
    match piece.role:
        case Role.HEAD | Role.LEFT_LEG | Role.RIGHT_LEG | Role.SILL | Role.SIDE | Role.SEGMENT:
            return Treatment.SET
        case Role.PLINTH_BLOCK | Role.CORNER_BLOCK:
            return Treatment.SET
        case Role.RUN | Role.APRON:
            return Treatment.WALL
        case Role.RAIL if piece.is_along_wall:
            return Treatment.WALL
        case Role.STOP:
            return Treatment.UNDER
        case Role.RAIL | Role.STILE | Role.BEAD | Role.BACK_BAND:
            return Treatment.PINNED
        case Role.RETURN | Role.WEDGE:
            return Treatment.GLUED
        case Role.CORNICE:
            return Treatment.CEILING
        case Role.LINING:
            return _LININGS.get(kind, Treatment.BACKED)
        case Role.BOARD:
            return Treatment.BEDDED
        case Role.SHELF:
            return Treatment.BATTENS
        case Role.HANDRAIL:
            return Treatment.BRACKETS


def letter(index: int) -> str:
    """Return the letter of a section: A to Z, then A2 and so on.

    Example:
        >>> letter(0), letter(25), letter(26)
        ('A', 'Z', 'A2')
    """
    again, place = divmod(index, 26)
    return chr(ord("A") + place) + (str(again + 1) if again else "")


def _edge(
    house: House, wall: WallBehind, piece: Piece, treatment: Treatment
) -> tuple[float, float]:
    """Return quirk and thickness of the lining at a piece; 0 where neither counts."""
    if treatment in (Treatment.WALL, Treatment.CEILING, Treatment.LINED):
        return (0.0, 0.0)
    opening = next((each for each in house.openings if each.mark == piece.opening), None)
    lining_mm = wall.lining.value_mm
    if opening is None or treatment is Treatment.UNDER:
        return (0.0, lining_mm)
    if opening.lining_edge_mm is not None:
        lining_mm = opening.lining_edge_mm
    quirk = opening.quirk_mm
    match piece.role:
        case Role.HEAD:
            return (quirk.head, lining_mm)
        case Role.RIGHT_LEG:
            return (quirk.right, lining_mm)
        case Role.SILL:
            return (quirk.bottom, lining_mm)
        case _:
            return (quirk.left, lining_mm)


def _section(house: House, wall: WallBehind, piece: Piece, key: _Key, name: str) -> Section:
    treatment, profile, quirk_mm, lining_mm, leans_deg = key
    known = next((each for each in house.profiles if each.name == profile), None)
    thin_mm = piece.thickness_mm * (EDGE_SHARE if treatment is Treatment.CEILING else 1.0)
    if known is not None and known.thin_edge_mm is not None:
        thin_mm = min(piece.thickness_mm, known.thin_edge_mm)
    nails = Nails(held=house.fixing.nails, units=house.units)
    match treatment:
        case Treatment.SET:
            lines = _set_lines(piece, wall, quirk_mm, lining_mm, thin_mm, nails)
        case Treatment.UNDER:
            lines = (_under_line(piece, lining_mm, wall, nails),)
        case Treatment.CEILING:
            at_mm = (CORNICE_EDGE_MM, piece.width_mm - CORNICE_EDGE_MM)
            beds = sprung_beds(thin_mm, leans_deg, wall)
            lines = tuple(nail_line(bed, mm, nails) for bed, mm in zip(beds, at_mm, strict=True))
        case Treatment.LINED:
            bed = packed_bed(piece.thickness_mm, wall)
            lines = (nail_line(bed, min(FURTHEST_IN_MM, piece.width_mm / 2.0), nails),)
        case _:
            lines = _wall_lines(piece, wall, nails)
    return Section(
        name=name,
        treatment=treatment,
        profile=profile,
        width_mm=piece.width_mm,
        thickness_mm=piece.thickness_mm,
        thin_mm=thin_mm,
        quirk_mm=quirk_mm,
        lining_mm=lining_mm,
        lines=lines,
        spring_deg=leans_deg,
    )


def _set_lines(
    piece: Piece,
    wall: WallBehind,
    quirk_mm: float,
    lining_mm: float,
    thin_mm: float,
    nails: Nails,
) -> tuple[NailLine, ...]:
    furthest_in_mm = min(FURTHEST_IN_MM, piece.width_mm - NEAREST_EDGE_MM)
    inner_x = min(lining_mm - LINING_BACK_MM, quirk_mm + furthest_in_mm)
    # Between its thin edge and its thickest a section is taken to rise evenly for what has to
    # hold; a tip goes in as deep as behind the thin edge.
    share = min(max((inner_x - quirk_mm) / piece.width_mm, 0.0), 1.0)
    lining = Bed(
        into=Into.LINING,
        through_mm=thin_mm + share * (piece.thickness_mm - thin_mm),
        thin_mm=thin_mm,
        least_hold_mm=INTO_LINING_MM,
        cover_mm=max(0.0, inner_x),
        is_sideways=True,
        trim_mm=piece.thickness_mm,
    )
    if inner_x < quirk_mm + NEAREST_EDGE_MM:
        middle = max(0.0, (lining_mm - quirk_mm) / 2.0)
        why = say("too little of the lining lies under the trim to nail into")
        inner = no_nail(lining, middle, (), why)
    else:
        inner = nail_line(lining, inner_x - quirk_mm, nails)
    return (inner, _stud_beside(piece, wall, quirk_mm, lining_mm, nails))


def _stud_beside(
    piece: Piece, wall: WallBehind, quirk_mm: float, lining_mm: float, nails: Nails
) -> NailLine:
    """Return the line into the stud beside the lining: as far out as trim and stud allow."""
    start = lining_mm + wall.packing.value_mm
    low = max(start + NEAREST_EDGE_MM, quirk_mm + NEAREST_EDGE_MM)
    high = min(
        start + wall.stud_face.value_mm - NEAREST_EDGE_MM,
        quirk_mm + piece.width_mm - OUTER_EDGE_MM,
    )
    bed = _stud_bed(piece, wall)
    if high < low:
        why = say("the trim doesn't reach over the stud beside the lining")
        return no_nail(bed, piece.width_mm - OUTER_EDGE_MM, (), why)
    return nail_line(bed, high - quirk_mm, nails)


def _wall_lines(piece: Piece, wall: WallBehind, nails: Nails) -> tuple[NailLine, ...]:
    bed = _stud_bed(piece, wall)
    if piece.width_mm <= ONE_LINE_MM:
        return (nail_line(bed, piece.width_mm / 2.0, nails),)
    edge_mm = min(FURTHEST_IN_MM, piece.width_mm / 4.0)
    return (
        nail_line(bed, edge_mm, nails),
        nail_line(bed, piece.width_mm - edge_mm, nails),
    )


def _under_line(piece: Piece, lining_mm: float, wall: WallBehind, nails: Nails) -> NailLine:
    """Return the line of a door stop, through its thickness into the lining and the stud."""
    behind_mm = lining_mm + wall.packing.value_mm + wall.stud_face.value_mm - END_COVER_MM
    bed = Bed(
        into=Into.UNDER,
        through_mm=piece.thickness_mm,
        thin_mm=piece.thickness_mm,
        least_hold_mm=INTO_LINING_MM,
        cover_mm=max(0.0, behind_mm),
        is_sideways=False,
        trim_mm=piece.thickness_mm,
    )
    return nail_line(bed, piece.width_mm / 2.0, nails)


def _stud_bed(piece: Piece, wall: WallBehind) -> Bed:
    board_mm = wall.board.value_mm
    through_mm = piece.thickness_mm + board_mm
    return Bed(
        into=Into.STUD,
        through_mm=through_mm,
        thin_mm=through_mm,
        least_hold_mm=INTO_STUD_MM,
        cover_mm=max(0.0, wall.stud_depth.value_mm - END_COVER_MM),
        is_sideways=False,
        trim_mm=piece.thickness_mm,
        board_mm=board_mm,
    )


def _nailed(piece: Piece, section: Section, wall: WallBehind) -> NailedPiece:
    first_mm = wall.first.value_mm
    spacing_mm = _spacing_mm(section, wall)
    lengths = [line_length_mm(piece, line.from_edge_mm) for line in section.lines]
    along = tuple(nails_along(length, first_mm, spacing_mm) for length in lengths)
    return NailedPiece(
        piece=piece,
        section=section.name,
        treatment=section.treatment,
        counts=tuple(section.in_a_row * count for count in along),
        apart_mm=tuple(
            apart_mm(length, first_mm, count) for length, count in zip(lengths, along, strict=True)
        ),
    )


def _spacing_mm(section: Section, wall: WallBehind) -> float:
    match section.treatment:
        case Treatment.WALL | Treatment.CEILING:
            return wall.stud_spacing.value_mm
        case Treatment.LINED:
            return PACKED_APART_MM
        case _:
            return wall.spacing.value_mm


def line_length_mm(piece: Piece, from_edge_mm: float) -> float:
    """Return how long a piece is along a line so far from its inner edge. [mm]

    Of trim along a wall, which is cut through its thickness, all lines are as long as its face.
    """
    share = min(max(from_edge_mm / piece.width_mm, 0.0), 1.0)
    return piece.inner_mm + share * (piece.outer_mm - piece.inner_mm)
