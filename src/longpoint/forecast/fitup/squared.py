"""A frame a little out of square, squared up: the same joints between the same lengths."""

import math
from typing import Final

from longpoint.forecast.fitup.frame import Frame, FrameJoint, FrameSide
from longpoint.shape.point import Point, direction

MOST_OFF_DEG: Final = 2.5
"""Up to here a frame's rows differ from those of the true rectangle by no more than the angle."""


def squared_up(frame: Frame) -> Frame | None:
    """Return the rectangle of a frame's mean lengths, its rows in the same order.

    Args:
        frame: A closed frame of four pieces, or one of three that stands on two legs.

    Returns:
        The true frame; None where it isn't such a frame, or a corner is too far off square.
    """
    count = len(frame.sides)
    if (count, len(frame.joints)) not in ((4, 4), (3, 2)) or _off_deg(frame) > MOST_OFF_DEG:
        return None
    lengths_mm = [side.start.distance_mm(side.end) for side in frame.sides]
    legs = (1, 3) if count == 4 else (0, 2)
    across = (0, 2) if count == 4 else (1, 1)
    width_mm = sum(lengths_mm[i] for i in across) / 2.0
    height_mm = sum(lengths_mm[i] for i in legs) / 2.0
    corners = (
        Point(0.0, 0.0),
        Point(width_mm, 0.0),
        Point(width_mm, height_mm),
        Point(0.0, height_mm),
    )
    first = 0 if count == 4 else 1
    sides = tuple(
        FrameSide(
            start=corners[(first + index) % 4],
            end=corners[(first + index + 1) % 4],
            width_mm=side.width_mm,
            quirk_in_mm=side.quirk_in_mm,
            quirk_out_mm=side.quirk_out_mm,
        )
        for index, side in enumerate(frame.sides)
    )
    return Frame(sides=sides, joints=tuple(_squared_joint(sides, j) for j in frame.joints))


def _squared_joint(sides: tuple[FrameSide, ...], joint: FrameJoint) -> FrameJoint:
    before, after = sides[joint.before], sides[joint.after]
    heel = before.end
    toe = heel
    for side in (before, after):
        dx, dy = direction(side.start, side.end)
        toe = toe.moved(dy * side.width_mm, -dx * side.width_mm)
    return FrameJoint(before=joint.before, after=joint.after, heel=heel, toe=toe)


def _off_deg(frame: Frame) -> float:
    """Return how far the corner furthest from square is off it."""
    off = 0.0
    for joint in frame.joints:
        before, after = frame.sides[joint.before], frame.sides[joint.after]
        ax, ay = direction(before.start, before.end)
        bx, by = direction(after.start, after.end)
        off = max(off, abs(math.degrees(math.atan2(ax * by - ay * bx, ax * bx + ay * by)) - 90.0))
    return off
