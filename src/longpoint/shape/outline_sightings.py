"""What was read of an opening of another shape, as sightings, and first guesses at its corners.

Corner i is the left-hand end of side i as the sides are written, anticlockwise from the bottom.
"""

import math
from collections.abc import Sequence
from itertools import accumulate
from typing import Final

from longpoint.errors import ShapeError
from longpoint.shape.network import Angle, Distance
from longpoint.shape.point import Point
from longpoint.speech.said import say
from longpoint.survey.instruments import Tape
from longpoint.survey.outlines import OutlineReadings

CORNER_U_DEG: Final = 0.25
"""Standard uncertainty of a corner read with a bevel gauge: assumed, as for any bevel reading."""

MOST_SUM_OFF_DEG: Final = 30.0
"""Corners whose sum is further than this from what goes round belong to no such shape: our limit.

A corner left out or written outside in is further off than this.
"""

_HALVINGS: Final = 200

Sightings = tuple[Distance | Angle, ...]


def outline_sightings(outline: OutlineReadings, tape: Tape) -> Sightings:
    """Return everything that was read of a shape; nothing is assumed.

    Args:
        outline: Its sides, the corners that were read, and lengths across.
        tape: The tape that read it.
    """
    count = len(outline.sides_mm)
    u_mm = tape.private_u_mm()
    sides = (
        Distance(
            name=f"side {i + 1}-{(i + 1) % count + 1}",
            start=i,
            end=(i + 1) % count,
            read=side_mm,
            u=u_mm,
        )
        for i, side_mm in enumerate(outline.sides_mm)
    )
    corners = (
        Angle(
            name=f"corner {(i + 1) % count + 1}",
            corner=(i + 1) % count,
            back=i,
            onward=(i + 2) % count,
            read=angle_deg,
            u=CORNER_U_DEG,
        )
        for i, angle_deg in enumerate(outline.angles_deg)
    )
    across = (
        Distance(
            name=f"across {each.start}-{each.end}",
            start=each.start - 1,
            end=each.end - 1,
            read=each.length_mm,
            u=u_mm,
        )
        for each in outline.across
    )
    return (*sides, *corners, *across)


def first_guesses(outline: OutlineReadings) -> tuple[tuple[Point, ...], ...]:
    """Return shapes near enough to start a fit from, the first along x.

    One turns by the corners as read, those that weren't sharing evenly what is left to go round;
    what then stays open is shared out by length. The other lies with all its corners on a circle,
    which is the fullest shape that such sides make.

    Raises:
        ShapeError: The longest side is longer than all the others together, or the corners go
            round no such shape.
    """
    longest_mm = max(outline.sides_mm)
    if 2.0 * longest_mm >= math.fsum(outline.sides_mm):
        first = outline.sides_mm.index(longest_mm) + 1
        name = say(
            "corner {first} to corner {first_2}",
            first=first,
            first_2=first % len(outline.sides_mm) + 1,
        )
        raise ShapeError(
            say(
                "The side from {name} of this opening is longer than all the others together.",
                name=name,
            ),
            say("They can't close round anything."),
            say(
                "Read the side from {name} again, and look whether one was left out.",
                name=name,
            ),
        )
    return (_by_corners(outline), _on_a_circle(outline.sides_mm))


def _by_corners(outline: OutlineReadings) -> tuple[Point, ...]:
    count = len(outline.sides_mm)
    known_deg = math.fsum(outline.angles_deg)
    needed_deg = 180.0 * (count - 2)
    missing = count - len(outline.angles_deg)
    share_deg = (needed_deg - known_deg) / missing if missing else 0.0
    is_off = abs(needed_deg - known_deg) > MOST_SUM_OFF_DEG if not missing else share_deg <= 0.0
    if is_off or share_deg >= 180.0 + MOST_SUM_OFF_DEG:
        raise ShapeError(
            say(
                "The {angles_deg} corners of this opening add up to {known_deg:.1f} degrees.",
                angles_deg=len(outline.angles_deg),
                known_deg=known_deg,
            ),
            say(
                "All {count} corners of a shape of {count} sides make {needed_deg:.0f}.",
                count=count,
                needed_deg=needed_deg,
            ),
            say("Read each corner again, inside the opening."),
        )
    corners_deg = (*outline.angles_deg, *((share_deg,) * missing))
    even_deg = (needed_deg - known_deg - share_deg * missing) / count
    turns = (math.radians(180.0 - corner - even_deg) for corner in corners_deg[:-1])
    return _closed(outline.sides_mm, tuple(accumulate(turns, initial=0.0)))


def _closed(sides_mm: Sequence[float], headings: Sequence[float]) -> tuple[Point, ...]:
    """Return the corners of sides laid end to end, what stays open shared out by length."""
    total_mm = math.fsum(sides_mm)
    steps = [
        (side * math.cos(turn), side * math.sin(turn))
        for side, turn in zip(sides_mm, headings, strict=True)
    ]
    open_x, open_y = math.fsum(x for x, _ in steps), math.fsum(y for _, y in steps)
    corners = [Point(0.0, 0.0)]
    for (dx, dy), side in zip(steps, sides_mm, strict=True):
        share = side / total_mm
        corners.append(corners[-1].moved(dx - share * open_x, dy - share * open_y))
    return along_x(corners[:-1])


def _on_a_circle(sides_mm: Sequence[float]) -> tuple[Point, ...]:
    """Return the shape of these sides whose corners lie on one circle.

    References:
        A chord s of a circle of radius R spans 2 asin(s / 2 R). Where the longest side leaves the
        centre outside, it spans what the others do together.
    """
    longest = max(range(len(sides_mm)), key=lambda i: sides_mm[i])
    radius_mm = sides_mm[longest] / 2.0

    def span(side_mm: float, at_mm: float) -> float:
        return 2.0 * math.asin(min(1.0, side_mm / (2.0 * at_mm)))

    def over(at_mm: float, *, is_outside: bool) -> float:
        """Return what the spans come to past a full turn, or past the longest side's."""
        others = math.fsum(span(s, at_mm) for i, s in enumerate(sides_mm) if i != longest)
        own = span(sides_mm[longest], at_mm)
        return others - own if is_outside else others + own - 2.0 * math.pi

    is_outside = over(radius_mm, is_outside=False) < 0.0
    low_mm, high_mm = radius_mm, radius_mm + 1e6 * math.fsum(sides_mm)
    for _ in range(_HALVINGS):
        middle_mm = (low_mm + high_mm) / 2.0
        # The spans shrink as the circle grows; with the centre outside their excess grows instead.
        is_small = over(middle_mm, is_outside=is_outside) > 0.0
        if is_small is not is_outside:
            low_mm = middle_mm
        else:
            high_mm = middle_mm
    spans = [span(side_mm, low_mm) for side_mm in sides_mm]
    if is_outside:
        spans[longest] = 2.0 * math.pi - spans[longest]
    starts = accumulate(spans[:-1], initial=0.0)
    return along_x([Point(low_mm * math.cos(t), low_mm * math.sin(t)) for t in starts])


def along_x(corners: Sequence[Point]) -> tuple[Point, ...]:
    """Return corners moved and turned: the first at the origin, the first side along x."""
    first = corners[0]
    dx, dy = corners[1].x_mm - first.x_mm, corners[1].y_mm - first.y_mm
    size_mm = math.hypot(dx, dy) or 1.0
    cos, sin = dx / size_mm, dy / size_mm
    off = ((p.x_mm - first.x_mm, p.y_mm - first.y_mm) for p in corners)
    return tuple(Point(cos * x + sin * y, cos * y - sin * x) for x, y in off)
