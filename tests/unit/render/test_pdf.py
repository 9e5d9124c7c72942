import io
from dataclasses import replace
from typing import cast

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from longpoint.errors import Severity, SheetError
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.quantities.length import Units
from longpoint.render import pdf
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf, render_png
from longpoint.shape.fitted import Shapes
from longpoint.sheets.blocks import Heading, Note, Sheet, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import VOID
from longpoint.sheets.pdf_data import ZERO_WIDTH
from longpoint.sticks.plan import CutPlan, CutStick
from longpoint.survey.house import Dialect
from tests.unit.sheets.sample import OPENINGS, PIECES, PLAN, fitted, stick, unproved, with_house


def read(plan: HousePlan, state: SheetState = SheetState.CURRENT) -> PdfReader:
    return PdfReader(io.BytesIO(render_pdf(house_sheets(plan, state))))


def text_of(reader: PdfReader) -> list[str]:
    return [page.extract_text().replace(ZERO_WIDTH, "") for page in reader.pages]


@pytest.fixture(scope="module")
def sample() -> PdfReader:
    return read(PLAN)


def test_every_piece_mark_is_in_the_text_and_none_of_a_held_opening(sample: PdfReader) -> None:
    text = " ".join(text_of(sample))
    assert all(piece.mark in text for piece in PIECES)
    assert "W3-" not in text
    assert "W4-" not in text


def test_every_page_carries_house_code_and_its_number(sample: PdfReader) -> None:
    for text in text_of(sample):
        assert "Finch Rise" in text
        assert "K7M2QX" in text
        assert ", page " in text
        assert VOID not in text


def test_pages_are_numbered_within_their_sheet(sample: PdfReader) -> None:
    texts = text_of(sample)
    count = sum(1 for text in texts if "Cutting, page" in text)
    assert f"Cutting, page 1 of {count}" in texts[-count]
    assert f"Cutting, page {count} of {count}" in texts[-1]


def test_the_file_is_tagged_titled_and_has_an_outline(sample: PdfReader) -> None:
    assert "/StructTreeRoot" in sample.root_object
    assert sample.metadata is not None
    assert sample.metadata.title == (
        "Finch Rise: before you cut, will it close, openings, order, cutting"
    )
    assert len(sample.outline) > 0


def test_only_our_own_font_is_used(sample: PdfReader) -> None:
    resources = [cast("DictionaryObject", page["/Resources"]) for page in sample.pages]
    fonts = {
        str(font.get_object()["/BaseFont"])
        for resource in resources
        for font in cast("DictionaryObject", resource["/Font"]).values()
    }
    assert fonts
    assert all("NotoSans" in name for name in fonts)


def test_void_stands_on_every_page_of_stale_sheets() -> None:
    for text in text_of(read(PLAN, SheetState.STALE)):
        assert text.count(VOID) >= 2


def test_the_same_sheets_give_the_same_bytes() -> None:
    sheets = house_sheets(PLAN)
    assert render_pdf(sheets) == render_pdf(sheets)


@pytest.mark.parametrize(("paper", "size"), [(Paper.A4, (595, 842)), (Paper.US_LETTER, (612, 792))])
def test_the_paper_is_the_one_asked_for(paper: Paper, size: tuple[int, int]) -> None:
    reader = PdfReader(io.BytesIO(render_pdf(house_sheets(PLAN), paper)))
    box = reader.pages[0].mediabox
    assert (round(box.width), round(box.height)) == size


def test_markup_in_a_name_is_printed_as_it_stands() -> None:
    nasty = '#panic("x") *b* $a$ <w> @y [z] \\ `'
    plan = replace(
        with_house(name=nasty, openings=tuple(replace(o, room=nasty) for o in OPENINGS)),
        pieces=tuple(replace(piece, hand_sum=nasty) for piece in PIECES),
    )
    texts = text_of(read(plan))
    assert all('#panic("x") *b* $a$ <w> @y [z] \\ `' in text for text in texts)


def test_an_empty_house_and_a_house_all_held_can_be_set() -> None:
    empty = replace(
        with_house(openings=(), runs=(), held=()),
        pieces=(),
        cut_plan=CutPlan(),
        findings=(),
        held=frozenset(),
        shapes=Shapes(),
    )
    assert "There is nothing to cut." in " ".join(text_of(read(empty)))
    held = replace(
        PLAN,
        pieces=(),
        cut_plan=CutPlan(),
        held=frozenset({"W1", "W2", "W3", "D1", "S1", "W4"}),
    )
    assert "Hook reading" not in " ".join(text_of(read(held))).replace("Hook reading: tape", "")


