"""What was read of a room, as sightings between its corners, and a first guess at its plan.

Corner i is the left-hand end of wall i, so wall i runs from corner i to corner i + 1. Walls turn
to the right, so the room lies to the right of every wall.
"""

import math
from collections.abc import Sequence
from itertools import accumulate
from typing import Final

from longpoint.errors import ShapeError
from longpoint.shape.least_squares import solve
from longpoint.shape.network import Angle, Distance
from longpoint.shape.point import Point
from longpoint.speech.said import say
from longpoint.survey.instruments import Tape
from longpoint.survey.rooms import Room, Wall

ASSUMED_CORNER_U_DEG: Final = 1.0
"""How far a corner that was not read may be off the 90 assumed: assumed, no source."""

MOST_ANGLE_MISFIT_DEG: Final = 60.0
"""Corners further than this from what goes round are no room: a quarter turn is left out."""

Sightings = tuple[Distance | Angle, ...]


def corner_count(room: Room) -> int:
    """Return how many corners a room has; a chain has one more than walls."""
    return len(room.walls) if room.closed else len(room.walls) + 1


def turning_walls(room: Room) -> tuple[Wall, ...]:
    """Return the walls that have a next wall at their right-hand end."""
    return room.walls if room.closed else room.walls[:-1]


def walls_without_corner(room: Room) -> tuple[Wall, ...]:
    """Return the walls whose right-hand corner was not read."""
    return tuple(wall for wall in turning_walls(room) if wall.corner_deg is None)


def needs_assumed_corners(room: Room) -> bool:
    """Tell whether missing corners are taken as 90.

    One missing alone follows from all the others; those of a triangle follow from its walls.
    """
    is_triangle = len(room.walls) == 3
    return not (room.closed and (is_triangle or len(walls_without_corner(room)) == 1))


def room_sightings(room: Room, tape: Tape) -> Sightings:
    """Return everything that was read of a room, and the corners that had to be assumed."""
    count = corner_count(room)
    u_mm = tape.wall_u_mm()
    right_end = {wall.mark: (index + 1) % count for index, wall in enumerate(room.walls)}
    walls = (
        Distance(
            name=f"wall {wall.mark}",
            start=index,
            end=(index + 1) % count,
            read=wall.length_mm,
            u=u_mm,
        )
        for index, wall in enumerate(room.walls)
        if wall.length_mm is not None
    )
    diagonals = (
        Distance(
            name=f"diagonal {diagonal.start}-{diagonal.end}",
            start=right_end[diagonal.start],
            end=right_end[diagonal.end],
            read=diagonal.length_mm,
            u=u_mm,
        )
        for diagonal in room.diagonals
        if right_end.get(diagonal.start) != right_end.get(diagonal.end)
        and {diagonal.start, diagonal.end} <= right_end.keys()
    )
    return (*walls, *_corners(room, count), *diagonals)


def _corners(room: Room, count: int) -> Sightings:
    assumes = needs_assumed_corners(room)
    return tuple(
        Angle(
            name=f"corner {wall.mark}",
            corner=(index + 1) % count,
            back=(index + 2) % count,
            onward=index,
            read=90.0 if wall.corner_deg is None else wall.corner_deg,
            u=ASSUMED_CORNER_U_DEG if wall.corner_deg is None else wall.corner_u_deg,
            is_assumed=wall.corner_deg is None,
        )
        for index, wall in enumerate(turning_walls(room))
        if assumes or wall.corner_deg is not None
    )


def first_guess(room: Room) -> tuple[Point, ...]:
    """Return a plan near enough to start a fit from: corners turned evenly until they go round.

    A wall that was not read gets the length that closes the room; what is then left open is
    shared out by length, as a compass traverse is closed.

    Raises:
        ShapeError: The walls and corners describe no room.
    """
    headings = _headings(room)
    lengths = _lengths(room, headings)
    steps = [
        (length * math.cos(heading), length * math.sin(heading))
        for length, heading in zip(lengths, headings, strict=True)
    ]
    if room.closed:
        total_mm = math.fsum(lengths)
        open_x = math.fsum(dx for dx, _ in steps)
        open_y = math.fsum(dy for _, dy in steps)
        steps = [
            (dx - open_x * length / total_mm, dy - open_y * length / total_mm)
            for (dx, dy), length in zip(steps, lengths, strict=True)
        ]
    corners = [Point(0.0, 0.0)]
    for dx, dy in steps:
        corners.append(corners[-1].moved(dx, dy))
    return _laid_along_x(corners[: corner_count(room)])


