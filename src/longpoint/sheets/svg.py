"""A drawing as SVG: every ink told apart by line and hatch, not by colour alone."""

import zlib
from html import escape
from typing import Final

from longpoint.sheets.blocks import Drawing, Ink, Outline, Word
from longpoint.sheets.inks import DARK, WHITE, ink_style

FONT: Final = "'Noto Sans', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif"

BLEED: Final = 0.4
"""Room round a drawing, so that a line along its border keeps its full weight. [mm]"""


def drawing_svg(drawing: Drawing, *, font: str = FONT) -> str:
    """Return a drawing as one SVG element, sized in millimetres of paper.

    Args:
        drawing: The drawing.
        font: Families for its words, the best first.

    Returns:
        Text of the element. The same drawing gives the same text; its ids differ from those of
        any other drawing on the page.
    """
    name = _name(drawing)
    marks = "".join(_mark(mark, name) for mark in drawing.marks)
    wide, high = _number(drawing.width_mm + 2 * BLEED), _number(drawing.height_mm + 2 * BLEED)
    title = f'<title id="{name}t">{escape(drawing.described)}</title>' if drawing.described else ""
    label = f' aria-labelledby="{name}t"' if drawing.described else ' aria-hidden="true"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}mm" height="{high}mm" '
        f'stroke-linejoin="round" viewBox="{-BLEED:g} {-BLEED:g} {wide} {high}" role="img"{label} '
        f'font-family="{escape(font)}">'
        f"{title}{_hatching(name) if _is_hatched(drawing) else ''}{marks}</svg>"
    )


def _mark(mark: Outline | Word, name: str) -> str:
    if isinstance(mark, Word):
        return _word(mark)
    points = " ".join(f"{_number(x)},{_number(y)}" for x, y in mark.points)
    element = "polygon" if mark.closed else "polyline"
    return f'<{element} points="{points}" {_ink(mark.ink, name)}/>'


def _ink(ink: Ink, name: str) -> str:
    style = ink_style(ink)
    fill = f"url(#{name}h)" if style.is_hatched else style.fill or "none"
    if not style.weight_mm:
        return f'fill="{fill}"'
    line = f'fill="{fill}" stroke="{style.stroke}" stroke-width="{style.weight_mm:g}"'
    if style.dash_mm:
        line += f' stroke-dasharray="{" ".join(f"{length:g}" for length in style.dash_mm)}"'
    return line + (' stroke-linecap="round"' if style.has_round_ends else "")


def _word(word: Word) -> str:
    x, y = _number(word.x_mm), _number(word.y_mm)
    turn = f' transform="rotate({_number(word.turn_deg)} {x} {y})"' if word.turn_deg else ""
    weight = ' font-weight="700"' if word.bold else ""
    return (
        f'<text x="{x}" y="{y}" font-size="{_number(word.size_mm)}" '
        f'text-anchor="{word.anchor.value}" fill="{DARK}"{weight}{turn}>{escape(word.text)}</text>'
    )


def _is_hatched(drawing: Drawing) -> bool:
    return any(isinstance(mark, Outline) and mark.ink is Ink.WASTE for mark in drawing.marks)


def _hatching(name: str) -> str:
    return (
        f'<defs><pattern id="{name}h" width="0.9" height="0.9" patternUnits="userSpaceOnUse" '
        f'patternTransform="rotate(45)"><rect width="0.9" height="0.9" fill="{WHITE}"/>'
        f'<rect width="0.4" height="0.9" fill="{DARK}"/></pattern></defs>'
    )


def _name(drawing: Drawing) -> str:
    """Return a name made of what is drawn, so that it repeats from run to run."""
    return f"d{zlib.crc32(repr(drawing).encode()):08x}"


def _number(value: float) -> str:
    return f"{round(value, 2) + 0.0:g}"
