"""Pages of labels as a PDF at their true size, through typst."""

import json
from typing import Final

import typst

from longpoint.errors import SheetError
from longpoint.render.pdf import FONTS, HERE
from longpoint.sheets.blocks import Outline, Word
from longpoint.sheets.labels.label_pages import LabelPage
from longpoint.sheets.pdf_data import outline_data
from longpoint.sheets.svg import BLEED
from longpoint.speech.said import joined, say

TEMPLATE: Final = HERE / "templates" / "labels.typ"


def render_labels(pages: tuple[LabelPage, ...], title: str) -> bytes:
    """Return pages of labels as one tagged PDF, each page as large as its paper.

    Args:
        pages: The pages, at least one.
        title: Title of the file.

    Returns:
        The file. The same pages give the same bytes.

    Raises:
        SheetError: There is no page, or one can't be set.
    """
    if not pages:
        raise SheetError(
            say("Labels were asked for."),
            say("This house has no piece and no held place."),
            say("Plan it again once there is something to cut."),
        )
    inputs = {"pages": json.dumps([_page(page) for page in pages]), "title": title}
    try:
        compiler = typst.Compiler(
            TEMPLATE, root=HERE, font_paths=[FONTS], ignore_system_fonts=True, sys_inputs=inputs
        )
        made, warnings = compiler.compile_with_warnings(format="pdf")
    except typst.TypstError as error:
        raise _not_set(str(error)) from error
    if warnings or not isinstance(made, bytes):
        raise _not_set(
            joined("; ", (warning.message for warning in warnings)) or say("nothing came out")
        )
    return made


def _page(page: LabelPage) -> dict[str, object]:
    return {
        "width_mm": page.width_mm,
        "height_mm": page.height_mm,
        "labels": [
            {
                "left_mm": place.left_mm - BLEED,
                "top_mm": place.top_mm - BLEED,
                "outlines": [outline_data(m) for m in drawing.marks if isinstance(m, Outline)],
                "words": [_word(mark) for mark in drawing.marks if isinstance(mark, Word)],
            }
            for place, drawing in page.labels
        ],
    }


def _word(word: Word) -> dict[str, object]:
    return {
        "x_mm": word.x_mm + BLEED,
        "y_mm": word.y_mm + BLEED,
        "text": word.text,
        "size_mm": word.size_mm,
        "weight": 700 if word.bold else 400,
        "anchor": word.anchor.value,
    }


def _not_set(reason: str) -> SheetError:
    return SheetError(
        say("The labels were to be set on paper."),
        say("Setting them failed: {splitlines}.", splitlines=reason.splitlines()[0]),
        say("Please report this with the house file."),
    )
