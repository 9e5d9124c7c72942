"""Compare entries of a house with each other: what each says alone may not agree."""

from collections.abc import Iterator, Set

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.survey.house import House
from longpoint.survey.house_file.trouble import instead, quoted
from longpoint.survey.openings import Opening


def compare_entries(house: House, own_cover: Set[str]) -> tuple[Finding, ...]:
    """Return what is to be said about entries that do not agree.

    Args:
        house: The house as read.
        own_cover: Marks of the openings that state their own floor cover.
    """
    doors = [o for o in house.openings if o.stands_on_floor and o.mark not in own_cover]
    return (*_floor_covers(house, doors), *_walls_of_runs(house))


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
            read=f"The floor in {quoted(opening.room)} still gets {told}.",
            wrong=f"The legs here are planned for {own}.",
            do="Write floor_cover at the opening, whichever it is.",
        )


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
            read=f"The run names the wall {quoted(run.wall)} of the room {quoted(run.room)}.",
            wrong="That room is described without such a wall, so its sum can't be checked.",
            do=f"{instead(run.wall, walls)} Name a wall of the room, or read it as well.",
        )
