"""What the boards of a wall stop at in its two corners."""

from longpoint.errors import Finding
from longpoint.pieces.boards import (
    SQUARE_DEG,
    Corner,
    Side,
    Stop,
    left_corner,
    right_corner,
)
from longpoint.pieces.run_leans import Leans, leaning_stop, next_wall_lean
from longpoint.pieces.wall_findings import chain_end
from longpoint.survey.house import House
from longpoint.survey.rooms import Room, RunEnd


def wall_stops(
    house: House, room: Room, index: int, angles: dict[Corner, float], leans: Leans
) -> tuple[Stop, Stop, tuple[Finding, ...]]:
    """Return what stands at the two ends of a wall, and what is to be said of them.

    Args:
        house: The house as read.
        room: The room.
        index: Which of its walls.
        angles: Known corners.
        leans: Known leans, from `run_leans.room_leans`.

    Returns:
        A corner, taken as square where it wasn't read; at the end of a chain of walls a square end.
    """
    wall = room.walls[index]
    stops: list[Stop] = []
    findings: list[Finding] = []
    is_last = not room.closed and index == len(room.walls) - 1
    at_right = right_corner(room, index)
    ends = (
        (Side.LEFT, left_corner(room, index)),
        (Side.RIGHT, None if is_last and at_right not in angles else at_right),
    )
    for side, at in ends:
        if at is None:
            stops.append(Stop(kind=RunEnd.SQUARE))
            findings.append(chain_end(room, wall, f"{side}-hand"))
            continue
        next_deg = next_wall_lean(house.rooms, leans, at, side)
        own_deg = leans.get((room.name, wall.mark))
        stops.append(leaning_stop(_corner(angles, at), next_deg, own_deg))
    left, right = stops
    return left, right, tuple(findings)


def _corner(angles: dict[Corner, float], at: Corner) -> Stop:
    known_deg = angles.get(at)
    corner_deg = SQUARE_DEG[RunEnd.INTERNAL] if known_deg is None else known_deg
    kind = RunEnd.INTERNAL if corner_deg < 180.0 else RunEnd.EXTERNAL
    return Stop(kind=kind, corner_deg=corner_deg, at=at, is_assumed=known_deg is None)
