"""The book as a file: contents, bookmarks, page numbers, tags, fonts, text."""

import io
import re
from datetime import date
from typing import Any, cast

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from longpoint.errors import SheetError
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_book
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.house_book import BookOf, house_book
from longpoint.sheets.html import VOID
from longpoint.sheets.pdf_data import ZERO_WIDTH
from tests.unit.sheets.sample import PLAN

DAY = date(2026, 3, 1)
BOOK = house_book(BookOf(plan=PLAN, on=DAY))


@pytest.fixture(scope="module")
def reader() -> PdfReader:
    return PdfReader(io.BytesIO(render_book(BOOK)))


@pytest.fixture(scope="module")
def pages(reader: PdfReader) -> list[str]:
    return [page.extract_text().replace(ZERO_WIDTH, "") for page in reader.pages]


def bookmarks(reader: PdfReader) -> dict[str, int]:
    """Return the page of each sheet's bookmark, from 1; those of its headings stand in lists."""
    sheets = [mark for mark in reader.outline if not isinstance(mark, list)]
    led = {str(m["/Title"]): reader.get_destination_page_number(m) for m in sheets}
    return {title: page + 1 for title, page in led.items() if page is not None}


def test_it_is_tagged_and_in_a_language_and_has_a_title(reader: PdfReader) -> None:
    root = reader.root_object
    assert bool(cast("Any", root["/MarkInfo"])["/Marked"])
    assert "/StructTreeRoot" in root
    assert str(root["/Lang"]) == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == "Finch Rise"


def test_every_sheet_has_a_bookmark_to_the_page_where_it_starts(
    reader: PdfReader, pages: list[str]
) -> None:
    marks = bookmarks(reader)
    for sheet in BOOK.sheets:
        assert sheet.title in marks
        assert f"{sheet.title}, page 1 of" in pages[marks[sheet.title] - 1]


def test_the_contents_name_the_page_on_which_each_sheet_starts(
    reader: PdfReader, pages: list[str]
) -> None:
    marks = bookmarks(reader)
    lines = [re.sub(r"[ .]{3,}|\n", " ", line) for line in pages[0].splitlines()]
    for sheet in BOOK.sheets:
        assert any(
            re.fullmatch(rf"{re.escape(sheet.title)}[ .]*{marks[sheet.title]}", line.strip())
            for line in lines
        ), (sheet.title, lines)


def test_every_page_says_which_of_how_many_it_is(pages: list[str]) -> None:
    for number, text in enumerate(pages, start=1):
        assert f"page {number} of {len(pages)}" in " ".join(text.split())


def test_the_entries_of_the_contents_can_be_followed(reader: PdfReader) -> None:
    notes = [_object(note) for note in cast("list[Any]", reader.pages[0]["/Annots"])]
    assert sum(str(note["/Subtype"]) == "/Link" for note in notes) >= len(BOOK.sheets)


def test_every_font_is_ours_and_embedded(reader: PdfReader) -> None:
    fonts: dict[str, DictionaryObject] = {}
    for page in reader.pages:
        resources = cast("DictionaryObject", page["/Resources"])
        found = cast("DictionaryObject", resources.get("/Font", DictionaryObject()))
        fonts |= {str(font["/BaseFont"]): font for font in map(_object, found.values())}
    assert fonts
    for name, font in fonts.items():
        assert "NotoSans" in name
        inner = _object(cast("list[Any]", font["/DescendantFonts"])[0])
        assert {"/FontFile2", "/FontFile3"} & set(_object(inner["/FontDescriptor"]))


def _object(held: Any) -> DictionaryObject:  # noqa: ANN401
    return cast("DictionaryObject", held.get_object())


def test_a_void_book_says_so_on_every_page() -> None:
    book = house_book(BookOf(plan=PLAN, on=DAY, state=SheetState.STALE))
    for page in PdfReader(io.BytesIO(render_book(book, Paper.US_LETTER))).pages:
        assert VOID in page.extract_text()


def test_a_book_without_a_sheet_is_refused() -> None:
    with pytest.raises(SheetError):
        render_book(house_book(BookOf(plan=PLAN, on=DAY), parts=()))


def test_the_same_book_gives_the_same_bytes() -> None:
    assert render_book(BOOK) == render_book(BOOK)
