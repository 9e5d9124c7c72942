"""A trim's sketch brought to scale on paper."""

from typing import Final

from longpoint.catalogue.sketch import Anchor as SketchAnchor
from longpoint.catalogue.sketch import Sketch, Stroke
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.text_width import text_width_mm

WIDTH_MM: Final = 172.0
HEIGHT_MM: Final = 62.0
"""Largest picture: as wide as the paper's text, so high that two share a page."""
LABEL_MM: Final = 3.0
AIR_MM: Final = 2.0

_INKS: Final = {
    Stroke.TIMBER: Ink.PIECE,
    Stroke.WASTE: Ink.WASTE,
    Stroke.CUT: Ink.CUT,
    Stroke.EDGE: Ink.OPENING,
    Stroke.TRUE: Ink.TRUE,
    Stroke.MARK: Ink.MARK,
}
_ANCHORS: Final = {
    SketchAnchor.START: Anchor.START,
    SketchAnchor.MIDDLE: Anchor.MIDDLE,
    SketchAnchor.END: Anchor.END,
}


def sketch_drawing(sketch: Sketch, *, width_mm: float = WIDTH_MM) -> Drawing:
    """Return a sketch as a drawing: as large as the paper has room, its labels of one size.

    Args:
        sketch: The sketch.
        width_mm: Widest that the drawing may be.
    """
    points = [point for line in sketch.lines for point in line.points]
    points += [(label.x_mm, label.y_mm) for label in sketch.labels]
    low_x, high_x = min(x for x, _ in points), max(x for x, _ in points)
    low_y, high_y = min(y for _, y in points), max(y for _, y in points)
    wide, high = max(1.0, high_x - low_x), max(1.0, high_y - low_y)
    scale = min((width_mm - 2 * AIR_MM) / wide, (HEIGHT_MM - 2 * (AIR_MM + LABEL_MM)) / high)
    for _ in range(4):
        # Words keep their size, so what they need beside the lines comes off the scale.
        left_mm, right_mm = _overhang(sketch, scale, low_x, high_x)
        scale = min(scale, max(0.2 * scale, (width_mm - 2 * AIR_MM - left_mm - right_mm) / wide))
    left_mm, right_mm = _overhang(sketch, scale, low_x, high_x)
    x0_mm, y0_mm = AIR_MM + left_mm - scale * low_x, AIR_MM + LABEL_MM + scale * high_y

    def at(x_mm: float, y_mm: float) -> tuple[float, float]:
        return (x0_mm + scale * x_mm, y0_mm - scale * y_mm)

    marks: list[Mark] = [
        Outline(
            points=tuple(at(x, y) for x, y in line.points),
            ink=_INKS[line.stroke],
            closed=line.closed,
        )
        for line in sketch.lines
    ]
    for label in sketch.labels:
        x_mm, y_mm = at(label.x_mm, label.y_mm)
        marks.append(
            Word(
                x_mm=x_mm,
                y_mm=y_mm,
                text=label.text,
                size_mm=LABEL_MM,
                bold=label.bold,
                anchor=_ANCHORS[label.anchor],
            )
        )
    return Drawing(
        width_mm=2 * AIR_MM + left_mm + right_mm + scale * wide,
        height_mm=2 * (AIR_MM + LABEL_MM) + scale * high,
        marks=tuple(marks),
        caption=sketch.caption,
        described=sketch.described,
    )


def _overhang(sketch: Sketch, scale: float, low_x: float, high_x: float) -> tuple[float, float]:
    """Return how far the labels stand out past the lines at the left and at the right. [mm]"""
    left_mm = right_mm = 0.0
    for label in sketch.labels:
        text_mm = text_width_mm(label.text, LABEL_MM)
        before = {SketchAnchor.START: 0.0, SketchAnchor.MIDDLE: 0.5, SketchAnchor.END: 1.0}
        start_mm = scale * (label.x_mm - low_x) - before[label.anchor] * text_mm
        left_mm = max(left_mm, -start_mm)
        right_mm = max(right_mm, start_mm + text_mm - scale * (high_x - low_x))
    return left_mm, right_mm
