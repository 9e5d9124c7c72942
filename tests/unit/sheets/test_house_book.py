from dataclasses import replace
from datetime import date

from longpoint.house_plan import Spares
from longpoint.sheets.blocks import Sheet, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.house_book import BookOf, house_book
from longpoint.sheets.html import VOID
from tests.unit.sheets.sample import PLAN

DAY = date(2026, 3, 1)


def test_the_book_holds_every_sheet_of_the_plan_in_the_same_order() -> None:
    names = [sheet.name for sheet in house_book(BookOf(plan=PLAN, on=DAY)).sheets]
    planned = [sheet.name for sheet in house_sheets(PLAN)]
    assert [name for name in names if name in planned] == planned
    assert len(set(names)) == len(names)


def test_it_holds_what_comes_after_the_plan_as_well() -> None:
    names = [sheet.name for sheet in house_book(BookOf(plan=PLAN, on=DAY)).sheets]
    after = ["delivery", "bundles", "fixing", "as-built", "painter", "supervisor", "as-found"]
    assert [name for name in names if name in after] == after


def test_a_house_that_buys_nothing_has_no_delivery_to_check() -> None:
    plan = replace(PLAN, cut_plan=replace(PLAN.cut_plan, sticks=()), spares=Spares())
    names = [sheet.name for sheet in house_book(BookOf(plan=plan, on=DAY)).sheets]
    assert "delivery" not in names


def test_its_front_says_of_which_readings_it_is_and_from_which_day() -> None:
    book = house_book(BookOf(plan=PLAN, on=DAY))
    assert book.title == "Finch Rise"
    assert "K7M2QX" in book.subtitle
    assert "2026-03-01" in book.subtitle
    assert book.void == ""


def test_a_book_of_older_readings_is_void_on_its_front_and_on_every_sheet() -> None:
    book = house_book(BookOf(plan=PLAN, on=DAY, state=SheetState.STALE))
    assert book.void == VOID
    assert {sheet.state for sheet in book.sheets} == {SheetState.STALE}


def test_a_part_more_is_one_maker_more() -> None:
    def made(book: BookOf) -> tuple[Sheet, ...]:
        return (
            Sheet(
                name="x", title="X", house=book.plan.house.name, readings_code="", state=book.state
            ),
        )

    book = house_book(BookOf(plan=PLAN, on=DAY), parts=(made, lambda _: ()))
    assert [sheet.name for sheet in book.sheets] == ["x"]
