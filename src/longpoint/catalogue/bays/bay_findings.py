"""What is to be said of a bay before its trim is cut: does it close, do its legs fit."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from longpoint.catalogue.bays.bay_lights import Light
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_angle, format_length, format_unit
from longpoint.speech.said import joined, say
from longpoint.survey.openings import Layout
from longpoint.trims.bays import mouth_mm, mouth_u_mm

ANGLE_U_DEG: Final = 0.25
"""Standard uncertainty of a plan angle by bevel gauge; assumed, as for a corner of an opening."""

OPEN_LIMIT: Final = 3.0
"""The mouth may be out by so many standard uncertainties; once in 370 houses it is by chance."""

WALL_APART_MM: Final = 4.0
"""A wall read and the same wall worked out may differ by this: four readings of a millimetre, and
half a degree at either end of a deep reveal; common practice, no source."""


def bay_findings(
    asked: Asked, lights: Sequence[Light], reveal_mm: float, trims: Sequence[str]
) -> Iterator[Finding]:
    """Yield what doesn't agree, what is planned twice, and legs that don't fit their corner.

    Args:
        asked: The entry.
        lights: Its lights.
        reveal_mm: From the frame line to the wall's face; 0 where it wasn't read.
        trims: What goes round the bay: "board", "head", "apron", "cover".
    """
    yield from _mouth(asked, lights)
    if reveal_mm:
        yield from _walls(asked, lights, reveal_mm)
    yield from _twice(asked, lights, trims)
    for left, right in pairwise(lights):
        yield from _legs(asked, left, right)


def _mouth(asked: Asked, lights: Sequence[Light]) -> Iterator[Finding]:
    read_mm = asked.get("mouth")
    if read_mm is None:
        return
    lines = [light.line_mm for light in lights]
    corners = [light.right.angle_deg for light in lights[:-1]]
    tape_u_mm = asked.house.tape(asked.entry.tape).private_u_mm()
    off_mm = mouth_mm(lines, corners) - read_mm
    if abs(off_mm) <= OPEN_LIMIT * mouth_u_mm(lines, corners, tape_u_mm, ANGLE_U_DEG):
        return
    read, given = (format_length(mm, asked.units) for mm in (read_mm, read_mm + off_mm))
    yield Finding(
        code="bay-open",
        severity=Severity.STOP,
        place=asked.mark,
        read=say(
            "The mouth of {mark} is read as {read}; its lights and corners give {given}.",
            mark=asked.mark,
            read=read,
            given=given,
        ),
        wrong=say("One of its readings is wrong, and which one these can't tell."),
        do=say("Read the corners again on the room's side, then the lights, then the mouth."),
    )


def _walls(asked: Asked, lights: Sequence[Light], reveal_mm: float) -> Iterator[Finding]:
    for light in lights:
        read_mm = light.wall_read_mm
        given_mm = light.line_mm - sum(end.short_mm(reveal_mm) for end in (light.left, light.right))
        if read_mm is None or abs(read_mm - given_mm) <= WALL_APART_MM:
            continue
        read, given = (format_length(mm, asked.units) for mm in (read_mm, given_mm))
        yield Finding(
            code="bay-wall",
            severity=Severity.STOP,
            place=asked.mark,
            read=say(
                "At {light} the wall's face is {read} from corner to corner by "
                "the opening and what stands beside it; the frame line, its "
                "corners and the reveal give {given}.",
                light=light.name,
                read=read,
                given=given,
            ),
            wrong=say("Head and apron can't be right by both."),
            do=say("Read the light, the reveal and the wall at both sides of the opening again."),
        )


def _twice(asked: Asked, lights: Sequence[Light], trims: Sequence[str]) -> Iterator[Finding]:
    for light in lights:
        if light.reveal is None:
            continue
        opening = light.reveal.opening
        has_apron = opening.layout is Layout.BOARD_AND_APRON
        own = [
            what
            for what, is_there in (
                ("board", bool(opening.board)),
                ("head", True),
                ("apron", has_apron),
            )
            if is_there and what in trims
        ]
        if not own:
            continue
        named = joined(say(" and "), own)
        yield Finding(
            code="bay-twice",
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "{mark} has its own {named}, and {mark_2} brings one round the bay.",
                mark=opening.mark,
                named=named,
                mark_2=asked.mark,
            ),
            wrong=say(
                "The {named} of {mark} is cut twice as written.",
                named=named,
                mark=opening.mark,
            ),
            do=say("Leave one out: at {mark}, or here.", mark=opening.mark),
        )


def _legs(asked: Asked, left: Light, right: Light) -> Iterator[Finding]:
    """Warn where the legs at a corner run into each other."""
    corner = left.right
    pairs = (
        (left, left.right_wall_mm, 1, "right"),
        (right, right.left_wall_mm, 3, "left"),
    )
    told = []
    for light, wall_mm, side, name in pairs:
        if light.reveal is None or wall_mm is None:
            return
        opening = light.reveal.opening
        leg = asked.house.profile(opening.profiles.anticlockwise()[side])
        room_mm = wall_mm - opening.quirk_mm.anticlockwise()[side]
        on_face_mm = room_mm - corner.short_mm(leg.thickness_mm)
        if leg.width_mm > min(room_mm, on_face_mm) + 0.05:
            told.append(
                say(
                    "{light} {name} leg {width}, room {room} on the wall and {on_face} on the face",
                    light=light.name,
                    name=name,
                    width=format_length(leg.width_mm, asked.units),
                    room=format_length(room_mm, asked.units),
                    on_face=format_length(on_face_mm, asked.units),
                )
            )
    if told:
        tilt = format_angle(corner.saw_deg)
        yield Finding(
            code="bay-legs",
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "At the corner of {angle}°: {told} ({units}).",
                angle=format_angle(corner.angle_deg),
                told=joined("; ", told),
                units=format_unit(asked.units),
            ),
            wrong=say("As wide as planned the legs run into each other, and so do their heads."),
            do=say(
                "Rip the outer edge of each leg at {tilt}° to the room there is, "
                "and let a head that runs round the bay lie over them; or use a "
                "narrower profile.",
                tilt=tilt,
            ),
        )
