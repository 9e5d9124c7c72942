"""What can still be vouched for in a damaged store."""

import contextlib
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from longpoint.errors import StoreError, SurveyError
from longpoint.journal import Entry, read_entry
from longpoint.store.sqlite_file import connected
from longpoint.store.sums import START, next_sum
from longpoint.store.tail import numbered

MOST_GAPS = 10_000
"""So many numbers without a row end the search for rows that the table itself doesn't give."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Salvaged:
    """What was found in a damaged store.

    Attributes:
        entries: Entries that are as they were written.
        due: How many the store says that it held; 0 when even that can't be read.
    """

    entries: tuple[Entry, ...] = ()
    due: int = 0


@dataclass(frozen=True, slots=True)
class _Row:
    text: str
    total: bytes


def salvaged(path: Path) -> Salvaged:
    """Return the entries of a damaged store that their sums still vouch for."""
    try:
        connection = connected(path, writes=False)
    except StoreError:
        return Salvaged()
    try:
        rows, due = _rows(connection)
    finally:
        connection.close()
    found = []
    for number in _vouched(rows):
        with contextlib.suppress(SurveyError):
            found.append(read_entry(rows[number].text))
    return Salvaged(entries=tuple(found), due=due)


def _rows(connection: sqlite3.Connection) -> tuple[dict[int, _Row], int]:
    """Return the rows that can be read at all, from the table and then by its index."""
    rows: dict[int, _Row] = {}
    due = 0
    with contextlib.suppress(sqlite3.Error, ValueError, TypeError):
        due = int(
            connection.execute("SELECT value FROM facts WHERE name = 'entries'").fetchone()[0]
        )
    with contextlib.suppress(sqlite3.Error, ValueError):
        for number, text, total in connection.execute(
            "SELECT number, entry, sum FROM entries NOT INDEXED"
        ):
            _note(rows, number, text, total)
    gaps, number = 0, 0
    while number < max(due, max(rows, default=0)) and gaps < MOST_GAPS:
        number += 1
        if number in rows:
            continue
        gaps += 1
        with contextlib.suppress(sqlite3.Error, ValueError, TypeError):
            statement = "SELECT entry, sum FROM entries WHERE number = ?"
            _note(rows, number, *connection.execute(statement, (number,)).fetchone())
    return rows, due


def _note(rows: dict[int, _Row], number: object, text: object, total: object) -> None:
    if isinstance(number, int) and isinstance(text, str) and isinstance(total, bytes):
        rows[number] = _Row(text, total)


def _vouched(rows: dict[int, _Row]) -> Iterator[int]:
    """Yield the numbers of rows that are as they were written.

    A row is vouched for by its own sum, or, where that is what was damaged, by the next row's.
    """
    totals = {0: START, **{number: row.total for number, row in rows.items()}}

    def reckoned(number: int, before: bytes | None) -> bytes | None:
        row = rows.get(number)
        return next_sum(before, numbered(number, row.text)) if row and before else None

    for number, row in sorted(rows.items()):
        by_itself = reckoned(number, totals.get(number - 1))
        by_the_next = reckoned(number + 1, by_itself)
        anew = reckoned(number, reckoned(number - 1, totals.get(number - 2)))
        is_next = by_the_next is not None and by_the_next == totals.get(number + 1)
        if row.total in (by_itself, anew) or is_next:
            yield number
