"""Quad and cover bead along the floor, in front of the skirting."""

import math
from dataclasses import replace
from typing import Final

from longpoint.catalogue.along_walls.bead_keys import BEAD_KEYS
from longpoint.catalogue.along_walls.bead_sketch import bead_sketch
from longpoint.catalogue.along_walls.rail_openings import Band, openings_met
from longpoint.catalogue.along_walls.wall_course import (
    Ends,
    chosen_walls,
    course_boards,
    course_pieces,
    order_of_work,
    the_room,
)
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.boards import Board, Side, Stop
from longpoint.pieces.piece import Role
from longpoint.pieces.run_sums import run_sum
from longpoint.pieces.wall_boards import Course
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say
from longpoint.survey.rooms import Room, RunEnd, Wall

BEAD_NO_SKIRTING: Final = "bead-no-skirting"

NAIL_IT: Final = say("Nail it to the skirting or the wall, not to the floor: that has to move.")
"""Common practice, no source."""


def plan_bead(asked: Asked) -> TrimPlan:
    """Return the beads of a room, each as long as the skirting's face, and any plain lengths.

    Raises:
        PieceError: Neither a room nor a length is written.
    """
    lengths = asked.get("lengths", ())
    if not asked.entry.room and not lengths:
        raise PieceError(
            say("{mark} is written without a room and without lengths.", mark=asked.mark),
            say("There is nothing to follow."),
            say("Name the room whose skirting it follows, or write lengths."),
        )
    pieces, said = course_pieces(
        asked,
        tuple(_plain(asked, number, mm) for number, mm in enumerate(lengths, start=1)),
        Ends(what=say("bead"), role=Role.BEAD),
    )
    if not asked.get("walls") and lengths:
        # A room beside plain lengths only says where they go, unless walls are named as well.
        lines = (say("Plain lengths, square at both ends."),)
        return TrimPlan(pieces=pieces, findings=said, lines=lines)
    around = _round_the_room(asked)
    return replace(around, pieces=(*around.pieces, *pieces), findings=(*around.findings, *said))


def _plain(asked: Asked, number: int, length_mm: float) -> Board:
    tape = asked.house.tape(asked.entry.tape)
    return Board(
        mark=f"{asked.mark}-length-{number}",
        room=asked.entry.room,
        profile=asked.profile,
        length_mm=length_mm,
        u_mm=combine((tape.private_u_mm(), tape.shared_u_mm(length_mm))),
        left=Stop(kind=RunEnd.SQUARE),
        right=Stop(kind=RunEnd.SQUARE),
        sum_text=run_sum(say("as read"), [length_mm], asked.units),
    )


def _round_the_room(asked: Asked) -> TrimPlan:
    room = _known_room(asked)
    walls = chosen_walls(asked, room)
    ends = Ends(
        what=say("bead"),
        role=Role.BEAD,
        is_mitred=asked.get("internal", "scribe") == "mitre",
        is_returned=asked.get("at_trim", "square") == "return",
    )
    behind_mm = tuple(_behind_mm(asked, room, wall) for wall in room.walls)
    boards, said = course_boards(asked, room, _course(asked, room, walls), walls, ends)
    beads = tuple(_before_the_skirting(asked, room, board, behind_mm) for board in boards)
    pieces, more = course_pieces(asked, beads, ends)
    return TrimPlan(
        pieces=pieces,
        findings=(*said, *more, *_bare(asked, room, walls, behind_mm)),
        sketches=bead_sketch(asked, room, walls, behind_mm),
        lines=(
            _what_stands_behind(asked, room, walls, behind_mm),
            order_of_work([bead for bead in beads if not bead.is_held], ends),
            *(() if asked.get("height") else (NAIL_IT,)),
            *_seen_ends(boards),
        ),
    )


def _course(asked: Asked, room: Room, walls: frozenset[str]) -> Course:
    """Return what runs round the room; off the floor only what it meets interrupts it."""
    low_mm = asked.get("height", 0.0)
    if not low_mm:
        return Course(mark=asked.mark, profile=asked.profile)
    band = Band(low_mm=low_mm, high_mm=low_mm + asked.profile.width_mm)
    met = openings_met(asked, room, walls, band)
    return Course(
        mark=asked.mark,
        profile=asked.profile,
        low_mm=low_mm,
        openings=frozenset(opening.mark for opening in met.stopping),
    )


def _known_room(asked: Asked) -> Room:
    """Return the room; the catalogue does not look after it, as plain lengths need none."""
    name = asked.entry.room
    if name in asked.held or name in {each.mark for each in asked.house.held}:
        raise PieceError(
            say("{mark} runs round {name}.", mark=asked.mark, name=name),
            say("That room is held, so no length is worked out for this either."),
            say("Put the room right first."),
        )
    if name not in {room.name for room in asked.house.rooms}:
        raise PieceError(
            say("{mark} names the room {name}.", mark=asked.mark, name=name)
            if name
            else say(
                "{mark} names no room.",
                mark=asked.mark,
            ),
            say("The walls of no such room are described."),
            say("Describe it under [[rooms]], name one that is, or write lengths."),
        )
    return the_room(asked)


