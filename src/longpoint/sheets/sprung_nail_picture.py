"""A cornice across its corner with its two nails, cut square to the wall, in true proportion."""

import math
from typing import Final

from longpoint.fixing.gauges import thickest_mm
from longpoint.fixing.nail_lines import PUNCHED_MM, NailLine
from longpoint.fixing.nailing import Section
from longpoint.fixing.wall_behind import WallBehind
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.nail_words import described_section
from longpoint.speech.said import say

LARGEST_MM: Final = 64.0
EDGE_MM: Final = 4.0
WORD_MM: Final = 2.9
BEYOND_MM: Final = 10.0
"""How much of stud and joist is drawn past the deeper tip."""
LEAST_NAIL_MM: Final = 0.9

_Point = tuple[float, float]


class _Corner:
    """Places a point of the corner: x off the wall into the room, y down from the ceiling."""

    def __init__(self, low_mm: float, high_mm: float) -> None:
        self.low_mm = low_mm
        self.scale = min(1.0, LARGEST_MM / (high_mm - low_mm))

    def at(self, x_mm: float, y_mm: float) -> _Point:
        return (
            EDGE_MM + (x_mm - self.low_mm) * self.scale,
            EDGE_MM + (y_mm - self.low_mm) * self.scale,
        )

    def box(self, x: _Point, y: _Point, ink: Ink) -> Outline:
        (a, b), (c, d) = x, y
        return Outline(points=(self.at(a, c), self.at(b, c), self.at(b, d), self.at(a, d)), ink=ink)


def sprung_nail_picture(section: Section, wall: WallBehind, units: Units) -> Drawing:
    """Return a cornice, the wall at the left and the ceiling above.

    Args:
        section: The cornice, its line into the studs first.
        wall: What stands behind it.
        units: In which the picture is described.
    """
    lean = math.radians(section.spring_deg)
    drop_mm, out_mm = section.width_mm * math.cos(lean), section.width_mm * math.sin(lean)
    board_mm = wall.board.value_mm
    tips = [line.bed.tip_mm(line.nail) for line in section.lines if line.nail is not None]
    deep_mm = max([*tips, board_mm + 20.0]) + BEYOND_MM
    high_mm = max(drop_mm, out_mm) + section.thickness_mm + 8.0
    view = _Corner(-deep_mm, high_mm)
    thick = (
        (1.0, section.thin_mm),
        (0.75, section.thickness_mm),
        (0.25, section.thickness_mm),
        (0.0, section.thin_mm),
    )
    face = tuple(
        (share * out_mm + mm * math.cos(lean), (1.0 - share) * drop_mm + mm * math.sin(lean))
        for share, mm in thick
    )
    back = ((0.0, drop_mm), (out_mm, 0.0))
    marks: list[Mark] = [
        view.box((-board_mm, 0.0), (0.0, high_mm), Ink.WASTE),
        view.box((-board_mm, high_mm), (-board_mm, 0.0), Ink.WASTE),
        view.box((-deep_mm, -board_mm), (-board_mm, high_mm), Ink.OPENING),
        view.box((-deep_mm, high_mm), (-deep_mm, -board_mm), Ink.OPENING),
        Outline(points=tuple(view.at(*point) for point in (*back, *face)), ink=Ink.PIECE),
        _word(view, (-(deep_mm + board_mm) / 2.0, high_mm - 4.0), say("stud")),
        _word(view, (high_mm - 26.0, -deep_mm + 8.0), say("joist or backing")),
    ]
    for number, line in enumerate(section.lines, start=1):
        marks += _nail(view, section, line, number, is_level=number == 1)
    side_mm = 2 * EDGE_MM + (high_mm + deep_mm) * view.scale
    return Drawing(
        width_mm=side_mm,
        height_mm=side_mm,
        marks=tuple(marks),
        described=described_section(section, units),
    )


def _nail(
    view: _Corner, section: Section, line: NailLine, number: int, *, is_level: bool
) -> list[Mark]:
    """Return a nail square to wall or ceiling, or a cross where none does."""
    lean = math.radians(section.spring_deg)
    from_low_mm = line.from_edge_mm
    x_mm = from_low_mm * math.sin(lean)
    y_mm = (section.width_mm - from_low_mm) * math.cos(lean)
    beside_mm = y_mm if is_level else x_mm
    head_mm = line.bed.trim_mm - PUNCHED_MM

    def at(in_mm: float, off_mm: float) -> _Point:
        return (
            view.at(in_mm, beside_mm + off_mm) if is_level else view.at(beside_mm + off_mm, in_mm)
        )

    x, y = at(line.bed.trim_mm + 5.0, 0.0)
    name = Word(x_mm=x, y_mm=y + 1.0, text=say("{number}", number=number), size_mm=3.2, bold=True)
    if line.nail is None:
        cross = 2.2 / view.scale
        return [
            Outline(
                points=(at(head_mm - cross, -way * cross), at(head_mm + cross, way * cross)),
                ink=Ink.CUT,
                closed=False,
            )
            for way in (-1.0, 1.0)
        ] + [name]
    half = max(thickest_mm(line.nail), LEAST_NAIL_MM / view.scale) / 2.0
    tip_mm = head_mm - line.nail.length_mm
    shank = ((head_mm, -half), (head_mm, half), (tip_mm + 2.0, half), (tip_mm, 0.0))
    points = tuple(at(*point) for point in (*shank, (tip_mm + 2.0, -half)))
    return [Outline(points=points, ink=Ink.HOOK), name]


def _word(view: _Corner, place: _Point, text: str) -> Word:
    x, y = view.at(*place)
    return Word(x_mm=x, y_mm=y, text=text, size_mm=WORD_MM)
