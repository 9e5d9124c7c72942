"""Drawings of a stair from the side, with what runs up along it."""

import math
from collections.abc import Mapping
from typing import Final

from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.catalogue.stairs.stair_pitch import StairPitch
from longpoint.catalogue.trim import Asked
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.speech.said import say

Point = tuple[float, float]

LEVEL_PART: Final = 0.12
"""How much of the level boards is drawn, as a part of the raked one."""


def stair_sketch(
    asked: Asked, stair: StairPitch, length_mm: float, ends: Mapping[str, str]
) -> Sketch:
    """Return the raked board over its stair, with the level boards it meets.

    Args:
        asked: The entry.
        stair: Its pitch.
        length_mm: Lower edge of the raked board along the slope.
        ends: How foot and head are cut.
    """
    pitch = math.radians(stair.pitch_deg)
    along, across = (math.cos(pitch), math.sin(pitch)), (-math.sin(pitch), math.cos(pitch))
    high_mm = asked.profile.width_mm
    head: Point = (length_mm * along[0], length_mm * along[1])
    cuts = {end: _top_mm(cut, stair.pitch_deg, high_mm) for end, cut in ends.items()}
    top_foot = _from((0.0, 0.0), along, cuts["foot"], across, high_mm)
    top_head = _from(head, along, -cuts["head"], across, high_mm)
    level_mm = LEVEL_PART * length_mm
    lines = [
        Line(points=_steps(asked, stair, head), stroke=Stroke.EDGE),
        Line(points=((0.0, 0.0), head, top_head, top_foot), stroke=Stroke.TIMBER, closed=True),
    ]
    if ends["foot"] == "bisect":
        board = ((-level_mm, 0.0), (0.0, 0.0), top_foot, (-level_mm, high_mm))
        lines.append(Line(points=board, stroke=Stroke.TIMBER, closed=True))
    if ends["head"] == "bisect":
        end: Point = (head[0] + level_mm, head[1])
        board = (head, end, (end[0], end[1] + high_mm), top_head)
        lines.append(Line(points=board, stroke=Stroke.TIMBER, closed=True))
    lines += [
        Line(points=((0.0, 0.0), top_foot), stroke=Stroke.CUT),
        Line(points=(head, top_head), stroke=Stroke.CUT),
    ]
    labels = _labels(asked, stair, length_mm, (top_foot, top_head))
    return facing(
        asked,
        Sketch(
            lines=tuple(lines),
            labels=labels,
            caption=say(
                "{mark} from the side; the steps as far as they were read.",
                mark=asked.mark,
            ),
            described=say("A board climbing along a stair, with its cuts at foot and head."),
        ),
    )


def _top_mm(cut: str, pitch_deg: float, high_mm: float) -> float:
    """Return how far the upper edge begins after the lower one, along the slope, at the foot."""
    match cut:
        case "bisect":
            return high_mm * math.tan(math.radians(pitch_deg) / 2.0)
        case "plumb" | "newel":
            return high_mm * math.tan(math.radians(pitch_deg))
        case _:
            return 0.0


def _from(start: Point, along: Point, along_mm: float, across: Point, across_mm: float) -> Point:
    return (
        start[0] + along[0] * along_mm + across[0] * across_mm,
        start[1] + along[1] * along_mm + across[1] * across_mm,
    )


def _steps(asked: Asked, stair: StairPitch, head: Point) -> tuple[Point, ...]:
    """Return the outline of the steps; the slope alone where they weren't read."""
    risers, rise_mm, going_mm = asked.get("risers"), stair.rise_mm, stair.going_mm
    if risers is None or rise_mm is None or going_mm is None:
        return ((0.0, 0.0), head)
    off_mm = asked.get("string", 0.0) / math.sin(math.radians(stair.pitch_deg))
    x, y = going_mm + off_mm, 0.0
    points: list[Point] = [(0.0, 0.0), (x, 0.0)]
    for step in range(risers):
        y += rise_mm
        points.append((x, y))
        if step < risers - 1:
            x += going_mm
            points.append((x, y))
    points.append((max(x, head[0]), y))
    return tuple(points)


def _labels(
    asked: Asked, stair: StairPitch, length_mm: float, tops: tuple[Point, Point]
) -> tuple[Label, ...]:
    (foot_x, foot_y), (head_x, head_y) = tops
    clear_mm = 0.04 * length_mm
    return (
        Label(
            x_mm=(foot_x + head_x) / 2.0 - clear_mm,
            y_mm=(foot_y + head_y) / 2.0 + clear_mm,
            text=say(
                "{length} along the lower edge",
                length=format_length(length_mm, asked.units),
            ),
            anchor=Anchor.END,
            bold=True,
        ),
        Label(
            x_mm=0.2 * length_mm,
            y_mm=-clear_mm,
            text=say("pitch {pitch}", pitch=format_angle(stair.pitch_deg)),
            anchor=Anchor.START,
        ),
    )


def facing(asked: Asked, sketch: Sketch) -> Sketch:
    """Return the drawing as it climbs, mirrored where that is to the left."""
    if asked.get("climbs", "right") == "right":
        return sketch
    ends = {Anchor.START: Anchor.END, Anchor.END: Anchor.START, Anchor.MIDDLE: Anchor.MIDDLE}
    return Sketch(
        lines=tuple(
            Line(
                points=tuple((-x, y) for x, y in line.points),
                stroke=line.stroke,
                closed=line.closed,
            )
            for line in sketch.lines
        ),
        labels=tuple(
            Label(
                x_mm=-label.x_mm,
                y_mm=label.y_mm,
                text=label.text,
                anchor=ends[label.anchor],
                bold=label.bold,
            )
            for label in sketch.labels
        ),
        caption=sketch.caption,
        described=sketch.described,
    )
