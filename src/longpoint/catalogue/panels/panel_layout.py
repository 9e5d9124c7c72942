"""Where the frames of a panelled wall lie, and what stands in the way of their moulding.

The field is what is panelled: between two ends, from its lower edge up. On a stair its lower and
upper edges climb; its ends and all stiles stay plumb. x is level from the left end, y plumb from
the field's lower left corner.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.shape.point import Point
from longpoint.trims.outline import TrimOutline, TrimSide, trim_outline

LEAST_INSIDE_MM: Final = 20.0
"""A frame that leaves less than this inside its moulding is no panel: our limit, no source."""

FARTHEST_COUNT: Final = 3
"""How many panels more or fewer are tried to free an obstacle."""

_TOUCHING: Final = 1e-6
"""What only touches a moulding does not lie on it; in mm by mm, so far below anything seen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """What is panelled.

    Attributes:
        length_mm: From end to end, level. > 0.
        height_mm: From its lower to its upper edge, plumb. > 0.
        pitch_deg: How its two edges climb; positive to the right.
    """

    length_mm: float
    height_mm: float
    pitch_deg: float = 0.0

    @property
    def climb(self) -> float:
        """How far the edges climb for each millimetre to the right."""
        return math.tan(math.radians(self.pitch_deg))

    @property
    def slope(self) -> float:
        """How long a level millimetre is along the slope."""
        return 1.0 / math.cos(math.radians(self.pitch_deg))

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Its corners, anticlockwise from bottom left."""
        rise_mm = self.length_mm * self.climb
        return (
            Point(0.0, 0.0),
            Point(self.length_mm, rise_mm),
            Point(self.length_mm, rise_mm + self.height_mm),
            Point(0.0, self.height_mm),
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Obstacle:
    """A socket, a switch or a pipe; its sides are level and plumb.

    Attributes:
        name: What it is.
        left_mm: Its left edge, from the left end.
        bottom_mm: Its lower edge, from the field's lower left corner; negative below it.
        width_mm: Its width. > 0.
        height_mm: Its height. > 0.
    """

    name: str
    left_mm: float
    bottom_mm: float
    width_mm: float
    height_mm: float

    @property
    def corners(self) -> tuple[Point, ...]:
        """Its corners, anticlockwise from bottom left."""
        low, high = self.bottom_mm, self.bottom_mm + self.height_mm
        left, right = self.left_mm, self.left_mm + self.width_mm
        return (Point(left, low), Point(right, low), Point(right, high), Point(left, high))

    def grown(self, by_mm: float) -> "Obstacle":
        """Return it with the clearance it wants all round."""
        return Obstacle(
            name=self.name,
            left_mm=self.left_mm - by_mm,
            bottom_mm=self.bottom_mm - by_mm,
            width_mm=self.width_mm + 2.0 * by_mm,
            height_mm=self.height_mm + 2.0 * by_mm,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelLayout:
    """Equal frames along a field with equal margins.

    Attributes:
        field: What is panelled.
        count: How many frames. >= 1.
        margin_mm: Bare wall between two frames (level), at both ends, and square to the edges
            above and below.
        face_mm: Face width of the moulding.
        shift_mm: How far the whole row is moved to the right.
    """

    field: Field
    count: int
    margin_mm: float
    face_mm: float
    shift_mm: float = 0.0

    @property
    def panel_mm(self) -> float:
        """Level width of a frame, outer edge to outer edge.

        Example:
            >>> wall = Field(length_mm=4606, height_mm=900)
            >>> PanelLayout(field=wall, count=5, margin_mm=90, face_mm=28).panel_mm
            813.2

        References:
            n panels and n + 1 margins fill the field: (length - (n + 1) margin) / n.
        """
        return (self.field.length_mm - (self.count + 1) * self.margin_mm) / self.count

    @property
    def height_mm(self) -> float:
        """Plumb height of a frame, outer edge to outer edge."""
        return self.field.height_mm - 2.0 * self.margin_mm * self.field.slope

    @property
    def inside_mm(self) -> tuple[float, float]:
        """Level width and plumb height of the wall seen inside a frame."""
        return (
            self.panel_mm - 2.0 * self.face_mm,
            self.height_mm - 2.0 * self.face_mm * self.field.slope,
        )

    @property
    def is_possible(self) -> bool:
        """Tell whether every frame keeps some wall inside it."""
        return min(self.inside_mm) >= LEAST_INSIDE_MM and self.margin_mm >= 0.0

    @property
    def left_edges_mm(self) -> tuple[float, ...]:
        """Left outer edge of each frame, level from the left end."""
        step_mm = self.panel_mm + self.margin_mm
        return tuple(self.margin_mm + self.shift_mm + k * step_mm for k in range(self.count))

    def frame(self, index: int) -> TrimOutline:
        """Return the two outlines of a frame, anticlockwise from bottom left.

        Raises:
            PieceError: It has no wall left inside.
        """
        left_mm = self.left_edges_mm[index]
        low_mm = self.margin_mm * self.field.slope
        climb, top_mm = self.field.climb, low_mm + self.height_mm
        right_mm = left_mm + self.panel_mm
        corners = (
            Point(left_mm, low_mm + left_mm * climb),
            Point(right_mm, low_mm + right_mm * climb),
            Point(right_mm, top_mm + right_mm * climb),
            Point(left_mm, top_mm + left_mm * climb),
        )
        side = TrimSide(inner_mm=-self.face_mm, width_mm=self.face_mm)
        return trim_outline(corners, (side,) * 4)


def count_for(field: Field, margin_mm: float, panel_mm: float) -> int:
    """Return the number of frames that comes nearest to a wanted width, at least 1.

    Example:
        >>> count_for(Field(length_mm=4606, height_mm=900), 90, 750)
        5

    References:
        Each frame takes its width and one margin; one margin is left over. Of the two whole
        numbers on either side, the one whose solved width is nearer.
    """
    exact = (field.length_mm - margin_mm) / (panel_mm + margin_mm)
    low = max(1, math.floor(exact))

    def off_mm(count: int) -> float:
        return abs((field.length_mm - (count + 1) * margin_mm) / count - panel_mm)

    return min((low, low + 1), key=off_mm)


def margin_for(field: Field, count: int, panel_mm: float) -> float:
    """Return the margin that so many frames of a wanted width leave; negative: they don't fit.

    Example:
        >>> margin_for(Field(length_mm=4606, height_mm=900), 5, 800)
        101.0
    """
    return (field.length_mm - count * panel_mm) / (count + 1)


def in_the_moulding(layout: PanelLayout, obstacle: Obstacle) -> bool:
    """Tell whether an obstacle lies on the moulding of any frame.

    An obstacle wholly inside a frame's inner edges, or wholly in the margins, is out of the way.
    """
    block = obstacle.corners
    for index in range(layout.count):
        frame = layout.frame(index)
        if _overlap(frame.outer, block) and not _inside(block, frame.inner):
            return True
    return False


def in_the_way(layout: PanelLayout, obstacles: Sequence[Obstacle]) -> tuple[Obstacle, ...]:
    """Return the obstacles that lie on the moulding of any frame."""
    return tuple(obstacle for obstacle in obstacles if in_the_moulding(layout, obstacle))


@dataclass(frozen=True, slots=True, kw_only=True)
class WaysOut:
    """What would free every obstacle; None where nothing near does.

    Attributes:
        margin: The same number of frames with the margin nearest to the wanted one.
        count: The same margin with the number of frames nearest to the wanted one.
        shift: The same frames, the row moved by the least.
    """

    margin: PanelLayout | None
    count: PanelLayout | None
    shift: PanelLayout | None


def ways_out(layout: PanelLayout, obstacles: Sequence[Obstacle]) -> WaysOut:
    """Return the nearest layouts in which no obstacle lies on a moulding.

    Args:
        layout: What was asked for.
        obstacles: What has to be free, with its clearance.

    Returns:
        Margins are tried by whole millimetres from naught to double, shifts up to half a margin,
        counts up to three more or fewer.
    """

    def first(tried: Iterator[PanelLayout]) -> PanelLayout | None:
        return next(
            (each for each in tried if each.is_possible and not in_the_way(each, obstacles)), None
        )

    return WaysOut(
        margin=first(
            replace(layout, margin_mm=layout.margin_mm + by_mm)
            for by_mm in _outwards(math.floor(layout.margin_mm))
        ),
        count=first(
            replace(layout, count=layout.count + by)
            for by in _outwards(FARTHEST_COUNT)
            if layout.count + by >= 1
        ),
        shift=first(
            replace(layout, shift_mm=layout.shift_mm + by_mm)
            for by_mm in _outwards(math.floor(layout.margin_mm / 2.0))
        ),
    )


def _outwards(most: int) -> Iterator[int]:
    """Give 1, -1, 2, -2, ... up to `most`."""
    for size in range(1, most + 1):
        yield size
        yield -size


def _inside(block: Sequence[Point], outline: Sequence[Point]) -> bool:
    """Tell whether every corner of a block lies in an anticlockwise convex outline."""
    return all(
        _left_of(corner, here, outline[(index + 1) % len(outline)]) >= -_TOUCHING
        for index, here in enumerate(outline)
        for corner in block
    )


def _overlap(one: Sequence[Point], other: Sequence[Point]) -> bool:
    """Tell whether two anticlockwise convex outlines have more than an edge in common.

    References:
        Two convex outlines are apart when all of one lies beyond some side of the other.
    """
    return not (_apart(one, other) or _apart(other, one))


def _apart(one: Sequence[Point], other: Sequence[Point]) -> bool:
    return any(
        all(_left_of(corner, here, one[(index + 1) % len(one)]) <= _TOUCHING for corner in other)
        for index, here in enumerate(one)
    )


def _left_of(point: Point, start: Point, end: Point) -> float:
    return (end.x_mm - start.x_mm) * (point.y_mm - start.y_mm) - (end.y_mm - start.y_mm) * (
        point.x_mm - start.x_mm
    )
