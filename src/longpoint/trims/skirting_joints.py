"""Joints of boards that lie flat against walls: corners, also of walls that lean, rakes and scarfs.

One end of one board is looked at, at a corner: `mine` is the board that is cut, `other` the board
on the next wall. The other end of a corner is the same with the two exchanged. Theta is the corner
inside the room, where the walls stand on the floor.
"""

import math
from dataclasses import dataclass
from typing import Final, NamedTuple

from longpoint.trims.joint_plane import (
    BoardFrame,
    SawAngles,
    Vector,
    cross,
    dot,
    plus,
    saw_angles,
    times,
)

UPRIGHT: Final[Vector] = (0.0, 0.0, 1.0)

HIDDEN_PART: Final = 0.5
"""A board that runs through into a corner is cut square as long as the hollow left behind the next
board is narrower than this part of that board's thickness: our limit, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """How a board lies on its wall.

    Attributes:
        width_mm: Its height on the wall.
        thickness_mm: Its thickness.
        lean_deg: How far its wall is off plumb, + with the top away from the room.
        climb_deg: How far it climbs towards the corner, in the plane of its wall.
    """

    width_mm: float
    thickness_mm: float
    lean_deg: float = 0.0
    climb_deg: float = 0.0


class EndShort(NamedTuple):
    """How far an end stops short of the corner on the floor, along the board's edges. [mm]

    Negative where it runs past.
    """

    back_bottom_mm: float
    face_bottom_mm: float
    back_top_mm: float
    face_top_mm: float


class WallCut(NamedTuple):
    """One end of a board, cut: at which settings, and where its four edges end."""

    angles: SawAngles
    short: EndShort


class EdgeSteps(NamedTuple):
    """How far the same edge of two boards that meet stands apart in the joint's plane. [mm]"""

    face_bottom_mm: float
    back_top_mm: float
    face_top_mm: float

    @property
    def worst_mm(self) -> float:
        """The largest of them."""
        return max(self)


def corner_cut(corner_deg: float, mine: Seat, other: Seat) -> WallCut:
    """Return the cut that closes a corner on the whole of both faces and backs.

    Args:
        corner_deg: Corner inside the room, on the floor: under 180 internal. 0 < theta < 360. [deg]
        mine: The board that is cut.
        other: The board it meets.

    Returns:
        Its settings; a bevel of 90 - theta / 2 between plumb walls. Of a scribed end this is the
        cut that exposes the profile.

    Example:
        Both walls plumb, then both leaning back 3 degrees:

        >>> plumb = Seat(width_mm=120, thickness_mm=18)
        >>> cut = corner_cut(90.0, plumb, plumb)
        >>> [round(each, 6) for each in cut.angles], [round(each, 6) for each in cut.short]
        ([0.0, 45.0], [0.0, 18.0, 0.0, 18.0])
        >>> leaning = Seat(width_mm=120, thickness_mm=18, lean_deg=3)
        >>> [round(each, 2) for each in corner_cut(90.0, leaning, leaning).angles]
        [3.0, 44.92]

    References:
        The plane through the line in which the backs meet and that in which the faces meet halves
        the angle between the walls: its normal is the difference of the faces' normals.
    """
    own, its = _frames(corner_deg, mine, other)
    return _cut(own, mine, plus(own.face, times(its.face, -1.0)))


def corner_steps(corner_deg: float, mine: Seat, other: Seat) -> EdgeSteps:
    """Return how far the boards' edges step past each other where a corner is closed by its cut.

    Between walls that lean alike, nothing. Else the cut faces still lie flat on each other, but
    the thickness of one board stands out at another height than that of the other.

    Example:
        >>> plumb, leaning = (Seat(width_mm=0, thickness_mm=18, lean_deg=d) for d in (0, 3))
        >>> round(corner_steps(90.0, plumb, leaning).face_bottom_mm, 2)
        0.94

    References:
        Both points lie on the line in which the faces (or backs) meet, t sin(lean) above the lower
        edge of the back.
    """
    own, its = _frames(corner_deg, mine, other)
    normal = plus(own.face, times(its.face, -1.0))
    section = ((0.0, 1.0), (1.0, 0.0), (1.0, 1.0))
    return EdgeSteps(
        *(
            math.dist(
                _end_point(own, normal, u * mine.width_mm, n * mine.thickness_mm),
                _end_point(its, normal, u * other.width_mm, n * other.thickness_mm),
            )
            for u, n in section
        )
    )


