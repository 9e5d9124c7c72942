"""An arch put together from straight-grained segments: the board each needs and its saw cuts.

The arch of the lining's edge is divided evenly, so every joint between two segments is radial and
cut at one saw setting. The two end segments run on to the springing joint, which isn't radial.
"""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.shape.point import Point
from longpoint.trims.arch import ArchTrim, Springing
from longpoint.trims.rings import Ring

MOST_SEGMENTS: Final = 24

STEEPEST_DEG: Final = 60.0
"""No number of segments is chosen that has a cut steeper than this: our limit, most saws stop
before."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SegmentSizes:
    """What an arch of so many segments asks for.

    Attributes:
        count: How many.
        angle_deg: Angle of each round the centre.
        saw_deg: Saw angle at the joints between two of them, off a square cut.
        short_mm: Inner edge of a blank: inner corner to inner corner.
        long_mm: Its outer edge, along the side of the board that just touches the outer curve.
        over_points_mm: Outer corner to outer corner once it is sawn to the curve.
        board_mm: Least width of the board, the end segments included.
        left_extra_deg: What the left end segment runs past the springing of the lining, at its
            outer edge.
        right_extra_deg: The same at the right.
    """

    count: int
    angle_deg: float
    saw_deg: float
    short_mm: float
    long_mm: float
    over_points_mm: float
    board_mm: float
    left_extra_deg: float
    right_extra_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """One segment of an arch: its corners, and how it lies on the board.

    Attributes:
        centre: Centre of the arch.
        way: Unit vector across its board, from the centre outwards.
        inner: Its inner corners, left and right.
        outer: Its outer corners, left and right.
        low_mm: From the centre to the board's inner edge.
        high_mm: From the centre to the outermost point of the curve.
    """

    centre: Point
    way: tuple[float, float]
    inner: tuple[Point, Point]
    outer: tuple[Point, Point]
    low_mm: float
    high_mm: float

    @property
    def board_mm(self) -> float:
        """Least width of the board it comes out of. [mm]"""
        return self.high_mm - self.low_mm

    def blank(self, board_mm: float) -> Ring:
        """Return the blank on a board of a width, its ends cut on the saw: from right to left.

        Args:
            board_mm: Width of the board; more than it needs stays on at the outer edge.
        """
        left_low, left_high = (self._crossing(0, self.low_mm + h) for h in (0.0, board_mm))
        right_low, right_high = (self._crossing(1, self.low_mm + h) for h in (0.0, board_mm))
        return Ring(
            inner_start=right_low,
            inner_end=left_low,
            outer_start=right_high,
            outer_end=left_high,
        )

    def _crossing(self, end: int, height_mm: float) -> Point:
        """Return where the line of an end's cut crosses a line along the board."""
        inner, outer = self.inner[end], self.outer[end]
        low, high = (_height_mm(self.centre, self.way, p) for p in (inner, outer))
        share = (height_mm - low) / (high - low)
        return inner.moved(share * (outer.x_mm - inner.x_mm), share * (outer.y_mm - inner.y_mm))


def arch_segments(trim: ArchTrim, count: int) -> tuple[Segment, ...]:
    """Return the segments of an arch, clockwise from its left springing.

    Args:
        trim: The arch's trim.
        count: How many. >= 1.

    Example:
        >>> from longpoint.trims.arch import arch_trim
        >>> from longpoint.trims.outline import TrimSide
        >>> hole = (Point(0, 0), Point(914, 0), Point(914, 1012), Point(0, 1012))
        >>> trim = arch_trim(hole, 286.0, (TrimSide(inner_mm=5.0, width_mm=90.0),) * 4)
        >>> edges = arch_segments(trim, 3)[1].blank(125.2).edges()
        >>> round(edges.inner_mm, 1), round(edges.start_deg, 2), round(edges.end_deg, 2)
        (373.8, 21.36, 21.36)
    """
    step_deg = 2.0 * trim.circle.half_deg / count
    return tuple(_segment(trim, index, count, step_deg) for index in range(count))


def segment_sizes(trim: ArchTrim, count: int) -> SegmentSizes:
    """Return what an arch of so many segments asks for.

    References:
        Of a ring between radii r and R, cut every 2 a: inner chord 2 r sin a, outer edge of the
        blank 2 R tan a, board R - r cos a, saw angle a.
    """
    half = math.radians(trim.circle.half_deg) / count
    half_deg = trim.circle.half_deg
    return SegmentSizes(
        count=count,
        angle_deg=2.0 * half_deg / count,
        saw_deg=half_deg / count,
        short_mm=2.0 * trim.inner_mm * math.sin(half),
        long_mm=2.0 * trim.outer_mm * math.tan(half),
        over_points_mm=2.0 * trim.outer_mm * math.sin(half),
        board_mm=max(segment.board_mm for segment in arch_segments(trim, count)),
        left_extra_deg=-trim.circle.angle_deg(trim.left.outer) - half_deg,
        right_extra_deg=trim.circle.angle_deg(trim.right.outer) - half_deg,
    )


def fewest_segments(trim: ArchTrim, board_mm: float) -> int | None:
    """Return the fewest segments that a board is wide enough for; None if no number is.

    Args:
        trim: The arch's trim.
        board_mm: Width of the board.
    """
    for count in range(1, MOST_SEGMENTS + 1):
        segments = arch_segments(trim, count)
        if all(s.board_mm <= board_mm and _steepest_deg(s) <= STEEPEST_DEG for s in segments):
            return count
    return None


def _segment(trim: ArchTrim, index: int, count: int, step_deg: float) -> Segment:
    circle = trim.circle
    start_deg = -circle.half_deg + index * step_deg
    left = _end(trim, start_deg, trim.left if index == 0 else None)
    right = _end(trim, start_deg + step_deg, trim.right if index == count - 1 else None)
    way = circle.way(start_deg + step_deg / 2.0)
    return Segment(
        centre=circle.centre,
        way=way,
        inner=(left[0], right[0]),
        outer=(left[1], right[1]),
        low_mm=min(_height_mm(circle.centre, way, end[0]) for end in (left, right)),
        high_mm=trim.outer_mm,
    )


def _end(trim: ArchTrim, at_deg: float, joint: Springing | None) -> tuple[Point, Point]:
    if joint is not None:
        return joint.inner, joint.outer
    return trim.circle.at(at_deg, trim.inner_mm), trim.circle.at(at_deg, trim.outer_mm)


def _height_mm(centre: Point, way: tuple[float, float], point: Point) -> float:
    return (point.x_mm - centre.x_mm) * way[0] + (point.y_mm - centre.y_mm) * way[1]


def _steepest_deg(segment: Segment) -> float:
    edges = segment.blank(segment.board_mm).edges()
    return max(abs(edges.start_deg), abs(edges.end_deg))
