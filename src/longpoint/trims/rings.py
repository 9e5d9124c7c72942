"""Where one piece of a set lies on the wall: its four corners, and so its edges and end cuts."""

import math
from dataclasses import dataclass, replace

from longpoint.shape.point import Point, direction
from longpoint.trims.outline import TrimEdges, TrimOutline


@dataclass(frozen=True, slots=True, kw_only=True)
class Ring:
    """The outline of a piece along one side of an opening.

    Sides run anticlockwise, so the start of a right leg and the end of a left leg is its foot.

    Attributes:
        inner_start: Where its inner edge begins, at the side's first corner.
        inner_end: Where its inner edge ends, at the side's second corner.
        outer_start: Where its outer edge begins.
        outer_end: Where its outer edge ends.
    """

    inner_start: Point
    inner_end: Point
    outer_start: Point
    outer_end: Point

    @property
    def corners(self) -> tuple[Point, Point, Point, Point]:
        """Its corners in order, to be drawn."""
        return (self.inner_start, self.inner_end, self.outer_end, self.outer_start)

    @property
    def along(self) -> tuple[float, float]:
        """Direction of its inner edge, from start to end."""
        return direction(self.inner_start, self.inner_end)

    def edges(self) -> TrimEdges:
        """Return its edges and saw angles.

        Example:
            >>> ring = Ring(
            ...     inner_start=Point(0, 0),
            ...     inner_end=Point(100, 0),
            ...     outer_start=Point(-20, -20),
            ...     outer_end=Point(100, -20),
            ... )
            >>> edges = ring.edges()
            >>> edges.inner_mm, edges.outer_mm, round(edges.start_deg, 6), edges.end_deg
            (100.0, 120.0, 45.0, 0.0)

        References:
            An end's saw angle is what the line from its inner to its outer corner leans off square.
        """
        return TrimEdges(
            inner_mm=self.inner_start.distance_mm(self.inner_end),
            outer_mm=self.outer_start.distance_mm(self.outer_end),
            start_deg=self._saw_deg(self.inner_start, self.outer_start, -1.0),
            end_deg=self._saw_deg(self.inner_end, self.outer_end, 1.0),
        )

    def squared(self, *, at_start: bool, at_end: bool) -> "Ring":
        """Return the piece with ends cut square where its shorter edge ends there.

        So it goes between what stood at its slanting ends, and touches at one edge.
        """
        ux, uy = self.along
        changed = self
        if at_start:
            step_mm = self._past_mm(self.inner_start, self.outer_start)
            changed = replace(
                changed,
                inner_start=self.inner_start.moved(max(0.0, step_mm) * ux, max(0.0, step_mm) * uy),
                outer_start=self.outer_start.moved(
                    max(0.0, -step_mm) * ux, max(0.0, -step_mm) * uy
                ),
            )
        if at_end:
            step_mm = self._past_mm(self.inner_end, self.outer_end)
            changed = replace(
                changed,
                inner_end=self.inner_end.moved(min(0.0, step_mm) * ux, min(0.0, step_mm) * uy),
                outer_end=self.outer_end.moved(min(0.0, -step_mm) * ux, min(0.0, -step_mm) * uy),
            )
        return changed

    def _past_mm(self, inner: Point, outer: Point) -> float:
        """Return how much further along the outer corner of an end lies than the inner."""
        ux, uy = self.along
        return (outer.x_mm - inner.x_mm) * ux + (outer.y_mm - inner.y_mm) * uy

    def _saw_deg(self, inner: Point, outer: Point, sign: float) -> float:
        ux, uy = self.along
        dx, dy = outer.x_mm - inner.x_mm, outer.y_mm - inner.y_mm
        # Adding 0 turns a negative nought into a plain one.
        return math.degrees(math.atan2(sign * (dx * ux + dy * uy), dx * uy - dy * ux)) + 0.0


def mitred_ring(outline: TrimOutline, side: int) -> Ring:
    """Return where the piece along a side lies in a set mitred at every corner."""
    after = (side + 1) % len(outline.inner)
    return Ring(
        inner_start=outline.inner[side],
        inner_end=outline.inner[after],
        outer_start=outline.outer[side],
        outer_end=outline.outer[after],
    )
