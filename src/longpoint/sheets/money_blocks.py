"""What the papers of money have in common: rows, sums, and lines to sign on."""

from collections.abc import Iterable

from longpoint.pricing.money import MoneyText, total
from longpoint.pricing.quote import Quote, Row
from longpoint.pricing.tax import Sums, Tax, TaxShown
from longpoint.sheets.blocks import (
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Paragraph,
    Table,
    Together,
)
from longpoint.sheets.money_words import percent_words, quantity_cell, row_words
from longpoint.speech.said import joined, say


def crew_blocks(quote: Quote) -> tuple[Block, ...]:
    """Return who writes, with the lines below."""
    lines = joined(" · ", quote.address)
    return (Paragraph(lead=quote.crew, text=lines),)


def row_table(rows: Iterable[Row], quote: Quote, money: MoneyText) -> Table:
    """Return priced rows, reasons small below what they are for."""
    columns = (
        Column(title=say("What"), share=4.6),
        Column(title=say("Quantity"), is_number=True, share=1.3),
        Column(title=say("Each"), is_number=True, share=1.5),
        Column(title=say("Sum"), is_number=True, share=1.7),
    )
    return Table(
        columns=columns,
        rows=tuple(
            (
                Cell(
                    text=row_words(row, quote.dialect, quote.units),
                    small=(row.why,) if row.why else (),
                ),
                quantity_cell(row.quantity, row.work, quote.running_units),
                money.text(row.each),
                money.text(row.amount),
            )
            for row in rows
        ),
    )


def sum_table(
    below: Sums,
    tax: Tax | None,
    money: MoneyText,
    *,
    pay: str,
    more: Iterable[tuple[str, str]] = (),
) -> Together:
    """Return net, tax and gross; where there is no tax, the one sum.

    Args:
        below: The sums.
        tax: The tax; None: none.
        money: How money is written.
        pay: What the last row is called.
        more: Rows between the gross sum and the last one, as words and money.
    """
    rows: list[tuple[str | Cell, ...]] = []
    if tax is not None:
        rate = say("{tax} {percent} %", tax=tax.name, percent=percent_words(tax.percent))
        if tax.shown is TaxShown.ADDED:
            rows.append((say("Without tax"), money.text(below.net)))
            rows.append((rate, money.text(below.tax)))
        else:
            rows.append((say("{rate} in it", rate=rate), money.text(below.tax)))
            rows.append((say("Without it"), money.text(below.net)))
    rows += more
    if not more:
        rows.append((pay, Cell(text=money.text(below.gross), is_key=True)))
    columns = (
        Column(title=say("Together"), share=3.0),
        Column(title="", is_number=True, share=2.0),
    )
    return Together(blocks=(Table(columns=columns, rows=tuple(rows)),))


def sign_table(what: str) -> Together:
    """Return lines to sign on, by both sides, each with the day."""
    line = Cell(blank=Blank.LINE)
    columns = (
        Column(title="", share=1.2),
        Column(title=say("Name"), share=2.0),
        Column(title=say("Signature"), share=2.6),
        Column(title=say("Day"), share=1.4),
    )
    rows = ((say("For the client"), line, line, line), (say("For the crew"), line, line, line))
    return Together(
        blocks=(Heading(text=what), Table(columns=columns, rows=rows)),
    )


def list_blocks(title: str, lines: Iterable[str]) -> tuple[Block, ...]:
    """Return a heading with one line each below it; nothing where there is none."""
    told = tuple(Paragraph(text=say("– {line}", line=line)) for line in lines)
    return (Heading(text=title), *told) if told else ()


def part_sums(quote: Quote, money: MoneyText) -> str:
    """Return what work and timber come to, in a sentence."""
    work = total((row.amount for row in quote.rows if row.work), quote.currency)
    timber = total((row.amount for row in quote.rows if row.stick), quote.currency)
    if not any(row.stick for row in quote.rows):
        return say("Work {work}.", work=money.text(work))
    return say(
        "Work {work}, timber {timber}.",
        work=money.text(work),
        timber=money.text(timber),
    )
