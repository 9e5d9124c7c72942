"""Sheets as a PDF or as pictures of its pages, through typst."""

import json
from pathlib import Path
from typing import Final, Literal

import typst

from longpoint.errors import SheetError
from longpoint.render.paper import Paper
from longpoint.sheets.blocks import Sheet
from longpoint.sheets.house_book import Book
from longpoint.sheets.pdf_data import pdf_data
from longpoint.speech.said import joined, say

HERE: Final = Path(__file__).resolve().parent
TEMPLATE: Final = HERE / "templates" / "sheet.typ"
FONTS: Final = HERE / "fonts"


def render_pdf(sheets: tuple[Sheet, ...], paper: Paper = Paper.A4) -> bytes:
    """Return sheets as one tagged PDF with an outline; each sheet starts on a new page.

    Args:
        sheets: The sheets, at least one.
        paper: The paper.

    Returns:
        The file. The same sheets give the same bytes.

    Raises:
        SheetError: There is no sheet, or one can't be set.
    """
    return _compile(sheets, paper, form="pdf", ppi=None)[0]


def render_book(book: Book, paper: Paper = Paper.A4) -> bytes:
    """Return a book as one tagged PDF: contents, bookmarks, its pages counted through.

    Args:
        book: The book, of at least one sheet.
        paper: The paper.

    Returns:
        The file. The same book gives the same bytes.

    Raises:
        SheetError: There is no sheet, or one can't be set.
    """
    return _compile(book.sheets, paper, form="pdf", ppi=None, book=book)[0]


def render_png(
    sheets: tuple[Sheet, ...], paper: Paper = Paper.A4, page: int = 1, ppi: float = 110.0
) -> bytes:
    """Return one page as a picture.

    Args:
        sheets: The sheets, at least one.
        paper: The paper.
        page: Which page, counted from 1 through all sheets.
        ppi: Dots to the inch.

    Raises:
        SheetError: There is no such page, or a sheet can't be set.
    """
    pages = _compile(sheets, paper, form="png", ppi=ppi)
    if not 1 <= page <= len(pages):
        raise SheetError(
            say("Page {page} was asked for.", page=page),
            say("These sheets have {pages}.", pages=len(pages)),
            say("Ask for a page from 1 to {pages}.", pages=len(pages)),
        )
    return pages[page - 1]


def _compile(
    sheets: tuple[Sheet, ...],
    paper: Paper,
    *,
    form: Literal["pdf", "png"],
    ppi: float | None,
    book: Book | None = None,
) -> list[bytes]:
    if not sheets:
        raise SheetError(
            say("No sheet was given."),
            say("A document without a sheet has no page."),
            say("Give at least one sheet."),
        )
    inputs = {
        "sheets": json.dumps(pdf_data(sheets), ensure_ascii=False),
        "paper": paper.value,
        "title": f"{sheets[0].house}: {', '.join(sheet.title.lower() for sheet in sheets)}",
    }
    if book is not None:
        front = {"title": book.title, "subtitle": book.subtitle, "void": book.void}
        inputs |= {"book": json.dumps(front, ensure_ascii=False), "title": book.title}
    try:
        compiler = typst.Compiler(
            TEMPLATE,
            root=HERE,
            font_paths=[FONTS],
            ignore_system_fonts=True,
            sys_inputs=inputs,
        )
        made, warnings = compiler.compile_with_warnings(format=form, ppi=ppi)
    except typst.TypstError as error:
        raise _not_set(sheets, str(error)) from error
    if warnings:
        raise _not_set(sheets, joined("; ", (warning.message for warning in warnings)))
    if made is None:
        raise _not_set(sheets, say("nothing came out"))
    return made if isinstance(made, list) else [made]


def _not_set(sheets: tuple[Sheet, ...], reason: str) -> SheetError:
    return SheetError(
        say("The sheets of {house} were to be set on paper.", house=sheets[0].house),
        say(
            "Setting them failed: {splitlines}.",
            splitlines=reason.splitlines()[0] if reason else say("no reason given"),
        ),
        say("The HTML sheets hold the same; please report this with the house file."),
    )
