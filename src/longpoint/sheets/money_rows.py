"""Rows of a paper of money as CSV, so that its sums can be reckoned again by anybody."""

import csv
import io
from collections.abc import Iterable
from typing import Final

from longpoint.pricing.invoice import Invoice
from longpoint.pricing.quote import Quote, Row
from longpoint.pricing.tax import Sums
from longpoint.pricing.variation import Variation
from longpoint.quantities.length import Units
from longpoint.sheets.money_words import row_words, unit_words
from longpoint.survey.house import Dialect

COLUMNS: Final = ("kind", "what", "quantity", "unit", "each", "amount", "currency", "why")
_DANGEROUS: Final = ("=", "+", "-", "@", "\t", "\r")

Line = tuple[str, ...]


def quote_lines(quote: Quote) -> tuple[Line, ...]:
    """Return the rows of a quote, then its sums, under `COLUMNS`."""
    rows = (_row(row, quote.dialect, quote.units, quote.running_units) for row in quote.rows)
    return (*rows, *_sums(quote.sums, quote))


def variation_lines(variation: Variation, quote: Quote) -> tuple[Line, ...]:
    """Return the rows of a variation, then its sums, under `COLUMNS`."""
    rows = (_row(row, quote.dialect, quote.units, quote.running_units) for row in variation.rows)
    return (*rows, *_sums(variation.sums, quote))


def invoice_lines(invoice: Invoice) -> tuple[Line, ...]:
    """Return what an invoice adds up and takes off, then its sums, under `COLUMNS`."""
    quote = invoice.quote
    code = quote.currency.code

    def line(kind: str, what: str, amount: object) -> Line:
        return (kind, _plain(what), "", "", "", str(amount), code, "")

    return (
        line("quote", f"Quote {quote.number}", quote.sums.gross.amount),
        *(
            line(
                "variation", f"Variation {each.variation.number}", each.variation.sums.gross.amount
            )
            for each in invoice.agreed
        ),
        *(line("paid", each.day.isoformat(), -each.amount.amount) for each in invoice.payments),
        *_sums(invoice.sums, quote),
        line("due", "To pay", invoice.due.amount),
    )


def csv_text(lines: Iterable[Line]) -> str:
    """Return lines under their titles as CSV.

    References:
        RFC 4180: commas, quotes doubled, lines ended by CR LF.
    """
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    writer.writerows(lines)
    return out.getvalue()


def _row(row: Row, dialect: Dialect, units: Units, running: Units) -> Line:
    return (
        "work" if row.work else "timber",
        _plain(row_words(row, dialect, units)),
        str(row.quantity),
        unit_words(row.work, running),
        str(row.each.amount),
        str(row.amount.amount),
        row.amount.currency.code,
        _plain(row.why),
    )


def _sums(below: Sums, quote: Quote) -> tuple[Line, ...]:
    code = quote.currency.code
    tax = quote.tax.name if quote.tax else "no tax"
    return (
        ("net", "Without tax", "", "", "", str(below.net.amount), code, ""),
        ("tax", _plain(tax), "", "", "", str(below.tax.amount), code, ""),
        ("gross", "Together", "", "", "", str(below.gross.amount), code, ""),
    )


def _plain(text: str) -> str:
    """Return words that no spreadsheet takes for a formula.

    Example:
        >>> _plain("=1+1"), _plain("Skirting")
        ("'=1+1", 'Skirting')
    """
    return f"'{text}" if text.startswith(_DANGEROUS) else text