def _headings(room: Room) -> tuple[float, ...]:
    """Return the direction of each wall in radians, the first along x."""
    read = [wall.corner_deg for wall in turning_walls(room)]
    known_deg = math.fsum(corner for corner in read if corner is not None)
    missing = read.count(None)
    stand_in_deg = 90.0
    if room.closed:
        needed_deg = 180.0 * (len(read) - 2)
        if missing and not needs_assumed_corners(room):
            stand_in_deg = (needed_deg - known_deg) / missing
        sum_deg = known_deg + missing * stand_in_deg
        if abs(sum_deg - needed_deg) > MOST_ANGLE_MISFIT_DEG or not 0 < stand_in_deg < 360:
            raise _no_round(room, known_deg + missing * 90.0, needed_deg)
        share_deg = (needed_deg - sum_deg) / len(read)
    else:
        share_deg = 0.0
    turns = (
        math.radians((stand_in_deg if corner is None else corner) + share_deg - 180.0)
        for corner in read
    )
    headings = tuple(accumulate(turns, initial=0.0))
    return headings[: len(room.walls)]


def _lengths(room: Room, headings: Sequence[float]) -> tuple[float, ...]:
    missing = [i for i, wall in enumerate(room.walls) if wall.length_mm is None]
    known = [wall.length_mm or 0.0 for wall in room.walls]
    if not missing:
        return tuple(known)
    if not room.closed or len(missing) == len(known):
        raise ShapeError(
            say(
                "{room}: wall {mark} has no length.",
                room=room.name,
                mark=room.walls[missing[0]].mark,
            ),
            say("Without it the walls can't be put together."),
            say("Read it."),
        )
    usual_mm = math.fsum(known) / (len(known) - len(missing))
    guess = _closing_lengths(known, missing, headings, usual_mm)
    for index, length_mm in guess.items():
        if length_mm <= 0:
            raise ShapeError(
                say(
                    "{room}: wall {mark} has no length.",
                    room=room.name,
                    mark=room.walls[index].mark,
                ),
                say("The other walls and corners leave no room for it."),
                say("Read it, and check the corners."),
            )
    return tuple(guess.get(index, length_mm) for index, length_mm in enumerate(known))


def _closing_lengths(
    known: Sequence[float], missing: Sequence[int], headings: Sequence[float], usual_mm: float
) -> dict[int, float]:
    """Return lengths that close the room, as near to the usual length as closing leaves free."""
    light = 1e-6
    open_x = math.fsum(r * math.cos(h) for r, h in zip(known, headings, strict=True))
    open_y = math.fsum(r * math.sin(h) for r, h in zip(known, headings, strict=True))
    normal = [
        tuple(math.cos(headings[i] - headings[j]) + (light if i == j else 0.0) for j in missing)
        for i in missing
    ]
    right = tuple(
        light * usual_mm - math.cos(headings[i]) * open_x - math.sin(headings[i]) * open_y
        for i in missing
    )
    return dict(zip(missing, solve(normal, right), strict=True))


def _laid_along_x(corners: Sequence[Point]) -> tuple[Point, ...]:
    """Turn the corners until the first wall runs along x."""
    first = corners[1]
    size_mm = math.hypot(*first) or 1.0
    cos, sin = first.x_mm / size_mm, first.y_mm / size_mm
    return tuple(Point(cos * p.x_mm + sin * p.y_mm, cos * p.y_mm - sin * p.x_mm) for p in corners)


def _no_round(room: Room, sum_deg: float, needed_deg: float) -> ShapeError:
    count = len(room.walls)
    return ShapeError(
        say(
            "{room}: the {count} corners add up to {sum_deg:.0f} degrees, those not "
            "read taken as 90.",
            room=room.name,
            count=count,
            sum_deg=sum_deg,
        ),
        say(
            "A room of {count} walls goes round only with {needed_deg:.0f}.",
            count=count,
            needed_deg=needed_deg,
        ),
        say("Read every corner that is not near 90: over 180 where it sticks out into the room."),
    )
