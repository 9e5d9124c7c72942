"""What the commands of money share: a job out of a file, and a paper into a folder."""

from pathlib import Path
from typing import Final

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.imagined import house_imagined
from longpoint.cli.paper_option import paper_of
from longpoint.cli.profiles_at_once import at_once
from longpoint.cli.spoken import speak, spoken_sheets
from longpoint.errors import ExchangeError, PricingError, SheetError
from longpoint.exchange.house_files import load_house_document
from longpoint.exchange.safe_files import write_bytes_safely, write_text_safely
from longpoint.pipeline import plan_house
from longpoint.pricing.accuracy import Recuts, price_of_accuracy
from longpoint.pricing.counts_file import read_counts
from longpoint.pricing.counts_tables import COUNTS_FORMAT
from longpoint.pricing.job import Job, counted_job, read_job
from longpoint.pricing.rates import Rates
from longpoint.pricing.take_off import Limits
from longpoint.quantities.length import Units
from longpoint.render.paper import Paper
from longpoint.render.pdf import render_pdf
from longpoint.sheets.blocks import Sheet
from longpoint.sheets.html import sheet_html
from longpoint.sheets.plain_text import sheet_text
from longpoint.solvers.installed import linear_solver
from longpoint.speech.said import say
from longpoint.survey.house import Dialect
from longpoint.survey.house_file import read_house

ACCURACY_DRAWS: Final = 4000
"""Houses imagined for what accuracy is worth: a mean wants fewer than a chance does."""


def job_in(
    path: Path,
    rates: Rates | None,
    limits: Limits | None = None,
    running_units: Units | None = None,
) -> Job:
    """Return the job in a file: of counts, or a house as read.

    Args:
        path: A counts file or a house file.
        rates: The crew's rates; None: hours and timber alone.
        limits: From where on an opening is more work; None: as the rates say.
        running_units: Of running work; None: as the rates say, or as the house is read.

    Raises:
        LongpointError: It can't be used.
    """
    document = load_house_document(path)
    if document.get("format") == COUNTS_FORMAT:
        return counted_job(read_counts(document), rates)
    plan = plan_house(read_house(document, trim_tables()), linear_solver(), planner=at_once)
    return read_job(
        plan.house,
        plan.shapes,
        plan.pieces,
        rates,
        held=plan.held,
        limits=limits,
        running_units=running_units,
    )


def accuracy_in(path: Path, rates: Rates | None) -> tuple[Recuts, ...]:
    """Return what accuracy is worth on the job in a file.

    Args:
        path: A house file with readings.
        rates: The crew's rates.

    Raises:
        PricingError: It is a counts file, or there are no rates.
        LongpointError: It can't be used.
    """
    document = load_house_document(path)
    if rates is None or document.get("format") == COUNTS_FORMAT:
        raise PricingError(
            say("What accuracy is worth was asked of {path}.", path=path.name),
            say("It is reckoned from readings, by the price of an hour."),
            say("Name a house file with readings, and a rates file with --rates."),
        )
    solver = linear_solver()
    imagined = house_imagined(ACCURACY_DRAWS)
    plan = plan_house(read_house(document, trim_tables()), solver, imagined, planner=at_once)
    if plan.outlook is None:
        return ()
    return price_of_accuracy(
        plan.house, plan.shapes, plan.held, plan.pieces, plan.outlook, imagined, rates, solver
    )


def write_paper(
    folder: Path, sheet: Sheet, paper: Paper | None, dialect: Dialect, rows: str = ""
) -> Path:
    """Write one sheet to a folder as PDF, page and text, and its rows as CSV.

    Args:
        folder: Where to; made when it isn't there.
        sheet: The sheet.
        paper: Paper of the PDF; None: that of the country.
        dialect: Of the country whose words it is in.
        rows: Text of its CSV; empty: none.

    Returns:
        The PDF.

    Raises:
        ExchangeError: The folder or a file can't be written.
        SheetError: The PDF can't be made; the other files are there all the same.
    """
    (sheet,) = spoken_sheets((sheet,), dialect)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ExchangeError(
            say("The papers are to go to {folder}.", folder=folder),
            say("That folder can't be made: {strerror}.", strerror=error.strerror or error),
            say("Name another folder with --out."),
        ) from error
    write_text_safely(folder / f"{sheet.name}.html", sheet_html(sheet))
    write_text_safely(folder / f"{sheet.name}.txt", sheet_text(sheet))
    if rows:
        write_bytes_safely(folder / f"{sheet.name}.csv", rows.encode("utf-8"))
    pdf = folder / f"{sheet.name}.pdf"
    write_bytes_safely(pdf, render_pdf((sheet,), paper_of(paper, dialect)))
    return pdf


def speak_sheet(sheet: Sheet, dialect: Dialect) -> None:
    """Write a sheet as text to the screen, in the words of a country."""
    for spoken in spoken_sheets((sheet,), dialect):
        speak(sheet_text(spoken))


def plain_number(number: str, what: str) -> str:
    """Return a number of a paper that can stand in a file's name.

    Raises:
        SheetError: It holds other signs than letters, digits, dot, dash and underscore, or too
            many.
    """
    is_plain = all(sign.isalnum() or sign in ".-_" for sign in number)
    if not number or len(number) > 30 or not is_plain or number.startswith("."):
        raise SheetError(
            say('The {what} is numbered "{number}".', what=what, number=number[:40]),
            say("A number holds letters, digits and the signs . - _ only, 30 at most."),
            say("Write it with these."),
        )
    return number