def _behind_mm(asked: Asked, room: Room, wall: Wall) -> float:
    """Return how thick what stands behind a wall's bead is: as written, or the wall's skirting.

    Above its skirting a bead lies on the wall.
    """
    written: float | None = asked.get("behind")
    if written is not None:
        return written
    house = asked.house
    run = next((run for run in house.runs if (run.room, run.wall) == (room.name, wall.mark)), None)
    name = run.profile if run is not None else wall.profile or house.skirting_profile
    profile = next((profile for profile in house.profiles if profile.name == name), None)
    is_there = run is not None or wall.skirting
    if not is_there or profile is None or asked.get("height", 0.0) >= profile.width_mm:
        return 0.0
    return profile.thickness_mm


def _before_the_skirting(
    asked: Asked, room: Room, board: Board, behind_mm: tuple[float, ...]
) -> Board:
    """Return a board that was worked out along a wall, brought forward to its skirting's face.

    A bead is bent to the floor it lies on, so what skirting has scribed off it is of no meaning.
    """
    board = replace(board, floor=())
    index = _wall_index(asked, room, board)
    taken = [
        -_corner_mm(stop, behind_mm, index, side, len(room.walls))
        for side, stop in ((Side.LEFT, board.left), (Side.RIGHT, board.right))
        if stop.is_corner or stop.at is not None
    ]
    if not any(taken):
        return board
    length_mm = board.length_mm + math.fsum(taken)
    return replace(
        board,
        length_mm=length_mm,
        sum_text=say("{sum_text}; ", sum_text=board.sum_text)
        + run_sum(say("before the skirting"), [board.length_mm, *taken], asked.units),
    )


def _wall_index(asked: Asked, room: Room, board: Board) -> int:
    """Return which wall a board runs along: its mark is the trim's, the wall's and a number."""
    rest = board.mark.removeprefix(f"{asked.mark}-")
    return next(
        index
        for index, wall in enumerate(room.walls)
        if rest == wall.mark or rest.removeprefix(f"{wall.mark}-").isdecimal()
    )


def _corner_mm(
    stop: Stop, behind_mm: tuple[float, ...], index: int, side: Side, count: int
) -> float:
    """Return how far from a corner the skirtings' faces cross, along a wall.

    References:
        Two lines s1 and s2 in front of walls that meet at theta cross (s2 + s1 cos theta) /
        sin theta from the corner along the first wall: s cot(theta / 2) when both are alike,
        negative past an external corner.
    """
    corner = math.radians(stop.corner_deg)
    neighbour = (index - 1 if side is Side.LEFT else index + 1) % count
    return (behind_mm[neighbour] + behind_mm[index] * math.cos(corner)) / math.sin(corner)


def _bare(
    asked: Asked, room: Room, walls: frozenset[str], behind_mm: tuple[float, ...]
) -> tuple[Finding, ...]:
    """Return the note of walls for which no skirting is known."""
    if asked.get("behind") is not None or asked.get("height"):
        return ()
    bare = [
        wall.mark
        for wall, thickness_mm in zip(room.walls, behind_mm, strict=True)
        if wall.mark in walls and thickness_mm == 0.0
    ]
    if not bare:
        return ()
    return (
        Finding(
            code=BEAD_NO_SKIRTING,
            severity=Severity.NOTE,
            place=asked.mark,
            read=say(
                "{mark} runs along {bare} of {room}.",
                mark=asked.mark,
                bare=joined(", ", bare),
                room=room.name,
            ),
            wrong=say("No skirting is written there, so the bead was taken as lying on the wall."),
            do=say("Write behind, the thickness of what it runs in front of, if there is any."),
        ),
    )


def _seen_ends(boards: tuple[Board, ...]) -> tuple[str, ...]:
    stops = [stop for board in boards for stop in (board.left, board.right)]
    if not any(stop.kind is RunEnd.ARCHITRAVE for stop in stops):
        return ()
    return (
        say(
            "Beside an architrave or a plinth block it ends square; where it stands "
            "further out than that, its end is seen: ease it back by hand, or write "
            'at_trim = "return".'
        ),
    )


def _what_stands_behind(
    asked: Asked, room: Room, walls: frozenset[str], behind_mm: tuple[float, ...]
) -> str:
    units = asked.units
    thick = {
        wall.mark: thickness_mm
        for wall, thickness_mm in zip(room.walls, behind_mm, strict=True)
        if wall.mark in walls
    }
    if len(set(thick.values())) == 1:
        return say(
            "The bead runs {next} off the walls.",
            next=format_with_unit(next(iter(thick.values())), units),
        )
    each = joined(
        ", ",
        (
            say("{mm} off {mark}", mm=format_length(mm, units), mark=mark)
            for mark, mm in thick.items()
        ),
    )
    return say("The bead runs {each}.", each=each)


TRIM: Final = TrimKind(
    name="cover-bead",
    title=say("a cover bead"),
    asks=BEAD_KEYS,
    plan=plan_bead,
)