def through_cut(corner_deg: float, mine: Seat, other: Seat) -> WallCut:
    """Return the end of a board that runs through to the other wall, to be covered by its board.

    It is square, short enough that nothing of it jams against the other wall; square to the face
    still but with its edge along that wall where a square end would leave a hollow behind the
    other board that shows.

    Args:
        corner_deg: Internal corner, on the floor. [deg]
        mine: The board that runs through.
        other: The board that will be scribed over it.

    Example:
        >>> plumb = Seat(width_mm=120, thickness_mm=18)
        >>> through_cut(90.0, plumb, plumb).short.back_bottom_mm
        0.0
        >>> round(through_cut(80.0, plumb, plumb).short.back_bottom_mm, 2)
        3.17
    """
    own, its = _frames(corner_deg, mine, other)
    slope = _edge_slope(own, its)
    follows = abs(slope) * mine.width_mm > HIDDEN_PART * other.thickness_mm
    mitre = math.atan(slope) if follows else 0.0
    square = times(own.outward, math.cos(mitre))
    normal = plus(square, times(own.across, -math.sin(mitre)))
    cut, wall = _cut(own, mine, normal), _cut(own, mine, its.face)
    jam_mm = max(0.0, *(w - c for w, c in zip(wall.short, cut.short, strict=True)))
    return WallCut(cut.angles, EndShort(*(each + jam_mm for each in cut.short)))


def along_lean_cut(mine: Seat, lean_deg: float) -> WallCut:
    """Return an end cut square to the face along something square to the wall that leans.

    Args:
        mine: The board.
        lean_deg: How far what it stops at is off plumb, + with the top away from the board. [deg]

    Example:
        >>> along_lean_cut(Seat(width_mm=120, thickness_mm=18, climb_deg=0.5), 1.0).angles.mitre_deg
        1.5
    """
    return flat_cut(mine, lean_deg + mine.climb_deg)


def flat_cut(mine: Seat, mitre_deg: float) -> WallCut:
    """Return an end cut square through the thickness, its lower edge where it was read to.

    Args:
        mine: The board.
        mitre_deg: Off square across the face, positive when the upper edge is the longer. [deg]
    """
    past_mm = mine.width_mm * math.tan(math.radians(mitre_deg))
    return WallCut(SawAngles(mitre_deg, 0.0), EndShort(0.0, 0.0, -past_mm, -past_mm))


def rake_mitre_deg(rake_deg: float) -> float:
    """Return how a level board is cut where one of the same height runs on up or down a slope.

    Args:
        rake_deg: Pitch of the other, + where it climbs away from the joint. -90 < rake < 90. [deg]

    Returns:
        Half the pitch, negative where the other climbs: there the upper edges meet first.

    Example:
        >>> rake_mitre_deg(38.0), rake_mitre_deg(-38.0)
        (-19.0, 19.0)
    """
    return -rake_deg / 2.0


def rake_joint_mm(width_mm: float, rake_deg: float) -> float:
    """Return the length of a joint between a level and a raked board of one height.

    Example:
        >>> round(rake_joint_mm(120.0, 38.01), 1)
        126.9

    References:
        Both are cut half the pitch off square, so the joint is h / cos(pitch / 2).
    """
    return width_mm / math.cos(math.radians(rake_deg) / 2.0)


