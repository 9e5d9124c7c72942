"""Tables as they were found in somebody else's file."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

MOST_ROWS: Final = 5_000
MOST_COLUMNS: Final = 200
MOST_TABS: Final = 40
LONGEST_CELL: Final = 32_767
"""What a cell of the common spreadsheet programs holds at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TableCell:
    """What stands in one cell.

    Attributes:
        text: Its text, trimmed; a number as its digits with a decimal point.
        is_number: True where the file itself says that it is a number, so that its decimal sign
            is known.
        trouble: Why it can't be used, as a sentence; empty where it can.
    """

    text: str = ""
    is_number: bool = False
    trouble: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ForeignTable:
    """One tab of a spreadsheet, or a whole CSV file.

    Attributes:
        file: Name of the file.
        tab: Name of the tab; empty for a CSV file.
        rows: Cells from the first row and column on; rows may differ in length.
        notes: What was assumed in reading it, one sentence each.
    """

    file: str
    tab: str = ""
    rows: tuple[tuple[TableCell, ...], ...]
    notes: tuple[str, ...] = ()

    def address(self, row: int, column: int) -> str:
        """Return where a cell stands, as a spreadsheet program shows it.

        Example:
            >>> ForeignTable(file="a.xlsx", tab="Kitchen", rows=()).address(3, 27)
            'Kitchen!AB4'
        """
        at = f"{column_letters(column)}{row + 1}"
        return f"{self.tab}!{at}" if self.tab else at


def column_letters(column: int) -> str:
    """Return the letters of a column, counted from 0.

    Example:
        >>> column_letters(0), column_letters(25), column_letters(26)
        ('A', 'Z', 'AA')
    """
    letters = ""
    number = column + 1
    while number:
        number, rest = divmod(number - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def check_extent(file: str, row: int, columns: int, longest: int) -> None:
    """Refuse a table that no house's readings are like.

    Args:
        file: Name of the file.
        row: Number of a row, from 1.
        columns: How many cells it has.
        longest: Signs in its longest cell.

    Raises:
        ExchangeError: It has too many rows or columns, or a cell is too long.
    """
    if row > MOST_ROWS:
        raise ExchangeError(
            say(
                "The table {file} was read up to row {most_rows}.",
                file=file,
                most_rows=MOST_ROWS,
            ),
            say(
                "It has more than {most_rows} rows, and no house has that many readings.",
                most_rows=MOST_ROWS,
            ),
            say("Take out what is no reading, or split it by house."),
        )
    if columns > MOST_COLUMNS:
        raise ExchangeError(
            say("The table {file} was read up to row {row}.", file=file, row=row),
            say(
                "That row has more than {most_columns} columns, so it is no list of readings.",
                most_columns=MOST_COLUMNS,
            ),
            say("Keep the columns with marks and readings, and take out the rest."),
        )
    if longest > LONGEST_CELL:
        raise ExchangeError(
            say("The table {file} was read up to row {row}.", file=file, row=row),
            say(
                "A cell there holds over {longest_cell} signs, more than a spreadsheet's cell can.",
                longest_cell=LONGEST_CELL,
            ),
            say("Look for a quote mark that is opened and never closed, or take that cell out."),
        )
