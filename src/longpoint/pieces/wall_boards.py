"""Boards worked out from a wall, its corners and the doors that stand in it."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding
from longpoint.pieces.boards import (
    SQUARE_DEG,
    Board,
    Corner,
    Stop,
    is_possible_corner,
    left_corner,
    right_corner,
)
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.wall_doors import WallDoor, wall_doors
from longpoint.pieces.wall_findings import (
    chain_end,
    corner_impossible,
    no_board,
    no_room_left,
    run_held,
    skirting_unnamed,
    wall_place,
    wall_unread,
    wall_unsure,
)
from longpoint.quantities.uncertainty import combine
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_sightings import wall_reading_u_mm
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import Room, RunEnd, Wall

MOST_WALL_U_MM: Final = 5.0
"""A wall that wasn't read is cut by only when the others fix it to this: our limit, no source."""

SLIVER_MM: Final = 3.0
"""A board this short is no board."""

Made = tuple[tuple[Board, ...], tuple[Finding, ...]]


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
    profile: Profile
    length: _Length
    doors: tuple[WallDoor, ...]
    angles: dict[Corner, float]
    held: frozenset[str]

    @property
    def wall(self) -> Wall:
        return self.room.walls[self.index]


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
                made, said = _wall(house, shapes, room, index, angles, held)
                boards += made
                findings += said
    return tuple(boards), tuple(findings)


def _wall(
    house: House,
    shapes: Shapes,
    room: Room,
    index: int,
    angles: dict[Corner, float],
    held: frozenset[str],
) -> Made:
    wall = room.walls[index]
    doors, said = wall_doors(house, shapes, room, wall, held)
    if doors is None:
        return (), said
    name = wall.profile or house.skirting_profile
    profile = next((profile for profile in house.profiles if profile.name == name), None)
    if profile is None:
        return (), (skirting_unnamed(room, wall, name),)
    length = _length(house, shapes, room, index)
    if isinstance(length, Finding):
        return (), (length,)
    site = _Site(
        house=house,
        room=room,
        index=index,
        profile=profile,
        length=length,
        doors=doors,
        angles=angles,
        held=held,
    )
    boards, more = _boards(site)
    return boards, (*said, *more)


def _length(house: House, shapes: Shapes, room: Room, index: int) -> _Length | Finding:
    wall = room.walls[index]
    tape = house.tape(room.tape)
    if wall.length_mm is not None:
        u_mm = combine((wall_reading_u_mm(tape), tape.shared_u_mm(wall.length_mm)))
        return _Length(mm=wall.length_mm, u_mm=u_mm, name="wall")
    fit = next((fit for fit in shapes.rooms if fit.name == room.name), None)
    if fit is None:
        return wall_unread(room, wall)
    if fit.wall_u_mm[index] > MOST_WALL_U_MM:
        return wall_unsure(house, room, wall, fit.wall_mm[index], fit.wall_u_mm[index])
    return _Length(mm=fit.wall_mm[index], u_mm=fit.wall_u_mm[index], name="wall worked out")


def _boards(site: _Site) -> Made:
    left, left_said = _left_stop(site)
    right, right_said = _right_stop(site)
    for stop in (left, right):
        if stop.is_corner and not is_possible_corner(stop.kind, stop.corner_deg):
            return (), (corner_impossible(site.room, site.wall, stop.corner_deg),)
    boards: list[Board] = []
    findings: list[Finding] = [*left_said, *right_said]
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
    name = f"{site.room.name}-{site.wall.mark}"
    mark = f"{name}-{part + 1}" if site.doors else name
    start_terms = before.right_terms_mm() if before is not None else ()
    end_terms = after.left_terms_mm() if after is not None else (site.length.mm,)
    terms = (*end_terms, *(-term for term in start_terms))
    length_mm = math.fsum(terms)
    door = Stop(kind=RunEnd.ARCHITRAVE)
    return Board(
        mark=mark,
        room=site.room.name,
        profile=site.profile,
        length_mm=length_mm,
        u_mm=_u_mm(site, before, after),
        left=left if before is None else door,
        right=right if after is None else door,
        sum_text=run_sum(
            site.length.name if after is None else f"to {after.mark}", terms, site.house.units
        ),
        is_held=bool(_held_by(site, before, after)) or mark in site.held or length_mm <= SLIVER_MM,
    )


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
        return f"the room {site.room.name}"
    if place in site.held:
        return f"wall {site.wall.mark} of {site.room.name}"
    return " and ".join(door.mark for door in (before, after) if door is not None and door.is_held)


def _u_mm(site: _Site, before: WallDoor | None, after: WallDoor | None) -> float:
    """Return the doubt of a part: every reading in its sum, what the tape shares once."""
    tape = site.house.tape(site.room.tape)
    place_u_mm = wall_reading_u_mm(tape)
    terms = [site.length.u_mm if after is None else place_u_mm]
    if after is not None:
        terms.append(tape.shared_u_mm(after.from_left_mm))
    if before is not None:
        terms += [place_u_mm, tape.private_u_mm()]
    return combine(terms)


def _left_stop(site: _Site) -> tuple[Stop, tuple[Finding, ...]]:
    at = left_corner(site.room, site.index)
    if at is None:
        return Stop(kind=RunEnd.SQUARE), (chain_end(site.room, site.wall, "left-hand"),)
    return _corner_stop(site, at), ()


def _right_stop(site: _Site) -> tuple[Stop, tuple[Finding, ...]]:
    at = right_corner(site.room, site.index)
    is_last = not site.room.closed and site.index == len(site.room.walls) - 1
    if is_last and at not in site.angles:
        return Stop(kind=RunEnd.SQUARE), (chain_end(site.room, site.wall, "right-hand"),)
    return _corner_stop(site, at), ()


def _corner_stop(site: _Site, at: Corner) -> Stop:
    corner_deg = site.angles.get(at)
    if corner_deg is None:
        return Stop(
            kind=RunEnd.INTERNAL, corner_deg=SQUARE_DEG[RunEnd.INTERNAL], at=at, is_assumed=True
        )
    kind = RunEnd.INTERNAL if corner_deg < 180.0 else RunEnd.EXTERNAL
    return Stop(kind=kind, corner_deg=corner_deg, at=at)
