"""Write plain rows as a workbook; no cell of it is ever a formula."""

import io
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

LARGEST_EXACT: Final = 15
"""Digits that a spreadsheet keeps of a number; what has more is written as text."""
_NUMBER: Final = re.compile(r"^-?(?:0|[1-9]\d*)(?:\.\d+)?$")
_MADE: Final = datetime(2000, 1, 1)  # noqa: DTZ001
"""Always the same day, so that the same rows make the same file; the format has no time zone."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tab:
    """One tab of a workbook.

    Attributes:
        name: Its name, at most 31 signs.
        rows: Rows of texts; a text that is a plain number becomes a number.
        header_row: Row of the headers, from 0; it stays in sight.
        fill_in: Columns that a person writes in.
        as_text: Columns whose cells stay texts, numbers too: marks and names.
    """

    name: str
    rows: Sequence[Sequence[str]]
    header_row: int = 0
    fill_in: tuple[int, ...] = ()
    as_text: tuple[int, ...] = ()


def write_workbook(tabs: Sequence[Tab]) -> bytes:
    """Return a workbook with a tab for each table.

    Args:
        tabs: At least one.
    """
    # Loaded late, as it is wanted by few commands.
    import xlsxwriter

    out = io.BytesIO()
    options = {
        "in_memory": True,
        "strings_to_formulas": False,
        "strings_to_urls": False,
        "strings_to_numbers": False,
    }
    with xlsxwriter.Workbook(out, options) as book:
        book.set_properties({"created": _MADE})
        bold = book.add_format({"bold": True, "bottom": 1})
        free = book.add_format({"bg_color": "#FFF3C4", "border": 1})
        plain = book.add_format({"num_format": "@"})
        for tab in tabs:
            sheet = book.add_worksheet(tab.name)
            for number, row in enumerate(tab.rows):
                for column, text in enumerate(row):
                    is_below = number > tab.header_row
                    if is_below and column not in tab.as_text and is_exact_number(text):
                        sheet.write_number(number, column, float(text))
                    elif text:
                        style = bold if number == tab.header_row else plain
                        sheet.write_string(number, column, text, style)
                for column in tab.fill_in if number > tab.header_row else ():
                    text = row[column] if column < len(row) else ""
                    sheet.write(number, column, text or None, free)
            sheet.freeze_panes(tab.header_row + 1, 0)
            for column, width in enumerate(_widths(tab)):
                sheet.set_column(column, column, width)
            sheet.set_landscape()
            sheet.fit_to_pages(1, 0)
            sheet.repeat_rows(tab.header_row)
    return out.getvalue()


def is_exact_number(text: str) -> bool:
    """Tell whether a text is a plain number that a spreadsheet gives back unchanged.

    Example:
        >>> is_exact_number("1187.5"), is_exact_number("007"), is_exact_number("46 3/4")
        (True, False, False)
    """
    digits = len(text.lstrip("-").replace(".", ""))
    return bool(_NUMBER.match(text)) and digits <= LARGEST_EXACT


def _widths(tab: Tab) -> list[int]:
    columns = max((len(row) for row in tab.rows), default=0)
    body = tab.rows[tab.header_row :]
    return [
        min(60, 2 + max((len(row[n]) for row in body if n < len(row)), default=8))
        for n in range(columns)
    ]
