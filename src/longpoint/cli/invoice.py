"""`longpoint invoice`: the quote and the signed variations, less what is paid."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.priced import plain_number, speak_sheet, write_paper
from longpoint.cli.spoken import speak, tongue
from longpoint.errors import PricingError
from longpoint.exchange.paper_files import kept_quote, kept_variations
from longpoint.pricing.invoice import Agreed, Payment, make_invoice
from longpoint.pricing.money import Money
from longpoint.pricing.quote import Quote
from longpoint.pricing.variation import Variation
from longpoint.render.money_text import BabelMoneyText
from longpoint.render.paper import Paper
from longpoint.sheets.invoice_sheet import invoice_sheet
from longpoint.sheets.money_rows import csv_text, invoice_lines
from longpoint.speech.said import say


@click.command(name="invoice")
@click.argument("folder", metavar="PAPERS", type=click.Path(path_type=Path, file_okay=False))
@click.option("--number", required=True, help="The crew's own number of the invoice.")
@click.option(
    "--signed",
    type=(int, str),
    multiple=True,
    metavar="NUMBER DAY",
    help="A variation that was signed, and the day; as often as there are.",
)
@click.option(
    "--paid",
    type=(str, str),
    multiple=True,
    metavar="AMOUNT DAY",
    help="What came in, and the day; as often as it did.",
)
@on_day
@on_paper
@exits
def command(
    folder: Path,
    number: str,
    signed: tuple[tuple[int, str], ...],
    paid: tuple[tuple[str, str], ...],
    on: date,
    paper: Paper | None,
) -> Outcome:
    """Make an invoice: quote and signed variations, less what is paid.

    PAPERS is the folder that `longpoint quote` wrote. A variation that isn't said to be signed is
    named, and not billed.
    """
    quote = kept_quote(folder)
    given = kept_variations(folder, quote)
    invoice = make_invoice(
        quote,
        _agreed(given, signed),
        given,
        [_payment(quote, *each) for each in paid],
        number=plain_number(number, "invoice"),
        day=on,
    )
    sheet = invoice_sheet(invoice, BabelMoneyText(quote.dialect, tongue().code))
    speak_sheet(sheet, quote.dialect)
    rows = csv_text(invoice_lines(invoice))
    speak(f"Invoice: {write_paper(folder, sheet, paper, quote.dialect, rows)}")
    return Outcome.DONE


def _agreed(given: Sequence[Variation], signed: Sequence[tuple[int, str]]) -> tuple[Agreed, ...]:
    by_number = {variation.number: variation for variation in given}
    for number, _ in signed:
        if number not in by_number:
            raise PricingError(
                say("Variation {number} was said to be signed.", number=number),
                say(
                    "The folder holds {given} of them, and none of that number.",
                    given=len(given),
                ),
                say("Look at the paper that was signed, or make the variation first."),
            )
    return tuple(
        Agreed(variation=by_number[number], day=_day(written)) for number, written in signed
    )


def _payment(quote: Quote, amount: str, day: str) -> Payment:
    try:
        value = Decimal(amount)
    except InvalidOperation:
        raise PricingError(
            say('A payment is written as "{amount}".', amount=amount[:20]),
            say("That is no sum of money."),
            say("Write it as a plain number, like 450.00, without the sign of the currency."),
        ) from None
    return Payment(amount=Money(amount=value, currency=quote.currency), day=_day(day))


def _day(written: str) -> date:
    try:
        return date.fromisoformat(written)
    except ValueError:
        raise PricingError(
            say('A day is written as "{written}".', written=written[:20]),
            say("That is no day of the calendar."),
            say("Write it like 2026-03-01."),
        ) from None
