"""Tapering packers behind the trim: told in words, and cut from a profile where one is named."""

from dataclasses import dataclass
from typing import Final

from longpoint.pieces.face_trim import FaceTrim
from longpoint.pieces.piece import SQUARE_CUT, Piece, Role
from longpoint.pieces.proud_remedies import (
    CORNER_NAMES,
    SAID_FROM_MM,
    SIDE_NAMES,
    Packing,
    ProudCorner,
    is_proud_all_along,
    packing,
    resting,
)
from longpoint.quantities.formatting import format_length, format_unit
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening
from longpoint.survey.profiles import Profile
from longpoint.survey.readings import Plane

SLIVER_MM: Final = 0.5
"""A lining proud at both ends gets no packer thinner than what sheets print to."""

_PLACES = ("sill", "right", "head", "left")


@dataclass(frozen=True, slots=True, kw_only=True)
class Packer:
    """A tapering packer along the edge of one side's lining, behind the trim.

    Attributes:
        side: The side.
        start_mm: Thickness at the side's first corner, anticlockwise.
        end_mm: Thickness at its second corner.
        on_proud_mm: What is left of the larger of the two where that lining is as proud as its
            corner was read; 0: the packer is then left out.
        is_for_shy: True where it makes up what its lining lacks as read, so that it is never left
            out.
        wide_mm: How wide the lining's edge is under the trim.
    """

    side: int
    start_mm: float
    end_mm: float
    on_proud_mm: float
    is_for_shy: bool
    wide_mm: float


def packers(
    house: House,
    opening: Opening,
    plane: Plane,
    corners: tuple[ProudCorner, ...],
    *,
    is_second: bool = False,
) -> tuple[Packer, ...]:
    """Return which linings' edges get a packer, all round an opening that is packed.

    A shy lining is made up to the wall's plane by what it lacks; at a proud corner the lower piece
    is packed to the other's rise. Each packer tapers from one end of its piece to the other.

    Args:
        house: Gives the profiles.
        opening: Its settings.
        plane: Readings of this face.
        corners: Its corners, from `proud_corners`.
        is_second: True for the second face.

    Raises:
        PieceError: A piece would tilt more than trim is ever nailed on.
    """
    packed = {at.corner: packing(at) for at in corners if at.proud_mm > 0.0}
    found = []
    for side in (3, 2, 1, 0):
        if side == 0 and opening.layout is not Layout.ALL_ROUND:
            continue
        shy_mm = [max(0.0, -mm) for mm in _ends_mm(plane, side)]
        here = [packed.get(corner) for corner in (side, (side + 1) % 4)]
        proud = [p if p is not None and p.side == side else None for p in here]
        # Read proud at both ends, the lining itself stands so: only what it lacks is packed.
        is_proud_itself = is_proud_all_along(plane, side)
        ends_mm = [
            (mm if mm >= SAID_FROM_MM else 0.0) + _packed_mm(p, is_proud_itself=is_proud_itself)
            for mm, p in zip(shy_mm, proud, strict=True)
        ]
        if max(ends_mm) < (SLIVER_MM if is_proud_itself else 1e-9):
            continue
        at_lining = resting(house, opening, side, 0.0, is_second=is_second)
        found.append(
            Packer(
                side=side,
                start_mm=ends_mm[0],
                end_mm=ends_mm[1],
                on_proud_mm=0.0
                if is_proud_itself
                else max((p.on_proud_mm for p in proud if p), default=0.0),
                is_for_shy=is_proud_itself or not any(proud),
                wide_mm=at_lining.on_lining_mm or at_lining.flat.width_mm,
            )
        )
    return tuple(found)


def spared(
    plane: Plane, corners: tuple[ProudCorner, ...], needed: tuple[Packer, ...]
) -> tuple[int, ...]:
    """Return the sides whose piece is as high as it should be on its own lining.

    Args:
        plane: Readings of this face.
        corners: Its corners, from `proud_corners`.
        needed: Its packers, from `packers`.

    Returns:
        Sides that would be packed, were their linings not read proud at both ends.
    """
    packed = {found.side for at in corners if at.proud_mm > 0.0 and (found := packing(at))}
    laid = {packer.side for packer in needed}
    return tuple(
        side for side in (3, 2, 1, 0) if side in packed - laid and is_proud_all_along(plane, side)
    )


def spared_line(sides: tuple[int, ...]) -> str:
    """Return which sides get no packer and why, as one sentence; empty for none."""
    if not sides:
        return ""
    names = joined(say(" and the "), (SIDE_NAMES[side] for side in sides))
    linings = say("its lining was") if len(sides) == 1 else say("their linings were")
    return say(
        "No packer goes under the {names}: {linings} read proud at both ends.",
        names=names,
        linings=linings,
    )


def _packed_mm(at: Packing | None, *, is_proud_itself: bool) -> float:
    if at is None:
        return 0.0
    return at.on_proud_mm if is_proud_itself else at.thick_mm


def _ends_mm(plane: Plane, side: int) -> tuple[float, float]:
    figures = plane.corners_mm()
    return figures[side], figures[(side + 1) % 4]


