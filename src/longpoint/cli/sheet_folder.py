"""A folder that a command's sheets go to."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from longpoint.cli.paper_option import paper_of
from longpoint.cli.spoken import spoken_sheets
from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.blocks import Sheet
from longpoint.sheets.html import sheet_html
from longpoint.speech.said import say
from longpoint.survey.house import Dialect

F = TypeVar("F", bound=Callable[..., Any])


def out_option(command: F) -> F:
    """Give a command the option --out for its sheets."""
    return click.option(
        "--out",
        type=click.Path(path_type=Path, file_okay=False),
        default=None,
        help="Folder for the sheets, as PDF and as pages; made when it isn't there.",
    )(command)


def write_sheets(
    folder: Path,
    pdf: str,
    sheets: tuple[Sheet, ...],
    paper: Paper | None,
    dialect: Dialect | None,
) -> Path:
    """Write sheets as one PDF and as a page each, whole files only.

    Args:
        folder: Where to; made when it isn't there.
        pdf: Name of the PDF.
        sheets: The sheets.
        paper: Paper of the PDF; None: that of the country.
        dialect: Of the house they are about; None: no house, our own words.

    Returns:
        The PDF.

    Raises:
        ExchangeError: The folder or a file can't be written.
        SheetError: A sheet can't be set.
    """
    make_folder(folder)
    sheets = spoken_sheets(sheets, dialect)
    for sheet in sheets:
        write_text_safely(folder / f"{sheet.name}.html", sheet_html(sheet))
    return write_file(folder, pdf, render_pdf(sheets, paper_of(paper, dialect)))


def write_file(folder: Path, name: str, content: bytes) -> Path:
    """Write one file to a folder, which is made when it isn't there.

    Raises:
        ExchangeError: The folder or the file can't be written.
    """
    make_folder(folder)
    write_bytes_safely(folder / name, content)
    return folder / name


def make_folder(folder: Path) -> None:
    """Make a folder for sheets where there is none.

    Raises:
        ExchangeError: It can't be made.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The sheets are to go to {folder}.", folder=folder),
            say("That folder can't be made: {strerror}.", strerror=error.strerror or error),
            say("Name another folder with --out."),
        ) from error
