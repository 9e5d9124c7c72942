"""What is to be said about the fit of a room."""

from typing import Final

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.shape.fitted import FittedRoom
from longpoint.shape.network import Angle
from longpoint.shape.room_doubt import HOLD_AT, Doubt, Suspect
from longpoint.shape.room_sightings import (
    needs_assumed_corners,
    room_sightings,
    walls_without_corner,
)
from longpoint.speech.said import joined, say, say_many
from longpoint.survey.checks.wall_slips import NEAR_SLIP_MM, guess_slip, slip_words
from longpoint.survey.house import House
from longpoint.survey.rooms import Room, Run, RunEnd, Wall

ROOM_OPEN: Final = "room-open"
ROOM_MISCLOSURE: Final = "room-misclosure"
CORNER_ASSUMED: Final = "corner-assumed"
WALL_ASSUMED: Final = "wall-assumed"

AGREES_MM: Final = 12.0
"""How near a run and its wall must come to be called the same: our limit, no source."""

MOST_NAMED: Final = 3
"""So many suspects are named at most; more would send the carpenter round the whole room."""

_CORNER_ENDS: Final = frozenset({RunEnd.INTERNAL, RunEnd.EXTERNAL})


def open_finding(room: Room, error: ShapeError) -> Finding:
    """Return the finding of a room that has no plan."""
    unread = next((wall for wall in room.walls if wall.length_mm is None), None)
    is_chain_with_hole = not room.closed and unread is not None
    return Finding(
        code=ROOM_OPEN,
        severity=Severity.STOP,
        place=say("{room} {mark}", room=room.name, mark=unread.mark)
        if is_chain_with_hole and unread
        else room.name,
        read=error.read,
        wrong=error.wrong,
        do=error.do,
    )


def too_few(room: Room) -> ShapeError:
    """Return the error of a room with too few walls."""
    return ShapeError(
        say("{room}: {walls} walls are written.", room=room.name, walls=len(room.walls)),
        say("A room that goes round has three or more."),
        say("Add the missing walls, or write closed = false for a chain of walls."),
    )


def left_open(room: Room) -> ShapeError:
    """Return the error of a room whose readings don't fix its plan."""
    marks = joined(say(" and "), (wall.mark for wall in room.walls if wall.length_mm is None))
    what = say("walls {marks} not read", marks=marks) if marks else say("what was read")
    return ShapeError(
        say(
            "{room}: the walls and corners were put together, {what}.",
            room=room.name,
            what=what,
        ),
        say("That leaves part of the room open."),
        say("Read the missing walls, or a diagonal."),
    )


def crossing(room: Room) -> ShapeError:
    """Return the error of a room whose walls cross."""
    return ShapeError(
        say("{room}: the walls and corners were put together.", room=room.name),
        say("Two of the walls cross each other, so this is no room."),
        say(
            "Check that the walls stand in order, turning to the right, and read the corners again."
        ),
    )


def assumption_findings(house: House, room: Room, plan: FittedRoom) -> tuple[Finding, ...]:
    """Return one note for the corners and one for the walls that were not read."""
    findings = []
    corners = walls_without_corner(room)
    if corners:
        marks = joined(", ", (wall.mark for wall in corners))
        assumed = (
            say("Each was taken as 90 degrees.")
            if needs_assumed_corners(room)
            else say("It was worked out from the other readings.")
        )
        findings.append(
            Finding(
                code=CORNER_ASSUMED,
                severity=Severity.NOTE,
                place=room.name,
                read=say(
                    "The corner at the right-hand end of {walls} {marks} was not read.",
                    walls=_walls(len(corners)),
                    marks=marks,
                ),
                wrong=assumed,
                do=say("Read it with a bevel gauge before you cut a mitre there."),
            )
        )
    walls = [
        say(
            "{mark} {length} give or take {u}",
            mark=wall.mark,
            length=format_with_unit(length_mm, house.units),
            u=format_with_unit(u_mm, house.units),
        )
        for wall, length_mm, u_mm in zip(room.walls, plan.wall_mm, plan.wall_u_mm, strict=True)
        if wall.length_mm is None
    ]
    if walls:
        findings.append(
            Finding(
                code=WALL_ASSUMED,
                severity=Severity.NOTE,
                place=room.name,
                read=say(
                    "The length of {walls} without a reading was needed.",
                    walls=_walls(len(walls)),
                ),
                wrong=say(
                    "It was worked out from the others: {walls}.",
                    walls=joined(", ", walls),
                ),
                do=say("Read it before you cut a run there."),
            )
        )
    return tuple(findings)


def misclosure_finding(house: House, room: Room, doubt: Doubt) -> Finding:
    """Return the finding of a room that doesn't close, naming the reading where it stands out."""
    located, run = _located(house, room, doubt)
    wall = _wall_of(room, located) if located is not None else None
    return Finding(
        code=ROOM_MISCLOSURE,
        severity=Severity.STOP if doubt.strength >= HOLD_AT else Severity.WARNING,
        place=say("{room} {mark}", room=room.name, mark=wall.mark)
        if wall is not None
        else room.name,
        read=what_was_read(house, room),
        wrong=(
            say(
                "They don't fit together. An error is detected, not located: "
                "{likeliest} would explain it.",
                likeliest=_likeliest(doubt),
            )
            if located is None
            else say(
                "They don't fit together. {most_likely}.",
                most_likely=_most_likely(house, room, located),
            )
        ),
        do=_do(house, doubt, located, run),
    )


