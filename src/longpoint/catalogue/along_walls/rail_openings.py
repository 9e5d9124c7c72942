"""Which openings a rail stops at, and which it passes above or below."""

from dataclasses import dataclass, replace
from typing import Final

from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.wall_doors import reaching
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening, OpeningKind
from longpoint.survey.rooms import Room
from longpoint.survey.trimmed_openings import is_seen_from_behind

RAIL_MEETS_TRIM: Final = "rail-meets-trim"
RAIL_PROUD_OF_TRIM: Final = "rail-proud-of-trim"

_LEAST_PROUD_MM: Final = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """What a rail covers of the wall, from its lower to its upper edge above the floor. [mm]"""

    low_mm: float
    high_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """The openings that a rail stops at.

    Attributes:
        stopping: Openings whose trim it meets.
        partly: Those of them that it meets at their head's or their sill's height.
    """

    stopping: tuple[Opening, ...]
    partly: tuple[Opening, ...]


def openings_met(asked: Asked, room: Room, walls: frozenset[str], band: Band) -> Met:
    """Return the openings in a rail's way.

    Args:
        asked: The entry.
        room: Its room.
        walls: The walls it runs along.
        band: What it covers.

    Raises:
        PieceError: A wall lists a window whose sill's height wasn't read.
    """
    listed = {place.mark for wall in room.walls if wall.mark in walls for place in wall.openings}
    sills_mm = {entry["mark"]: entry["sill"] for entry in asked.get("windows", ())}
    stopping, partly = [], []
    for opening in asked.house.openings:
        if opening.mark not in listed:
            continue
        sill_mm = _sill_mm(asked, opening, sills_mm)
        below_mm = sill_mm - _under_mm(asked.house, opening)
        if below_mm >= band.high_mm or not _reaches(asked.house, opening, band.low_mm - sill_mm):
            continue
        stopping.append(opening)
        over = not _reaches(asked.house, opening, band.high_mm - sill_mm)
        if over or (below_mm > band.low_mm and not opening.stands_on_floor):
            partly.append(opening)
    return Met(stopping=tuple(stopping), partly=tuple(partly))


def opening_findings(asked: Asked, met: Met, band: Band) -> tuple[Finding, ...]:
    """Return what is to be said of the trims that a rail meets."""
    findings = []
    if met.partly:
        findings.append(_meets_trim(asked, met, band))
    proud = [
        (opening, proud_mm)
        for opening in met.stopping
        if (proud_mm := _proud_mm(asked, opening)) > _LEAST_PROUD_MM
    ]
    if proud and asked.get("at_trim", "square") == "square":
        findings.append(_proud(asked, proud))
    return tuple(findings)


def _proud_mm(asked: Asked, opening: Opening) -> float:
    """Return how far a rail stands out past the thinner of the legs that it meets."""
    profiles = opening.profiles
    if is_seen_from_behind(opening, asked.entry.room):
        profiles = profiles.mirrored()
    legs = (asked.house.profile(profiles.left), asked.house.profile(profiles.right))
    thinner_mm = min(leg.thickness_mm for leg in legs)
    return asked.profile.thickness_mm - thinner_mm


def _reaches(house: House, opening: Opening, low_mm: float) -> bool:
    """Tell whether an opening's trim reaches above a height over its sill."""
    standing = replace(opening, kind=OpeningKind.CASED)
    return opening.mark in reaching(replace(house, openings=(standing,)), low_mm)


def _sill_mm(asked: Asked, opening: Opening, sills_mm: dict[str, float]) -> float:
    if opening.stands_on_floor:
        return 0.0
    if opening.mark not in sills_mm:
        raise PieceError(
            say(
                "{mark} runs along a wall that lists the window {mark_2}.",
                mark=asked.mark,
                mark_2=opening.mark,
            ),
            say(
                "How high its sill stands was not read, so whether the rail stops "
                "there is not known."
            ),
            say(
                "Read from the floor to the sill and write it under windows: {{ mark = "
                '"{mark}", sill = ... }}.',
                mark=opening.mark,
            ),
        )
    return sills_mm[opening.mark]


def _under_mm(house: House, opening: Opening) -> float:
    """Return how far an opening's trim reaches below its sill."""
    match opening.layout:
        case Layout.LEGS_AND_HEAD:
            return 0.0
        case Layout.ALL_ROUND:
            return opening.quirk_mm.bottom + house.profile(opening.profiles.bottom).width_mm
        case Layout.BOARD_AND_APRON:
            board_mm = house.profile(opening.board).thickness_mm if opening.board else 0.0
            return board_mm + house.profile(opening.profiles.bottom).width_mm


def _meets_trim(asked: Asked, met: Met, band: Band) -> Finding:
    marks = joined(say(" and "), (opening.mark for opening in met.partly))
    low, high = format_length(band.low_mm, asked.units), format_with_unit(band.high_mm, asked.units)
    return Finding(
        code=RAIL_MEETS_TRIM,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "The rail covers the wall from {low} to {high} above the floor.",
            low=low,
            high=high,
        ),
        wrong=say(
            "It meets the trim of {marks} at the height of its head or its sill, "
            "so it is partly beside that trim and partly past it.",
            marks=marks,
        ),
        do=say(
            "Set the rail a little higher or lower, or notch it there by hand; its "
            "length is given to the outer edge of the leg. A window board's horn "
            "stands further out."
        ),
    )


def _proud(asked: Asked, proud: list[tuple[Opening, float]]) -> Finding:
    marks = joined(say(" and "), (opening.mark for opening, _ in proud))
    most = format_with_unit(max(by_mm for _, by_mm in proud), asked.units)
    return Finding(
        code=RAIL_PROUD_OF_TRIM,
        severity=Severity.NOTE,
        place=asked.mark,
        read=say(
            "The rail is thicker than the architrave at {marks}, by up to {most}.",
            marks=marks,
            most=most,
        ),
        wrong=say("Cut square it shows that much of its end."),
        do=say('Ease the end back by hand, or write at_trim = "return".'),
    )
