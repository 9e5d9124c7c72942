"""Butt joints: one piece runs through over the square end of the other."""

from collections.abc import Mapping
from dataclasses import replace

from longpoint.shape.point import Point, line_crossing
from longpoint.trims.outline import TrimOutline, TrimSide
from longpoint.trims.rings import Ring, mitred_ring

Line = tuple[Point, Point]


def butted_ring(
    outline: TrimOutline,
    sides: tuple[TrimSide, ...],
    side: int,
    through: frozenset[int],
    horns_mm: Mapping[int, float],
) -> Ring:
    """Return where the piece along a side lies when the corners are butted.

    Args:
        outline: Inner and outer lines of the set.
        sides: What stands along each side; a bare one has no width.
        side: The side asked for; it must have a width.
        through: Sides that run through over their neighbours.
        horns_mm: How far such a side runs past its neighbours at each end; a side not named ends
            on their outer lines. >= 0. [mm]

    Returns:
        A piece that runs through ends on its neighbours' outer lines, cut along them; with a horn
        it ends square that far past, measured along its inner edge. One that doesn't ends on their
        inner lines.

    Raises:
        ShapeError: Two neighbouring sides run in one line.

    Example:
        >>> from longpoint.trims.outline import trim_outline
        >>> door = (Point(0, 0), Point(820, 0), Point(820, 2040), Point(0, 2040))
        >>> sides = (TrimSide(inner_mm=0, width_mm=0),) + (TrimSide(inner_mm=5, width_mm=66),) * 3
        >>> outline = trim_outline(door, sides)
        >>> head = butted_ring(outline, sides, 2, frozenset({2}), {2: 20.0}).edges()
        >>> leg = butted_ring(outline, sides, 1, frozenset({2}), {}).edges()
        >>> head.inner_mm, head.outer_mm, leg.inner_mm, leg.outer_mm
        (1002.0, 1002.0, 2045.0, 2045.0)

    References:
        Both pieces end 90 - corner off square, positive where the outer edge is the longer.
    """
    count = len(sides)
    ring = mitred_ring(outline, side)
    before, after = (side - 1) % count, (side + 1) % count
    horn_mm = horns_mm.get(side, 0.0) if side in through else 0.0
    if sides[before].width_mm > 0.0:
        inner, outer = _end(outline, side, before, runs_through=side in through)
        ring = replace(ring, inner_start=inner, outer_start=outer)
    if sides[after].width_mm > 0.0:
        inner, outer = _end(outline, side, after, runs_through=side in through)
        ring = replace(ring, inner_end=inner, outer_end=outer)
    return _with_horns(ring, sides[side].width_mm, horn_mm) if horn_mm > 0.0 else ring


def inner_line(outline: TrimOutline, side: int) -> Line:
    """Return two points of a side's inner line."""
    return (outline.inner[side], outline.inner[(side + 1) % len(outline.inner)])


def outer_line(outline: TrimOutline, side: int) -> Line:
    """Return two points of a side's outer line."""
    return (outline.outer[side], outline.outer[(side + 1) % len(outline.outer)])


def _end(
    outline: TrimOutline, side: int, neighbour: int, *, runs_through: bool
) -> tuple[Point, Point]:
    """Return the inner and outer corner of an end that is cut along a neighbour's line."""
    stop = outer_line(outline, neighbour) if runs_through else inner_line(outline, neighbour)
    return (
        line_crossing(*inner_line(outline, side), *stop),
        line_crossing(*outer_line(outline, side), *stop),
    )


def _with_horns(ring: Ring, width_mm: float, horn_mm: float) -> Ring:
    ux, uy = ring.along
    inner_start = ring.inner_start.moved(-horn_mm * ux, -horn_mm * uy)
    inner_end = ring.inner_end.moved(horn_mm * ux, horn_mm * uy)
    dx, dy = width_mm * uy, -width_mm * ux
    return Ring(
        inner_start=inner_start,
        inner_end=inner_end,
        outer_start=inner_start.moved(dx, dy),
        outer_end=inner_end.moved(dx, dy),
    )
