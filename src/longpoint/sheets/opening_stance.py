"""How an opening stands, how far it is from square, and both said in words."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.point import Point
from longpoint.speech.said import joined, say
from longpoint.survey.openings import Opening

SHOWN_LEAN: Final = 0.07
"""The worst corner is drawn this part of the shorter side away from square."""
STEPS: Final = (1, 2, 3, 5, 8, 10, 12, 15, 20, 25, 30, 40, 50)

Corners = tuple[Point, Point, Point, Point]
"""Bottom left, bottom right, top right, top left."""


def as_it_stands(opening: Opening, fitted: FittedOpening) -> Corners:
    """Return the corners turned as the opening stands.

    The tape tells a shape, not how it stands. A level or plumb reading does; without one the head
    of an opening on a floor is taken as level, since floors fall, and the bottom of a window.
    """
    bl, br, tr, tl = fitted.corners
    if fitted.level_deg is not None:
        turn = math.radians(fitted.level_deg)
    elif opening.stands_on_floor:
        turn = -math.atan2(tr.y_mm - tl.y_mm, tr.x_mm - tl.x_mm)
    else:
        turn = 0.0
    cos, sin = math.cos(turn), math.sin(turn)
    turned = (
        Point(p.x_mm * cos - p.y_mm * sin, p.x_mm * sin + p.y_mm * cos) for p in (bl, br, tr, tl)
    )
    bl, br, tr, tl = turned
    return (bl, br, tr, tl)


def level_words(opening: Opening, fitted: FittedOpening) -> str:
    """Return which side is drawn level for want of a reading; empty where one was read."""
    if fitted.level_deg is not None:
        return ""
    side = say("head") if opening.stands_on_floor else say("bottom")
    return say("Not read with a level: its {side} is drawn level.", side=side)


def true_rectangle(shape: Corners) -> Corners:
    """Return the upright rectangle of the same middle, mean width and mean height."""
    bl, br, tr, tl = shape
    wide = (br.x_mm + tr.x_mm - bl.x_mm - tl.x_mm) / 2
    high = (tl.y_mm + tr.y_mm - bl.y_mm - br.y_mm) / 2
    x = sum(p.x_mm for p in shape) / 4 - wide / 2
    y = sum(p.y_mm for p in shape) / 4 - high / 2
    return (Point(x, y), Point(x + wide, y), Point(x + wide, y + high), Point(x, y + high))


def times_shown(shape: Corners, square: Corners) -> int:
    """Return how many times as crooked as it is an opening is to be drawn."""
    worst_mm = max(a.distance_mm(b) for a, b in zip(shape, square, strict=True))
    side_mm = min(square[0].distance_mm(square[1]), square[1].distance_mm(square[2]))
    wanted = SHOWN_LEAN * side_mm / max(worst_mm, 1e-9)
    return max((step for step in STEPS if step <= wanted), default=1)


def exaggerated(shape: Corners, square: Corners, times: int) -> Corners:
    """Return the corners so many times as far from the true rectangle as they are."""
    bl, br, tr, tl = (
        Point(s.x_mm + times * (p.x_mm - s.x_mm), s.y_mm + times * (p.y_mm - s.y_mm))
        for p, s in zip(shape, square, strict=True)
    )
    return (bl, br, tr, tl)


def lean_words(shape: Sequence[Point], units: Units, *, bottom: str = "bottom") -> str:
    """Return which way an opening leans, in the words one would check it by.

    Args:
        shape: Bottom left, bottom right, top right, top left. [mm]
        units: Unit in which the lean is written.
        bottom: What its bottom side is called: "bottom" or "floor".

    Example:
        >>> lean_words([Point(0, 0), Point(900, 0), Point(904, 600), Point(4, 600)], Units.MM)
        'The top stands 4 mm to the right of the bottom.'
    """
    bl, br, tr, tl = shape
    sideways_mm = (tr.x_mm + tl.x_mm - br.x_mm - bl.x_mm) / 2
    said = []
    if format_length(abs(sideways_mm), units) != "0":
        way = say("right") if sideways_mm > 0 else say("left")
        figure = format_with_unit(abs(sideways_mm), units)
        said.append(
            say(
                "The top stands {figure} to the {way} of the {bottom}.",
                figure=figure,
                way=way,
                bottom=bottom,
            )
        )
    for name, left, right in ((say("head"), tl, tr), (bottom, bl, br)):
        climb_mm = right.y_mm - left.y_mm
        if format_length(abs(climb_mm), units) != "0":
            way = say("right") if climb_mm > 0 else say("left")
            figure = format_with_unit(abs(climb_mm), units)
            said.append(
                say(
                    "The {name} is {figure} higher at the {way}.",
                    name=name,
                    figure=figure,
                    way=way,
                )
            )
    return joined(" ", said) or say("It stands square as near as the tape can tell.")
