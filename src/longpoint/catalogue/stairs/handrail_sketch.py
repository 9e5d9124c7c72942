"""The drawing of a handrail over its stair."""

import math
from collections.abc import Sequence

from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.catalogue.stairs.stair_pitch import StairPitch
from longpoint.catalogue.stairs.stair_sketch import facing
from longpoint.catalogue.trim import Asked
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.speech.said import say

Point = tuple[float, float]


def handrail_sketch(
    asked: Asked, stair: StairPitch, length_mm: float, brackets: Sequence[float]
) -> Sketch:
    """Return the rail over the nosing line, with its brackets.

    Args:
        asked: The entry.
        stair: Its pitch.
        length_mm: The rail along the slope.
        brackets: Where they go, along the rail from its lower end.
    """
    pitch = math.radians(stair.pitch_deg)
    along: Point = (math.cos(pitch), math.sin(pitch))
    height_mm: float = asked.get("height")
    deep_mm = asked.profile.width_mm / math.cos(pitch)
    run_mm, rise_mm = length_mm * along[0], length_mm * along[1]
    top: tuple[Point, Point] = ((0.0, height_mm), (run_mm, height_mm + rise_mm))
    under = tuple((x, y - deep_mm) for x, y in top)
    lines = (
        Line(points=((0.0, 0.0), (run_mm, rise_mm)), stroke=Stroke.TRUE),
        Line(points=(*under, *reversed(top)), stroke=Stroke.TIMBER, closed=True),
        *(_bracket(at_mm, along, height_mm - deep_mm) for at_mm in brackets),
        Line(points=((0.0, 0.0), (0.0, height_mm)), stroke=Stroke.MARK),
    )
    labels = (
        Label(
            x_mm=-0.01 * length_mm,
            y_mm=height_mm / 2.0,
            text=say("{height} plumb", height=format_length(height_mm, asked.units)),
            anchor=Anchor.END,
        ),
        Label(
            x_mm=run_mm / 2.0,
            y_mm=height_mm + rise_mm / 2.0 + 0.06 * length_mm,
            text=say(
                "{length} along the slope",
                length=format_length(length_mm, asked.units),
            ),
            anchor=Anchor.END,
            bold=True,
        ),
        Label(
            x_mm=0.55 * run_mm,
            y_mm=0.45 * rise_mm,
            text=say("nosing line, pitch {pitch}", pitch=format_angle(stair.pitch_deg)),
            anchor=Anchor.START,
        ),
    )
    return facing(
        asked,
        Sketch(
            lines=lines,
            labels=labels,
            caption=say(
                "{mark} over the nosing line; a tick where each bracket goes.",
                mark=asked.mark,
            ),
            described=say(
                "A handrail climbing along a stair, with {brackets} brackets.",
                brackets=len(brackets),
            ),
        ),
    )


def _bracket(at_mm: float, along: Point, under_mm: float) -> Line:
    x, y = at_mm * along[0], under_mm + at_mm * along[1]
    return Line(points=((x, y), (x, y - 80.0)), stroke=Stroke.CUT)
