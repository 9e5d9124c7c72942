"""The book of a house: every sheet it has, in the order in which the job needs them."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Sheet, SheetState
from longpoint.sheets.book import house_sheets
from longpoint.sheets.bought import bought
from longpoint.sheets.delivery_sheet import delivery_sheet
from longpoint.sheets.fixing_sheet import fixing_sheets
from longpoint.sheets.handover_sheets import handover_sheets
from longpoint.sheets.html import VOID
from longpoint.sheets.labels.bundle_sheet import bundle_sheet
from longpoint.speech.said import say
from longpoint.sticks.order_lines import order_lines


@dataclass(frozen=True, slots=True, kw_only=True)
class BookOf:
    """What a book is made from.

    Attributes:
        plan: The planned house.
        on: The day it is made, for what hangs on a date.
        state: Stale when the readings have changed since the plan was made.
    """

    plan: HousePlan
    on: date
    state: SheetState = SheetState.CURRENT


@dataclass(frozen=True, slots=True, kw_only=True)
class Book:
    """A book ready to be set.

    Attributes:
        title: What stands on its first page.
        subtitle: Which readings it is of, and when it was made.
        void: What is said of a book made from older readings; empty while it is current.
        sheets: Its sheets in order.
    """

    title: str
    subtitle: str
    void: str
    sheets: tuple[Sheet, ...]


Part = Callable[[BookOf], tuple[Sheet, ...]]
"""Makes the sheets of one part of the book; none when the house doesn't ask for that part."""


def _plan_sheets(book: BookOf) -> tuple[Sheet, ...]:
    return house_sheets(book.plan, book.state)


def _delivery_sheets(book: BookOf) -> tuple[Sheet, ...]:
    rows = bought(book.plan)
    needed, spares = (
        {(row.profile, row.length_mm): row.count for row in rows if row.is_spare is is_spare}
        for is_spare in (False, True)
    )
    lines = order_lines(book.plan.house, needed, spares)
    if not lines:
        return ()
    sheet = delivery_sheet(book.plan.house, lines, book.plan.readings_code)
    return (replace(sheet, state=book.state),)


def _bundle_sheets(book: BookOf) -> tuple[Sheet, ...]:
    return (replace(bundle_sheet(book.plan), state=book.state),)


def _fixing_sheets(book: BookOf) -> tuple[Sheet, ...]:
    return fixing_sheets(book.plan, book.state)


def _handover_sheets(book: BookOf) -> tuple[Sheet, ...]:
    return handover_sheets(book.plan, book.on, book.state)


PARTS: Final[tuple[Part, ...]] = (
    _plan_sheets,
    _delivery_sheets,
    _bundle_sheets,
    _fixing_sheets,
    _handover_sheets,
)
"""The parts of the book, in order; a new part is one more line."""


def house_book(book: BookOf, parts: tuple[Part, ...] = PARTS) -> Book:
    """Return the book of a house.

    Args:
        book: What it is made from.
        parts: Makers of its parts, in order.
    """
    house = book.plan.house
    return Book(
        title=house.name,
        subtitle=say(
            "All sheets of the house. Readings {readings_code}, made {on}.",
            readings_code=book.plan.readings_code,
            on=book.on.isoformat(),
        ),
        void=VOID if book.state is SheetState.STALE else "",
        sheets=tuple(sheet for part in parts for sheet in part(book)),
    )
