"""The sample house's sheets, as a person last read and approved them."""

import pytest

from longpoint.sheets.blocks import SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.delivery_sheet import delivery_sheet
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.labels.bundle_sheet import bundle_sheet
from longpoint.sheets.labels.grid import GRIDS
from longpoint.sheets.labels.label_pages import label_pages
from longpoint.sheets.opening_drawings import opening_drawings
from longpoint.sheets.plan_file import bought_in
from longpoint.sheets.plan_json import plan_document
from longpoint.sheets.rack_sheet import rack_sheets
from longpoint.sheets.svg import drawing_svg
from longpoint.sheets.terminal import findings_text, pieces_text, plan_text
from longpoint.sticks.order_lines import order_lines
from tests.golden_files import Golden
from tests.unit.sheets.sample import HOUSE, PLAN, unproved
from tests.unit.sheets.sample_rack import RACK, TODAY

SHEETS = {sheet.name: sheet for sheet in house_sheets(PLAN)}
DRAWINGS = dict(opening_drawings(PLAN))


@pytest.mark.parametrize("name", SHEETS)
def test_the_sheet_is_as_approved(name: str, golden: Golden) -> None:
    text = sheet_html(SHEETS[name]).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden(f"sample-{name}.html", text)


def test_the_sheet_of_a_saw_not_proved_is_as_approved(golden: Golden) -> None:
    (sheet,) = (sheet for sheet in house_sheets(unproved()) if sheet.name == "outlook")
    text = sheet_html(sheet).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden("sample-outlook-unproved.html", text)


@pytest.mark.parametrize("name", ["rack", "rack-labels"])
def test_the_list_and_the_labels_of_the_rack_are_as_approved(name: str, golden: Golden) -> None:
    sheets = {sheet.name: sheet for sheet in rack_sheets(RACK, TODAY, RACK.there)}
    text = sheet_html(sheets[name]).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden(f"sample-{name}.html", text)


def test_the_style_is_as_approved(golden: Golden) -> None:
    golden("sheets.css", STYLE)


def test_a_stale_sheet_is_as_approved(golden: Golden) -> None:
    (sheet,) = (s for s in house_sheets(PLAN, SheetState.STALE) if s.name == "order")
    text = sheet_html(sheet).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden("sample-order-stale.html", text)


@pytest.mark.parametrize("name", DRAWINGS)
def test_the_drawing_is_as_approved(name: str, golden: Golden) -> None:
    golden(f"sample-{name}.svg", drawing_svg(DRAWINGS[name]).replace("><", ">\n<") + "\n")


def test_the_terminal_text_is_as_approved(golden: Golden) -> None:
    golden("sample-plan.txt", plan_text(PLAN) + "\n")
    golden("sample-pieces.txt", pieces_text(PLAN) + "\n")
    golden("sample-findings.txt", findings_text(HOUSE, PLAN.findings) + "\n")


def test_a_label_and_the_list_of_bundles_are_as_approved(golden: Golden) -> None:
    (page, *_) = label_pages(PLAN, GRIDS["a4-3x8"], lambda _: ((True, False), (False, True)))
    _, first = page.labels[0]
    golden("sample-label.svg", drawing_svg(first).replace("><", ">\n<") + "\n")
    text = sheet_html(bundle_sheet(PLAN)).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden("sample-bundles.html", text)


def test_the_sheet_for_a_delivery_is_as_approved(golden: Golden) -> None:
    bought = bought_in(plan_document(PLAN))
    lines = order_lines(HOUSE, bought.needed, bought.spares)
    text = sheet_html(delivery_sheet(HOUSE, lines, PLAN.readings_code))
    golden("sample-delivery.html", text.replace(STYLE, "\n/* style */\n").replace("><", ">\n<"))
