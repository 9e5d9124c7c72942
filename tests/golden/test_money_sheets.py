"""The example house's papers of money, as a person last read and approved them."""

from datetime import date
from decimal import Decimal
from functools import cache

import pytest

from longpoint.pricing.counts_file import read_counts
from longpoint.pricing.invoice import Agreed, Payment, make_invoice
from longpoint.pricing.job import Job, counted_job
from longpoint.pricing.money import Money
from longpoint.pricing.quote import Quote
from longpoint.pricing.rates_file import read_rates
from longpoint.pricing.variation import Variation, make_variation, quoted_sticks
from longpoint.pricing.work import Task, WorkKind
from longpoint.render.money_text import BabelMoneyText
from longpoint.sheets.blocks import Sheet
from longpoint.sheets.estimate_sheet import estimate_sheet
from longpoint.sheets.html import sheet_html
from longpoint.sheets.html_style import STYLE
from longpoint.sheets.invoice_sheet import invoice_sheet
from longpoint.sheets.money_rows import csv_text, quote_lines
from longpoint.sheets.money_words import excluded
from longpoint.sheets.plain_text import sheet_text
from longpoint.sheets.quote_sheet import quote_sheet
from longpoint.sheets.variation_sheet import variation_sheet
from longpoint.survey.house import Dialect
from tests.golden_files import Golden
from tests.priced_jobs import example, quoted

DAY = date(2026, 4, 20)
FOUND = (
    Task(
        kind=WorkKind.RESET_REVEAL,
        quantity=Decimal(1),
        place="W3",
        why="sides differ by 6 mm: reveal re-set",
    ),
    Task(kind=WorkKind.SKIRTING, quantity=Decimal("1.25"), place="S4"),
)


@cache
def job() -> Job:
    rates = read_rates(example("rates.toml"))
    return counted_job(read_counts(example("wren-counts.toml")), rates, nests=6, jobs=1000)


@cache
def quote() -> Quote:
    rates = job().rates
    assert rates is not None
    return quoted(job(), exclusions=excluded(rates.exclusions, rates.timber, Dialect.UK))


@cache
def variation() -> Variation:
    return make_variation(
        quote(),
        (),
        (*quote().tasks, *FOUND),
        quoted_sticks(quote()),
        day=DAY,
        made_from="XPGPPW",
        held=("W5",),
    )


def sheets() -> dict[str, Sheet]:
    money = BabelMoneyText(Dialect.UK)
    paid = Payment(
        amount=Money(amount=Decimal("400.00"), currency=quote().currency), day=date(2026, 3, 5)
    )
    invoice = make_invoice(
        quote(),
        [Agreed(variation=variation(), day=date(2026, 4, 21))],
        [variation()],
        [paid],
        number="12",
        day=date(2026, 5, 8),
    )
    return {
        "estimate": estimate_sheet(job(), quote(), money),
        "quote": quote_sheet(quote(), money),
        "variation": variation_sheet(variation(), quote(), money),
        "invoice": invoice_sheet(invoice, money),
    }


@pytest.mark.parametrize("name", ["estimate", "quote", "variation", "invoice"])
def test_the_paper_is_as_approved(name: str, golden: Golden) -> None:
    sheet = sheets()[name]
    golden(f"money-{name}.txt", sheet_text(sheet))
    html = sheet_html(sheet).replace(STYLE, "\n/* style */\n").replace("><", ">\n<")
    golden(f"money-{name}.html", html)


def test_the_rows_are_as_approved(golden: Golden) -> None:
    golden("money-quote.csv", csv_text(quote_lines(quote())).replace("\r\n", "\n"))
