"""The pages of handing over of the sample house, as a person last read and approved them."""

from dataclasses import replace
from datetime import date

import pytest

from longpoint.sheets.handover_sheets import handover_sheets, handover_text
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.survey.handover import Defect, DefectKind, Handover, Trade
from tests.golden_files import Golden
from tests.unit.sheets.sample import HOUSE, PLAN
from tests.unit.sheets.test_handover_sheets import as_built

DAY = date(2026, 3, 1)
TOLD = Handover(
    place="au-nsw",
    handed_over=date(2025, 9, 1),
    fills=Trade.PAINTER,
    fixed=("W1", "Hall"),
    wet=("Kitchen",),
)
DEFECTS = (
    Defect(place="S1", what="gap under it", kind=DefectKind.SKIRTING, found_mm=3.0, seen=DAY),
    Defect(place="Hall", what="hammer mark by D1", seen=date(2026, 1, 9), mended=DAY),
)
FIRST, *REST = HOUSE.openings
PLAN_UP = replace(
    PLAN,
    house=replace(
        HOUSE,
        openings=(replace(FIRST, as_built=as_built(1.4, 7.5)), *REST),
        handover=TOLD,
        defects=DEFECTS,
    ),
)
SHEETS = {sheet.name: sheet for sheet in handover_sheets(PLAN_UP, DAY)}


@pytest.mark.parametrize("name", SHEETS)
def test_the_page_is_as_approved(name: str, golden: Golden) -> None:
    text = sheet_html(SHEETS[name]).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden(f"sample-{name}.html", text)


def test_the_terminal_is_as_approved(golden: Golden) -> None:
    golden("sample-handover.txt", handover_text(PLAN_UP, DAY) + "\n")
