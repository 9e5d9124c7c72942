"""A sheet as plain values for the PDF's template: text stays data, never markup."""

from typing import Any, Final

from longpoint.sheets.blocks import (
    Beside,
    Block,
    Cell,
    Column,
    Drawing,
    Heading,
    Note,
    Outline,
    Paragraph,
    Sheet,
    SheetState,
    Table,
    Together,
)
from longpoint.sheets.html import VOID
from longpoint.sheets.in_tongue import spoken
from longpoint.sheets.inks import ink_style
from longpoint.sheets.svg import BLEED, drawing_svg
from longpoint.sheets.text_width import word_parts
from longpoint.speech.said import say
from longpoint.speech.tongue import Tongue

Data = dict[str, Any]

TEMPLATE_SAYS: Final = {
    "page": say("page"),
    "of": say("of"),
    "replaces": say("replaces"),
    "date": say("date"),
    "current": say("current"),
}
"""The words of the template itself."""

PDF_FONT: Final = "Noto Sans"
ZERO_WIDTH: Final = "\N{ZERO WIDTH SPACE}"


def _tongue(tongue: Tongue) -> Data:
    language, _, country = tongue.code.partition("-")
    return {"lang": language, "region": country or None}


def pdf_data(sheets: tuple[Sheet, ...]) -> list[Data]:
    """Return sheets as values that JSON can carry, each in its own language."""
    return [
        {
            "name": sheet.name,
            "title": sheet.title,
            "house": sheet.house,
            **_tongue(sheet.tongue),
            "says": {name: sheet.tongue.text(words) for name, words in TEMPLATE_SAYS.items()},
            "made_from": sheet.made_from,
            "readings_code": sheet.readings_code,
            "void": sheet.tongue.text(VOID) if sheet.state is SheetState.STALE else "",
            "subtitle": sheet.subtitle,
            "blocks": [_block(block) for block in sheet.blocks],
            "cautions": list(sheet.cautions),
        }
        for sheet in map(spoken, sheets)
    ]


def breakable(text: str) -> str:
    """Return a text in which very long words may end a line.

    Example:
        >>> breakable("W1-head") == "W1-head", len(breakable("x" * 40))
        (True, 42)
    """
    return " ".join(ZERO_WIDTH.join(word_parts(word)) for word in text.split(" "))


def _block(block: Block) -> Data:
    match block:
        case Heading():
            return {"kind": "heading", "text": breakable(block.text), "level": block.level}
        case Paragraph():
            return {
                "kind": "paragraph",
                "text": block.text,
                "small": block.is_small,
                "lead": block.lead,
                "picture": _outlines(block.picture) if block.picture else None,
            }
        case Note():
            return {
                "kind": "note",
                "severity": block.severity.value,
                "title": block.title,
                "text": block.text,
                "ask": block.ask,
                "small": block.small,
            }
        case Table():
            return _table(block)
        case Drawing():
            return {"kind": "drawing", **_drawing(block)}
        case Beside():
            return {
                "kind": "beside",
                "left": [_block(part) for part in block.left],
                "right": [_block(part) for part in block.right],
                "left_share": block.left_share,
            }
        case Together():
            return {"kind": "together", "blocks": [_block(part) for part in block.blocks]}


def _drawing(drawing: Drawing) -> Data:
    return {
        "svg": drawing_svg(drawing, font=PDF_FONT),
        "width_mm": drawing.width_mm + 2 * BLEED,
        "height_mm": drawing.height_mm + 2 * BLEED,
        "caption": drawing.caption,
        "described": drawing.described,
    }


def _outlines(drawing: Drawing) -> Data:
    """Return a drawing without words as the lines that the template draws itself."""
    return {
        "width_mm": drawing.width_mm + 2 * BLEED,
        "height_mm": drawing.height_mm + 2 * BLEED,
        "outlines": [outline_data(mark) for mark in drawing.marks if isinstance(mark, Outline)],
    }


def outline_data(mark: Outline) -> Data:
    """Return an outline as the line that a template draws itself, moved clear of the edge."""
    style = ink_style(mark.ink)
    return {
        "points": [[round(x + BLEED, 2), round(y + BLEED, 2)] for x, y in mark.points],
        "closed": mark.closed,
        "fill": style.fill,
        "stroke": style.stroke,
        "weight_mm": style.weight_mm,
        "dash_mm": list(style.dash_mm),
        "cap": "round" if style.has_round_ends else "butt",
    }


def _table(table: Table) -> Data:
    return {
        "kind": "table",
        "caption": table.caption,
        "close": table.is_close or bool(table.under or table.steps),
        "columns": [_column(column) for column in table.columns],
        "groups": {str(index): text for index, text in table.groups},
        "steps": {str(index): list(lines) for index, lines in table.steps},
        "under": {str(index): text for index, text in table.under},
        "under_is_said": table.under_is_said,
        "rows": [
            [_cell(cell, column) for cell, column in zip(row, table.columns, strict=True)]
            for row in table.rows
        ],
    }


def _column(column: Column) -> Data:
    return {"title": column.title, "number": column.is_number, "share": column.share}


def _cell(cell: str | Cell, column: Column) -> Data:
    if isinstance(cell, str):
        cell = Cell(text=cell, is_key=column.is_key)
    return {
        "text": breakable(cell.text),
        "behind": cell.behind,
        "small": [breakable(line) for line in cell.small],
        "picture": _outlines(cell.picture) if cell.picture else None,
        "picture_last": cell.picture_last,
        "blank": cell.blank.value if cell.blank else "",
        "key": cell.is_key or column.is_key,
    }
