"""An order as tables for other programs: CSV and XLSX. No text in either is ever a formula."""

import csv
import io
from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, time
from decimal import Decimal
from typing import Final

import xlsxwriter

from longpoint.sheets.order_text import OrderHead
from longpoint.sticks.order_lines import OrderLine

COLUMNS: Final = (
    "supplier",
    "profile",
    "face_mm",
    "thickness_mm",
    "material",
    "length_mm",
    "count",
    "of_them_spare",
    "metres",
    "supplier_code",
    "price_each",
    "sum",
)
WIDTHS: Final = (22, 14, 9, 13, 20, 11, 8, 14, 9, 18, 11, 11)

FORMULA_SIGNS: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "|")
"""A text that begins so is run as a formula by some spreadsheet when a CSV is opened: well known,
no one standard."""

Value = str | int | float | Decimal | None


def order_csv(lines: Iterable[OrderLine]) -> str:
    """Return an order as CSV, with a line of titles.

    A text that a spreadsheet would run as a formula gets an apostrophe in front.

    References:
        RFC 4180: commas, double quotes, lines that end in CR LF.
    """
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(COLUMNS)
    writer.writerows([_csv_value(value) for value in _row(line)] for line in lines)
    return text.getvalue()


def order_xlsx(head: OrderHead, lines: Sequence[OrderLine]) -> bytes:
    """Return an order as an XLSX workbook of one sheet.

    Texts are written as texts whatever they begin with, links aren't made, and the day of the order
    stands as the day the file was made, so that the same order gives the same bytes.
    """
    file = io.BytesIO()
    book = xlsxwriter.Workbook(
        file,
        {
            "in_memory": True,
            "strings_to_formulas": False,
            "strings_to_urls": False,
            "strings_to_numbers": False,
        },
    )
    book.set_properties(
        {
            "title": f"Order {head.number}",
            "created": datetime.combine(head.on, time(), UTC).replace(tzinfo=None),
        }
    )
    bold = book.add_format({"bold": True, "bottom": 1})
    money = book.add_format({"num_format": "0.00"})
    sheet = book.add_worksheet("Order")
    sheet.freeze_panes(1, 0)
    for column, (title, width) in enumerate(zip(COLUMNS, WIDTHS, strict=True)):
        sheet.write_string(0, column, title, bold)
        sheet.set_column(column, column, width)
    for row, line in enumerate(lines, 1):
        for column, value in enumerate(_row(line)):
            if isinstance(value, str):
                sheet.write_string(row, column, value)
            elif value is not None:
                shape = money if isinstance(value, Decimal) else None
                sheet.write_number(row, column, value, shape)
    book.close()
    return file.getvalue()


def _row(line: OrderLine) -> tuple[Value, ...]:
    profile = line.profile
    return (
        line.supplier,
        profile.name,
        round(profile.width_mm, 2),
        round(profile.thickness_mm, 2),
        profile.material,
        round(line.length_mm, 2),
        line.count,
        line.spares,
        round(line.running_mm / 1000.0, 3),
        line.code,
        line.price,
        line.total,
    )


def _csv_value(value: Value) -> str:
    match value:
        case None:
            return ""
        case str():
            return f"'{value}" if value.startswith(FORMULA_SIGNS) else value
        case Decimal():
            return f"{value:.2f}"
        case _:
            return f"{value:g}" if abs(value) < 1e5 else f"{value:.2f}"
