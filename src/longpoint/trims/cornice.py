"""Sprung mouldings (cornice, scotia, cove): how runs lie in a room, and the cuts that join them.

The spring is the angle between the moulding's back and the wall. The bottom edge of its back
touches the wall, the top (ceiling) edge of its back the ceiling. Directions in the room, facing the
wall: x to the right, y up, z out of the wall; a corner is that inside the room, under 180 internal,
over 180 external, 180 for a joint on one wall.
"""

import math
from dataclasses import dataclass
from typing import NamedTuple

from longpoint.trims.joint_plane import (
    BoardFrame,
    SawAngles,
    Vector,
    cross,
    plus,
    saw_angles,
    times,
)
from longpoint.trims.run_joint import Misfit, halving_normal, joint_normal, misfit, rectangle

UP: Vector = (0.0, 1.0, 0.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SprungRun:
    """A straight run of a sprung moulding.

    Attributes:
        spring_deg: Between the moulding's back and the wall, square to the run. 0 to 90. [deg]
        slope_deg: What it climbs to the right, facing the wall; negative where it falls. [deg]
    """

    spring_deg: float
    slope_deg: float = 0.0


class JointCuts(NamedTuple):
    """The two cuts of a joint, each for its piece lying on its back, face up.

    Attributes:
        left_run: Cut of the right-hand end of the run on the left.
        right_run: Cut of the left-hand end of the run on the right.
    """

    left_run: SawAngles
    right_run: SawAngles


class EndReach(NamedTuple):
    """How far the four edges of an end run past the bottom edge of its back. [mm]

    Attributes:
        top_back_mm: The ceiling edge of the back.
        bottom_face_mm: The bottom edge of the face.
        top_face_mm: The ceiling edge of the face.
    """

    top_back_mm: float
    bottom_face_mm: float
    top_face_mm: float

    @property
    def longest_mm(self) -> float:
        """The farthest of the four."""
        return max(0.0, *self)


def spring_of(drop_mm: float, projection_mm: float) -> float:
    """Return the spring of a moulding from the wall and ceiling it covers.

    Args:
        drop_mm: Ceiling to where the bottom edge of the back touches the wall. > 0. [mm]
        projection_mm: Wall to where the ceiling edge of the back touches the ceiling. > 0. [mm]

    Returns:
        Angle between its back and the wall. [deg]

    Example:
        >>> round(spring_of(80.0, 60.0), 2)
        36.87

    References:
        The back is the long side of a triangle whose others lie on the wall and the ceiling.
    """
    return math.degrees(math.atan2(projection_mm, drop_mm))


def drop_mm(width_mm: float, spring_deg: float) -> float:
    """Return how far below the ceiling the bottom edge of the back lies, along the wall."""
    return width_mm * math.cos(math.radians(spring_deg))


def projection_mm(width_mm: float, spring_deg: float) -> float:
    """Return how far off the wall the ceiling edge of the back lies, along the ceiling."""
    return width_mm * math.sin(math.radians(spring_deg))


def break_along_mm(drop: float, left_deg: float, right_deg: float) -> float:
    """Return how far right of a break in the ceiling the bottom edge of the back breaks.

    Args:
        drop: Ceiling to the bottom edge, in the wall and square to the run. [mm]
        left_deg: What the run on the left climbs to the right. [deg]
        right_deg: What the run on the right does. [deg]

    Returns:
        Along the wall, level. [mm]

    Example:
        A ceiling that begins to climb at 30; the bottom edge runs on by drop x tan 15:

        >>> round(break_along_mm(100.0, 0.0, 30.0), 2)
        26.79

    References:
        Two lines moved down square to themselves by the same distance meet on the line that halves
        their angle.
    """
    one, other = math.radians(left_deg), math.radians(right_deg)
    return drop * (math.sin(one) + math.sin(other)) / (1.0 + math.cos(other - one))


def corner_frames(
    corner_deg: float, left: SprungRun, right: SprungRun
) -> tuple[BoardFrame, BoardFrame]:
    """Return how the runs left and right of a corner lie in the room, outward to the corner.

    Args:
        corner_deg: The corner inside the room; 180 for two runs on one wall. 0 to 360. [deg]
        left: The run that ends there.
        right: The run that begins there.

    References:
        Facing the left-hand wall, the other starts towards (-cos corner, 0, sin corner).
    """
    corner = math.radians(corner_deg)
    turned = (-math.cos(corner), 0.0, math.sin(corner))
    return _frame((1.0, 0.0, 0.0), left, 1.0), _frame(turned, right, -1.0)


def corner_cuts(corner_deg: float, left: SprungRun, right: SprungRun) -> JointCuts | None:
    """Return the cuts that join two runs of one moulding; None where no cut does.

    Args:
        corner_deg: The corner inside the room; 180 for two runs on one wall. [deg]
        left: The run that ends there.
        right: The run that begins there.

    Example:
        Spring 38 from the wall, a square internal corner, then a square external one:

        >>> level = SprungRun(spring_deg=38.0)
        >>> [round(angle, 2) for angle in corner_cuts(90.0, level, level).left_run]
        [-31.62, 33.86]
        >>> [round(angle, 2) for angle in corner_cuts(270.0, level, level).left_run]
        [31.62, -33.86]

        A level run on the left that would go round the corner into one climbing at 15:

        >>> corner_cuts(90.0, level, SprungRun(spring_deg=38.0, slope_deg=15.0)) is None
        True

    References:
        Level: tan(mitre) = sin(spring) / tan(corner / 2), sin(bevel) = cos(spring) cos(corner / 2);
        the same plane as a hip roof's jack rafters, roof pitch 90 less the spring.
    """
    one, other = corner_frames(corner_deg, left, right)
    normal = joint_normal(one, other)
    if normal is None:
        return None
    return JointCuts(saw_angles(one, normal), saw_angles(other, normal))


def halving_cuts(corner_deg: float, left: SprungRun, right: SprungRun) -> JointCuts:
    """Return the cuts along the plane that halves the angle between two runs, whether it closes.

    They are the joint's own for runs that are alike; for runs that are nearly so they leave what
    `corner_misfit` says.
    """
    one, other = corner_frames(corner_deg, left, right)
    normal = halving_normal(one, other)
    return JointCuts(saw_angles(one, normal), saw_angles(other, normal))


def corner_misfit(
    corner_deg: float, left: SprungRun, right: SprungRun, width_mm: float, thickness_mm: float
) -> Misfit:
    """Return how far two runs would stand apart at a corner that no cut closes.

    Args:
        corner_deg: The corner inside the room. [deg]
        left: The run that ends there.
        right: The run that begins there.
        width_mm: Width of the moulding across its back. [mm]
        thickness_mm: Its thickness. [mm]

    Example:
        Spring 38 meeting spring 45, 90 wide, taken as a sheet:

        >>> one, other = SprungRun(spring_deg=38.0), SprungRun(spring_deg=45.0)
        >>> [round(gap, 2) for gap in corner_misfit(90.0, one, other, 90.0, 0.0)]
        [7.28, 13.73]
    """
    frames = corner_frames(corner_deg, left, right)
    return misfit(*frames, rectangle(width_mm, thickness_mm))


def wall_cut(corner_deg: float, run: SprungRun, *, at_left: bool) -> SawAngles:
    """Return the cut that lets a run die against the other wall of an internal corner.

    Args:
        corner_deg: The corner inside the room, under 180. [deg]
        run: The run.
        at_left: True for its left-hand end.

    Example:
        Against a wall square to it a level run is cut square:

        >>> cut = wall_cut(90.0, SprungRun(spring_deg=38.0), at_left=True)
        >>> [round(angle, 6) + 0.0 for angle in cut]
        [0.0, 0.0]

    References:
        The joint's plane is the wall's own.
    """
    corner = math.radians(corner_deg)
    way = -1.0 if at_left else 1.0
    frame = _frame((1.0, 0.0, 0.0), run, way)
    return saw_angles(frame, (way * math.sin(corner), 0.0, math.cos(corner)))


def plumb_cut(run: SprungRun, *, at_left: bool) -> SawAngles:
    """Return the cut that ends a run upright and square to its wall."""
    return wall_cut(90.0, run, at_left=at_left)


def end_reach(cut: SawAngles, width_mm: float, thickness_mm: float) -> EndReach:
    """Return how far the edges of a cut end run past the bottom edge of its back.

    Args:
        cut: The cut, for the piece on its back.
        width_mm: Width of the moulding. [mm]
        thickness_mm: Its thickness. [mm]

    Returns:
        Lengths along the piece; negative where an edge stops short.

    Example:
        >>> [round(edge, 1) for edge in end_reach(SawAngles(45.0, 0.0), 90.0, 18.0)]
        [90.0, 0.0, 90.0]

    References:
        On the plane m . x = 0: along = across tan(mitre) - off the back tan(bevel) / cos(mitre).
    """
    mitre, bevel = math.radians(cut.mitre_deg), math.radians(cut.bevel_deg)
    top_mm = width_mm * math.tan(mitre)
    face_mm = -thickness_mm * math.tan(bevel) / math.cos(mitre)
    return EndReach(top_back_mm=top_mm, bottom_face_mm=face_mm, top_face_mm=top_mm + face_mm)


def _frame(right: Vector, run: SprungRun, way: float) -> BoardFrame:
    """Return how a run lies on a wall whose right-hand direction is given.

    References:
        Out of the wall = right x up; the back leans off the wall by the spring, square to the run.
    """
    slope, spring = math.radians(run.slope_deg), math.radians(run.spring_deg)
    out = cross(right, UP)
    along = plus(times(right, math.cos(slope)), times(UP, math.sin(slope)))
    upwards = cross(out, along)
    return BoardFrame(
        outward=times(along, way),
        across=plus(times(upwards, math.cos(spring)), times(out, math.sin(spring))),
        face=plus(times(out, math.cos(spring)), times(upwards, -math.sin(spring))),
    )
