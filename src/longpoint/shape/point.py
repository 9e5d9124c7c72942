"""Points and straight lines in the plane."""

import math
from typing import NamedTuple

from longpoint.errors import ShapeError
from longpoint.speech.said import say


class Point(NamedTuple):
    """A point in the plane of the wall. [mm]"""

    x_mm: float
    y_mm: float

    def distance_mm(self, other: "Point") -> float:
        """Return the distance to another point. [mm]"""
        return math.hypot(other.x_mm - self.x_mm, other.y_mm - self.y_mm)

    def moved(self, dx_mm: float, dy_mm: float) -> "Point":
        """Return the point moved. [mm]"""
        return Point(self.x_mm + dx_mm, self.y_mm + dy_mm)


def direction(start: Point, end: Point) -> tuple[float, float]:
    """Return the unit vector from one point to another.

    Raises:
        ShapeError: The two points coincide.
    """
    length_mm = start.distance_mm(end)
    if length_mm == 0:
        raise ShapeError(
            say("Two corners of a shape fall together."),
            say("A side without a length has no direction."),
            say("Read the sides that meet there again."),
        )
    return ((end.x_mm - start.x_mm) / length_mm, (end.y_mm - start.y_mm) / length_mm)


def line_crossing(a: Point, b: Point, c: Point, d: Point) -> Point:
    """Return where the line through a and b crosses the line through c and d.

    Raises:
        ShapeError: The lines are parallel, or nearly so (under 0.06 degrees).

    Example:
        >>> line_crossing(Point(0, 0), Point(2, 0), Point(1, -1), Point(1, 5))
        Point(x_mm=1.0, y_mm=0.0)
    """
    ux, uy = direction(a, b)
    vx, vy = direction(c, d)
    cross = ux * vy - uy * vx
    if abs(cross) < 1e-3:
        raise ShapeError(
            say("Two neighbouring sides of a shape run in one line."),
            say("They meet nowhere, so no corner can be cut there."),
            say("Read the two sides and the corner between them again."),
        )
    along_mm = ((c.x_mm - a.x_mm) * vy - (c.y_mm - a.y_mm) * vx) / cross
    return Point(a.x_mm + along_mm * ux, a.y_mm + along_mm * uy)


def interior_angles_deg(corners: tuple[Point, ...]) -> tuple[float, ...]:
    """Return the angle inside an anticlockwise polygon at each of its corners, 0 to 360.

    Example:
        >>> interior_angles_deg((Point(0, 0), Point(2, 0), Point(2, 1), Point(0, 1)))
        (90.0, 90.0, 90.0, 90.0)
    """
    angles = []
    for index, here in enumerate(corners):
        before, after = corners[index - 1], corners[(index + 1) % len(corners)]
        back = math.atan2(before.y_mm - here.y_mm, before.x_mm - here.x_mm)
        onward = math.atan2(after.y_mm - here.y_mm, after.x_mm - here.x_mm)
        angles.append(math.degrees(back - onward) % 360.0)
    return tuple(angles)


def side_lengths_mm(corners: tuple[Point, ...]) -> tuple[float, ...]:
    """Return the length of each side, side i from corner i to the next. [mm]"""
    return tuple(
        here.distance_mm(corners[(index + 1) % len(corners)]) for index, here in enumerate(corners)
    )
