"""Walls of a room, and skirting runs, as written down."""

from dataclasses import dataclass
from enum import StrEnum


class RunEnd(StrEnum):
    """What a run stops at."""

    INTERNAL = "internal"
    EXTERNAL = "external"
    SQUARE = "square"
    RETURN = "return"
    ARCHITRAVE = "architrave"
    """Read to the outer edge of where the architrave will be."""
    RAKE = "rake"
    """The same board runs on up or down a stair; read to where the two lower edges meet."""


class FloorFit(StrEnum):
    """How a board is set over a floor that isn't level."""

    FOLLOW = "follow"
    """It lies as the floor does, and is scribed to what departs from a straight line."""
    LEVEL = "level"
    """Its top is level, and all that the floor rises comes off its lower edge."""


FloorPoint = tuple[float, float]
"""A place along a wall from its left-hand end, and the floor's height there. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class WallOpening:
    """Where an opening stands in a wall: its mark, and corner to the reveal's near face."""

    mark: str
    from_left_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """One wall, seen from inside the room.

    Attributes:
        mark: Its mark, unique in the room.
        length_mm: Corner to corner (mean of the readings that stand); None when it wasn't read.
        read_twice: Whether two readings of that length agree.
        contradicted_mm: What was read of it, where the figures are so far apart that it is held.
        corner_deg: Corner with the next wall, at the right-hand end, inside the room: under 180
            internal, over 180 external. None: assumed 90.
        corner_u_deg: Standard uncertainty of that reading.
        openings: What stands in it, from left to right.
        skirting: True when the runs of this wall are to be worked out.
        profile: Name of its skirting.
        bow_mm: Middle of the wall off a string from end to end, + into the room; None: not read.
        lean_deg: How far it is off plumb, + with the top away from the room; None: not read.
        floor: The floor along it, + above a level line that is the same for the whole room.
        floor_fit: How its boards are set over that floor.
    """

    mark: str
    length_mm: float | None
    read_twice: bool = False
    contradicted_mm: tuple[float, ...] = ()
    corner_deg: float | None = None
    corner_u_deg: float = 0.5
    openings: tuple[WallOpening, ...] = ()
    skirting: bool = False
    profile: str = ""
    bow_mm: float | None = None
    lean_deg: float | None = None
    floor: tuple[FloorPoint, ...] = ()
    floor_fit: FloorFit = FloorFit.FOLLOW


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomDiagonal:
    """A diagonal between two corners, each named by the wall whose right-hand end it is."""

    start: str
    end: str
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """One room or chain of walls, clockwise as seen from above.

    Attributes:
        name: Its name, unique in the house.
        closed: False for a chain of walls that doesn't go round.
        walls: In order as you turn to the right.
        diagonals: Corner to corner.
        tape: Name of the tape that read it.
        floor_cover_mm: Thickness still to be laid under the skirting.
        accept: Codes of findings that the crew accepts here.
    """

    name: str
    closed: bool = True
    walls: tuple[Wall, ...] = ()
    diagonals: tuple[RoomDiagonal, ...] = ()
    tape: str
    floor_cover_mm: float = 0.0
    accept: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """One skirting run read on its own.

    Attributes:
        mark: Its mark, unique in the house.
        room: Room it is in; may be empty.
        wall: Wall it lies on; may be empty.
        profile: Name of its profile.
        length_mm: Mean of the readings that stand.
        left: What its left end stops at, facing the wall.
        right: What its right end stops at.
        left_corner_deg: Corner read at its left end, inside the room; None: the wall's, or 90.
        right_corner_deg: The same at its right end.
        left_rake_deg: Pitch of the stair at its left end, + where it climbs away from the run.
        right_rake_deg: The same at its right end.
        lean_deg: How far its wall is off plumb, + with the top away from the room; None: the
            wall's.
        left_lean_deg: The same of what stands at its left end; None: the next wall's.
        right_lean_deg: The same at its right end.
        floor: The floor under it from its left end; empty: the wall's.
        floor_fit: How it is set over that floor; None: as its wall is.
        tape: Name of the tape that read it.
        accept: Codes of findings that the crew accepts here.
    """

    mark: str
    room: str = ""
    wall: str = ""
    profile: str
    length_mm: float
    left: RunEnd
    right: RunEnd
    left_corner_deg: float | None = None
    right_corner_deg: float | None = None
    left_rake_deg: float | None = None
    right_rake_deg: float | None = None
    lean_deg: float | None = None
    left_lean_deg: float | None = None
    right_lean_deg: float | None = None
    floor: tuple[FloorPoint, ...] = ()
    floor_fit: FloorFit | None = None
    tape: str
    accept: tuple[str, ...] = ()
