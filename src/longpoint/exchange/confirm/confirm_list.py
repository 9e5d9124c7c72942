"""The list that a person goes through: a line for each value, with a place to say yes."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import shown_name
from longpoint.exchange.confirm.found_values import FoundValue
from longpoint.exchange.confirm.record_keys import RecordKind, cell_keys
from longpoint.exchange.tables.csv_table import csv_text
from longpoint.exchange.tables.open_tables import open_tables
from longpoint.exchange.tables.records import ForeignTable, TableCell
from longpoint.exchange.tables.write_xlsx import Tab, write_workbook
from longpoint.speech.said import joined, say

COLUMNS: Final = (
    *("confirmed", "what", "mark", "key", "value", "unit", "reading"),
    *(say("as written"), "from", "trouble"),
)
EXPLAINED: Final = say(
    "Look at each line against your own notes. Write yes under confirmed, or the "
    "right value, or no to leave that line out. Nothing goes into a house file "
    "before every line of its opening says one of these."
)
LIST: Final = "confirm"
_AS_TEXT: Final = tuple(range(len(COLUMNS)))
"""Values stay as they were written: 1187.50 is not to become 1187.5 on the way."""


def list_rows(values: Iterable[FoundValue]) -> list[tuple[str, ...]]:
    """Return the list as rows, its explanation and headers first."""
    return [
        (EXPLAINED,),
        COLUMNS,
        *(
            (
                *(each.confirmed, each.kind.value, each.mark, each.path, each.value, each.unit),
                *(str(each.number), each.written, each.source, each.trouble),
            )
            for each in values
        ),
    ]


def write_list(path: Path, values: Iterable[FoundValue]) -> bytes:
    """Return a confirm list as the bytes of a CSV file or workbook, by the ending of its name.

    Raises:
        ExchangeError: The name ends in neither .csv nor .xlsx.
    """
    rows = list_rows(values)
    match path.suffix.lower():
        case ".csv":
            return b"\xef\xbb\xbf" + csv_text(rows).encode()
        case ".xlsx":
            return write_workbook(
                [Tab(name=LIST, rows=rows, header_row=1, fill_in=(0,), as_text=_AS_TEXT)]
            )
        case _:
            raise ExchangeError(
                say(
                    "The list to confirm was to be written to {shown_name}.",
                    shown_name=shown_name(path),
                ),
                say("Its name tells neither a CSV file nor a workbook."),
                say("Give it a name that ends in .csv or .xlsx."),
            )


def read_list(path: Path) -> tuple[FoundValue, ...]:
    """Return a confirm list as a person left it; its columns may stand in any order.

    Raises:
        ExchangeError: It can't be read, is no such list, or one of its lines can't be told.
    """
    for table in open_tables(path):
        for at, row in enumerate(table.rows[:20]):
            places = {cell.text.strip().casefold(): n for n, cell in reversed([*enumerate(row)])}
            if all(name in places for name in COLUMNS):
                return _values(table, at, [places[name] for name in COLUMNS])
    raise ExchangeError(
        say(
            "The file {shown_name} was to be read as a list of confirmed values.",
            shown_name=shown_name(path),
        ),
        say("It has no row with the headers {columns}.", columns=joined(", ", COLUMNS)),
        say("Name the list that `longpoint bring` wrote, and leave its headers as they are."),
    )


def _values(table: ForeignTable, at: int, places: Sequence[int]) -> tuple[FoundValue, ...]:
    found: list[FoundValue] = []
    seen: set[tuple[RecordKind, str, str, int]] = set()
    for number, row in enumerate(table.rows[at + 1 :], start=at + 1):
        cells = [row[n] if n < len(row) else TableCell() for n in places]
        if not any(cell.text for cell in cells):
            continue
        value = _value(table, number, cells)
        if value.place in seen:
            raise _refused(table, number, say("The same value stands in the list twice."))
        seen.add(value.place)
        found.append(value)
    return tuple(found)


def _value(table: ForeignTable, row: int, cells: Sequence[TableCell]) -> FoundValue:
    troubled = next((cell for cell in cells[:7] if cell.trouble), None)
    if troubled is not None:
        raise _refused(table, row, troubled.trouble)
    confirmed, what, mark, path, value, unit, number, written, source, trouble = (
        cell.text for cell in cells
    )
    if what not in set(RecordKind):
        raise _refused(table, row, say("What the line is of can't be told."))
    kind = RecordKind(what)
    if path not in cell_keys(kind) or path == "mark" or not mark:
        raise _refused(table, row, say("Its mark or its key is missing or isn't known."))
    if not number.isdecimal() or not 0 < int(number[:3]) < 100:
        raise _refused(table, row, say("Which of several readings it is can't be told."))
    return FoundValue(
        kind=kind,
        mark=mark,
        path=path,
        number=int(number),
        value=value,
        unit=unit,
        written=written,
        source=source,
        trouble=trouble,
        confirmed=confirmed,
    )


def _refused(table: ForeignTable, row: int, wrong: str) -> ExchangeError:
    return ExchangeError(
        say("The list {file} was read up to row {row}.", file=table.file, row=row + 1),
        wrong,
        say(
            "Put that line back as it was, or make the list anew; only the column "
            "confirmed is yours."
        ),
    )


def from_others(before: Iterable[FoundValue], file: str) -> tuple[FoundValue, ...]:
    """Return the lines of a list that came from other files than this one."""
    return tuple(each for each in before if not f"{each.source} ".startswith(f"{file} "))


def merged(
    before: Iterable[FoundValue], now: Iterable[FoundValue]
) -> tuple[tuple[FoundValue, ...], tuple[FoundValue, ...]]:
    """Return a new list with what was said on the old one, and the old lines that are lost.

    A line keeps what a person said only where the same value stands in the same cell; where
    something else stands there now, the person has to look again.

    Args:
        before: The list as a person left it.
        now: What the file holds now.
    """
    old = {each.place: each for each in before}
    kept: list[FoundValue] = []
    for each in now:
        was = old.get(each.place)
        is_same = was is not None and (was.value, was.unit, was.written, was.source) == (
            *(each.value, each.unit, each.written, each.source),
        )
        if was is not None and is_same:
            old.pop(each.place)
        kept.append(replace(each, confirmed=was.confirmed) if was and is_same else each)
    return tuple(kept), tuple(each for each in old.values() if each.is_settled)
