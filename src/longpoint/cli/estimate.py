"""`longpoint estimate`: hours, sticks and money of a job, for the crew."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.priced import accuracy_in, job_in, speak_sheet, write_paper
from longpoint.cli.spoken import speak, tongue
from longpoint.errors import PricingError
from longpoint.exchange.paper_files import load_rates
from longpoint.pricing.job import Job
from longpoint.pricing.quote import Quote, make_quote
from longpoint.render.money_text import BabelMoneyText
from longpoint.render.paper import Paper
from longpoint.sheets.estimate_sheet import estimate_sheet
from longpoint.sheets.money_rows import csv_text, quote_lines


@click.command(name="estimate")
@click.argument("job_file", metavar="JOB", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--rates",
    type=click.Path(path_type=Path, dir_okay=False),
    default=None,
    help="File of the crew's rates; left out: hours and sticks, no money.",
)
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    default=None,
    help="Folder for the sheet as PDF, page, text and CSV.",
)
@click.option(
    "--accuracy",
    is_flag=True,
    help="Say what a proved saw or a better tape is worth here; wants readings and rates.",
)
@on_paper
@exits
def command(
    job_file: Path, rates: Path | None, out: Path | None, accuracy: bool, paper: Paper | None
) -> Outcome:
    """Say what a JOB will take: hours, sticks and money, as ranges.

    JOB is a counts file, before the walls are lined, or a house file with readings.
    """
    crew = None if rates is None else load_rates(rates)
    worth = accuracy_in(job_file, crew) if accuracy else ()
    job = job_in(job_file, crew)
    quote = _quote_if_it_can_be(job)
    sheet = estimate_sheet(job, quote, BabelMoneyText(job.house.dialect, tongue().code), worth)
    speak_sheet(sheet, job.house.dialect)
    if out is not None:
        rows = csv_text(quote_lines(quote)) if quote is not None else ""
        speak(f"Sheet: {write_paper(out, sheet, paper, job.house.dialect, rows)}")
    return Outcome.HELD if job.held else Outcome.DONE


def _quote_if_it_can_be(job: Job) -> Quote | None:
    """Return what a quote would be; the sheet itself says why there is none."""
    if job.rates is None:
        return None
    try:
        return make_quote(
            job.estimate,
            job.tasks,
            job.house,
            job.rates,
            number="-",
            day=date(2000, 1, 1),
            made_from=job.made_from,
            is_read=job.is_read,
            exclusions=(),
        )
    except PricingError:
        return None
