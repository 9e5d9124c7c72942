"""Quotes, what follows them, and what they are refused for."""

import copy
import json
import math
from dataclasses import replace
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from longpoint.errors import PricingError
from longpoint.pricing.invoice import Agreed, Payment, make_invoice
from longpoint.pricing.money import Money, total
from longpoint.pricing.paper_document import (
    quote_document,
    read_quote,
    read_variation,
    variation_document,
)
from longpoint.pricing.quote import Quote
from longpoint.pricing.tax import TaxShown
from longpoint.pricing.variation import Variation, make_variation, quoted_sticks, unpriced_work
from longpoint.pricing.work import Task, WorkKind
from tests.house_documents import window
from tests.priced_jobs import STOCK, TODAY, as_read, counted, quoted, rates
from tests.unit.pricing.test_take_off import SQUARE, TAPERED

pytestmark = pytest.mark.no_cover

LATER = date(2026, 4, 20)


def sound() -> Quote:
    return quoted(as_read(window(**SQUARE), crew=rates()))


def more(quote: Quote, *tasks: Task, earlier: tuple[Variation, ...] = ()) -> Variation:
    return make_variation(
        quote,
        earlier,
        (*(earlier[-1].tasks if earlier else quote.tasks), *tasks),
        quoted_sticks(quote),
        day=LATER,
        made_from="XPGPPW",
    )


def one(kind: WorkKind, count: int = 1, why: str = "") -> Task:
    return Task(kind=kind, quantity=Decimal(count), place="W9", why=why)


def test_a_quote_holds_every_row_and_says_until_when() -> None:
    quote = quoted(counted(rates()))

    assert quote.valid_until == date(2026, 4, 1)
    assert {row.work for row in quote.rows if row.work} >= {
        WorkKind.WINDOW_FOUR_SIDES,
        WorkKind.DOOR_FACE,
        WorkKind.SKIRTING,
    }
    assert quote.sums.net == total((row.amount for row in quote.rows), quote.currency)
    assert quote.sums.gross == quote.sums.net + quote.sums.tax


def test_a_price_is_hours_at_the_crews_rate_with_its_margin() -> None:
    job = counted(rates(hours={"window_four_sides": [0.5, 0.5, 0.5]}, margin=None, sure=0.5))
    quote = quoted(job)

    exact = Decimal("0.5") * job.estimate.ready * 38
    price = quote.prices[WorkKind.WINDOW_FOUR_SIDES].amount
    assert abs(price - exact) <= Decimal("0.005")


def test_prices_that_hold_the_tax_are_the_others_with_it() -> None:
    without = quoted(counted(rates()))
    tax = {"name": "VAT", "percent": 20, "shown": "included"}
    inside = quoted(counted(rates(tax=tax)))

    assert inside.tax is not None
    assert inside.tax.shown is TaxShown.INCLUDED
    # Each row is rounded by itself: half a penny a unit at most.
    loose = Decimal("0.01") * sum(abs(row.quantity) for row in inside.rows)
    assert abs(inside.sums.gross.amount - without.sums.gross.amount) <= loose


def test_timber_without_a_price_or_without_a_stick_makes_no_quote() -> None:
    unpriced = [{"profile": "OG57", "length": 5400}, *STOCK[2:]]
    short = [{"profile": "OG57", "length": 900, "price": 3}, *STOCK[2:]]
    for stock in (unpriced, short):
        with pytest.raises(PricingError):
            quoted(counted(rates(), stock=stock))
        theirs = quoted(counted(rates(timber="clients"), stock=stock))
        assert not any(row.stick for row in theirs.rows)


def test_nothing_to_do_makes_no_quote() -> None:
    with pytest.raises(PricingError):
        quoted(counted(rates(), windows=[], doors=[], skirting=[]))


def test_the_end_of_the_calendar_is_said() -> None:
    with pytest.raises(PricingError, match="calendar"):
        quoted(counted(rates()), day=date.max)


def test_a_reading_that_changes_an_openings_class_is_a_variation_with_its_reason() -> None:
    quote = sound()
    job = as_read(window(**TAPERED), crew=None)
    variation = make_variation(
        quote, (), job.tasks, quoted_sticks(quote), day=LATER, made_from=job.made_from
    )

    (row,) = variation.rows
    assert row.work is WorkKind.RESET_REVEAL
    assert row.why == "W1: sides differ by 6 mm: reveal re-set (1 now, 0 quoted)"
    assert row.amount == quote.prices[WorkKind.RESET_REVEAL]


def test_what_was_allowed_for_and_is_not_needed_is_taken_off() -> None:
    quote = quoted(counted(rates(), allow={"reset_reveal": 2}))
    variation = make_variation(
        quote,
        (),
        [task for task in quote.tasks if task.place != "allowed"],
        quoted_sticks(quote),
        day=LATER,
        made_from="X",
    )

    (row,) = variation.rows
    assert row.quantity == -2
    assert variation.sums.gross.amount < 0


def test_more_timber_than_quoted_is_charged_and_less_is_not_given_back() -> None:
    quote = sound()
    (stick, count) = next(iter(quoted_sticks(quote).items()))
    for change, amount in ((2, 2), (-1, None)):
        now = {stick: count + change}
        if amount is None:
            with pytest.raises(PricingError, match="No variation is needed"):
                make_variation(quote, (), quote.tasks, now, day=LATER, made_from="X")
            continue
        variation = make_variation(quote, (), quote.tasks, now, day=LATER, made_from="X")
        assert [row.quantity for row in variation.rows] == [amount]


