"""Which column of somebody else's table is which reading: proposed, shown, and never silent."""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.header_words import UNITS, header_unit, known_header, plain_words
from longpoint.exchange.confirm.record_keys import REPEATED, RecordKind, cell_keys
from longpoint.exchange.tables.records import ForeignTable, TableCell, column_letters
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.trouble import instead, quoted

HEADER_ROWS: Final = 40
"""A header is looked for so far down."""
_LETTERS: Final = re.compile(r"^[A-Z]{1,3}$")


@dataclass(frozen=True, slots=True, kw_only=True)
class MappedColumn:
    """One column and what it holds.

    Attributes:
        column: Its place, counted from 0.
        header: What is written over it; may be empty.
        path: Key of the house file, such as "plane.tl"; empty where it isn't used.
        number: Which of several readings of the same thing it is, from 1.
        unit: The unit in its header's brackets; may be empty.
    """

    column: int
    header: str
    path: str = ""
    number: int = 1
    unit: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableMapping:
    """How one table is read.

    Attributes:
        kind: What its rows are.
        header_row: Row of the headers, counted from 0; -1 where there is none.
        columns: Every column that has a header or a meaning.
    """

    kind: RecordKind
    header_row: int
    columns: tuple[MappedColumn, ...]

    @property
    def used(self) -> tuple[MappedColumn, ...]:
        """The columns that are read."""
        return tuple(column for column in self.columns if column.path)


def propose_mapping(
    table: ForeignTable,
    told: Mapping[str, str],
    kind: RecordKind | None = None,
    header_row: int | None = None,
) -> TableMapping | None:
    """Return which column of a table holds what; None where nothing in it looks like readings.

    Args:
        table: The table.
        told: What a person says of columns: header or column letters, and a key with a unit in
            brackets where there is one; an empty key leaves the column out.
        kind: What its rows are; None: what more of its headers mean.
        header_row: Row of the headers, counted from 1; 0: there is none; None: looked for.

    Raises:
        ExchangeError: What was told names no column or no key, or two columns claim one key that
            is written only once.
    """
    best: TableMapping | None = None
    refused: ExchangeError | None = None
    for each in (kind,) if kind else (RecordKind.OPENING, RecordKind.RUN):
        try:
            found = _mapping(table, told, each, header_row)
        except ExchangeError as error:
            # A key of runs is none of openings; it is wrong only where no kind knows it.
            refused = refused or error
            continue
        if found and (best is None or _worth(found) > _worth(best)):
            best = found
    if best is None and refused is not None:
        raise refused
    if best is not None:
        _check_told(table, told, best)
        _check_claims(table, best)
    return best


def _worth(mapping: TableMapping) -> int:
    """How much of a table is understood; a run has to have a length, which an opening hasn't."""
    paths = {column.path for column in mapping.used}
    if mapping.kind is RecordKind.RUN and "length" not in paths:
        return 0
    return len(paths)


def _mapping(
    table: ForeignTable, told: Mapping[str, str], kind: RecordKind, header_row: int | None
) -> TableMapping | None:
    if header_row is None:
        counts = [
            len({meant[0] for cell in row if (meant := known_header(cell.text, kind))})
            + sum(plain_words(cell.text) in map(plain_words, told) for cell in row if cell.text)
            for row in table.rows[:HEADER_ROWS]
        ]
        most = max(counts, default=0)
        has_letters = any(_LETTERS.match(name) for name in told)
        if most < 2 and not has_letters:
            return None
        at = counts.index(most) if most >= 2 else -1
    else:
        at = header_row - 1
    headers = table.rows[at] if 0 <= at < len(table.rows) else ()
    columns = tuple(_column(headers, n, told, kind) for n in range(_width(table, headers)))
    columns = _own_names_first(c for c in columns if c.header or c.path)
    if "mark" not in {column.path for column in columns}:
        return None
    return TableMapping(kind=kind, header_row=at, columns=columns)


