"""A moulding's cross-section, from a DXF or an SVG drawing."""

import math
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import bounded_bytes, shown_name
from longpoint.exchange.limited_work import limited
from longpoint.exchange.sections.outlines import (
    MOST_POINTS,
    SMALLEST_MM,
    Line,
    area_mm2,
    extent,
    is_same_from_both_edges,
    joined,
    laid_down,
)
from longpoint.exchange.sections.svg_file import MM_IN, svg_outlines

LARGEST_DXF: Final = 20_000_000
LARGEST_MM: Final = 700.0
DXF_UNITS: Final = {1: 25.4, 2: 304.8, 4: 1.0, 5: 10.0, 6: 1000.0}
"""Codes of $INSUNITS, in mm: inch, foot, millimetre, centimetre, metre."""
DXF_SECONDS: Final = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A moulding's cross-section as it lies at the saw: face across, back down.

    Attributes:
        outline: Its corners, anticlockwise from the left end of its back; curves are straight
            lines no further than 0.02 mm from the curve. [mm]
        width_mm: Across its face.
        thickness_mm: From its back to its highest point.
        area_mm2: Inside its outline.
        reversible: Whether it is the same from both edges, to 0.1 mm.
        notes: What of the drawing wasn't used, or was taken for granted.
    """

    outline: Line
    width_mm: float
    thickness_mm: float
    area_mm2: float
    reversible: bool
    notes: tuple[str, ...] = ()


def read_section(path: Path, unit: str | None = None) -> Section:
    """Return the section in a drawing: the one closed outline that holds all others.

    Args:
        path: A .dxf or .svg file.
        unit: mm, cm or in for one step of the drawing; None: what the drawing says.

    Raises:
        ExchangeError: It can't be read, says no unit, holds no closed outline or several, or is no
            size that a moulding has.
    """
    read = f"The file {shown_name(path)} was to be read as a section."
    notes: list[str] = []
    match path.suffix.lower():
        case ".svg":
            lines = svg_outlines(path, unit)
        case ".dxf":
            lines = _dxf_lines(path, unit, notes)
        case _:
            raise ExchangeError(
                read,
                "Its name tells neither a DXF nor an SVG drawing.",
                "Name a .dxf or .svg file.",
            )
    outlines = joined(lines, read)
    if not outlines:
        raise ExchangeError(
            read,
            "There is no closed outline in it.",
            "Draw the section as one closed line, without fills, blocks or text alone.",
        )
    return _section(read, outlines, notes)


def _section(read: str, outlines: tuple[Line, ...], notes: list[str]) -> Section:
    by_size = sorted(outlines, key=lambda line: -abs(area_mm2(line)))
    outline = laid_down(by_size[0])
    if len(by_size) > 1 and abs(area_mm2(by_size[1])) > 1e-6:
        raise ExchangeError(
            read,
            f"It holds {len(by_size)} closed outlines; a section is one.",
            "Save the outline of the section alone, without frame, hatching or a second profile.",
        )
    _, _, width_mm, thickness_mm = extent(outline)
    if not SMALLEST_MM <= thickness_mm <= width_mm <= LARGEST_MM:
        raise ExchangeError(
            read,
            f"It comes to {width_mm:.2f} by {thickness_mm:.2f} mm, and no moulding has that size.",
            "Look in which unit it was drawn: --units mm, cm or in.",
        )
    if len(outline) > MOST_POINTS:
        raise ExchangeError(
            read,
            f"Its outline has over {MOST_POINTS} corners once its curves are straight lines.",
            "Draw it with fewer curves; a drawing on a sheet needs no more.",
        )
    outline = tuple((round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y in outline)
    return Section(
        outline=outline,
        width_mm=width_mm,
        thickness_mm=thickness_mm,
        area_mm2=abs(area_mm2(outline)),
        reversible=is_same_from_both_edges(outline),
        notes=tuple(notes),
    )


def _dxf_lines(path: Path, unit: str | None, notes: list[str]) -> tuple[Line, ...]:
    read = f"The file {shown_name(path)} was to be read as a DXF drawing."
    bounded_bytes(path, LARGEST_DXF, "a DXF drawing")
    answer = limited(
        "longpoint.exchange.sections.dxf_worker", path, "a DXF drawing", "dxf", DXF_SECONDS
    )
    if answer.get("is_far"):
        raise _far_away(read)
    scale = MM_IN[unit] if unit else DXF_UNITS.get(answer["unit"])
    if scale is None:
        raise ExchangeError(
            read,
            "It doesn't say in which unit it was drawn.",
            "Say what one step of it is: --units mm, cm or in.",
        )
    if answer["others"]:
        notes.append(f"Not looked at: {', '.join(answer['others'][:8]).lower()}.")
    return tuple(_scaled(read, line, scale) for line in answer["lines"])


def _scaled(read: str, line: list[Any], scale: float) -> Line:
    points = tuple((x * scale, y * scale) for x, y in line)
    if not all(math.isfinite(v) and abs(v) < 1e6 for point in points for v in point):
        raise _far_away(read)
    return points


def _far_away(read: str) -> ExchangeError:
    return ExchangeError(
        read,
        "A line of it lies over a kilometre away.",
        "Take out what is no part of the section, and move it near the drawing's origin.",
    )
