import json

from longpoint.sheets.blocks import SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.pdf_data import ZERO_WIDTH, breakable, pdf_data
from longpoint.sheets.text_width import LONG_WORD
from tests.unit.sheets.sample import PLAN


def test_the_data_is_plain_json() -> None:
    data = pdf_data(house_sheets(PLAN))
    assert json.loads(json.dumps(data, allow_nan=False)) == data


def test_only_a_stale_sheet_is_void() -> None:
    assert all(not sheet["void"] for sheet in pdf_data(house_sheets(PLAN)))
    assert all(sheet["void"] for sheet in pdf_data(house_sheets(PLAN, SheetState.STALE)))


def test_long_words_may_break_and_lose_no_letter() -> None:
    long = "x" * 100
    broken = breakable(f"short {long}")
    assert broken.replace(ZERO_WIDTH, "") == f"short {long}"
    assert max(map(len, broken.split(ZERO_WIDTH))) <= LONG_WORD + len("short ")
