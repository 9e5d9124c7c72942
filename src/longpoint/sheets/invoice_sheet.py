"""The invoice: quote, agreed variations, payments, and what is still to be paid."""

from longpoint.errors import Severity
from longpoint.pricing.invoice import Invoice
from longpoint.pricing.money import MoneyText
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Sheet, Table
from longpoint.sheets.money_blocks import crew_blocks, row_table, sum_table
from longpoint.sheets.money_words import MONEY_RULE, day_words, tax_words
from longpoint.speech.said import joined, say


def invoice_sheet(invoice: Invoice, money: MoneyText) -> Sheet:
    """Return the sheet of an invoice.

    Args:
        invoice: The invoice.
        money: How money is written.
    """
    quote = invoice.quote
    return Sheet(
        name=f"invoice-{invoice.number}",
        title=say("Invoice {number}", number=invoice.number),
        house=quote.house,
        readings_code=quote.number,
        made_from=say("quote"),
        subtitle=say(
            "{day}. To be paid by {day_2}.",
            day=day_words(invoice.day),
            day_2=day_words(invoice.pay_by),
        ),
        blocks=(
            *crew_blocks(quote),
            _parts(invoice, money),
            sum_table(
                invoice.sums,
                quote.tax,
                money,
                pay=say("To pay"),
                more=(
                    (say("Quote and variations"), money.text(invoice.sums.gross)),
                    (say("Paid so far"), money.text(invoice.paid)),
                ),
            ),
            _due(invoice, money),
            *_not_billed(invoice),
            Paragraph(
                text=say(
                    "{tax} {money_rule}",
                    tax=tax_words(quote.tax),
                    money_rule=MONEY_RULE,
                )
            ),
            Heading(
                text=say(
                    "Quote {number} of {day}",
                    number=quote.number,
                    day=day_words(quote.day),
                ),
                level=3,
            ),
            row_table(quote.rows, quote, money),
            *_variations(invoice, money),
        ),
    )


def _parts(invoice: Invoice, money: MoneyText) -> Table:
    quote = invoice.quote
    rows = [
        (
            say("Quote {number}", number=quote.number),
            day_words(quote.day),
            money.text(quote.sums.gross),
        )
    ]
    rows += [
        (
            say("Variation {number}", number=each.variation.number),
            say("signed {day}", day=day_words(each.day)),
            money.text(each.variation.sums.gross),
        )
        for each in invoice.agreed
    ]
    rows += [
        (say("Paid"), day_words(each.day), money.text(each.amount.times(-1)))
        for each in invoice.payments
    ]
    columns = (
        Column(title=say("What"), share=2.6),
        Column(title=say("Day"), share=2.2),
        Column(title=say("Sum"), is_number=True, share=1.8),
    )
    return Table(columns=columns, rows=tuple(rows))


def _due(invoice: Invoice, money: MoneyText) -> Table:
    is_back = invoice.due.amount < 0
    words = say("Paid too much, to be given back") if is_back else say("To pay now")
    due = invoice.due.times(-1) if is_back else invoice.due
    return Table(
        columns=(Column(title="", share=3.0), Column(title="", is_number=True, share=2.0)),
        rows=((words, Cell(text=money.text(due), is_key=True)),),
    )


def _not_billed(invoice: Invoice) -> tuple[Block, ...]:
    if not invoice.not_agreed:
        return ()
    named = joined(", ", (str(number) for number in invoice.not_agreed))
    return (
        Note(
            severity=Severity.NOTE,
            title=say("NOTE · not billed"),
            text=say("Given, and not said to be signed: variation {named}.", named=named),
        ),
    )


def _variations(invoice: Invoice, money: MoneyText) -> tuple[Block, ...]:
    blocks: list[Block] = []
    for each in invoice.agreed:
        title = say(
            "Variation {number} of {day}",
            number=each.variation.number,
            day=day_words(each.variation.day),
        )
        blocks += [
            Heading(text=title, level=3),
            row_table(each.variation.rows, invoice.quote, money),
        ]
    return tuple(blocks)
