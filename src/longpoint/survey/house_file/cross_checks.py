"""Compare entries of a house with each other: what each says alone may not agree."""

import difflib
import re
from collections.abc import Iterable, Iterator, Set
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import EntryKind, House
from longpoint.survey.house_file.trouble import instead, quoted
from longpoint.survey.openings import Opening

NEARLY: Final = 0.8
"""How much of two names has to agree, of 1, for one to be a slip of the other; ours."""


def compare_entries(house: House, own_cover: Set[str]) -> tuple[Finding, ...]:
    """Return what is to be said about entries that do not agree.

    Args:
        house: The house as read.
        own_cover: Marks of the openings that state their own floor cover.
    """
    doors = [o for o in house.openings if o.stands_on_floor and o.mark not in own_cover]
    return (*_floor_covers(house, doors), *_rooms_of_runs(house), *_walls_of_runs(house))


def _floor_covers(house: House, doors: list[Opening]) -> Iterator[Finding]:
    covers_mm = {room.name: room.floor_cover_mm for room in house.rooms}
    for opening in doors:
        cover_mm = covers_mm.get(opening.room, opening.floor_cover_mm)
        if cover_mm == opening.floor_cover_mm:
            continue
        told, own = (
            format_with_unit(each, house.units) for each in (cover_mm, opening.floor_cover_mm)
        )
        yield Finding(
            code="floor-covers-differ",
            severity=Severity.WARNING,
            place=opening.mark,
            read=say(
                "The floor in {room} still gets {told}.",
                room=quoted(opening.room),
                told=told,
            ),
            wrong=say("The legs here are planned for {own}.", own=own),
            do=say("Write floor_cover at the opening, whichever it is."),
        )


def _rooms_of_runs(house: House) -> Iterator[Finding]:
    """Yield what is to be said of runs in a room whose name is nearly that of one described."""
    rooms = {room.name: room for room in house.rooms}
    held = {entry.mark for entry in house.held if entry.kind is EntryKind.ROOM}
    replaced = {(run.room, run.wall) for run in house.runs}
    for run in house.runs:
        if not run.room or run.room in rooms or run.room in held:
            continue
        meant = _nearly(run.room, rooms)
        if not meant:
            continue
        cut_twice = any(
            wall.mark == run.wall and wall.skirting and (meant, wall.mark) not in replaced
            for wall in rooms[meant].walls
        )
        does = say(
            "It stands for no wall of {meant}, so no sum of it is checked.",
            meant=quoted(meant),
        )
        if cut_twice:
            does = say(
                "The skirting of wall {wall} of {meant} would be cut twice.",
                wall=run.wall,
                meant=quoted(meant),
            )
        yield Finding(
            code="room-unknown",
            severity=Severity.STOP if cut_twice else Severity.WARNING,
            place=run.mark,
            read=say(
                "The run names the room {room}, which isn't described.",
                room=quoted(run.room),
            ),
            wrong=does,
            do=say(
                "Did you mean {meant}? Write its name as it stands at the room; "
                "accept it if this is another room.",
                meant=quoted(meant),
            ),
        )


def _nearly(name: str, known: Iterable[str]) -> str:
    """Return the known name that differs by a slip of the pen only; empty when none does.

    Rooms are told apart by a number or a letter or two ("Bed 1", "Bed NE"): those have to agree.
    """
    alike = [each for each in known if _tellers(each) == _tellers(name)]
    by_folded = {each.casefold(): each for each in alike}
    found = difflib.get_close_matches(name.casefold(), by_folded, n=1, cutoff=NEARLY)
    return by_folded[found[0]] if found else ""


def _tellers(name: str) -> list[str]:
    words = re.findall(r"[^\W\d_]+|\d+", name.casefold())
    return [word for word in words if word.isdecimal() or len(word) <= 2]


def _walls_of_runs(house: House) -> Iterator[Finding]:
    marks = {room.name: [wall.mark for wall in room.walls] for room in house.rooms}
    for run in house.runs:
        walls = marks.get(run.room)
        if not run.wall or walls is None or run.wall in walls:
            continue
        yield Finding(
            code="wall-not-read",
            severity=Severity.NOTE,
            place=run.mark,
            read=say(
                "The run names the wall {wall} of the room {room}.",
                wall=quoted(run.wall),
                room=quoted(run.room),
            ),
            wrong=say("That room is described without such a wall, so its sum can't be checked."),
            do=say(
                "{instead} Name a wall of the room, or read it as well.",
                instead=instead(run.wall, walls),
            ),
        )
