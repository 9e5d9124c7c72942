"""Plinth blocks: the leg stands square on the block, the block stands on the floor."""

from dataclasses import replace
from typing import NamedTuple

from longpoint.shape.point import line_crossing
from longpoint.trims.rings import Ring


class OnPlinth(NamedTuple):
    """A leg and the block it stands on."""

    leg: Ring
    plinth: Ring


def on_plinth(leg: Ring, *, foot_at_start: bool, face_mm: float, height_mm: float) -> OnPlinth:
    """Return a leg cut off square on a plinth block in line with its inner edge.

    The block's sides run along the leg, its top is square to them, and its foot lies on the floor.
    Its height is that of its inner edge, below the leg's inner edge, so that the two edges add up
    to the leg as it was read.

    Args:
        leg: The leg down to the floor.
        foot_at_start: True of a right leg, whose foot is at its side's first corner.
        face_mm: Face width of the block. > 0. [mm]
        height_mm: Height of its inner edge. > 0. [mm]

    Example:
        >>> from longpoint.shape.point import Point
        >>> floor = Ring(
        ...     inner_start=Point(825, 0),
        ...     inner_end=Point(825, 2045),
        ...     outer_start=Point(915, 0),
        ...     outer_end=Point(915, 2135),
        ... )
        >>> leg, plinth = on_plinth(floor, foot_at_start=True, face_mm=95.0, height_mm=200.0)
        >>> leg.edges().inner_mm, leg.edges().start_deg, plinth.outer_end
        (1845.0, 0.0, Point(x_mm=920.0, y_mm=200.0))
    """
    ux, uy = leg.along
    up = 1.0 if foot_at_start else -1.0
    foot = leg.inner_start if foot_at_start else leg.inner_end
    foot_outer = leg.outer_start if foot_at_start else leg.outer_end
    top = foot.moved(up * height_mm * ux, up * height_mm * uy)
    leg_mm = (foot_outer.x_mm - foot.x_mm) * uy - (foot_outer.y_mm - foot.y_mm) * ux
    leg_top = top.moved(leg_mm * uy, -leg_mm * ux)
    block_top = top.moved(face_mm * uy, -face_mm * ux)
    block_foot = line_crossing(block_top, block_top.moved(ux, uy), foot, foot_outer)
    if foot_at_start:
        return OnPlinth(
            leg=replace(leg, inner_start=top, outer_start=leg_top),
            plinth=Ring(
                inner_start=foot, inner_end=top, outer_start=block_foot, outer_end=block_top
            ),
        )
    return OnPlinth(
        leg=replace(leg, inner_end=top, outer_end=leg_top),
        plinth=Ring(inner_start=top, inner_end=foot, outer_start=block_top, outer_end=block_foot),
    )