def _located(house: House, room: Room, doubt: Doubt) -> tuple[Suspect | None, Run | None]:
    """Return the reading that is wrong, and a run along that wall which says so too.

    A run from corner to corner is a second reading of its wall, so it can tell between suspects.
    """
    supported = [
        (suspect, run)
        for suspect in doubt.suspects
        if (run := _supporting_run(house, room, suspect)) is not None
    ]
    if doubt.stands_out:
        return doubt.suspects[0], supported[0][1] if supported else None
    return supported[0] if len(supported) == 1 else (None, None)


def _supporting_run(house: House, room: Room, suspect: Suspect) -> Run | None:
    wall = _wall_of(room, suspect)
    if wall is None:
        return None
    along = [run for run in house.runs if run.room == room.name and run.wall == wall.mark]
    if len(along) != 1 or not {along[0].left, along[0].right} <= _CORNER_ENDS:
        return None
    run = along[0]
    near_mm = max(AGREES_MM, 3.0 * suspect.mended_u)
    agrees = abs(run.length_mm - suspect.mended) <= near_mm
    return run if agrees and abs(run.length_mm - suspect.sighting.read) > AGREES_MM else None


def _wall_of(room: Room, suspect: Suspect) -> Wall | None:
    return next((w for w in room.walls if suspect.sighting.name == f"wall {w.mark}"), None)


def what_was_read(house: House, room: Room) -> str:
    """Return how many walls, corners and diagonals of a room were read, a whole sentence."""
    sightings = room_sightings(room, house.tape(room.tape))
    walls = sum(s.name.startswith("wall ") for s in sightings)
    corners = sum(isinstance(s, Angle) and not s.is_assumed for s in sightings)
    diagonals = sum(s.name.startswith("diagonal ") for s in sightings)
    counts = [
        (walls, say_many("{count} wall", "{count} walls", count=walls)),
        (corners, say_many("{count} corner", "{count} corners", count=corners)),
        (diagonals, say_many("{count} diagonal", "{count} diagonals", count=diagonals)),
    ]
    text = joined(", ", (words for count, words in counts if count))
    return say("In {room} were read: {text}.", room=room.name, text=text)


def _most_likely(house: House, room: Room, suspect: Suspect) -> str:
    sighting = suspect.sighting
    over = sighting.read - suspect.mended
    if isinstance(sighting, Angle):
        way = say("too wide") if over > 0 else say("too narrow")
        return say(
            "Most likely {named}, {read} degrees, is about {over:.1f} degrees {way}",
            named=_named(suspect),
            read=format_angle(sighting.read),
            over=abs(over),
            way=way,
        )
    way = say("too long") if over > 0 else say("too short")
    slip = guess_slip(
        sighting.read,
        suspect.mended,
        house.units,
        near_mm=max(NEAR_SLIP_MM, 2.0 * suspect.mended_u),
    )
    reason = say(" ({slip}?)", slip=slip_words(slip, house.units)) if slip is not None else ""
    return say(
        "Most likely {named}, {read}, is about {over} {way}{reason}",
        named=_named(suspect),
        read=format_with_unit(sighting.read, house.units),
        over=format_with_unit(abs(over), house.units),
        way=way,
        reason=reason,
    )


def _do(house: House, doubt: Doubt, located: Suspect | None, run: Run | None) -> str:
    if located is None:
        return say(
            "Read {likeliest} again, and the diagonals if there are none.",
            likeliest=_likeliest(doubt, say(", then ")),
        )
    fits = (
        say("{mended} degrees", mended=format_angle(located.mended))
        if isinstance(located.sighting, Angle)
        else format_with_unit(located.mended, house.units)
    )
    agrees = (
        say(
            " Run {mark} on that wall reads {length}, which agrees; it may be cut.",
            mark=run.mark,
            length=format_with_unit(run.length_mm, house.units),
        )
        if run is not None
        else ""
    )
    return say(
        "Read {named} again; about {fits} would fit.{agrees}",
        named=_named(located),
        fits=fits,
        agrees=agrees,
    )


def _likeliest(doubt: Doubt, joint: str = ", or ") -> str:
    return joint.join(_named(suspect) for suspect in doubt.suspects[:MOST_NAMED])


def _named(suspect: Suspect) -> str:
    name = suspect.sighting.name
    if name.startswith("diagonal"):
        name = say("the {name}", name=name)
    if isinstance(suspect.sighting, Angle):
        name = say(
            "the corner at the right-hand end of wall {removeprefix}",
            removeprefix=name.removeprefix("corner "),
        )
    return say("{name}, assumed", name=name) if suspect.sighting.is_assumed else name


def _walls(count: int) -> str:
    return say("wall") if count == 1 else say("walls")
