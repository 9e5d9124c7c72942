"""A section through trim, lining, board and stud with its nails, all in true proportion."""

from dataclasses import dataclass
from typing import Final

from longpoint.fixing.cable_zones import cable_rule
from longpoint.fixing.gauges import thickest_mm
from longpoint.fixing.nail_lines import PUNCHED_MM, NailLine
from longpoint.fixing.nailing import Section, Treatment
from longpoint.fixing.wall_behind import WallBehind
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.nail_words import described_section
from longpoint.sheets.sprung_nail_picture import sprung_nail_picture
from longpoint.speech.said import say

WIDEST_MM: Final = 84.0
HIGHEST_MM: Final = 64.0
LARGEST_SCALE: Final = 1.0
"""No section is drawn larger than it is."""
BEYOND_MM: Final = 14.0
"""How much of lining and stud is drawn past the deepest tip."""
WORD_MM: Final = 2.9
LEAST_NAIL_MM: Final = 0.9
"""A nail is drawn no thinner than that on paper, so that it is seen."""
EDGE_MM: Final = 4.0
IN_THE_OPENING: Final = frozenset({Treatment.UNDER, Treatment.LINED})
"""What is nailed there says nothing of depths below the wall's face."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _View:
    """Places a point: along the face from the reveal (or floor), and into the wall."""

    is_upright: bool
    scale: float
    low_along: float
    high_along: float
    low_deep: float

    def at(self, along_mm: float, deep_mm: float) -> tuple[float, float]:
        if self.is_upright:
            across, up = deep_mm - self.low_deep, self.high_along - along_mm
        else:
            across, up = along_mm - self.low_along, deep_mm - self.low_deep
        return (EDGE_MM + across * self.scale, EDGE_MM + WORD_MM + up * self.scale)

    def box(self, along: tuple[float, float], deep: tuple[float, float], ink: Ink) -> Outline:
        (a, b), (c, d) = along, deep
        return Outline(points=(self.at(a, c), self.at(b, c), self.at(b, d), self.at(a, d)), ink=ink)


def nail_picture(section: Section, wall: WallBehind, units: Units) -> Drawing:
    """Return the section: of a set cut across, the room above; of skirting upright, the room left.

    Args:
        section: What is nailed.
        wall: What stands behind it.
        units: In which the picture is described.
    """
    if section.treatment is Treatment.CEILING:
        return sprung_nail_picture(section, wall, units)
    is_upright = section.treatment is Treatment.WALL
    tips = [line.bed.tip_mm(line.nail) for line in section.lines if line.nail is not None]
    depth_mm = max([*tips, wall.board.value_mm + 20.0]) + BEYOND_MM
    rule = cable_rule(wall.country)
    if rule.depth_mm is not None and section.treatment not in IN_THE_OPENING:
        depth_mm = max(depth_mm, rule.depth_mm + 11.0)
    wide_mm = section.width_mm + section.quirk_mm + 6.0
    if section.treatment is Treatment.SET:
        wide_mm = max(wide_mm, _stud_start(section, wall) + wall.stud_face.value_mm + 4.0)
    deep_mm = section.thickness_mm + depth_mm + 4.0
    across, up = (deep_mm, wide_mm + 6.0) if is_upright else (wide_mm + 6.0, deep_mm)
    scale = min(LARGEST_SCALE, WIDEST_MM / across, HIGHEST_MM / up)
    view = _View(
        is_upright=is_upright,
        scale=scale,
        low_along=-6.0,
        high_along=wide_mm,
        low_deep=-section.thickness_mm - 2.0,
    )
    marks = [
        *_behind(section, wall, view, depth_mm, wide_mm),
        *_trim(section, view),
        *(
            mark
            for number, line in enumerate(section.lines, 1)
            for at_mm in _across(section, line)
            for mark in _nail(section, line, at_mm, number, view)
        ),
    ]
    if rule.depth_mm is not None and section.treatment not in IN_THE_OPENING:
        marks += _cable_line(view, rule.depth_mm, wide_mm, units)
    return Drawing(
        width_mm=2 * EDGE_MM + across * scale,
        height_mm=2 * EDGE_MM + WORD_MM + up * scale,
        marks=tuple(marks),
        described=described_section(section, units),
    )


def _stud_start(section: Section, wall: WallBehind) -> float:
    return section.lining_mm + wall.packing.value_mm


def _behind(
    section: Section, wall: WallBehind, view: _View, depth_mm: float, wide_mm: float
) -> list[Mark]:
    board_mm = wall.board.value_mm
    end_mm = min(depth_mm, board_mm + wall.stud_depth.value_mm)
    if section.treatment is Treatment.LINED:
        packing_mm = wall.packing.value_mm
        end_mm = min(depth_mm, packing_mm + wall.stud_face.value_mm)
        return [
            view.box((-6.0, wide_mm), (packing_mm, end_mm), Ink.OPENING),
            *(
                view.box((at_mm - 12.0, at_mm + 12.0), (0.0, packing_mm), Ink.WASTE)
                for at_mm in _across(section, section.lines[0])
            ),
            _word(view, (wide_mm * 0.5, packing_mm * 0.8), say("packers")),
            _word(view, (wide_mm * 0.5, (packing_mm + end_mm) / 2.0), say("stud")),
        ]
    if section.treatment is Treatment.UNDER:
        thick_mm = section.lining_mm
        return [
            view.box((-6.0, wide_mm), (0.0, thick_mm), Ink.OPENING),
            _word(view, (wide_mm * 0.5, thick_mm * 0.6), say("lining")),
        ]
    if section.treatment is Treatment.WALL:
        return [
            view.box((-6.0, wide_mm), (0.0, board_mm), Ink.WASTE),
            view.box((-6.0, wide_mm), (board_mm, end_mm), Ink.OPENING),
            _word(view, (-4.0, (board_mm + end_mm) / 2.0), say("stud")),
            Outline(
                points=(view.at(0.0, -section.thickness_mm - 2.0), view.at(0.0, 0.0)),
                ink=Ink.MARK,
                closed=False,
            ),
        ]
    start_mm = _stud_start(section, wall)
    stud_mm = (start_mm, start_mm + wall.stud_face.value_mm)
    return [
        view.box((0.0, section.lining_mm), (0.0, depth_mm), Ink.OPENING),
        view.box((start_mm, wide_mm), (0.0, board_mm), Ink.WASTE),
        view.box(stud_mm, (board_mm, end_mm), Ink.OPENING),
        _word(view, (section.lining_mm / 2.0, depth_mm - 3.0), say("lining")),
        _word(view, (sum(stud_mm) / 2.0, end_mm - 3.0), say("stud")),
    ]


def _trim(section: Section, view: _View) -> list[Mark]:
    start_mm, end_mm = section.quirk_mm, section.quirk_mm + section.width_mm
    face = (
        view.at(start_mm, 0.0),
        view.at(end_mm, 0.0),
        view.at(end_mm, -section.thickness_mm),
        view.at(start_mm, -section.thin_mm),
    )
    return [Outline(points=face, ink=Ink.PIECE)]


def _across(section: Section, line: NailLine) -> tuple[float, ...]:
    """Return how far from the inner edge the nails of a line stand, side by side. [mm]"""
    if section.in_a_row == 1:
        return (line.from_edge_mm,)
    return (line.from_edge_mm, section.width_mm - line.from_edge_mm)


def _nail(
    section: Section, line: NailLine, from_edge_mm: float, number: int, view: _View
) -> list[Mark]:
    along_mm = section.quirk_mm + from_edge_mm
    share = from_edge_mm / section.width_mm
    here_mm = section.thin_mm + share * (section.thickness_mm - section.thin_mm)
    head_mm = -here_mm + PUNCHED_MM
    number_at = view.at(along_mm, -section.thickness_mm - 3.5)
    marks: list[Mark] = []
    if line.nail is None:
        cross = 2.2 / view.scale
        marks += [
            Outline(
                points=(
                    view.at(along_mm - cross, head_mm - way * cross),
                    view.at(along_mm + cross, head_mm + way * cross),
                ),
                ink=Ink.CUT,
                closed=False,
            )
            for way in (-1.0, 1.0)
        ]
    else:
        half = max(thickest_mm(line.nail), LEAST_NAIL_MM / view.scale) / 2.0
        tip_mm = head_mm + line.nail.length_mm
        marks.append(
            Outline(
                points=(
                    view.at(along_mm - 1.6 * half, head_mm),
                    view.at(along_mm + 1.6 * half, head_mm),
                    view.at(along_mm + half, head_mm + 1.5),
                    view.at(along_mm + half, tip_mm - 2.0),
                    view.at(along_mm, tip_mm),
                    view.at(along_mm - half, tip_mm - 2.0),
                    view.at(along_mm - half, head_mm + 1.5),
                ),
                ink=Ink.HOOK,
            )
        )
    x, y = number_at
    lift = 1.0 if view.is_upright else 0.0
    marks.append(
        Word(x_mm=x, y_mm=y + lift, text=say("{number}", number=number), size_mm=3.2, bold=True)
    )
    return marks


def _cable_line(view: _View, depth_mm: float, wide_mm: float, units: Units) -> list[Mark]:
    ends = (view.at(-6.0, depth_mm), view.at(wide_mm, depth_mm))
    x, y = ends[1]
    return [
        Outline(points=ends, ink=Ink.TRUE, closed=False),
        Word(
            x_mm=x,
            y_mm=y - 1.0,
            text=say("{depth} deep", depth=format_length(depth_mm, units)),
            size_mm=2.6,
            anchor=Anchor.MIDDLE if view.is_upright else Anchor.END,
        ),
    ]


def _word(view: _View, place: tuple[float, float], text: str) -> Word:
    x, y = view.at(*place)
    return Word(x_mm=x, y_mm=y, text=text, size_mm=WORD_MM)
