"""A frame joined on the bench with true 45s, laid over an opening that is not true."""

import math
from dataclasses import dataclass

from longpoint.shape.fitted import FittedOpening
from longpoint.shape.point import Point, line_crossing


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchFrame:
    """The rectangle that shares an opening's error evenly.

    Attributes:
        corners: Its reveal-side corners, bottom left, bottom right, top right, top left; of a set
            that stands on the floor the bottom two lie on the floor line.
        least_off_mm: Smallest change of the quirk at a corner (negative: less quirk).
        most_off_mm: Largest change of the quirk at a corner.
    """

    corners: tuple[Point, Point, Point, Point]
    least_off_mm: float
    most_off_mm: float


def bench_frame(fitted: FittedOpening, *, on_floor: bool) -> BenchFrame:
    """Return the true rectangle that lies best over an opening.

    Args:
        fitted: The opening.
        on_floor: True when the bottom side is bare (floor or board): it then keeps its own line
            and only the other three sides share.

    Returns:
        The rectangle, and how far the quirk strays from what was asked.

    References:
        Least squares of a rectangle on the four corners: turned to the mean direction of its
        sides, each side through the mean of its two corners.
    """
    turn = _mean_turn(fitted, on_floor=on_floor)
    local = tuple(_turned(p, -turn) for p in fitted.corners)
    left = (local[0].x_mm + local[3].x_mm) / 2.0
    right = (local[1].x_mm + local[2].x_mm) / 2.0
    top = (local[2].y_mm + local[3].y_mm) / 2.0
    bottom = (local[0].y_mm + local[1].y_mm) / 2.0
    off_mm = [
        local[0].x_mm - left,
        local[3].x_mm - left,
        right - local[1].x_mm,
        right - local[2].x_mm,
        top - local[2].y_mm,
        top - local[3].y_mm,
    ]
    bl, br = Point(left, bottom), Point(right, bottom)
    tr, tl = Point(right, top), Point(left, top)
    if on_floor:
        bl = line_crossing(bl, tl, local[0], local[1])
        br = line_crossing(br, tr, local[0], local[1])
    else:
        off_mm += [local[0].y_mm - bottom, local[1].y_mm - bottom]
    return BenchFrame(
        corners=(_turned(bl, turn), _turned(br, turn), _turned(tr, turn), _turned(tl, turn)),
        least_off_mm=min(off_mm),
        most_off_mm=max(off_mm),
    )


def _mean_turn(fitted: FittedOpening, *, on_floor: bool) -> float:
    """Return the mean turn of the sides off the axes, each weighed by its length."""
    total = weight = 0.0
    for side in range(1 if on_floor else 0, 4):
        here, after = fitted.corners[side], fitted.corners[(side + 1) % 4]
        along = math.atan2(after.y_mm - here.y_mm, after.x_mm - here.x_mm)
        off = (along - side * math.pi / 2.0 + math.pi) % (2.0 * math.pi) - math.pi
        length_mm = here.distance_mm(after)
        total += off * length_mm
        weight += length_mm
    return total / weight


def _turned(point: Point, angle: float) -> Point:
    cos, sin = math.cos(angle), math.sin(angle)
    return Point(
        point.x_mm * cos - point.y_mm * sin,
        point.x_mm * sin + point.y_mm * cos,
    )
