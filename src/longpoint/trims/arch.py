"""A segmental or semicircular arch over straight legs: its circle, and the trim's joint with a leg.

Angles round the circle count from the crown: negative to the left, positive to the right.
"""

import math
from dataclasses import dataclass
from typing import Final

from longpoint.errors import PieceError, ShapeError
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say
from longpoint.trims.outline import TrimSide

RISE_SLACK_MM: Final = 4.0
"""A rise past half the span by no more than this is a semicircle: our limit for its readings."""

MOST_BULGE_MM: Final = 0.5
"""An arch that bulges out past its leg's line by no more than this springs from it: our limit."""

BOW_STEPS: Final = 200


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchCircle:
    """The circle that an arch is part of.

    Attributes:
        centre: Its centre.
        radius_mm: Radius of the lining's edge.
        up: Unit vector from the centre to the crown, square to the line between the springings.
        half_deg: Angle from the crown to either springing.
        left: Left springing.
        right: Right springing.
    """

    centre: Point
    radius_mm: float
    up: tuple[float, float]
    half_deg: float
    left: Point
    right: Point

    def at(self, angle_deg: float, radius_mm: float) -> Point:
        """Return the point at an angle from the crown, so far from the centre."""
        out = self.way(angle_deg)
        return self.centre.moved(radius_mm * out[0], radius_mm * out[1])

    def way(self, angle_deg: float) -> tuple[float, float]:
        """Return the unit vector from the centre at an angle from the crown."""
        turn = math.radians(angle_deg)
        (ux, uy), cos, sin = self.up, math.cos(turn), math.sin(turn)
        return (cos * ux + sin * uy, cos * uy - sin * ux)

    def angle_deg(self, point: Point) -> float:
        """Return a point's angle from the crown."""
        (ux, uy), dx, dy = self.up, point.x_mm - self.centre.x_mm, point.y_mm - self.centre.y_mm
        return math.degrees(math.atan2(dx * uy - dy * ux, dx * ux + dy * uy))


@dataclass(frozen=True, slots=True, kw_only=True)
class Springing:
    """The joint of an arch's trim with the leg below it.

    Attributes:
        inner: Where the two inner edges meet.
        outer: Where the two outer edges meet.
        leg_deg: Saw angle of the leg, positive when its outer edge is the longer: that of the
            straight cut from inner to outer corner.
        past_mm: How far the leg's inner edge runs past the springing.
        break_deg: How far the arch's edge turns off the leg's line; 0 at a semicircle.
        bow_mm: How far the line on which the members of the two pieces meet bows off that straight
            cut.
    """

    inner: Point
    outer: Point
    leg_deg: float
    past_mm: float
    break_deg: float
    bow_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchTrim:
    """The trim of an arched head.

    Attributes:
        circle: The lining's circle.
        inner_mm: Radius of the trim's inner edge.
        outer_mm: Radius of its outer edge.
        left: Joint with the left leg.
        right: Joint with the right leg.
    """

    circle: ArchCircle
    inner_mm: float
    outer_mm: float
    left: Springing
    right: Springing


def arch_radius_mm(span_mm: float, rise_mm: float) -> float:
    """Return the radius of a segmental arch.

    Args:
        span_mm: Between its springings. > 0. [mm]
        rise_mm: From the line between them to the crown. > 0. [mm]

    Example:
        >>> round(arch_radius_mm(914.0, 286.0), 1)
        508.1

    References:
        Crossing chords: (span / 2) squared = rise x (2 radius - rise).
    """
    return (span_mm**2 / 4.0 + rise_mm**2) / (2.0 * rise_mm)


def arch_circle(left: Point, right: Point, rise_mm: float) -> ArchCircle:
    """Return the circle through two springings that rises so far over the middle between them.

    Where one springing is higher than the other the whole arch turns with the line between them:
    the rise is square to that line, so the crown stands over its middle.

    Args:
        left: Left springing, where the left leg ends. [mm]
        right: Right springing.
        rise_mm: Rise of the lining's edge, square off the line between them.

    Returns:
        The circle; one a little past a semicircle is as it was read.

    Raises:
        PieceError: There is no such arch, or it is more than a semicircle.

    Example:
        >>> circle = arch_circle(Point(0, 0), Point(914, 0), 286.0)
        >>> round(circle.radius_mm, 1), round(circle.half_deg, 2)
        (508.1, 64.08)
    """
    span_mm = left.distance_mm(right)
    if span_mm <= 0.0 or rise_mm <= 0.0:
        raise PieceError(
            say(
                "The arch has a span of {span_mm:.0f} mm and a rise of {rise_mm:.0f} mm.",
                span_mm=span_mm,
                rise_mm=rise_mm,
            ),
            say("No circle goes through that."),
            say("Read the width at the springing and the rise again."),
        )
    if rise_mm > span_mm / 2.0 + RISE_SLACK_MM:
        raise PieceError(
            say(
                "The arch has a span of {span_mm:.0f} mm and a rise of {rise_mm:.0f} mm.",
                span_mm=span_mm,
                rise_mm=rise_mm,
            ),
            say(
                "That is more than a semicircle: it narrows again below its widest, or "
                "its legs run on straight above the line taken as the springing."
            ),
            say(
                "Read legs, width and rise again from where the curve really begins; "
                "an arch that narrows again is set out by hand."
            ),
        )
    radius_mm = arch_radius_mm(span_mm, rise_mm)
    dx, dy = direction(left, right)
    up = (-dy, dx)
    below_mm = radius_mm - rise_mm
    middle = Point((left.x_mm + right.x_mm) / 2.0, (left.y_mm + right.y_mm) / 2.0)
    return ArchCircle(
        centre=middle.moved(-below_mm * up[0], -below_mm * up[1]),
        radius_mm=radius_mm,
        up=up,
        half_deg=math.degrees(math.atan2(span_mm / 2.0, below_mm)),
        left=left,
        right=right,
    )


