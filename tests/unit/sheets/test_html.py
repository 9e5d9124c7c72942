import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from longpoint.house_plan import HousePlan
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Sheet, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import VOID, sheet_html
from longpoint.sticks.plan import CutPlan
from longpoint.survey.house import Dialect
from tests.unit.sheets.sample import OPENINGS, PIECES, PLAN, with_house

pytestmark = pytest.mark.no_cover

EMPTY_TAGS = {"meta", "col", "br", "wbr"}


class Page(HTMLParser):
    """Notes tags, and whether each is closed in its turn."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.tags: list[str] = []
        self.texts: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        if tag not in EMPTY_TAGS:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.texts.append(data)


def pages(plan: HousePlan, state: SheetState = SheetState.CURRENT) -> dict[str, str]:
    return {sheet.name: sheet_html(sheet) for sheet in house_sheets(plan, state)}


def test_every_tag_is_closed_in_its_turn() -> None:
    for text in pages(PLAN).values():
        assert Page(text).open == []


def test_a_page_needs_nothing_beside_itself() -> None:
    for text in pages(PLAN).values():
        assert "script" not in Page(text).tags
        assert not re.search(
            r"(src|href)=|url\((?!#d)|@import|https?://(?!www\.w3\.org/2000)", text
        )


@pytest.mark.parametrize("nasty", ["<script>alert(1)</script>", "\"'><img src=x>", "</style><b>"])
def test_names_from_the_house_file_are_never_markup(nasty: str) -> None:
    plan = replace(
        with_house(
            name=nasty,
            openings=tuple(replace(opening, room=nasty) for opening in OPENINGS),
            saw=replace(PLAN.house.saw, name=nasty),
        ),
        pieces=tuple(replace(piece, room=nasty, hand_sum=nasty) for piece in PIECES),
        findings=tuple(replace(f, read=nasty, place=nasty) for f in PLAN.findings),
        readings_code=nasty,
    )
    clean = [Page(text).tags for text in pages(PLAN).values()]
    for text, tags in zip(pages(plan).values(), clean, strict=True):
        page = Page(text)
        assert not {"img", "script"} & set(page.tags)
        assert page.tags.count("style") == tags.count("style") == 1
        assert any(nasty in data for data in page.texts)


def test_the_readings_code_stands_on_the_screen_and_in_the_printed_margin() -> None:
    for text in pages(PLAN).values():
        assert text.count(PLAN.readings_code) >= 2
        assert "counter(page)" in text


def test_a_stale_sheet_is_void_from_edge_to_edge() -> None:
    for text in pages(PLAN, SheetState.STALE).values():
        assert f"<b>{VOID}</b>" in text
        assert 'class="void"' in text
    for text in pages(PLAN).values():
        assert VOID not in text


def test_very_long_names_go_through() -> None:
    long = "W" * 60
    plan = with_house(
        name=long, openings=tuple(replace(opening, room=long) for opening in OPENINGS)
    )
    assert all(long in text for text in pages(plan).values())


def test_an_empty_house_has_all_sheets() -> None:
    empty = replace(
        with_house(openings=(), runs=(), held=()),
        pieces=(),
        cut_plan=CutPlan(),
        findings=(),
        held=frozenset(),
    )
    assert set(pages(empty)) == {"findings", "outlook", "openings", "order", "cut"}


def test_an_imperial_house_is_printed_in_sixteenths_and_its_own_words() -> None:
    text = pages(with_house(units=Units.INCH, dialect=Dialect.US))["cut"]
    assert "49\N{NO-BREAK SPACE}7/16" in text
    assert "baseboard" in text
    assert "skirting" not in text
    assert "All lengths in inches" in text


def test_no_length_of_a_held_opening_is_printed() -> None:
    text = pages(PLAN)["cut"]
    assert "W3-" not in text
    assert "HOLD" in pages(PLAN)["openings"]


def test_a_sheet_without_blocks_is_a_page() -> None:
    sheet = Sheet(name="x", title="X", house="Y", readings_code="Z")
    assert Page(sheet_html(sheet)).open == []


def test_a_mark_never_breaks_and_a_very_long_one_still_can() -> None:
    findings = pages(PLAN)["findings"]
    assert '<span class="one">W3</span>' in findings
    assert ".one { white-space: nowrap; }" in findings
    assert "overflow-wrap: anywhere" not in findings
    long = replace(PLAN, held=frozenset({"W" * 40}))
    assert f"{'W' * 16}<wbr>{'W' * 16}<wbr>{'W' * 8}" in pages(long)["findings"]


def test_how_to_accept_a_stop_stands_in_its_note() -> None:
    for name in ("findings", "openings"):
        assert "accept = [&quot;misclosure&quot;] in W3" in pages(PLAN)[name]