def plumb_height_mm(width_mm: float, rake_deg: float) -> float:
    """Return how high a raked board stands where it is cut plumb.

    Example:
        >>> round(plumb_height_mm(120.0, 42.0), 1), round(plumb_height_mm(120.0, 38.01), 1)
        (161.5, 152.3)
    """
    return width_mm / math.cos(math.radians(rake_deg))


def scarf_overlap_mm(thickness_mm: float, scarf_deg: float) -> float:
    """Return how far two scarfed boards lap over each other, along the wall.

    Example:
        >>> round(scarf_overlap_mm(18.0, 45.0), 6)
        18.0
    """
    return thickness_mm * math.tan(math.radians(scarf_deg))


def longer_above_mm(
    corner_deg: float, lean_deg: float, other_lean_deg: float, height_mm: float
) -> float:
    """Return how much longer a wall is at a height than on the floor, at one of its corners.

    Args:
        corner_deg: The corner on the floor. [deg]
        lean_deg: The wall's own lean, + with the top away from the room. [deg]
        other_lean_deg: The next wall's. [deg]
        height_mm: Above the floor, plumb. [mm]

    Example:
        A dado rail at 900 between walls that lean back one degree:

        >>> round(longer_above_mm(90.0, 0.0, 1.0, 900.0), 1)
        15.7
    """
    mine, other = (
        Seat(width_mm=0.0, thickness_mm=0.0, lean_deg=lean) for lean in (lean_deg, other_lean_deg)
    )
    own, its = _frames(corner_deg, mine, other)
    x, _, z = cross(own.face, its.face)
    return height_mm * x / z


def _frames(corner_deg: float, mine: Seat, other: Seat) -> tuple[BoardFrame, BoardFrame]:
    """Return both boards, outward to the corner, which lies at the origin.

    Mine runs in +x, the room on the side of -y.
    """
    theta = math.radians(corner_deg)
    towards = (math.cos(theta), math.sin(theta), 0.0)
    into_room = (-math.sin(theta), math.cos(theta), 0.0)
    return _frame((1.0, 0.0, 0.0), (0.0, -1.0, 0.0), mine), _frame(towards, into_room, other)


def _frame(towards: Vector, into_room: Vector, seat: Seat) -> BoardFrame:
    lean, climb = math.radians(seat.lean_deg), math.radians(seat.climb_deg)
    up = plus(times(UPRIGHT, math.cos(lean)), times(into_room, -math.sin(lean)))
    return BoardFrame(
        outward=plus(times(towards, math.cos(climb)), times(up, math.sin(climb))),
        across=plus(times(up, math.cos(climb)), times(towards, -math.sin(climb))),
        face=plus(times(into_room, math.cos(lean)), times(UPRIGHT, math.sin(lean))),
    )


def _cut(frame: BoardFrame, seat: Seat, normal: Vector) -> WallCut:
    section = (
        (0.0, 0.0),
        (0.0, seat.thickness_mm),
        (seat.width_mm, 0.0),
        (seat.width_mm, seat.thickness_mm),
    )
    short = EndShort(*(-_reach_mm(frame, normal, u, n) + 0.0 for u, n in section))
    return WallCut(saw_angles(frame, normal), short)


def _reach_mm(frame: BoardFrame, normal: Vector, across_mm: float, off_back_mm: float) -> float:
    """Return where a plane through the corner ends one edge, along the board from the corner."""
    side = across_mm * dot(normal, frame.across) + off_back_mm * dot(normal, frame.face)
    return -side / dot(normal, frame.outward)


def _end_point(frame: BoardFrame, normal: Vector, across_mm: float, off_back_mm: float) -> Vector:
    along_mm = _reach_mm(frame, normal, across_mm, off_back_mm)
    edge = plus(times(frame.across, across_mm), times(frame.face, off_back_mm))
    return plus(edge, times(frame.outward, along_mm))


def _edge_slope(own: BoardFrame, its: BoardFrame) -> float:
    """Return how far outwards the line between the walls runs, per upwards on the own wall."""
    line = cross(own.face, its.face)
    return dot(line, own.outward) / dot(line, own.across)