def _own_names_first(columns: Iterable[MappedColumn]) -> tuple[MappedColumn, ...]:
    """Leave out a column that only sounds like a key where another carries the key's own name."""
    found = tuple(columns)
    own = {c.path for c in found if c.path and c.header.partition("(")[0].strip() == c.path}
    return tuple(
        replace(c, path="", unit="") if c.path in own and not c.header.startswith(c.path) else c
        for c in found
    )


def _width(table: ForeignTable, headers: tuple[TableCell, ...]) -> int:
    return max([len(headers), *(len(row) for row in table.rows)], default=0)


def _column(
    headers: tuple[TableCell, ...], column: int, told: Mapping[str, str], kind: RecordKind
) -> MappedColumn:
    header = headers[column].text if column < len(headers) else ""
    said = _told_of(told, header, column)
    if said is not None:
        unit = header_unit(said) or header_unit(header)
        path, number = _told_key(said, kind)
        return MappedColumn(column=column, header=header, path=path, number=number, unit=unit)
    meant = known_header(header, kind)
    if meant is None:
        return MappedColumn(column=column, header=header)
    path, number = meant
    return MappedColumn(
        column=column, header=header, path=path, number=number, unit=header_unit(header)
    )


def _told_of(told: Mapping[str, str], header: str, column: int) -> str | None:
    for name, meaning in told.items():
        if header and name.strip() == header:
            return meaning
    for name, meaning in told.items():
        if header and plain_words(name) and plain_words(name) == plain_words(header):
            return meaning
    return told.get(column_letters(column))


def _told_key(said: str, kind: RecordKind) -> tuple[str, int]:
    bare = re.sub(r"[(\[].*?[)\]]", "", said).strip()
    if not bare:
        return "", 1
    words, _, number = bare.rpartition(" ")
    keys = cell_keys(kind)
    if bare in keys:
        return bare, 1
    if words in keys and number.isdecimal() and 0 < int(number) < 100:
        return words, int(number)
    raise ExchangeError(
        say("A column was said to hold {bare}.", bare=quoted(bare)),
        say("That is no key that a column of {kind}s can hold.", kind=kind.value),
        instead(bare, keys),
    )


def _check_told(table: ForeignTable, told: Mapping[str, str], mapping: TableMapping) -> None:
    for name, said in told.items():
        has_one = any(
            _told_of({name: said}, column.header, column.column) is not None
            for column in mapping.columns
        )
        is_left_out = not said.strip() and _LETTERS.match(name)
        if not has_one and not is_left_out:
            raise ExchangeError(
                say(
                    "The column {name} was named for {file}.",
                    name=quoted(name),
                    file=table.file,
                ),
                say("No column of the table has that header or those letters."),
                instead(name, [c.header or column_letters(c.column) for c in mapping.columns]),
            )
        unit = re.search(r"[(\[](.*?)[)\]]", said)
        if unit and unit[1].strip().casefold() not in UNITS:
            raise ExchangeError(
                say(
                    "The column {name} was said to be in {unit}.",
                    name=quoted(name),
                    unit=quoted(unit[1]),
                ),
                say("That is no unit known here."),
                say(
                    "Use one of: {fromkeys}.",
                    fromkeys=joined(", ", dict.fromkeys(UNITS.values())),
                ),
            )


def _check_claims(table: ForeignTable, mapping: TableMapping) -> None:
    claimed: dict[str, MappedColumn] = {}
    keys = cell_keys(mapping.kind)
    for column in mapping.used:
        if keys[column.path].kind in REPEATED:
            continue
        other = claimed.setdefault(column.path, column)
        if other is not column:
            raise ExchangeError(
                say("The headers of {file} were read.", file=table.file),
                say(
                    "Both {header} and {header_2} are taken for {path}, and only one "
                    "of them can be.",
                    header=quoted(other.header),
                    header_2=quoted(column.header),
                    path=quoted(column.path),
                ),
                say(
                    'Leave one out: --column "{column_letters}=".',
                    column_letters=column_letters(column.column),
                ),
            )
