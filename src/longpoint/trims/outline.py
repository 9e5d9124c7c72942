"""The two outlines of a set of trim: its inner and its outer edges round an opening."""

import math
from dataclasses import dataclass

from longpoint.errors import PieceError, ShapeError
from longpoint.shape.point import Point, direction, line_crossing
from longpoint.speech.said import say


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimSide:
    """What stands along one side of an opening.

    Attributes:
        inner_mm: How far the inner edge stands outside the reveal's edge: the quirk. Along a bare
            side (floor, board) the line that the neighbours end on, outside positive.
        width_mm: Face width of the trim; 0 for a bare side, whose two edges are one line.
    """

    inner_mm: float
    width_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimEdges:
    """Edges of the piece along one side, between its two corners.

    Attributes:
        inner_mm: Length of the inner edge.
        outer_mm: Length of the outer edge.
        start_deg: Saw angle at the side's first corner, positive when the outer edge is longer.
        end_deg: Saw angle at its second corner.
    """

    inner_mm: float
    outer_mm: float
    start_deg: float
    end_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class TrimOutline:
    """Inner and outer corners of a set, anticlockwise like the opening's."""

    inner: tuple[Point, ...]
    outer: tuple[Point, ...]

    def edges(self, side: int) -> TrimEdges:
        """Return the edges and saw angles of the piece along a side.

        References:
            The cut runs from inner to outer corner; its saw angle is what that line leans off
            square to the side.
        """
        after = (side + 1) % len(self.inner)
        ux, uy = direction(self.inner[side], self.inner[after])

        def saw_deg(corner: int, sign: float) -> float:
            dx = self.outer[corner].x_mm - self.inner[corner].x_mm
            dy = self.outer[corner].y_mm - self.inner[corner].y_mm
            along_mm, across_mm = sign * (dx * ux + dy * uy), dx * uy - dy * ux
            return math.degrees(math.atan2(along_mm, across_mm))

        return TrimEdges(
            inner_mm=self.inner[side].distance_mm(self.inner[after]),
            outer_mm=self.outer[side].distance_mm(self.outer[after]),
            start_deg=saw_deg(side, -1.0),
            end_deg=saw_deg(after, 1.0),
        )


def trim_outline(corners: tuple[Point, ...], sides: tuple[TrimSide, ...]) -> TrimOutline:
    """Return where the edges of a set of trim run round a convex opening.

    Args:
        corners: Corners of the opening, anticlockwise. [mm], (n,)
        sides: What stands along each side; side i from corner i to corner i + 1, (n,).

    Returns:
        Inner and outer corners, (n,) each; at a bare side's ends the two lie on its line.

    Raises:
        PieceError: An inner side vanishes or turns over.

    Example:
        >>> square = (Point(0, 0), Point(100, 0), Point(100, 50), Point(0, 50))
        >>> outline = trim_outline(square, (TrimSide(inner_mm=5, width_mm=20),) * 4)
        >>> edges = outline.edges(2)
        >>> round(edges.inner_mm, 6), round(edges.outer_mm, 6), round(edges.end_deg, 6)
        (110.0, 150.0, 45.0)

    References:
        Each side moved out by its quirk, and by quirk and width; neighbours meet.
    """
    inner = offset_corners(corners, tuple(side.inner_mm for side in sides))
    outer = offset_corners(corners, tuple(side.inner_mm + side.width_mm for side in sides))
    for index in range(len(corners)):
        after = (index + 1) % len(corners)
        was = direction(corners[index], corners[after])
        dx = inner[after].x_mm - inner[index].x_mm
        dy = inner[after].y_mm - inner[index].y_mm
        if was[0] * dx + was[1] * dy <= 0:
            raise PieceError(
                say("The trim was laid round the opening."),
                say("One of its sides has no length left."),
                say("Read the opening again, or look at the quirk and the floor cover."),
            )
    return TrimOutline(inner=inner, outer=outer)


def offset_corners(corners: tuple[Point, ...], out_mm: tuple[float, ...]) -> tuple[Point, ...]:
    """Return the corners of an anticlockwise polygon with each side moved outwards.

    Raises:
        PieceError: Two neighbouring sides run in one line, or a side has no length.
    """
    lines = []
    try:
        for index, here in enumerate(corners):
            after = corners[(index + 1) % len(corners)]
            ux, uy = direction(here, after)
            dx, dy = uy * out_mm[index], -ux * out_mm[index]
            lines.append((here.moved(dx, dy), after.moved(dx, dy)))
        return tuple(line_crossing(*lines[i - 1], *lines[i]) for i in range(len(lines)))
    except ShapeError as error:
        raise PieceError(error.read, error.wrong, error.do) from error