def test_work_in_doubt_is_neither_taken_off_nor_added() -> None:
    quote = sound()
    doubted = quote.tasks[0].place
    assert doubted
    rest = tuple(task for task in quote.tasks if task.place != doubted)

    with pytest.raises(PricingError, match="nothing that costs more"):
        make_variation(
            quote, (), rest, quoted_sticks(quote), day=LATER, made_from="X", held=(doubted,)
        )
    without = make_variation(quote, (), rest, quoted_sticks(quote), day=LATER, made_from="X")
    assert any(row.quantity < 0 for row in without.rows)


def test_a_stick_that_was_never_priced_refuses_the_variation() -> None:
    quote = sound()
    with pytest.raises(PricingError, match="no price"):
        make_variation(quote, (), quote.tasks, {("OG57", 3000.0): 99}, day=LATER, made_from="X")


def test_a_second_variation_starts_from_the_first() -> None:
    quote = sound()
    first = more(quote, one(WorkKind.RESET_REVEAL))
    second = more(quote, one(WorkKind.PACK_CORNER, 2), earlier=(first,))

    assert (first.number, second.number) == (1, 2)
    assert [row.work for row in second.rows] == [WorkKind.PACK_CORNER]


def test_work_that_the_quote_has_no_price_for_is_named() -> None:
    quote = sound()
    assert unpriced_work(quote, [one(WorkKind.WINDOW_BOARD)]) == (WorkKind.WINDOW_BOARD,)


def test_an_invoice_is_the_quote_and_what_was_signed_less_what_is_paid() -> None:
    quote = sound()
    first = more(quote, one(WorkKind.RESET_REVEAL))
    second = more(quote, one(WorkKind.PACK_CORNER), earlier=(first,))
    paid = Money(amount=Decimal("40.00"), currency=quote.currency)
    invoice = make_invoice(
        quote,
        [Agreed(variation=first, day=LATER)],
        (first, second),
        [Payment(amount=paid, day=TODAY)],
        number="12",
        day=LATER,
    )

    assert invoice.due == quote.sums.gross + first.sums.gross - paid
    assert invoice.sums.net + invoice.sums.tax == invoice.sums.gross
    assert invoice.not_agreed == (2,)
    assert invoice.pay_by == date(2026, 5, 4)


def test_a_variation_named_twice_or_of_another_quote_is_refused() -> None:
    quote = sound()
    first = more(quote, one(WorkKind.RESET_REVEAL))
    signed = Agreed(variation=first, day=LATER)
    other = Agreed(variation=replace(first, quote="Q-8"), day=LATER)
    for agreed in ([signed, signed], [other]):
        with pytest.raises(PricingError):
            make_invoice(quote, agreed, (first,), (), number="1", day=LATER)


@pytest.mark.parametrize("amount", ["0.00", "-5.00"])
def test_a_payment_of_nothing_or_less_is_refused(amount: str) -> None:
    quote = sound()
    payment = Payment(amount=Money(amount=Decimal(amount), currency=quote.currency), day=LATER)
    with pytest.raises(PricingError):
        make_invoice(quote, (), (), [payment], number="1", day=LATER)


def test_papers_come_back_from_their_documents_as_they_were() -> None:
    quote = quoted(counted(rates()))
    variation = more(quote, one(WorkKind.RESET_REVEAL, why="sides differ by 6 mm"))

    assert read_quote(json.loads(json.dumps(quote_document(quote)))) == quote
    document = json.loads(json.dumps(variation_document(variation)))
    assert read_variation(document, quote) == variation


def _changed(document: dict[str, Any], path: tuple[Any, ...], value: object) -> dict[str, Any]:
    changed = copy.deepcopy(document)
    inner: Any = changed
    for key in path[:-1]:
        inner = inner[key]
    if value is None:
        del inner[path[-1]]
    else:
        inner[path[-1]] = value
    return changed


FIGURES = (
    ("rows", 0, "quantity"),
    ("rows", 0, "each"),
    ("sums", "net"),
    ("tax", "percent"),
    ("prices", "skirting"),
    ("sure",),
    ("limits", "apart"),
    ("tasks", 0, 1),
    ("stick_prices", 0, 1),
)


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("rows", 0, "amount"), "1.00"),
        (("rows", 0, "quantity"), "77"),
        (("sums", "gross"), "1.00"),
        (("tax", "percent"), "5"),
        (("format",), "longpoint-house/1"),
        (("currency",), "XYZ"),
        (("day",), "yesterday"),
        (("rows",), None),
        (("rows", 0, "work"), "juggling"),
        (("prices", "skirting"), "cheap"),
        (("tasks", 0), ["short"]),
        *((path, value) for path in FIGURES for value in ("nan", "inf", "1e400", "sNaN", 10**400)),
        (("pay_days",), math.inf),
    ],
)
def test_a_quote_that_was_changed_after_it_was_given_is_refused(
    path: tuple[Any, ...], value: object
) -> None:
    document = quote_document(quoted(counted(rates())))
    with pytest.raises(PricingError):
        read_quote(_changed(document, path, value))
