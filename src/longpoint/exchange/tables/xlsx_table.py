"""Read the tabs of a workbook; a cell that is no plain value says so."""

import io
import math
import warnings
from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import Any, Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import bounded_bytes, shown_name
from longpoint.exchange.tables.records import (
    MOST_COLUMNS,
    MOST_ROWS,
    MOST_TABS,
    ForeignTable,
    TableCell,
    check_extent,
)
from longpoint.exchange.tables.zip_limits import check_zip
from longpoint.speech.said import say
from longpoint.survey.house_file.written_numbers import number_text

LARGEST_BYTES: Final = 8_000_000
EMPTY_CELL: Final = TableCell()
LAST_ROW: Final = 1_048_576
"""The last row of a tab; formats without a value often stand as far down."""

FORMULA: Final = say("It is a formula, and what it comes to was never read on site.")
DATE: Final = say("The spreadsheet has made a day or a time of it, so what was typed is lost.")
ERROR: Final = say("The spreadsheet shows an error there.")


def read_workbook(path: Path) -> tuple[ForeignTable, ...]:
    """Return the tabs of a workbook that hold anything.

    Formulas aren't worked out: their cells say that they are formulas.

    Args:
        path: An .xlsx file.

    Raises:
        ExchangeError: It can't be read, is a trap, or is larger than any house's readings.
    """
    data = bounded_bytes(path, LARGEST_BYTES, say("a workbook"))
    name = shown_name(path)
    if not data.startswith(b"PK"):
        raise ExchangeError(
            say("The file {name} was to be read as a workbook.", name=name),
            say("By its first bytes it is no .xlsx file, whatever its name ends in."),
            say("Open it in the spreadsheet program and save it as .xlsx or as CSV."),
        )
    check_zip(name, data)
    try:
        tabs = _tabs(name, data)
    except ExchangeError:
        raise
    except (MemoryError, RecursionError):
        raise _unreadable(name) from None
    except Exception:
        # openpyxl raises whatever the XML of a broken workbook happens to trip over.
        raise _unreadable(name) from None
    return tuple(tab for tab in tabs if tab.rows)


def _tabs(name: str, data: bytes) -> list[ForeignTable]:
    # Loaded late: it takes a third of a second, and most commands read no workbook.
    from openpyxl import load_workbook

    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        book = load_workbook(io.BytesIO(data), read_only=True, data_only=False, keep_links=False)
        try:
            if len(book.sheetnames) > MOST_TABS:
                raise ExchangeError(
                    say("The workbook {name} was opened.", name=name),
                    say(
                        "It has over {most_tabs} tabs, and no house's readings need that many.",
                        most_tabs=MOST_TABS,
                    ),
                    say("Copy the tabs with the readings into a new workbook and save that."),
                )
            return [_tab(name, sheet) for sheet in book.worksheets]
        finally:
            book.close()


def _tab(name: str, sheet: Any) -> ForeignTable:  # noqa: ANN401
    # What the file says of its own extent may be wrong, by mistake or on purpose.
    sheet.reset_dimensions()
    rows: list[tuple[TableCell, ...]] = []
    wide = 0
    for number, cells in enumerate(sheet.iter_rows(), start=1):
        # A format may stand far out without a value, but in so many rows it is no list.
        wide += len(cells) > MOST_COLUMNS
        if number > LAST_ROW or wide > MOST_ROWS:
            check_extent(name, MOST_ROWS + 1, 0, 0)
        found = tuple(_cell(cell) for cell in cells[: _last(cells)])
        if not found:
            continue
        longest = max(len(cell.text) for cell in found)
        check_extent(name, number, len(found), longest)
        rows += [()] * (number - 1 - len(rows))
        rows.append(found)
    return ForeignTable(file=name, tab=_printable(str(sheet.title)), rows=tuple(rows))


def _last(cells: Sequence[Any]) -> int:
    """How many cells there are up to the last one that holds anything."""
    last = len(cells)
    while last and cells[last - 1].value is None:
        last -= 1
    return last


def _cell(cell: Any) -> TableCell:  # noqa: ANN401
    value, kind = cell.value, cell.data_type
    if value is None:
        return EMPTY_CELL
    if kind == "f":
        return TableCell(text=_printable(str(value))[:200], trouble=FORMULA)
    if kind == "e":
        return TableCell(text=_printable(str(value)), trouble=ERROR)
    match value:
        case bool():
            return TableCell(text="true" if value else "false")
        case int():
            return TableCell(text=str(value) if abs(value) < 10**15 else "", is_number=True)
        case float() if math.isfinite(value):
            return TableCell(text=_figure(value), is_number=True)
        case datetime() | date() | time() | timedelta():
            return TableCell(text=str(value), trouble=DATE)
        case str():
            return TableCell(text=value.strip())
        case _:
            return TableCell(text=_printable(str(value))[:200], trouble=ERROR)


def _figure(value: float) -> str:
    """A figure as the spreadsheet shows it: it keeps 15 digits, its file 17."""
    return number_text(float(f"{value:.15g}"))


def _printable(text: str) -> str:
    return "".join(sign if sign.isprintable() else "?" for sign in text)


def _unreadable(name: str) -> ExchangeError:
    return ExchangeError(
        say("The workbook {name} was opened.", name=name),
        say("What stands in it breaks the rules of a workbook, so its cells can't be told."),
        say("Open it in the spreadsheet program and save it again as .xlsx or as CSV."),
    )
