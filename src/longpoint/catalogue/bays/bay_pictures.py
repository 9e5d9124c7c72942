"""Drawings of a bay: its boards in plan, and how trim meets in a corner of it."""

import math
from collections.abc import Sequence

from longpoint.catalogue.bays.bay_lights import Light
from longpoint.catalogue.sketch import Label, Line, Sketch, Stroke
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.quantities.length import Units
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say
from longpoint.trims.bays import frame_line


def bay_plan(lights: Sequence[Light], depth_mm: float, units: Units) -> Sketch:
    """Return a bay from above, the window up the page, with what lies before its frame line.

    Args:
        lights: Its lights, left to right.
        depth_mm: From the frame line to the front edge. >= 0.
        units: Unit printed.
    """
    corners = [light.right.angle_deg for light in lights[:-1]]
    line = frame_line([light.line_mm for light in lights], corners)
    air_mm = line[-1].x_mm / 40.0
    lines: list[Line] = []
    labels: list[Label] = []
    for light, start, end in zip(lights, line[:-1], line[1:], strict=True):
        front = _front(light, start, end, depth_mm)
        lines.append(Line(points=(start, end, *reversed(front)), stroke=Stroke.TIMBER, closed=True))
        lines += [
            Line(points=pair, stroke=Stroke.CUT) for pair in ((start, front[0]), (end, front[1]))
        ]
        lines.append(Line(points=(start, end), stroke=Stroke.EDGE))
        middle = _between(start, end)
        ux, uy = direction(start, end)
        out = middle.moved(-uy * air_mm, ux * air_mm)
        labels.append(Label(x_mm=out.x_mm, y_mm=out.y_mm, text=format_length(light.line_mm, units)))
        inside = _between(middle, _between(*front))
        labels.append(Label(x_mm=inside.x_mm, y_mm=inside.y_mm, text=light.name, bold=True))
    labels += [
        Label(
            x_mm=at.x_mm,
            y_mm=at.y_mm + air_mm,
            text=say(
                "{corner}°",
                corner=format_angle(corner),
            ),
        )
        for at, corner in zip(line[1:-1], corners, strict=True)
    ]
    return Sketch(
        lines=tuple(lines),
        labels=tuple(labels),
        caption=say("From above: window up the page, room below; lengths along the frame line."),
        described=say("A bay of {lights} lights in plan.", lights=len(lights)),
    )


def _front(light: Light, start: Point, end: Point, depth_mm: float) -> tuple[Point, Point]:
    """Return the ends of the front edge, left and right."""
    ux, uy = direction(start, end)
    left_mm, right_mm = (side.short_mm(depth_mm) for side in (light.left, light.right))
    into_x, into_y = uy * depth_mm, -ux * depth_mm
    return (
        start.moved(into_x + ux * left_mm, into_y + uy * left_mm),
        end.moved(into_x - ux * right_mm, into_y - uy * right_mm),
    )


def _between(one: Point, other: Point) -> Point:
    return Point((one.x_mm + other.x_mm) / 2.0, (one.y_mm + other.y_mm) / 2.0)


def corner_section(corner_deg: float, thickness_mm: float) -> Sketch:
    """Return how two pieces meet in a corner, from above, the room below.

    Args:
        corner_deg: On the room's side. [deg]
        thickness_mm: Of both pieces.
    """
    half = math.radians(corner_deg / 2.0)
    long_mm = 6.0 * thickness_mm
    deep_mm = thickness_mm / math.sin(half)

    def arm(side: float) -> tuple[tuple[float, float], ...]:
        ux, uy = side * math.sin(half), -math.cos(half)
        nx, ny = -side * math.cos(half), -math.sin(half)
        wall = (ux * long_mm, uy * long_mm)
        face = (wall[0] + nx * thickness_mm, wall[1] + ny * thickness_mm)
        return ((0.0, 0.0), wall, face, (0.0, -deep_mm))

    return Sketch(
        lines=(
            *(Line(points=arm(side), stroke=Stroke.TIMBER, closed=True) for side in (-1.0, 1.0)),
            *(Line(points=arm(side)[:2], stroke=Stroke.EDGE) for side in (-1.0, 1.0)),
            Line(points=((0.0, 0.0), (0.0, -deep_mm)), stroke=Stroke.CUT),
        ),
        labels=(
            Label(
                x_mm=0.0,
                y_mm=-deep_mm - thickness_mm,
                text=say(
                    "{corner}° off square, each",
                    corner=format_angle(90.0 - corner_deg / 2.0),
                ),
            ),
        ),
        caption=say(
            "The corner of {corner}°: backs on the wall, faces to the room.",
            corner=format_angle(corner_deg),
        ),
        described=say("Two pieces mitred through their thickness in a corner of the bay."),
    )
