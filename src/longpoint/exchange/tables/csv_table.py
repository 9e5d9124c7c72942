"""Read a CSV file as somebody's spreadsheet program saved it."""

import codecs
import csv
import io
from collections import Counter
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import bounded_bytes, shown_name
from longpoint.exchange.tables.records import (
    LONGEST_CELL,
    MOST_ROWS,
    ForeignTable,
    TableCell,
    check_extent,
)
from longpoint.speech.said import say

LARGEST_BYTES: Final = 4_000_000
DELIMITERS: Final = {",": "comma", ";": "semicolon", "\t": "tab", "|": say("upright bar")}
SAMPLE_ROWS: Final = 60
_BINARY: Final = (
    b"PK",
    b"\xd0\xcf\x11\xe0",
    b"%PDF",
    b"\x89PNG",
    b"\xff\xd8",
    b"GIF8",
    b"\x1f\x8b",
)


def read_csv_table(path: Path, delimiter: str | None = None) -> ForeignTable:
    """Return a CSV file as a table; what was taken for granted stands in its notes.

    Args:
        path: The file: UTF-8, UTF-16 with a byte order mark, or Windows text.
        delimiter: What stands between cells; None: found out from the rows.

    Raises:
        ExchangeError: It can't be read, is no text, or is larger than any house's readings.
    """
    data = bounded_bytes(path, LARGEST_BYTES, say("a table"))
    name = shown_name(path)
    text, notes = _decoded(name, data)
    lines = text.splitlines()
    if lines and lines[0].strip().lower().startswith("sep=") and len(lines[0].strip()) == 5:
        delimiter = delimiter or lines[0].strip()[-1]
        # A blank line stands for it, so that addresses stay those of the file.
        text = "\n" + text.partition("\n")[2]
    if delimiter is None:
        delimiter = _delimiter(text)
        notes.append(
            say(
                "Cells are taken to be parted by a {delimiters}.",
                delimiters=DELIMITERS[delimiter],
            )
        )
    return ForeignTable(file=name, rows=tuple(_rows(name, text, delimiter)), notes=tuple(notes))


def _decoded(name: str, data: bytes) -> tuple[str, list[str]]:
    if data.startswith(_BINARY):
        raise ExchangeError(
            say("The file {name} was to be read as a CSV table.", name=name),
            say("By its first bytes it is something else, whatever its name ends in."),
            say("Give it the ending that it was saved as, or save it again as CSV."),
        )
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        try:
            return _without_nul(name, data.decode("utf-16")), [say("Its text is UTF-16.")]
        except UnicodeDecodeError:
            raise _no_text(name) from None
    if b"\0" in data:
        raise _no_text(name)
    try:
        return data.decode("utf-8-sig"), []
    except UnicodeDecodeError:
        pass
    try:
        return data.decode("cp1252"), [
            say(
                "Its text is no UTF-8, so it was read as Windows text: look at letters "
                "with accents."
            )
        ]
    except UnicodeDecodeError:
        raise _no_text(name) from None


def _without_nul(name: str, text: str) -> str:
    if "\0" in text:
        raise _no_text(name)
    return text


def _no_text(name: str) -> ExchangeError:
    return ExchangeError(
        say("The file {name} was to be read as a CSV table.", name=name),
        say("It holds bytes that are no text, so it is damaged or something else."),
        say('Save it again from the spreadsheet as "CSV UTF-8".'),
    )


def _delimiter(text: str) -> str:
    """Return the sign that parts most rows into the same number of cells, more than one."""
    scores: dict[str, tuple[float, int]] = {}
    for sign in DELIMITERS:
        try:
            counts = Counter(
                len(row)
                for row, _ in zip(
                    csv.reader(io.StringIO(text, newline=""), delimiter=sign),
                    range(SAMPLE_ROWS),
                    strict=False,
                )
                if any(cell.strip() for cell in row)
            )
        except csv.Error:
            continue
        wide = {columns: count for columns, count in counts.items() if columns > 1}
        if wide:
            columns, count = max(wide.items(), key=lambda item: (item[1], item[0]))
            scores[sign] = (round(count / counts.total(), 2), columns)
    # On a tie the comma, which is what the name of the format says.
    return max(scores, key=lambda sign: (*scores[sign], sign == ","), default=",")


def _rows(name: str, text: str, delimiter: str) -> list[tuple[TableCell, ...]]:
    rows: list[tuple[TableCell, ...]] = []
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    try:
        for row in reader:
            longest = max(map(len, row), default=0)
            check_extent(name, len(rows) + 1, len(row), longest)
            rows.append(tuple(TableCell(text=_plain(cell)) for cell in row))
    except csv.Error as error:
        if "field larger" in str(error):
            check_extent(name, min(len(rows) + 1, MOST_ROWS), 0, LONGEST_CELL + 1)
        raise ExchangeError(
            say(
                "The table {name} was read up to line {line_num}.",
                name=name,
                line_num=reader.line_num,
            ),
            say(
                "A quote mark there is opened and not closed, or something stands "
                "behind a closed one."
            ),
            say('Save it again from the spreadsheet as CSV; in a cell in quotes, " is written "".'),
        ) from None
    return rows


def _plain(cell: str) -> str:
    """Return a cell's text; the apostrophe that keeps a text from being a formula is taken off."""
    text = cell.strip()
    return text[1:] if text[:1] == "'" and text[1:2] in _GUARDED else text


FORMULA_SIGNS: Final = ("=", "+", "-", "@", "\t", "\r", "\n", "|")
"""A text that begins so is run as a formula by some spreadsheet when a CSV is opened: well known,
no one standard."""
_GUARDED: Final = frozenset((*FORMULA_SIGNS, "'"))


def guarded(text: str) -> str:
    """Return a text that no spreadsheet program takes for a formula.

    Example:
        >>> guarded("=1+1"), guarded("W1"), guarded("-1/16")
        ("'=1+1", 'W1', "'-1/16")
    """
    if text[:1] == "'" and text[1:2] in _GUARDED:
        return f"'{text}"
    if text.startswith(FORMULA_SIGNS) and not _is_number(text):
        return f"'{text}"
    return text


def _is_number(text: str) -> bool:
    return text[1:].replace(".", "", 1).isdecimal() and text[0] in "+-"


def csv_text(rows: list[tuple[str, ...]]) -> str:
    """Return rows as CSV: commas, CRLF, quotes where needed, nothing that could be a formula.

    Args:
        rows: Rows of texts, the header first.

    References:
        RFC 4180, section 2.
    """
    out = io.StringIO(newline="")
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerows([guarded(cell) for cell in row] for row in rows)
    return out.getvalue()