def test_two_hundred_pieces_in_inches_with_long_names_can_be_set() -> None:
    long = "Gartenzimmer" * 5
    pieces: list[Piece] = []
    sticks: list[CutStick] = []
    for number in range(50):
        own = tuple(
            replace(piece, mark=f"X{number}-{piece.role.value}", opening=f"X{number}", room=long)
            for piece in PIECES[:4]
        )
        pieces += own
        sticks.append(stick(f"OG57-{number}", 5400.0, own))
    openings = tuple(replace(OPENINGS[0], mark=f"X{number}") for number in range(50))
    plan = replace(
        with_house(
            openings=openings, runs=(), held=(), units=Units.INCH, dialect=Dialect.CA, name=long
        ),
        pieces=tuple(pieces),
        cut_plan=CutPlan(sticks=tuple(sticks)),
        shapes=Shapes(openings=tuple(replace(fitted("W1"), mark=o.mark) for o in openings)),
        findings=(),
        held=frozenset(),
    )
    sheets = house_sheets(plan)
    assert len(PdfReader(io.BytesIO(render_pdf(sheets))).pages) > 50
    cut = PdfReader(io.BytesIO(render_pdf(sheets[-1:])))
    assert pieces[0].mark in cut.pages[0].extract_text()


def test_a_page_can_be_had_as_a_picture() -> None:
    picture = render_png(house_sheets(PLAN), page=1, ppi=20)
    assert picture.startswith(b"\x89PNG")


def test_a_page_that_is_not_there_is_refused() -> None:
    with pytest.raises(SheetError) as caught:
        render_png(house_sheets(PLAN)[:1], page=9, ppi=10)
    assert "Page 9" in caught.value.read


def test_no_sheet_at_all_is_refused() -> None:
    with pytest.raises(SheetError):
        render_pdf(())


def test_trouble_in_the_typesetter_comes_out_as_our_own_error(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(pdf, "TEMPLATE", b'#panic("no paper")')
    sheet = Sheet(name="x", title="X", house="Y", readings_code="Z", blocks=(Heading(text="H"),))
    with pytest.raises(SheetError) as caught:
        render_pdf((sheet,))
    assert "no paper" in caught.value.wrong


def test_a_warning_of_the_typesetter_is_not_silent(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pdf, "TEMPLATE", b'#set text(font: "No Such Font")\nx')
    sheet = Sheet(name="x", title="X", house="Y", readings_code="Z")
    with pytest.raises(SheetError) as caught:
        render_pdf((sheet,))
    assert "no such font" in caught.value.wrong


def test_the_fonts_carry_their_licence() -> None:
    licence = (pdf.FONTS / "OFL.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE Version 1.1" in licence
    assert all(font.name in licence for font in pdf.FONTS.glob("*.ttf"))


def _bare_pages(reader: PdfReader, caution: str) -> list[int]:
    """Pages that hold the cautions and nothing before them but the page's head."""
    return [
        number
        for number, text in enumerate(text_of(reader))
        if caution in text and len(text[: text.index(caution)].strip().splitlines()) <= 3
    ]


@pytest.mark.parametrize("count", range(1, 15))
def test_the_cautions_never_fill_a_page_alone(count: int) -> None:
    """However many notes come before them; a dozen fill a page."""
    (sheet,) = (one for one in house_sheets(PLAN) if one.name == "cut")
    note = Note(severity=Severity.NOTE, title="NOTE", text="word " * 60)
    reader = PdfReader(io.BytesIO(render_pdf((replace(sheet, blocks=(note,) * count),))))
    assert not _bare_pages(reader, "Eyes and ears covered")


def test_two_doors_share_a_page() -> None:
    doors = tuple(replace(OPENINGS[3], mark=mark) for mark in ("D1", "D2", "D3", "D4"))
    pieces = tuple(
        replace(piece, mark=piece.mark.replace("D1", door.mark), opening=door.mark)
        for door in doors
        for piece in PIECES
        if piece.opening == "D1"
    )
    plan = replace(
        with_house(openings=doors, runs=(), held=()),
        pieces=pieces,
        cut_plan=CutPlan(),
        shapes=Shapes(openings=tuple(replace(fitted("D1"), mark=door.mark) for door in doors)),
        findings=(),
        held=frozenset(),
    )
    for paper in Paper:
        sheets = tuple(s for s in house_sheets(plan) if s.name == "openings")
        reader = PdfReader(io.BytesIO(render_pdf(sheets, paper)))
        assert len(reader.pages) <= 3
        assert any("D2 · door" in t and "D3 · door" in t for t in text_of(reader)) or any(
            "D1 · door" in t and "D2 · door" in t for t in text_of(reader)
        )


def test_the_forecast_of_a_small_house_stands_on_one_page() -> None:
    for paper in Paper:
        for plan in (PLAN, unproved()):
            sheets = [sheet for sheet in house_sheets(plan) if sheet.name == "outlook"]
            reader = PdfReader(io.BytesIO(render_pdf(tuple(sheets), paper)))
            assert len(reader.pages) == 1
            text = reader.pages[0].extract_text()
            assert "cut as planned" in text
            assert "houses imagined" in text
