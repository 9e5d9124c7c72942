"""A drawing of a trim in true millimetres; the sheet brings it to scale."""

from dataclasses import dataclass
from enum import StrEnum


class Stroke(StrEnum):
    """What a line of a sketch stands for."""

    TIMBER = "timber"
    """Timber that is fixed: filled and outlined."""
    WASTE = "waste"
    """Timber that is cut away: hatched."""
    CUT = "cut"
    """A saw cut: heavy."""
    EDGE = "edge"
    """Edge of a wall, a lining or a floor: firm."""
    TRUE = "true"
    """What square or level would be: dotted."""
    MARK = "mark"
    """Dimension lines and pointers: thin."""


class Anchor(StrEnum):
    """Which point of a label its position names."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A polyline or polygon; x to the right, y up. [mm]"""

    points: tuple[tuple[float, float], ...]
    stroke: Stroke
    closed: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A text at a point. [mm]"""

    x_mm: float
    y_mm: float
    text: str
    anchor: Anchor = Anchor.MIDDLE
    bold: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Sketch:
    """A drawing to scale.

    Attributes:
        lines: Painted in order.
        labels: Painted over the lines, all of one size on paper.
        caption: Said below it.
        described: The picture in words.
    """

    lines: tuple[Line, ...]
    labels: tuple[Label, ...] = ()
    caption: str = ""
    described: str = ""
