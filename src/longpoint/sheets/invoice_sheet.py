"""The invoice: quote, agreed variations, payments, and what is still to be paid."""

from longpoint.errors import Severity
from longpoint.pricing.invoice import Invoice
from longpoint.pricing.money import MoneyText
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Sheet, Table
from longpoint.sheets.money_blocks import crew_blocks, row_table, sum_table
from longpoint.sheets.money_words import MONEY_RULE, day_words, tax_words


def invoice_sheet(invoice: Invoice, money: MoneyText) -> Sheet:
    """Return the sheet of an invoice.

    Args:
        invoice: The invoice.
        money: How money is written.
    """
    quote = invoice.quote
    return Sheet(
        name=f"invoice-{invoice.number}",
        title=f"Invoice {invoice.number}",
        house=quote.house,
        readings_code=quote.number,
        made_from="quote",
        subtitle=f"{day_words(invoice.day)}. To be paid by {day_words(invoice.pay_by)}.",
        blocks=(
            *crew_blocks(quote),
            _parts(invoice, money),
            sum_table(
                invoice.sums,
                quote.tax,
                money,
                pay="To pay",
                more=(
                    ("Quote and variations", money.text(invoice.sums.gross)),
                    ("Paid so far", money.text(invoice.paid)),
                ),
            ),
            _due(invoice, money),
            *_not_billed(invoice),
            Paragraph(text=f"{tax_words(quote.tax)} {MONEY_RULE}"),
            Heading(text=f"Quote {quote.number} of {day_words(quote.day)}", level=3),
            row_table(quote.rows, quote, money),
            *_variations(invoice, money),
        ),
    )


def _parts(invoice: Invoice, money: MoneyText) -> Table:
    quote = invoice.quote
    rows = [(f"Quote {quote.number}", day_words(quote.day), money.text(quote.sums.gross))]
    rows += [
        (
            f"Variation {each.variation.number}",
            f"signed {day_words(each.day)}",
            money.text(each.variation.sums.gross),
        )
        for each in invoice.agreed
    ]
    rows += [
        ("Paid", day_words(each.day), money.text(each.amount.times(-1)))
        for each in invoice.payments
    ]
    columns = (
        Column(title="What", share=2.6),
        Column(title="Day", share=2.2),
        Column(title="Sum", is_number=True, share=1.8),
    )
    return Table(columns=columns, rows=tuple(rows))


def _due(invoice: Invoice, money: MoneyText) -> Table:
    is_back = invoice.due.amount < 0
    words = "Paid too much, to be given back" if is_back else "To pay now"
    due = invoice.due.times(-1) if is_back else invoice.due
    return Table(
        columns=(Column(title="", share=3.0), Column(title="", is_number=True, share=2.0)),
        rows=((words, Cell(text=money.text(due), is_key=True)),),
    )


def _not_billed(invoice: Invoice) -> tuple[Block, ...]:
    if not invoice.not_agreed:
        return ()
    named = ", ".join(str(number) for number in invoice.not_agreed)
    return (
        Note(
            severity=Severity.NOTE,
            title="NOTE · not billed",
            text=f"Given, and not said to be signed: variation {named}.",
        ),
    )


def _variations(invoice: Invoice, money: MoneyText) -> tuple[Block, ...]:
    blocks: list[Block] = []
    for each in invoice.agreed:
        title = f"Variation {each.variation.number} of {day_words(each.variation.day)}"
        blocks += [
            Heading(text=title, level=3),
            row_table(each.variation.rows, invoice.quote, money),
        ]
    return tuple(blocks)
