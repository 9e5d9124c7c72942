"""A frame joined on the bench with true 45s, laid over an opening that is not true."""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.shape.fitted import FittedOpening
from longpoint.shape.point import Point, line_crossing

MOST_TURN: Final = math.radians(20.0)
"""No frame is turned further over an opening."""

SEARCH_STEPS: Final = 80


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
        Each side through the middle of its two corners, turned so that the largest departure is
        the least; for a leaning opening A x B that is s A / (2 (A + B)) for a lean of s over B.
    """
    turn = _best_turn(fitted, on_floor=on_floor)
    local = tuple(_turned(p, -turn) for p in fitted.corners)
    left, right, top, bottom = _middles(local)
    off_mm = _off_mm(local, on_floor=on_floor)
    bl, br = Point(left, bottom), Point(right, bottom)
    tr, tl = Point(right, top), Point(left, top)
    if on_floor:
        bl = line_crossing(bl, tl, local[0], local[1])
        br = line_crossing(br, tr, local[0], local[1])
    return BenchFrame(
        corners=(_turned(bl, turn), _turned(br, turn), _turned(tr, turn), _turned(tl, turn)),
        least_off_mm=min(off_mm),
        most_off_mm=max(off_mm),
    )


def _best_turn(fitted: FittedOpening, *, on_floor: bool) -> float:
    """Return the turn that leaves the least of the largest departures; it is convex in the turn."""

    def worst_mm(turn: float) -> float:
        return max(_off_mm(tuple(_turned(p, -turn) for p in fitted.corners), on_floor=on_floor))

    low, high = -MOST_TURN, MOST_TURN
    for _ in range(SEARCH_STEPS):
        third = (high - low) / 3.0
        if worst_mm(low + third) < worst_mm(high - third):
            high -= third
        else:
            low += third
    return (low + high) / 2.0


def _middles(local: tuple[Point, ...]) -> tuple[float, float, float, float]:
    """Return left, right, top and bottom of the rectangle: the middle of each side's corners."""
    return (
        (local[0].x_mm + local[3].x_mm) / 2.0,
        (local[1].x_mm + local[2].x_mm) / 2.0,
        (local[2].y_mm + local[3].y_mm) / 2.0,
        (local[0].y_mm + local[1].y_mm) / 2.0,
    )


def _off_mm(local: tuple[Point, ...], *, on_floor: bool) -> tuple[float, ...]:
    """Return the change of the quirk at every corner of every side that has one."""
    left, right, top, bottom = _middles(local)
    off = [
        local[0].x_mm - left,
        local[3].x_mm - left,
        right - local[1].x_mm,
        right - local[2].x_mm,
        top - local[2].y_mm,
        top - local[3].y_mm,
    ]
    if not on_floor:
        off += [local[0].y_mm - bottom, local[1].y_mm - bottom]
    return tuple(off)


def _turned(point: Point, angle: float) -> Point:
    cos, sin = math.cos(angle), math.sin(angle)
    return Point(
        point.x_mm * cos - point.y_mm * sin,
        point.x_mm * sin + point.y_mm * cos,
    )
