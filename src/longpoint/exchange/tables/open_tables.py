"""Open a table file by its ending, and hold it to what it really is."""

from pathlib import Path

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import shown_name
from longpoint.exchange.tables.csv_table import read_csv_table
from longpoint.exchange.tables.records import ForeignTable
from longpoint.exchange.tables.xlsx_table import read_workbook
from longpoint.speech.said import say


def open_tables(path: Path, delimiter: str | None = None) -> tuple[ForeignTable, ...]:
    """Return the tables in a CSV file or a workbook that hold anything.

    Args:
        path: A file that ends in .csv, .txt, .tsv or .xlsx.
        delimiter: What stands between the cells of a CSV file; None: found out.

    Raises:
        ExchangeError: Another ending, or what `read_csv_table` and `read_workbook` refuse.
    """
    match path.suffix.lower():
        case ".csv" | ".txt" | ".tsv":
            return (read_csv_table(path, delimiter),)
        case ".xlsx":
            return read_workbook(path)
        case ending:
            raise ExchangeError(
                say(
                    "The file {shown_name} was to be read as a table.",
                    shown_name=shown_name(path),
                ),
                say(
                    "{the} tells no kind of table that is read here; workbooks with "
                    "macros or of the old kind never are.",
                    the=say("The ending {ending}", ending=ending) if ending else say("No ending"),
                ),
                say("Save it from the spreadsheet as .xlsx or as CSV, and name that file."),
            )