def arch_trim(corners: tuple[Point, ...], rise_mm: float, sides: tuple[TrimSide, ...]) -> ArchTrim:
    """Return where the trim of an arched head runs, and its joints with the two legs.

    Args:
        corners: Bottom left, bottom right, right springing, left springing. [mm]
        rise_mm: Rise of the lining's edge.
        sides: What stands along bottom, right, head and left.

    Returns:
        Radii and joints; a leg needn't be square to the line between the springings.

    Raises:
        PieceError: There is no such arch, or a leg's edges miss those of the head.

    Example:
        >>> hole = (Point(0, 0), Point(900, 0), Point(900, 1000), Point(0, 1000))
        >>> trim = arch_trim(hole, 150.0, (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4)
        >>> round(trim.right.leg_deg, 2), round(trim.right.break_deg / 2, 2)
        (25.88, 26.57)
    """
    bottom_left, bottom_right, right, left = corners
    circle = arch_circle(left, right, rise_mm)
    _, right_side, head, left_side = sides
    return ArchTrim(
        circle=circle,
        inner_mm=circle.radius_mm + head.inner_mm,
        outer_mm=circle.radius_mm + head.inner_mm + head.width_mm,
        left=springing(circle, bottom_left, left, left_side, head),
        right=springing(circle, bottom_right, right, right_side, head),
    )


def springing(
    circle: ArchCircle, foot: Point, spring: Point, leg: TrimSide, head: TrimSide
) -> Springing:
    """Return the joint of a leg with the head above it.

    Args:
        circle: The lining's circle.
        foot: Where the leg's side of the opening begins, at the bottom.
        spring: Where it ends: the springing.
        leg: What stands along the leg.
        head: What stands along the arch.

    Returns:
        The joint.

    Raises:
        PieceError: The arch bulges out past the leg's line, or the edges miss each other.

    References:
        The leg's edge is a straight line, the head's a circle; inner meets inner and outer meets
        outer, and the saw cuts straight between the two. Members in between lie on an arc of a
        parabola (as far from the line as from the circle).
    """
    up_x, up_y = direction(foot, spring)
    is_right = circle.angle_deg(spring) > 0.0
    sign = 1.0 if is_right else -1.0
    out = (sign * up_y, -sign * up_x)
    dx, dy = spring.x_mm - circle.centre.x_mm, spring.y_mm - circle.centre.y_mm
    above_mm, aside_mm = dx * up_x + dy * up_y, dx * out[0] + dy * out[1]
    if above_mm < 0.0 and circle.radius_mm - aside_mm > MOST_BULGE_MM:
        raise PieceError(
            say(
                "At its {right} springing the arch turns back in under itself.",
                right=say("right") if is_right else say("left"),
            ),
            say("Its edge would bulge out past the leg's line, which is more than a semicircle."),
            say("Read the legs to where the curve begins, the width there and the rise again."),
        )

    def met(leg_mm: float, head_mm: float) -> Point:
        """Return where the leg's line and the head's circle meet, each moved out so far."""
        past_mm2 = (circle.radius_mm + head_mm) ** 2 - (aside_mm + leg_mm) ** 2
        if past_mm2 < 0.0:
            raise PieceError(
                say(
                    "At the {right} springing the leg's edge was laid beside the arch's.",
                    right=say("right") if is_right else say("left"),
                ),
                say("The two don't meet: the leg reaches further out than the head."),
                say("Give leg and head the same quirk and the same architrave at this opening."),
            )
        along_mm = math.sqrt(past_mm2) - above_mm
        return spring.moved(leg_mm * out[0] + along_mm * up_x, leg_mm * out[1] + along_mm * up_y)

    inner = met(leg.inner_mm, head.inner_mm)
    outer = met(leg.inner_mm + leg.width_mm, head.inner_mm + head.width_mm)
    along_mm = (outer.x_mm - inner.x_mm) * up_x + (outer.y_mm - inner.y_mm) * up_y
    shares = (step / BOW_STEPS for step in range(1, BOW_STEPS))
    members = (
        met(leg.inner_mm + s * leg.width_mm, head.inner_mm + s * head.width_mm) for s in shares
    )
    return Springing(
        inner=inner,
        outer=outer,
        leg_deg=math.degrees(math.atan2(along_mm, leg.width_mm)),
        past_mm=(inner.x_mm - spring.x_mm) * up_x + (inner.y_mm - spring.y_mm) * up_y,
        break_deg=math.degrees(math.atan2(above_mm, aside_mm)),
        bow_mm=max(_off_line_mm(member, inner, outer) for member in members),
    )


def _off_line_mm(point: Point, start: Point, end: Point) -> float:
    try:
        ux, uy = direction(start, end)
    except ShapeError as error:
        raise PieceError(error.read, error.wrong, error.do) from error
    return abs(ux * (point.y_mm - start.y_mm) - uy * (point.x_mm - start.x_mm))
