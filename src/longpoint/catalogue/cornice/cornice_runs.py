"""The straight runs of a cornice: which walls, where the ceiling changes its slope, what they meet.

A run reaches along its wall, level, from where the ceiling lets it begin to where it ends: from
corner to corner, or to a break in the ceiling.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.catalogue.cornice.cornice_keys import SpringFrom
from longpoint.catalogue.cornice.cornice_walls import CorniceWall, cornice_walls
from longpoint.catalogue.trim import Asked
from longpoint.errors import PieceError
from longpoint.pieces.boards import (
    SQUARE_DEG,
    Corner,
    corner_angles,
    is_possible_corner,
    left_corner,
    right_corner,
)
from longpoint.quantities.formatting import format_angle
from longpoint.speech.said import say
from longpoint.survey.rooms import Room, RunEnd
from longpoint.trims.cornice import SprungRun, spring_of

SAME_SPRING_DEG: Final = 1.0
"""Spring as written and as worked out may differ by this much: our limit, no source."""


class Meets(StrEnum):
    """What the end of a run meets."""

    CORNER = "corner"
    """Another run, round a corner."""
    BREAK = "break"
    """Another run on the same wall, where the ceiling changes its slope."""
    WALL = "wall"
    """A wall that gets no cornice."""
    OPEN = "open"
    """Nothing."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RunStop:
    """What one end of a run meets.

    Attributes:
        meets: What.
        corner_deg: The corner inside the room; 180 on one wall.
        other: Index of the run it meets; None where it meets none.
        is_assumed: True when the corner wasn't read.
    """

    meets: Meets
    corner_deg: float = 180.0
    other: int | None = None
    is_assumed: bool = False

    @property
    def is_internal(self) -> bool:
        """Tell whether it stands in an internal corner."""
        return self.meets in (Meets.CORNER, Meets.WALL) and self.corner_deg < 180.0


@dataclass(frozen=True, slots=True, kw_only=True)
class CorniceRun:
    """One straight run of a cornice.

    Attributes:
        what: Its wall, and which part of it: "N", "E-2".
        wall: Index of its wall.
        wall_mark: Mark of its wall.
        wall_mm: Length of the wall.
        start_mm: From the wall's left-hand corner to where the ceiling lets it begin, level.
        end_mm: To where it ends.
        sprung: Its spring and slope.
        u_mm: Standard uncertainty of its length.
        left: What its left-hand end meets, facing the wall.
        right: What its right-hand end meets.
    """

    what: str
    wall: int
    wall_mark: str
    wall_mm: float
    start_mm: float
    end_mm: float
    sprung: SprungRun
    u_mm: float
    left: RunStop
    right: RunStop

    @property
    def level_mm(self) -> float:
        """How far it reaches along the wall, level."""
        return self.end_mm - self.start_mm


def asked_spring_deg(asked: Asked) -> float:
    """Return the spring from the wall that an entry writes, or that follows from what it covers.

    Raises:
        PieceError: Neither is written, or the two contradict each other.
    """
    drop, projection = asked.get("drop"), asked.get("projection")
    written = asked.get("spring")
    found_deg = spring_of(drop, projection) if drop and projection else None
    if written is None and found_deg is None:
        raise PieceError(
            say("{mark} is written without its spring.", mark=asked.mark),
            say("No setting of a sprung moulding can be worked out without it."),
            say(
                "Write spring in degrees from the wall, or drop and projection: hold a "
                "short length in a square corner and measure how far it comes down the "
                "wall and along the ceiling."
            ),
        )
    if written is None and found_deg is not None:
        return found_deg
    spring_deg = from_wall_deg(asked, float(written))
    if found_deg is not None and abs(found_deg - spring_deg) > SAME_SPRING_DEG:
        raise PieceError(
            say(
                "{mark} springs {spring} degrees from the wall as written, and {found} "
                "by its drop and projection.",
                mark=asked.mark,
                spring=format_angle(spring_deg),
                found=format_angle(found_deg),
            ),
            say(
                "Only one of them can be true; measuring from the ceiling gives 90 "
                "less the spring from the wall."
            ),
            say("Measure drop and projection again, or mend spring and spring_from."),
        )
    return spring_deg


def from_wall_deg(asked: Asked, spring_deg: float) -> float:
    """Return a spring as measured from the wall, whatever the entry measures it from."""
    measured_from = SpringFrom(asked.get("spring_from", SpringFrom.WALL))
    return spring_deg if measured_from is SpringFrom.WALL else 90.0 - spring_deg


