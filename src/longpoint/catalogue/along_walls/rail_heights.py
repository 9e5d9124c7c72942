"""How high a rail stands above the floor at every corner, when it is set to a level line."""

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.catalogue.along_walls.wall_course import check_wall
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.boards import Side
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.rooms import Room
from longpoint.trims.floor_scribe import floor_under

LEVEL_LINE_DISAGREES: Final = "level-line-disagrees"
LEVEL_LINE_MISSING: Final = "level-line-missing"

_SURE: Final = 3.0
"""So many standard uncertainties make a slip; as usual for the readings of openings."""

Spot = tuple[str, Side]
"""A wall's end."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RailHeights:
    """Where a rail stands.

    Attributes:
        datum: Wall whose left-hand end the height was read at.
        height_mm: From the floor there to the rail's edge that is measured to.
        above_mm: The same at every wall end where the floor is known.
        is_read: True when a level line was read at all.
    """

    datum: str
    height_mm: float
    above_mm: dict[Spot, float]
    is_read: bool

    def at(self, wall: str, side: Side) -> float | None:
        """Return how high the rail stands at a wall's end; None where that isn't known."""
        return self.above_mm.get((wall, side))


def rail_heights(asked: Asked, room: Room) -> RailHeights:
    """Return how high a rail stands above the floor wherever the level line was read.

    Raises:
        PieceError: The level line names a wall twice, or one that isn't there; or it wasn't read
            at the datum corner.

    References:
        The rail is parallel to the level line: where the line reads more from the floor than at
        the datum, the floor is lower and the rail higher above it by the same.
    """
    line = _read_line(asked, room) or _line_over_floors(room)
    first = next((wall for wall, _ in line), room.walls[0].mark)
    datum: str = asked.get("datum", first)
    check_wall(asked, room, datum)
    height_mm: float = asked.get("height")
    whole = _round_the_corners(room, line)
    if not whole:
        return RailHeights(
            datum=datum,
            height_mm=height_mm,
            above_mm={(datum, Side.LEFT): height_mm},
            is_read=False,
        )
    if (datum, Side.LEFT) not in whole:
        raise _no_datum(asked, datum)
    from_mm = whole[datum, Side.LEFT]
    above_mm = {spot: height_mm + read_mm - from_mm for spot, read_mm in whole.items()}
    return RailHeights(datum=datum, height_mm=height_mm, above_mm=above_mm, is_read=True)


def _read_line(asked: Asked, room: Room) -> dict[Spot, float]:
    """Return the level line's height above the floor where it was read for this rail."""
    line: dict[Spot, float] = {}
    for entry in asked.get("level_line", ()):
        check_wall(asked, room, entry["wall"])
        for side in Side:
            if side.value in entry:
                spot = (entry["wall"], side)
                if spot in line:
                    raise _twice(asked, entry["wall"])
                line[spot] = entry[side.value]
    return line


def _line_over_floors(room: Room) -> dict[Spot, float]:
    """Return the same from the floors read along the walls, all against one level line."""
    line: dict[Spot, float] = {}
    for wall in room.walls:
        if wall.floor:
            length_mm = wall.length_mm if wall.length_mm is not None else wall.floor[-1][0]
            under = floor_under(wall.floor, 0.0, length_mm)
            line[wall.mark, Side.LEFT] = -under[0][1]
            line[wall.mark, Side.RIGHT] = -under[-1][1]
    return line


def level_findings(asked: Asked, room: Room, heights: RailHeights) -> tuple[Finding, ...]:
    """Return what is to be said of the level line's readings."""
    if not heights.is_read:
        return (_missing(asked, heights),)
    tape = asked.house.tape(asked.entry.tape)
    limit_mm = _SURE * tape.private_u_mm() * 2.0**0.5
    findings = []
    for left, right in _pairs(room):
        here, there = heights.at(left, Side.RIGHT), heights.at(right, Side.LEFT)
        if here is not None and there is not None and abs(here - there) > limit_mm:
            findings.append(_disagrees(asked, left, right, abs(here - there)))
    return tuple(findings)


def height_lines(asked: Asked, room: Room, heights: RailHeights) -> tuple[str, ...]:
    """Return one line with the rail's height above the floor at every corner known."""
    edge = asked.get("measured_to", "top")
    said = joined(
        "; ",
        (
            say("wall {mark} {ends}", mark=wall.mark, ends=_ends(asked, heights, wall.mark))
            for wall in room.walls
            if any(heights.at(wall.mark, side) is not None for side in Side)
        ),
    )
    return (
        say("Set the rail to the level line, not to the floor and not to the ceiling."),
        say("Its {edge} edge above the floor: {said}.", edge=edge, said=said),
    )


def _ends(asked: Asked, heights: RailHeights, wall: str) -> str:
    parts = []
    for side in Side:
        above_mm = heights.at(wall, side)
        if above_mm is not None:
            parts.append(
                say(
                    "{side} {above}",
                    side=side,
                    above=format_length(above_mm, asked.units),
                )
            )
    return joined(", ", parts)


def _pairs(room: Room) -> list[tuple[str, str]]:
    """Return the walls on both sides of every corner."""
    marks = [wall.mark for wall in room.walls]
    return list(pairwise([*marks, marks[0]] if room.closed else marks))


def _round_the_corners(room: Room, line: dict[Spot, float]) -> dict[Spot, float]:
    """Return the readings with each corner read on one wall alone known on the other too."""
    whole = dict(line)
    for left, right in _pairs(room):
        here, there = (left, Side.RIGHT), (right, Side.LEFT)
        for one, other in ((here, there), (there, here)):
            if one in line:
                whole.setdefault(other, line[one])
    return whole


def _twice(asked: Asked, wall: str) -> PieceError:
    return PieceError(
        say("The level line of {mark} lists wall {wall} twice.", mark=asked.mark, wall=wall),
        say("Which reading counts can't be told."),
        say("Take one of them out."),
    )


def _no_datum(asked: Asked, datum: str) -> PieceError:
    return PieceError(
        say(
            "The height of {mark} was read at the left end of wall {datum}.",
            mark=asked.mark,
            datum=datum,
        ),
        say("The level line was not read there, so nothing ties the two together."),
        say("Read the floor to the level line there too, or name another datum."),
    )


def _missing(asked: Asked, heights: RailHeights) -> Finding:
    return Finding(
        code=LEVEL_LINE_MISSING,
        severity=Severity.NOTE,
        place=asked.mark,
        read=say("No level line was read for {mark}.", mark=asked.mark),
        wrong=say(
            "Its height is known at the left end of wall {datum} alone; floors fall.",
            datum=heights.datum,
        ),
        do=say("Carry that height round with a level, not by measuring up from the floor."),
    )


def _disagrees(asked: Asked, left: str, right: str, by_mm: float) -> Finding:
    return Finding(
        code=LEVEL_LINE_DISAGREES,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "In the corner of walls {left} and {right} the level line was read twice.",
            left=left,
            right=right,
        ),
        wrong=say(
            "The two readings are {by} apart.",
            by=format_with_unit(by_mm, asked.units),
        ),
        do=say("Read both again from the same spot of the floor."),
    )
