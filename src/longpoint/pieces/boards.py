"""Skirting boards along a wall, before their ends are cut."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final, NamedTuple

from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import FloorFit, FloorPoint, Room, RunEnd

SQUARE_DEG: Final = {RunEnd.INTERNAL: 90.0, RunEnd.EXTERNAL: 270.0}
"""Corner assumed where none was read, inside the room."""

LEAST_CORNER_DEG: Final = 30.0
"""A corner sharper than this is a slip."""

FLATTEST_OFF_DEG: Final = 3.0
"""A corner nearer than this to straight is a slip, or no corner."""


class Side(StrEnum):
    """An end of a board, facing the wall."""

    LEFT = "left"
    RIGHT = "right"


class Corner(NamedTuple):
    """A corner of a room, by the wall whose right-hand end it is."""

    room: str
    wall: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """What one end of a board stops at.

    Attributes:
        kind: Corner, square, return, architrave or rake.
        corner_deg: Angle of the corner inside the room; of no meaning at other ends.
        at: Which corner of which room; None when that isn't known.
        is_assumed: True when the corner's angle wasn't read.
        lean_deg: How far what stands there is off plumb, + with the top away from the room.
        is_lean_assumed: True when that wasn't read, beside a wall that leans: taken as plumb.
        rake_deg: Pitch of the stair at a rake, + where it climbs away from the board.
    """

    kind: RunEnd
    corner_deg: float = 90.0
    at: Corner | None = None
    is_assumed: bool = False
    lean_deg: float = 0.0
    is_lean_assumed: bool = False
    rake_deg: float = 0.0

    @property
    def is_corner(self) -> bool:
        """Tell whether the end stands in a corner."""
        return self.kind in SQUARE_DEG


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A board from end to end along a wall.

    Attributes:
        mark: Mark of the run.
        room: Its room; may be empty.
        profile: Its profile.
        length_mm: Along the wall, from what its left end stops at to what its right end does.
        u_mm: Standard uncertainty of that.
        left: What its left end stops at.
        right: What its right end stops at.
        sum_text: Where the length comes from: "as read 2284", "wall 4606 - 640 = 3966".
        is_held: True when no length may be printed; it still counts for which board runs through.
        lean_deg: How far its wall is off plumb, + with the top away from the room.
        floor: The floor under it, from its left end; empty where none was read.
        floor_fit: How it is set over that floor.
        start_mm: From its wall's left-hand corner to its left end; None: not worked out.
        wall: Its wall, by the corner at that wall's right-hand end; None where `start_mm` is.
    """

    mark: str
    room: str
    profile: Profile
    length_mm: float
    u_mm: float
    left: Stop
    right: Stop
    sum_text: str
    is_held: bool = False
    lean_deg: float = 0.0
    floor: tuple[FloorPoint, ...] = ()
    floor_fit: FloorFit = FloorFit.FOLLOW
    start_mm: float | None = None
    wall: Corner | None = None

    def stop(self, side: Side) -> Stop:
        """Return what one of its ends stops at."""
        return self.left if side is Side.LEFT else self.right


def corner_angles(house: House, shapes: Shapes, held: frozenset[str]) -> dict[Corner, float]:
    """Return the angle of every corner that is known, inside the room.

    Args:
        house: The house as read.
        shapes: Fitted rooms.
        held: Places held back: of a held room the fit is not believed, only the gauge.

    Returns:
        The fitted angle; the one read where the room has no fit that can be trusted.
    """
    fits = {fit.name: fit for fit in shapes.rooms if fit.name not in held}
    angles: dict[Corner, float] = {}
    for room in house.rooms:
        fit = fits.get(room.name)
        turning = len(room.walls) if room.closed else len(room.walls) - 1
        for index, wall in enumerate(room.walls):
            if fit is not None and index < turning:
                angles[Corner(room.name, index)] = fit.corner_deg[index]
            elif wall.corner_deg is not None:
                angles[Corner(room.name, index)] = wall.corner_deg
    return angles


def left_corner(room: Room, index: int) -> Corner | None:
    """Return the corner at a wall's left-hand end, None where a chain begins."""
    if index == 0 and not room.closed:
        return None
    return Corner(room.name, (index - 1) % len(room.walls))


def right_corner(room: Room, index: int) -> Corner:
    """Return the corner at a wall's right-hand end."""
    return Corner(room.name, index)


def is_possible_corner(kind: RunEnd, corner_deg: float) -> bool:
    """Tell whether a corner inside the room is one that skirting goes round.

    Example:
        >>> is_possible_corner(RunEnd.INTERNAL, 89.5), is_possible_corner(RunEnd.EXTERNAL, 89.5)
        (True, False)
    """
    inside_deg = corner_deg if kind is RunEnd.INTERNAL else 360.0 - corner_deg
    return LEAST_CORNER_DEG <= inside_deg <= 180.0 - FLATTEST_OFF_DEG
