from dataclasses import replace

from longpoint.house_plan import HousePlan
from longpoint.sheets.book import house_sheets
from longpoint.sheets.fetch import fetch_blocks, fetch_line, fetched
from longpoint.sheets.html import sheet_html
from longpoint.sheets.plan_json import plan_document
from longpoint.sheets.terminal import plan_text
from longpoint.sticks.plan import StickSource
from tests.unit.sheets.sample import PLAN


def labelled() -> HousePlan:
    sticks = tuple(
        replace(stick, label="EMKR") if stick.source is StickSource.OFFCUT else stick
        for stick in PLAN.cut_plan.sticks
    )
    return replace(PLAN, cut_plan=replace(PLAN.cut_plan, sticks=sticks))


def test_without_labels_there_is_nothing_to_fetch() -> None:
    assert fetched(PLAN) == ()
    assert fetch_line(PLAN) == ""
    assert fetch_blocks(PLAN) == ()


def test_the_label_is_told_on_the_screen() -> None:
    text = plan_text(labelled())

    assert "Fetch from the rack: EMKR (OG57 2700 mm)." in text
    assert "OG57-4 (rack piece EMKR, 2700" in text


def test_the_label_stands_on_the_order_and_the_cutting_sheet() -> None:
    pages = {sheet.name: sheet_html(sheet) for sheet in house_sheets(labelled())}

    for name in ("order", "cut"):
        assert "Fetch from the rack" in pages[name]
        assert "EMKR" in pages[name]
    assert "From the rack" not in pages["order"].replace("Fetch from the rack", "")
    assert "OG57-4: rack piece EMKR, 2700 mm" in pages["cut"]


def test_the_label_stands_in_the_document() -> None:
    labels = {stick["name"]: stick["label"] for stick in plan_document(labelled())["sticks"]}

    assert labels["OG57-4"] == "EMKR"
    assert labels["OG57-1"] is None
