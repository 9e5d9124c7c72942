"""A bay of windows in plan: boards and trim that go round its corners.

Looked down on, the window away from you: the frame line runs from left to right and turns towards
you at every corner, so that the angle on the room's side is under 180. What stands into the room
is shorter than the frame line by the cotangent of half the corner, at either end.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.shape.point import Point

_STEP_DEG: Final = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class BayEnd:
    """One end of a light's frame line.

    Attributes:
        angle_deg: On the room's side, to the next light, or to what the trim ends on. [deg]
        is_corner: True at a corner between two lights, whose trim is mitred; False at an end of
            the bay, where it stops against a wall or cheek.
    """

    angle_deg: float
    is_corner: bool

    @property
    def saw_deg(self) -> float:
        """What the saw is set to, positive where the edge at the frame is the longer. [deg]

        Example:
            >>> BayEnd(angle_deg=135, is_corner=True).saw_deg
            22.5
            >>> BayEnd(angle_deg=100, is_corner=False).saw_deg
            -10.0
        """
        return 90.0 - (self.angle_deg / 2.0 if self.is_corner else self.angle_deg)

    def short_mm(self, into_room_mm: float) -> float:
        """Return how much a line so far into the room is shorter at this end. [mm]

        Example:
            >>> round(BayEnd(angle_deg=135, is_corner=True).short_mm(225.0), 2)
            93.2

        References:
            Two parallel lines meet their corner's bisector cot(corner / 2) apart per mm.
        """
        return into_room_mm * math.tan(math.radians(self.saw_deg))


def bay_ends(
    corners_deg: Sequence[float], ends_deg: tuple[float, float]
) -> tuple[tuple[BayEnd, BayEnd], ...]:
    """Return the left and right end of every light.

    Args:
        corners_deg: Angle at each corner, left to right. [deg], (n - 1,)
        ends_deg: Angle at the left and the right end of the bay. [deg]

    Returns:
        One pair for every light, (n,).

    Example:
        >>> [(a.angle_deg, b.angle_deg) for a, b in bay_ends((135, 140), (90, 90))]
        [(90, 135), (135, 140), (140, 90)]
    """
    marks = (
        BayEnd(angle_deg=ends_deg[0], is_corner=False),
        *(BayEnd(angle_deg=corner, is_corner=True) for corner in corners_deg),
        BayEnd(angle_deg=ends_deg[1], is_corner=False),
    )
    return tuple(pairwise(marks))


def frame_line(lights_mm: Sequence[float], corners_deg: Sequence[float]) -> tuple[Point, ...]:
    """Return the corners of the frame line in plan, its ends level with each other.

    Args:
        lights_mm: Length of each light along the frame line. [mm], (n,)
        corners_deg: Angle at each corner on the room's side. [deg], (n - 1,)

    Returns:
        From the left end at the origin to the right end on the x axis, the window up the page.

    Example:
        >>> line = frame_line((500, 1000, 500), (135, 135))
        >>> [round(value, 1) for value in line[1]], round(line[3].x_mm, 1)
        ([353.6, 353.6], 1707.1)
    """
    heading, points = 0.0, [Point(0.0, 0.0)]
    for index, light_mm in enumerate(lights_mm):
        if index:
            heading -= math.pi - math.radians(corners_deg[index - 1])
        points.append(points[-1].moved(light_mm * math.cos(heading), light_mm * math.sin(heading)))
    turn = -math.atan2(points[-1].y_mm, points[-1].x_mm)
    cosine, sine = math.cos(turn), math.sin(turn)
    return tuple(Point(x * cosine - y * sine, x * sine + y * cosine) for x, y in points)


def mouth_mm(lights_mm: Sequence[float], corners_deg: Sequence[float]) -> float:
    """Return how far the two ends of the frame line are apart. [mm]"""
    line = frame_line(lights_mm, corners_deg)
    return line[0].distance_mm(line[-1])


def mouth_u_mm(
    lights_mm: Sequence[float], corners_deg: Sequence[float], tape_u_mm: float, angle_u_deg: float
) -> float:
    """Return what the mouth is uncertain by, from lights and corners each read once. [mm]

    Args:
        lights_mm: Length of each light. [mm]
        corners_deg: Angle at each corner. [deg]
        tape_u_mm: Standard uncertainty of a light, and of the mouth as read.
        angle_u_deg: Standard uncertainty of an angle.

    References:
        Root of the squares of each reading's share; the angles' by a small step.
    """
    found_mm = mouth_mm(lights_mm, corners_deg)
    shares = [tape_u_mm] * (len(lights_mm) + 1)
    for index, corner_deg in enumerate(corners_deg):
        moved = [*corners_deg[:index], corner_deg + _STEP_DEG, *corners_deg[index + 1 :]]
        slope = (mouth_mm(lights_mm, moved) - found_mm) / _STEP_DEG
        shares.append(slope * angle_u_deg)
    return math.hypot(*shares)
