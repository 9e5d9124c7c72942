"""Boards worked out from a wall, its corners and the doors that stand in it."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding
from longpoint.pieces.boards import (
    Board,
    Corner,
    Stop,
    is_possible_corner,
    right_corner,
)
from longpoint.pieces.run_leans import Leans, room_leans
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.wall_doors import WallDoor, wall_doors
from longpoint.pieces.wall_findings import (
    corner_impossible,
    no_board,
    no_room_left,
    run_held,
    skirting_unnamed,
    wall_place,
    wall_unread,
    wall_unsure,
)
from longpoint.pieces.wall_stops import wall_stops
from longpoint.quantities.uncertainty import combine
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import FloorPoint, Room, RunEnd, Wall
from longpoint.trims.floor_scribe import floor_under
from longpoint.trims.skirting_joints import longer_above_mm

MOST_WALL_U_MM: Final = 5.0
"""A wall that wasn't read is cut by only when the others fix it to this: our limit, no source."""

SLIVER_MM: Final = 3.0
"""A board this short is no board."""

Made = tuple[tuple[Board, ...], tuple[Finding, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """Trim that runs along walls at one height.

    Attributes:
        mark: Stands before the mark of every board: "PR1" makes "PR1-N"; past a door, "PR1-N-2".
        profile: Its profile.
        low_mm: Its lower edge, above the floor; 0: it stands on the floor.
        openings: Marks of the openings that interrupt it; None: those that stand on the floor.
        is_scribed: True when it is set and scribed over the floor; what bends to it isn't.
    """

    mark: str
    profile: Profile
    low_mm: float = 0.0
    openings: frozenset[str] | None = None
    is_scribed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class _Length:
    """Length of a wall and its doubt; where it came from."""

    mm: float
    u_mm: float
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Site:
    """One wall and all that is known about it."""

    house: House
    room: Room
    index: int
    course: Course
    length: _Length
    doors: tuple[WallDoor, ...]
    angles: dict[Corner, float]
    leans: Leans
    held: frozenset[str]

    @property
    def wall(self) -> Wall:
        return self.room.walls[self.index]

    @property
    def lean_deg(self) -> float | None:
        return self.leans.get((self.room.name, self.wall.mark))


def wall_boards(
    house: House, shapes: Shapes, angles: dict[Corner, float], held: frozenset[str]
) -> Made:
    """Return the boards of every wall that is to have skirting and that no run names.

    Args:
        house: The house as read.
        shapes: Fitted openings and rooms.
        angles: Known corners.
        held: Places held back: openings, walls and rooms.

    Returns:
        The boards, held ones included where their length is known, and what is to be said.
    """
    named = {(run.room, run.wall) for run in house.runs}
    boards: list[Board] = []
    findings: list[Finding] = []
    for room in house.rooms:
        for index, wall in enumerate(room.walls):
            if wall.skirting and (room.name, wall.mark) not in named:
                made, said = _skirting(house, shapes, room, index, angles, held)
                boards += made
                findings += said
    return tuple(boards), tuple(findings)


def room_boards(
    house: House,
    shapes: Shapes,
    room: Room,
    course: Course,
    angles: dict[Corner, float],
    held: frozenset[str],
    *,
    walls: frozenset[str] | None = None,
) -> Made:
    """Return the boards of a course that runs round a room at one height.

    Args:
        house: The house as read.
        shapes: Fitted openings and rooms.
        room: The room.
        course: What runs, at which height; `reaching` tells which openings stand so high.
        angles: Known corners, from `boards.corner_angles`.
        held: Places held back: openings, walls and rooms.
        walls: Marks of the walls it runs along; None: all.

    Returns:
        The boards, held ones included where their length is known, and what is to be said. Corners
        where a neighbour gets no board are corners all the same: `run_corners.meetings` knows
        which boards meet.
    """
    boards: list[Board] = []
    findings: list[Finding] = []
    for index, wall in enumerate(room.walls):
        if walls is None or wall.mark in walls:
            made, said = _wall(house, shapes, room, index, course, angles, held)
            boards += made
            findings += said
    return tuple(boards), tuple(findings)


def _skirting(
    house: House,
    shapes: Shapes,
    room: Room,
    index: int,
    angles: dict[Corner, float],
    held: frozenset[str],
) -> Made:
    wall = room.walls[index]
    name = wall.profile or house.skirting_profile
    profile = next((profile for profile in house.profiles if profile.name == name), None)
    if profile is None:
        return (), (skirting_unnamed(room, wall, name),)
    course = Course(mark=room.name, profile=profile, is_scribed=True)
    return _wall(house, shapes, room, index, course, angles, held)


def _wall(
    house: House,
    shapes: Shapes,
    room: Room,
    index: int,
    course: Course,
    angles: dict[Corner, float],
    held: frozenset[str],
) -> Made:
    wall = room.walls[index]
    doors, said = wall_doors(
        house, shapes, room, wall, held, low_mm=course.low_mm, only=course.openings
    )
    if doors is None:
        return (), said
    length = _length(house, shapes, room, index)
    if isinstance(length, Finding):
        return (), (length,)
    site = _Site(
        house=house,
        room=room,
        index=index,
        course=course,
        length=length,
        doors=doors,
        angles=angles,
        leans=room_leans(house),
        held=held,
    )
    boards, more = _boards(site)
    return boards, (*said, *more)


def _length(house: House, shapes: Shapes, room: Room, index: int) -> _Length | Finding:
    wall = room.walls[index]
    tape = house.tape(room.tape)
    if wall.length_mm is not None:
        u_mm = combine((tape.wall_u_mm(), tape.shared_u_mm(wall.length_mm)))
        return _Length(mm=wall.length_mm, u_mm=u_mm, name="wall")
    fit = next((fit for fit in shapes.rooms if fit.name == room.name), None)
    if fit is None:
        return wall_unread(room, wall)
    if fit.wall_u_mm[index] > MOST_WALL_U_MM:
        return wall_unsure(house, room, wall, fit.wall_mm[index], fit.wall_u_mm[index])
    return _Length(mm=fit.wall_mm[index], u_mm=fit.wall_u_mm[index], name="wall worked out")


def _boards(site: _Site) -> Made:
    left, right, said = wall_stops(site.house, site.room, site.index, site.angles, site.leans)
    for stop in (left, right):
        if stop.is_corner and not is_possible_corner(stop.kind, stop.corner_deg):
            return (), (corner_impossible(site.room, site.wall, stop.corner_deg),)
    boards: list[Board] = []
    findings: list[Finding] = [*said]
    for part in range(len(site.doors) + 1):
        board = _part(site, part, left, right)
        if abs(board.length_mm) <= SLIVER_MM:
            findings.append(no_board(site.room, site.wall, board.mark))
            continue
        if board.mark not in site.held:
            findings += _part_findings(site, part, board)
        boards.append(board)
    return tuple(boards), tuple(findings)


def _part(site: _Site, part: int, left: Stop, right: Stop) -> Board:
    before = site.doors[part - 1] if part > 0 else None
    after = site.doors[part] if part < len(site.doors) else None
    name = f"{site.course.mark}-{site.wall.mark}"
    mark = say("{name}-{part}", name=name, part=part + 1) if site.doors else name
    start_terms = before.right_terms_mm() if before is not None else ()
    end_terms = after.left_terms_mm() if after is not None else (site.length.mm,)
    terms = (
        *end_terms,
        *(-term for term in start_terms),
        *(
            _longer_mm(site, stop)
            for stop, door in ((left, before), (right, after))
            if door is None
        ),
    )
    length_mm = math.fsum(terms)
    door = Stop(kind=RunEnd.ARCHITRAVE)
    return Board(
        mark=mark,
        room=site.room.name,
        profile=site.course.profile,
        length_mm=length_mm,
        u_mm=_u_mm(site, before, after),
        left=left if before is None else door,
        right=right if after is None else door,
        sum_text=run_sum(
            site.length.name if after is None else say("to {mark}", mark=after.mark),
            terms,
            site.house.units,
        ),
        is_held=bool(_held_by(site, before, after)) or mark in site.held or length_mm <= SLIVER_MM,
        lean_deg=site.lean_deg or 0.0,
        floor=_floor(site, math.fsum(start_terms), length_mm),
        floor_fit=site.wall.floor_fit,
        start_mm=math.fsum(start_terms),
        wall=right_corner(site.room, site.index),
    )


def _longer_mm(site: _Site, stop: Stop) -> float:
    """Return how much longer the wall is at the course's height than on the floor, at one end."""
    if not stop.is_corner or site.course.low_mm == 0:
        return 0.0
    own_deg = site.lean_deg or 0.0
    return longer_above_mm(stop.corner_deg, own_deg, stop.lean_deg, site.course.low_mm)


def _floor(site: _Site, start_mm: float, length_mm: float) -> tuple[FloorPoint, ...]:
    """Return the floor under a part of the wall, where the course stands on it."""
    if not site.wall.floor or not site.course.is_scribed or length_mm <= SLIVER_MM:
        return ()
    return floor_under(site.wall.floor, start_mm, start_mm + length_mm)


def _part_findings(site: _Site, part: int, board: Board) -> tuple[Finding, ...]:
    before = site.doors[part - 1] if part > 0 else None
    after = site.doors[part] if part < len(site.doors) else None
    because = _held_by(site, before, after)
    if because:
        return (run_held(board.mark, because),)
    if board.length_mm <= SLIVER_MM:
        return (no_room_left(site.house, site.room, site.wall, board.mark, board.length_mm),)
    return ()


def _held_by(site: _Site, before: WallDoor | None, after: WallDoor | None) -> str:
    place = wall_place(site.room, site.wall)
    if site.room.name in site.held:
        return say("the room {room}", room=site.room.name)
    if place in site.held:
        return say("wall {mark} of {room}", mark=site.wall.mark, room=site.room.name)
    return joined(
        say(" and "), (door.mark for door in (before, after) if door is not None and door.is_held)
    )


def _u_mm(site: _Site, before: WallDoor | None, after: WallDoor | None) -> float:
    """Return the doubt of a part: every reading in its sum, what the tape shares once."""
    tape = site.house.tape(site.room.tape)
    place_u_mm = tape.wall_u_mm()
    terms = [site.length.u_mm if after is None else place_u_mm]
    if after is not None:
        terms.append(tape.shared_u_mm(after.from_left_mm))
    if before is not None:
        terms += [place_u_mm, tape.private_u_mm()]
    return combine(terms)