def wedge_pieces(
    house: House,
    opening: Opening,
    fitted: FittedOpening,
    trim: FaceTrim,
    needed: tuple[Packer, ...],
) -> tuple[Piece, ...]:
    """Return the wedges of a face as pieces, each cut square off a stick and ripped to its taper.

    Args:
        house: Gives the profile.
        opening: Names it (`wedge`); without one nothing is cut.
        fitted: The face.
        trim: Its lines: a wedge is as long as the inner edge it lies under.
        needed: The packers.

    Returns:
        One piece for each packer that the profile is thick enough for.
    """
    if not opening.wedge:
        return ()
    profile = house.profile(opening.wedge)
    return tuple(
        _wedge(house, opening, fitted, trim, packer, profile)
        for packer in needed
        if _is_thick_enough(packer, profile)
    )


def packer_lines(
    house: House, opening: Opening, trim: FaceTrim, needed: tuple[Packer, ...], *, are_cut: bool
) -> str:
    """Return where the packers go and how thick they are, as one thing to do.

    Args:
        house: Gives units and the wedges' profile.
        opening: Names that profile, or none.
        trim: The face's lines.
        needed: The packers.
        are_cut: True when there are wedges on the cut sheet.

    Returns:
        Plain sentences.
    """
    units = house.units
    each = joined(
        "; ",
        (
            say(
                "{side_names} {packer}",
                side_names=SIDE_NAMES[packer.side],
                packer=packer_text(packer, trim, units),
            )
            for packer in needed
        ),
    )
    lines = [
        say(
            "Lay packers on the lining's edge before nailing ({units}): {each}.",
            units=format_unit(units),
            each=each,
        )
    ]
    if any(not packer.is_for_shy and not packer.on_proud_mm for packer in needed):
        lines.append(say("Leave one out where that lining stands proud itself."))
    if are_cut:
        profile = house.profile(opening.wedge)
        thick = [SIDE_NAMES[p.side] for p in needed if not _is_thick_enough(p, profile)]
        lines.append(say("The wedges are on the cut sheet."))
        if thick:
            lines.append(
                say(
                    "{profile} is too thin for that of the {thick}.",
                    profile=profile.name,
                    thick=joined(say(" and the "), thick),
                )
            )
    elif opening.wedge:
        lines.append(
            say(
                "{wedge} is too thin for them: none is on the cut sheet.",
                wedge=opening.wedge,
            )
        )
    else:
        lines.append(say("Use packers from the box, or name a wedge profile to have them cut."))
    return joined(" ", lines)


def packer_text(
    packer: Packer, trim: FaceTrim, units: Units, profile: Profile | None = None
) -> str:
    """Return the size of a packer: its taper from corner to corner, its length and width.

    Args:
        packer: The packer.
        trim: The face's lines.
        units: Unit to print in.
        profile: What it is ripped from, where that is named; no wedge is wider.
    """
    wide_mm = packer.wide_mm if profile is None else min(packer.wide_mm, _lies_mm(packer, profile))
    ends = [
        (packer.start_mm, CORNER_NAMES[packer.side]),
        (packer.end_mm, CORNER_NAMES[(packer.side + 1) % 4]),
    ]
    ends.sort(key=lambda end: -end[0])
    (most_mm, at), (least_mm, _) = ends
    most, least, long, wide = (
        format_length(mm, units) for mm in (most_mm, least_mm, _length_mm(packer, trim), wide_mm)
    )
    rest = (
        say(
            ", {on_proud} on a lining that is proud itself",
            on_proud=format_length(packer.on_proud_mm, units),
        )
        if packer.on_proud_mm
        else ""
    )
    if most == least:
        return say(
            "{most} thick all along, {long} long, {wide} wide{rest}",
            most=most,
            long=long,
            wide=wide,
            rest=rest,
        )
    return say(
        "taper {most} at the {at} to {least} over {long}, {wide} wide{rest}",
        most=most,
        at=at,
        least=least,
        long=long,
        wide=wide,
        rest=rest,
    )


def _wedge(
    house: House,
    opening: Opening,
    fitted: FittedOpening,
    trim: FaceTrim,
    packer: Packer,
    profile: Profile,
) -> Piece:
    length_mm = _length_mm(packer, trim)
    return Piece(
        mark=f"{opening.mark}{fitted.face}-wedge-{_PLACES[packer.side]}",
        role=Role.WEDGE,
        opening=opening.mark,
        room=opening.room,
        face=fitted.face,
        profile=profile.name,
        width_mm=profile.width_mm,
        thickness_mm=profile.thickness_mm,
        inner_mm=length_mm,
        outer_mm=length_mm,
        back_mm=length_mm,
        left=SQUARE_CUT,
        right=SQUARE_CUT,
        u_mm=fitted.side_u_mm[packer.side],
        method=opening.method,
        notes=(packer_text(packer, trim, house.units, profile),),
    )


def _length_mm(packer: Packer, trim: FaceTrim) -> float:
    return trim.outline.edges(packer.side).inner_mm


def _is_thick_enough(packer: Packer, profile: Profile) -> bool:
    """Tell whether the wedge can be ripped from the profile, lying either way."""
    return _most_mm(packer) <= max(profile.thickness_mm, profile.width_mm)


def _lies_mm(packer: Packer, profile: Profile) -> float:
    """Return how wide a wedge ripped from the profile can be: it lies flat if it may."""
    is_flat = _most_mm(packer) <= profile.thickness_mm
    return profile.width_mm if is_flat else profile.thickness_mm


def _most_mm(packer: Packer) -> float:
    return max(packer.start_mm, packer.end_mm)
