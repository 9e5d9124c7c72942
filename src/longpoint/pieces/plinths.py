"""Plinth blocks under the legs of a door or cased opening."""

from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.face_set import FaceSet, end_cut
from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile
from longpoint.trims.set_rings import LEFT, RIGHT

PLINTH_THIN: Final = "plinth-thin"
PLINTH_LOW: Final = "plinth-low"
PLINTH_NARROW: Final = "plinth-narrow"
PLINTH_UNUSED: Final = "plinth-unused"

_WORDS: Final = {LEFT: "left-plinth", RIGHT: "right-plinth"}


def plinth_pieces(face: FaceSet) -> tuple[Piece, ...]:
    """Return the plinth blocks, each lying at the saw as its leg does: top square, foot as read.

    The block's sides run along the leg and its top is square to them, so the leg's foot is square
    too and only the block is cut to the floor.
    """
    if not face.rings.plinths:
        return ()
    profile = face.house.profile(face.opening.plinth)
    return tuple(_plinth(face, profile, side) for side in (LEFT, RIGHT))


def plinth_name(side: int) -> str:
    """Return what stands behind the opening's mark in a plinth block's own, by its leg's side."""
    return _WORDS[side]


def _plinth(face: FaceSet, profile: Profile, side: int) -> Piece:
    edges = face.rings.plinths[side].edges()
    foot_deg = edges.end_deg if side == LEFT else edges.start_deg
    foot = end_cut(foot_deg, is_mitre=False)
    piece = face.piece(
        plinth_name(side),
        Role.PLINTH_BLOCK,
        profile,
        edges,
        notes=_notes(face, profile, foot.mitre_deg),
    )
    return replace(piece, left=foot) if side == LEFT else replace(piece, right=foot)


def _notes(face: FaceSet, profile: Profile, foot_deg: float) -> tuple[str, ...]:
    units = face.house.units
    height = format_with_unit(face.shape.plinth_height_mm, units)
    past_mm = profile.width_mm - face.trim.sides[LEFT].width_mm
    past = (
        say(", {past} past its outer edge", past=format_with_unit(past_mm, units))
        if past_mm > 0.05
        else ""
    )
    foot = (
        say(
            "; foot {foot} degrees off square, to the floor",
            foot=format_angle(abs(foot_deg)),
        )
        if foot_deg
        else ""
    )
    return (
        say("inner edge in line with the leg's inner edge{past}", past=past),
        say("{height} high on the inner edge{foot}", height=height, foot=foot),
    )


def plinth_findings(face: FaceSet) -> tuple[Finding, ...]:
    """Return what is to be said of plinth blocks beside the trim that dies into them."""
    if not face.rings.plinths:
        return _unused(face)
    plinth = face.house.profile(face.opening.plinth)
    legs = [face.trim.profiles[side] for side in (LEFT, RIGHT)]
    skirtings = skirtings_at(face.house, face.opening.mark)
    thickest = max((*legs, *skirtings), key=lambda profile: profile.thickness_mm)
    findings = []
    if plinth.thickness_mm <= thickest.thickness_mm:
        findings.append(_thin(face, plinth, thickest))
    highest = max(skirtings, key=lambda profile: profile.width_mm, default=None)
    if highest is not None and face.shape.plinth_height_mm < highest.width_mm:
        findings.append(_low(face, highest))
    widest = max(legs, key=lambda profile: profile.width_mm)
    if plinth.width_mm < widest.width_mm:
        findings.append(_narrow(face, plinth, widest))
    return tuple(findings)


def skirtings_at(house: House, mark: str) -> tuple[Profile, ...]:
    """Return the skirtings of the walls in which an opening stands; the house's where none is."""
    names = set()
    for room in house.rooms:
        for wall in room.walls:
            if mark in {place.mark for place in wall.openings}:
                names |= {
                    run.profile
                    for run in house.runs
                    if (run.room, run.wall) == (room.name, wall.mark)
                } or {wall.profile or house.skirting_profile}
    names = names or {house.skirting_profile}
    return tuple(profile for profile in house.profiles if profile.name in names)


def _unused(face: FaceSet) -> tuple[Finding, ...]:
    if not (face.opening.plinth and face.opening.stands_on_floor):
        return ()
    return (
        Finding(
            code=PLINTH_UNUSED,
            severity=Severity.NOTE,
            place=face.opening.mark,
            read=say(
                "{mark} is to have plinth blocks and a piece along its bottom.",
                mark=face.opening.mark,
            ),
            wrong=say("Its legs end on that piece, not on the floor, so no blocks are cut."),
            do=say("Take plinth out, or let the trim be legs-and-head."),
        ),
    )


def _thin(face: FaceSet, plinth: Profile, thickest: Profile) -> Finding:
    units = face.house.units
    return Finding(
        code=PLINTH_THIN,
        severity=Severity.WARNING,
        place=face.opening.mark,
        read=say(
            "The plinth block {plinth} is {thickness} thick; {thickest}, which "
            "ends at it, is {thickness_2}.",
            plinth=plinth.name,
            thickness=format_with_unit(plinth.thickness_mm, units),
            thickest=thickest.name,
            thickness_2=format_with_unit(thickest.thickness_mm, units),
        ),
        wrong=say("An end that isn't hidden behind the block shows."),
        do=say(
            "Take a block thicker than both architrave and skirting (common practice, no source)."
        ),
    )


def _low(face: FaceSet, skirting: Profile) -> Finding:
    units = face.house.units
    return Finding(
        code=PLINTH_LOW,
        severity=Severity.WARNING,
        place=face.opening.mark,
        read=say(
            "The plinth blocks are {plinth_height} high, the skirting {skirting} {width}.",
            plinth_height=format_with_unit(face.shape.plinth_height_mm, units),
            skirting=skirting.name,
            width=format_with_unit(skirting.width_mm, units),
        ),
        wrong=say("The skirting's top would run past the block against the architrave."),
        do=say("Make plinth_height more than the skirting's height (common practice, no source)."),
    )


def _narrow(face: FaceSet, plinth: Profile, leg: Profile) -> Finding:
    units = face.house.units
    return Finding(
        code=PLINTH_NARROW,
        severity=Severity.WARNING,
        place=face.opening.mark,
        read=say(
            "The plinth block {plinth} is {width} wide, the leg on it {width_2}.",
            plinth=plinth.name,
            width=format_with_unit(plinth.width_mm, units),
            width_2=format_with_unit(leg.width_mm, units),
        ),
        wrong=say(
            "In line with the leg's inner edge, it leaves the leg's outer edge hanging over."
        ),
        do=say("Take a block at least as wide as the leg."),
    )
