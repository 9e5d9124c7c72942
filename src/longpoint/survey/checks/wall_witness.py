"""A third voice when a wall and the runs along it disagree: the walls opposite."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.survey.rooms import Room, Wall

_SQUARE_WITHIN_DEG: Final = 10.0
"""Corners nearer than this to 90 or 270 are taken as square for the comparison."""

_OUT_OF_SQUARE: Final = math.tan(math.radians(1.0))
"""What a degree out of square moves a wall's end, per mm of the walls beside it: assumed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Witness:
    """What the walls opposite say of the length of a wall.

    Attributes:
        opposite_mm: Length that they leave for the wall. [mm]
        speaks_for_sum: True when it speaks for the runs and against the wall.
    """

    opposite_mm: float
    speaks_for_sum: bool


def hear_witness(room: Room, wall: Wall, total_mm: float) -> Witness | None:
    """Return what the walls opposite say, if they can tell the wall from the sum of its runs.

    Args:
        room: A closed room of square corners; of any other nothing can be said.
        wall: The wall in question; its length is read.
        total_mm: What its runs and openings add up to. [mm]

    Returns:
        The witness; None when the room isn't square, a wall isn't read, or the two lengths lie too
        near each other for walls that may be a degree out of square.
    """
    turns = _quarter_turns(room)
    if turns is None or wall.length_mm is None:
        return None
    heading = 0
    own = 0
    along: list[tuple[int, Wall]] = []
    for each, turn in zip(room.walls, turns, strict=True):
        along.append((heading % 4, each))
        if each is wall:
            own = heading % 4
        heading += turn
    facing_mm = math.fsum(w.length_mm or 0.0 for h, w in along if h == (own + 2) % 4)
    beside_mm = math.fsum(w.length_mm or 0.0 for h, w in along if h == own and w is not wall)
    across_mm = math.fsum(w.length_mm or 0.0 for h, w in along if h == (own + 1) % 4)
    opposite_mm = facing_mm - beside_mm
    from_wall_mm = abs(opposite_mm - wall.length_mm)
    from_sum_mm = abs(opposite_mm - total_mm)
    if abs(from_wall_mm - from_sum_mm) <= across_mm * _OUT_OF_SQUARE:
        return None
    return Witness(opposite_mm=opposite_mm, speaks_for_sum=from_sum_mm < from_wall_mm)


def _quarter_turns(room: Room) -> list[int] | None:
    """Return +1 for each internal and -1 for each external corner of a closed square room."""
    if not room.closed or any(wall.length_mm is None for wall in room.walls):
        return None
    turns = []
    for wall in room.walls:
        corner_deg = 90.0 if wall.corner_deg is None else wall.corner_deg
        if abs(corner_deg - 90.0) <= _SQUARE_WITHIN_DEG:
            turns.append(1)
        elif abs(corner_deg - 270.0) <= _SQUARE_WITHIN_DEG:
            turns.append(-1)
        else:
            return None
    return turns if sum(turns) == 4 else None
