"""The walls that get a cornice, and what the ceiling does along them."""

import math
from itertools import pairwise
from typing import Any, Final, NamedTuple

from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.pieces.wall_boards import MOST_WALL_U_MM
from longpoint.pieces.wall_findings import wall_place
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say
from longpoint.survey.rooms import Room

CEILING_CLOSES_MM: Final = 20.0
"""Rises round a room may add up to this much: our limit, no source."""


class WallPart(NamedTuple):
    """A part of a wall under one slope of the ceiling; both ends from the left corner, level."""

    start_mm: float
    end_mm: float
    slope_deg: float


class CorniceWall(NamedTuple):
    """A wall that gets the cornice; what its length and a place along it are uncertain by."""

    place: int
    length_mm: float
    u_mm: float
    place_u_mm: float
    parts: tuple[WallPart, ...]

    def part_u_mm(self, part: WallPart) -> float:
        """Return the standard uncertainty of a part: of each end that was read on its own."""
        ends = [self.u_mm if part.end_mm == self.length_mm else self.place_u_mm]
        return combine([*ends, self.place_u_mm] if part.start_mm > 0.0 else ends)


def cornice_walls(asked: Asked, room: Room) -> tuple[CorniceWall, ...]:
    """Return the walls that get the cornice, in the order of the room.

    Args:
        asked: The entry.
        room: Its room.

    Raises:
        PieceError: A wall isn't known, is held, wasn't read, or its ceiling can't run as written.
    """
    walls = tuple(_wall(asked, room, index) for index in _chosen(asked, room))
    _check_ceiling(asked, room, walls)
    return walls


def _chosen(asked: Asked, room: Room) -> list[int]:
    places = {wall.mark: index for index, wall in enumerate(room.walls)}
    wanted = asked.get("walls") or tuple(places)
    told = [entry["wall"] for key in ("climb", "springs") for entry in asked.get(key, ())]
    for mark in (*wanted, *told):
        if mark not in places:
            raise _no_such_wall(asked, room, mark)
    for mark in told:
        if mark not in wanted:
            raise PieceError(
                say(
                    "{mark} says how it climbs or springs on wall {mark_2} of {room}.",
                    mark=asked.mark,
                    mark_2=mark,
                    room=room.name,
                ),
                say(
                    "That wall gets none: its walls are {wanted}.",
                    wanted=joined(", ", wanted),
                ),
                say("Add it to walls, or take out what is said of it."),
            )
    return sorted({places[mark] for mark in wanted})


def _no_such_wall(asked: Asked, room: Room, mark: str) -> PieceError:
    return PieceError(
        say(
            "{mark} names the wall {mark_2} of {room}.",
            mark=asked.mark,
            mark_2=mark,
            room=room.name,
        ),
        say("The room has no such wall."),
        say("Its walls are {walls}.", walls=joined(", ", (wall.mark for wall in room.walls))),
    )


def _wall(asked: Asked, room: Room, index: int) -> CorniceWall:
    wall = room.walls[index]
    if wall_place(room, wall) in asked.held:
        raise PieceError(
            say(
                "{mark} runs along wall {mark_2} of {room}.",
                mark=asked.mark,
                mark_2=wall.mark,
                room=room.name,
            ),
            say("That wall is held, so no length is worked out for this either."),
            say("Put the wall right first."),
        )
    length_mm, u_mm = _length(asked, room, index)
    place_u_mm = asked.house.tape(room.tape).wall_u_mm()
    parts = _parts(asked, room, index, length_mm)
    return CorniceWall(index, length_mm, u_mm, place_u_mm, parts)


def _length(asked: Asked, room: Room, index: int) -> tuple[float, float]:
    wall, tape = room.walls[index], asked.house.tape(room.tape)
    if wall.length_mm is not None:
        return wall.length_mm, combine((tape.wall_u_mm(), tape.shared_u_mm(wall.length_mm)))
    fit = next((fit for fit in asked.shapes.rooms if fit.name == room.name), None)
    if fit is None or fit.wall_u_mm[index] > MOST_WALL_U_MM:
        raise PieceError(
            say(
                "{mark} runs along wall {mark_2} of {room}, whose length was not read.",
                mark=asked.mark,
                mark_2=wall.mark,
                room=room.name,
            ),
            say("It does not follow from the other walls closely enough to cut by."),
            say("Read it from corner to corner, as high up as you can reach."),
        )
    return fit.wall_mm[index], fit.wall_u_mm[index]


def _parts(asked: Asked, room: Room, index: int, length_mm: float) -> tuple[WallPart, ...]:
    mark = room.walls[index].mark
    written = [climb for climb in asked.get("climb", ()) if climb["wall"] == mark]
    starts = [float(climb.get("from_left", 0.0)) for climb in written]
    ends = [*starts[1:], length_mm][: len(starts)]
    if any(end <= start for start, end in zip(starts, ends, strict=True)):
        raise PieceError(
            say(
                "{mark} climbs along wall {mark_2} from {starts}.",
                mark=asked.mark,
                mark_2=mark,
                starts=joined(", ", (format_with_unit(start, asked.units) for start in starts)),
            ),
            say(
                "Each has to lie farther right than the one before, and inside the "
                "{length} of the wall.",
                length=format_with_unit(length_mm, asked.units),
            ),
            say("Measure from the wall's left-hand corner, and write them from left to right."),
        )
    parts = [
        WallPart(start, end, _slope_deg(asked, climb, end - start))
        for climb, start, end in zip(written, starts, ends, strict=True)
    ]
    if not parts or parts[0].start_mm > 0:
        parts.insert(0, WallPart(0.0, parts[0].start_mm if parts else length_mm, 0.0))
    return _joined(parts)


def _joined(parts: list[WallPart]) -> tuple[WallPart, ...]:
    """Return the parts with neighbours of one slope made into one."""
    joined = parts[:1]
    for before, part in pairwise(parts):
        if before.slope_deg == part.slope_deg:
            joined[-1] = joined[-1]._replace(end_mm=part.end_mm)
        else:
            joined.append(part)
    return tuple(joined)


def _slope_deg(asked: Asked, climb: dict[str, Any], level_mm: float) -> float:
    slope, rise = climb.get("slope"), climb.get("rise")
    if (slope is None) == (rise is None):
        raise PieceError(
            say("{mark} climbs along wall {climb}.", mark=asked.mark, climb=climb["wall"]),
            say("Its slope has to be written once, as slope or as rise."),
            say("Write slope in degrees, or rise as the height gained over that part."),
        )
    return float(climb["slope"]) if rise is None else math.degrees(math.atan2(rise, level_mm))


def _check_ceiling(asked: Asked, room: Room, walls: tuple[CorniceWall, ...]) -> None:
    """Refuse slopes that don't bring the ceiling back to its own height round a room."""
    if not room.closed or len(walls) < len(room.walls):
        return
    rise_mm = math.fsum(
        (part.end_mm - part.start_mm) * math.tan(math.radians(part.slope_deg))
        for wall in walls
        for part in wall.parts
    )
    if abs(rise_mm) > CEILING_CLOSES_MM:
        raise PieceError(
            say("{mark} goes once round {room}.", mark=asked.mark, room=room.name),
            say(
                "Its slopes add up to {rise} {up}, so the ceiling would not come back "
                "to its own height.",
                rise=format_with_unit(abs(rise_mm), asked.units),
                up=say("up") if rise_mm > 0 else say("down"),
            ),
            say("Read where each slope begins and what it climbs again; to the right is positive."),
        )
