"""Square blocks at the corners of a set, and the pieces between them."""

import math
from dataclasses import dataclass, replace

from longpoint.shape.point import Point, direction, interior_angles_deg, line_crossing
from longpoint.trims.butts import inner_line, outer_line
from longpoint.trims.outline import TrimOutline, TrimSide
from longpoint.trims.rings import Ring, mitred_ring


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerBlock:
    """A block where it stands at a corner.

    Attributes:
        corner: Index of the corner.
        corners: The block's own corners, its inner one first, anticlockwise. [mm]
        off_deg: How far each of its two faces stands off square to the piece that meets it: half
            of what the corner is off 90. Positive where the piece's outer edge must be the longer.
    """

    corner: int
    corners: tuple[Point, Point, Point, Point]
    off_deg: float


def corner_block(
    outline: TrimOutline, sides: tuple[TrimSide, ...], corner: int, face_mm: float
) -> CornerBlock:
    """Return a block set on a corner, turned so that its two neighbours share what is off square.

    Where each neighbour meets it, it stands out as far inside as outside.

    Args:
        outline: Inner and outer lines of the set.
        sides: What stands along each side.
        corner: The corner, between two sides that both have a width.
        face_mm: Length of the block's sides. > 0. [mm]

    Raises:
        ShapeError: The opening has no corner there.

    Example:
        >>> from longpoint.trims.outline import trim_outline
        >>> window = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
        >>> sides = (TrimSide(inner_mm=5, width_mm=70),) * 4
        >>> block = corner_block(trim_outline(window, sides), sides, 2, 76.0)
        >>> [(round(p.x_mm, 6), round(p.y_mm, 6)) for p in block.corners]
        [(902.0, 602.0), (978.0, 602.0), (978.0, 678.0), (902.0, 678.0)]
    """
    before, after = (corner - 1) % len(sides), corner % len(sides)
    corner_deg = interior_angles_deg(outline.inner)[after]
    dx, dy = direction(*inner_line(outline, after))
    half = math.radians(corner_deg / 2.0)
    # The block's own directions away from the corner stand 45 to either side of the bisector.
    onward = _turned(dx, dy, half - math.pi / 4.0)
    back = _turned(dx, dy, half + math.pi / 4.0)
    # The middle of each end face lies on its piece's middle line; a block that is as far out on
    # either edge has the middle of its own face there.
    centre = line_crossing(
        *_middle_line(outline, sides, before, back, -face_mm / 2.0),
        *_middle_line(outline, sides, after, onward, -face_mm / 2.0),
    )
    first = _moved(_moved(centre, onward, face_mm / 2.0), back, face_mm / 2.0)
    second = _moved(first, onward, -face_mm)
    fourth = _moved(first, back, -face_mm)
    third = _moved(second, back, -face_mm)
    return CornerBlock(
        corner=after,
        corners=(first, second, third, fourth),
        off_deg=(90.0 - corner_deg) / 2.0,
    )


def ring_between_blocks(
    outline: TrimOutline, side: int, start: CornerBlock | None, end: CornerBlock | None
) -> Ring:
    """Return where the piece along a side lies between blocks, each end cut to its block's face.

    Args:
        outline: Inner and outer lines of the set.
        side: The side.
        start: Block at its first corner; None where it ends on a bare side.
        end: Block at its second corner.

    Raises:
        ShapeError: The opening has no corner there.
    """
    ring = mitred_ring(outline, side)
    inner, outer = inner_line(outline, side), outer_line(outline, side)
    if start is not None:
        face = (start.corners[0], start.corners[3])
        ring = replace(
            ring,
            inner_start=line_crossing(*inner, *face),
            outer_start=line_crossing(*outer, *face),
        )
    if end is not None:
        face = (end.corners[0], end.corners[1])
        ring = replace(
            ring,
            inner_end=line_crossing(*inner, *face),
            outer_end=line_crossing(*outer, *face),
        )
    return ring


def gap_at_block_mm(width_mm: float, off_deg: float) -> float:
    """Return how far a square end stands open at a block that is off square to it.

    Example:
        >>> round(gap_at_block_mm(90.0, 0.5), 2)
        0.79

    References:
        Wedge over the face width: width x tan(angle).
    """
    return width_mm * math.tan(math.radians(abs(off_deg)))


def _middle_line(
    outline: TrimOutline,
    sides: tuple[TrimSide, ...],
    side: int,
    way: tuple[float, float],
    by_mm: float,
) -> tuple[Point, Point]:
    """Return the line half way between a side's edges, moved."""
    here, there = inner_line(outline, side)
    ux, uy = direction(here, there)
    half_mm = sides[side].width_mm / 2.0
    dx, dy = half_mm * uy + by_mm * way[0], -half_mm * ux + by_mm * way[1]
    return (here.moved(dx, dy), there.moved(dx, dy))


def _turned(dx: float, dy: float, angle: float) -> tuple[float, float]:
    cos, sin = math.cos(angle), math.sin(angle)
    return (dx * cos - dy * sin, dx * sin + dy * cos)


def _moved(point: Point, along: tuple[float, float], by_mm: float) -> Point:
    return point.moved(by_mm * along[0], by_mm * along[1])