def cornice_runs(asked: Asked, spring_deg: float) -> tuple[CorniceRun, ...]:
    """Return the runs of a cornice, in the order of the walls, from left to right.

    Args:
        asked: The entry; its room is one that is described.
        spring_deg: Spring from the wall, where no wall has its own. [deg]

    Raises:
        PieceError: A wall isn't known, wasn't read, or the ceiling can't run as written.
    """
    room = next(room for room in asked.house.rooms if room.name == asked.entry.room)
    walls = cornice_walls(asked, room)
    springs = _own_springs(asked, room, spring_deg)
    first = dict(zip((wall.place for wall in walls), _first_runs(walls), strict=True))
    last = {wall.place: first[wall.place] + len(wall.parts) - 1 for wall in walls}
    angles = corner_angles(asked.house, asked.shapes, asked.held)
    runs: list[CorniceRun] = []
    for wall in walls:
        ends = (
            _left_stop(room, wall.place, angles, last),
            _right_stop(room, wall.place, angles, first),
        )
        runs += _runs(room, wall, springs.get(wall.place, spring_deg), ends, first[wall.place])
    return tuple(runs)


def _first_runs(walls: tuple[CorniceWall, ...]) -> list[int]:
    counts = [len(wall.parts) for wall in walls]
    return [sum(counts[:place]) for place in range(len(walls))]


def _runs(
    room: Room, wall: CorniceWall, spring_deg: float, ends: tuple[RunStop, RunStop], first: int
) -> list[CorniceRun]:
    mark, count = room.walls[wall.place].mark, len(wall.parts)
    return [
        CorniceRun(
            what=mark if count == 1 else say("{mark}-{place}", mark=mark, place=place + 1),
            wall=wall.place,
            wall_mark=mark,
            wall_mm=wall.length_mm,
            start_mm=part.start_mm,
            end_mm=part.end_mm,
            sprung=SprungRun(spring_deg=spring_deg, slope_deg=part.slope_deg),
            u_mm=wall.part_u_mm(part),
            left=ends[0] if place == 0 else _break(first + place - 1),
            right=ends[1] if place == count - 1 else _break(first + place + 1),
        )
        for place, part in enumerate(wall.parts)
    ]


def _break(other: int) -> RunStop:
    return RunStop(meets=Meets.BREAK, other=other)


def _own_springs(asked: Asked, room: Room, spring_deg: float) -> dict[int, float]:
    """Return the spring from the wall of each wall that writes its own."""
    places = {wall.mark: index for index, wall in enumerate(room.walls)}
    own: dict[int, float] = {}
    for entry in asked.get("springs", ()):
        deg = from_wall_deg(asked, entry["spring"])
        if deg != spring_deg:
            own[places[entry["wall"]]] = deg
    return own


def _left_stop(
    room: Room, index: int, angles: dict[Corner, float], last: dict[int, int]
) -> RunStop:
    at = left_corner(room, index)
    if at is None:
        return RunStop(meets=Meets.OPEN)
    return _corner_stop(room, at, angles, last.get((index - 1) % len(room.walls)))


def _right_stop(
    room: Room, index: int, angles: dict[Corner, float], first: dict[int, int]
) -> RunStop:
    at = right_corner(room, index)
    is_last = not room.closed and index == len(room.walls) - 1
    if is_last and at not in angles:
        return RunStop(meets=Meets.OPEN)
    other = None if is_last else first.get((index + 1) % len(room.walls))
    return _corner_stop(room, at, angles, other)


def _corner_stop(room: Room, at: Corner, angles: dict[Corner, float], other: int | None) -> RunStop:
    corner_deg = angles.get(at, SQUARE_DEG[RunEnd.INTERNAL])
    kind = RunEnd.INTERNAL if corner_deg < 180.0 else RunEnd.EXTERNAL
    if not is_possible_corner(kind, corner_deg):
        raise PieceError(
            say(
                "The corner at the right of wall {mark} of {room} is {corner} degrees.",
                mark=room.walls[at.wall].mark,
                room=room.name,
                corner=format_angle(corner_deg),
            ),
            say("A corner under 30 degrees, or within 3 of straight, is more likely a slip."),
            say("Read the corner again; join two walls in one line into one."),
        )
    if other is None:
        meets = Meets.WALL if kind is RunEnd.INTERNAL else Meets.OPEN
    else:
        meets = Meets.CORNER
    return RunStop(meets=meets, corner_deg=corner_deg, other=other, is_assumed=at not in angles)
