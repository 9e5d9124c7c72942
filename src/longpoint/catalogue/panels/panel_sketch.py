"""The drawing of a panelled wall."""

from collections.abc import Iterable, Sequence, Set
from typing import Final

from longpoint.catalogue.panels.panel_layout import Obstacle, PanelLayout
from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked
from longpoint.quantities.formatting import format_length
from longpoint.shape.point import Point
from longpoint.speech.said import joined, say
from longpoint.trims.outline import TrimOutline

_BELOW_LENGTH: Final = 0.025
_BELOW_HEIGHT: Final = 0.07
"""How far the label stands below the field, as a part of its length or of its whole height."""


def panel_sketch(
    asked: Asked, layout: PanelLayout, obstacles: Sequence[Obstacle], clashing: Set[str]
) -> Sketch:
    """Return the wall with its frames and what stands in it; hatched where it is in the way."""
    frames = [layout.frame(index) for index in range(layout.count)]
    lines = [
        Line(points=_points(layout.field.corners), stroke=Stroke.EDGE, closed=True),
        *(line for frame in frames for line in _timber(frame)),
        *(
            Line(
                points=_points(each.corners),
                stroke=Stroke.WASTE if each.name in clashing else Stroke.MARK,
                closed=True,
            )
            for each in obstacles
        ),
    ]
    in_the_way = (
        say(
            ", {clashing} in the way",
            clashing=joined(say(" and "), sorted(clashing)),
        )
        if clashing
        else ""
    )
    return Sketch(
        lines=tuple(lines),
        labels=(_sizes(asked, layout), *_names(obstacles)),
        caption=say("{mark} as it will stand on the wall.", mark=asked.mark),
        described=say(
            "A wall with {count} equal frames of moulding{in_the_way}.",
            count=layout.count,
            in_the_way=in_the_way,
        ),
    )


def _timber(frame: TrimOutline) -> Iterable[Line]:
    """Give the four pieces of a frame, mitre to mitre."""
    for side in range(4):
        after = (side + 1) % 4
        piece = (frame.outer[side], frame.outer[after], frame.inner[after], frame.inner[side])
        yield Line(points=_points(piece), stroke=Stroke.TIMBER, closed=True)


def _sizes(asked: Asked, layout: PanelLayout) -> Label:
    """Return what the frames and margins measure, said below the field."""
    units, length_mm = asked.units, layout.field.length_mm
    heights_mm = [corner.y_mm for corner in layout.field.corners]
    low_mm, high_mm = min(heights_mm), max(heights_mm)
    room_mm = max(_BELOW_LENGTH * length_mm, _BELOW_HEIGHT * (high_mm - low_mm))
    return Label(
        x_mm=length_mm / 2.0,
        y_mm=low_mm - room_mm,
        text=say(
            "{panel} x {height}, margins {margin}",
            panel=format_length(layout.panel_mm, units),
            height=format_length(layout.height_mm, units),
            margin=format_length(layout.margin_mm, units),
        ),
        bold=True,
    )


def _names(obstacles: Sequence[Obstacle]) -> tuple[Label, ...]:
    return tuple(
        Label(
            x_mm=each.left_mm + each.width_mm,
            y_mm=each.bottom_mm + each.height_mm,
            text=each.name,
            anchor=Anchor.START,
        )
        for each in obstacles
    )


def _points(corners: Iterable[Point]) -> tuple[tuple[float, float], ...]:
    return tuple((corner.x_mm, corner.y_mm) for corner in corners)
