import json
from dataclasses import replace

from longpoint.forecast.records import Verdict
from longpoint.sheets.blocks import Paragraph, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.pdf_data import ZERO_WIDTH, breakable, pdf_data
from longpoint.sheets.text_width import LONG_WORD
from longpoint.sheets.verdict_pictures import verdict_picture
from tests.unit.sheets.sample import PLAN


def test_the_data_is_plain_json() -> None:
    data = pdf_data(house_sheets(PLAN))
    assert json.loads(json.dumps(data, allow_nan=False)) == data


def test_only_a_stale_sheet_is_void() -> None:
    assert all(not sheet["void"] for sheet in pdf_data(house_sheets(PLAN)))
    assert all(sheet["void"] for sheet in pdf_data(house_sheets(PLAN, SheetState.STALE)))


def test_a_paragraph_brings_its_lead_and_its_picture_as_outlines() -> None:
    words = Paragraph(text="As read.", lead="Held.", picture=verdict_picture(Verdict.HOLD, 0.5))
    sheet = replace(house_sheets(PLAN)[0], blocks=(words, Paragraph(text="Plain.")))
    said, plain = pdf_data((sheet,))[0]["blocks"]
    assert (said["lead"], said["text"]) == ("Held.", "As read.")
    assert len(said["picture"]["outlines"]) == len(verdict_picture(Verdict.HOLD).marks)
    assert (plain["lead"], plain["picture"]) == ("", None)


def test_what_is_said_under_a_row_is_told_from_a_sum() -> None:
    sheets = {sheet["name"]: sheet for sheet in pdf_data(house_sheets(PLAN))}
    outlook = [b for b in sheets["outlook"]["blocks"] if b["kind"] == "table" and b["under"]]
    cut = [b for b in sheets["cut"]["blocks"] if b["kind"] == "table" and b["under"]]
    assert [b["under_is_said"] for b in outlook] == [True]
    assert cut
    assert not any(b["under_is_said"] for b in cut)


def test_long_words_may_break_and_lose_no_letter() -> None:
    long = "x" * 100
    broken = breakable(f"short {long}")
    assert broken.replace(ZERO_WIDTH, "") == f"short {long}"
    assert max(map(len, broken.split(ZERO_WIDTH))) <= LONG_WORD + len("short ")
