"""`longpoint quote`: a price for the client, kept as it was given."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.priced import job_in, plain_number, speak_sheet, write_paper
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.paper_files import keep_quote, load_rates
from longpoint.pricing.quote import make_quote
from longpoint.render.money_text import BabelMoneyText
from longpoint.render.paper import Paper
from longpoint.sheets.money_rows import csv_text, quote_lines
from longpoint.sheets.money_words import excluded
from longpoint.sheets.quote_sheet import quote_sheet


@click.command(name="quote")
@click.argument("job_file", metavar="JOB", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--rates",
    type=click.Path(path_type=Path, dir_okay=False),
    required=True,
    help="File of the crew's rates.",
)
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for the quote and what follows it; a quote in it is never written over.",
)
@click.option("--number", required=True, help="The crew's own number of the quote.")
@on_day
@on_paper
@exits
def command(
    job_file: Path, rates: Path, out: Path, number: str, on: date, paper: Paper | None
) -> Outcome:
    """Make a quote for a JOB: a counts file, or a house file with readings."""
    crew = load_rates(rates)
    job = job_in(job_file, crew)
    quote = make_quote(
        job.estimate,
        job.tasks,
        job.house,
        crew,
        number=plain_number(number, "quote"),
        day=on,
        made_from=job.made_from,
        is_read=job.is_read,
        exclusions=excluded(
            crew.exclusions,
            crew.timber,
            job.house.dialect,
            labour_only=job.labour_only,
            uncounted=job.uncounted,
            unpriced=[kind for kind, _ in job.estimate.without_rate],
        ),
        held=job.stood_in,
    )
    sheet = quote_sheet(quote, BabelMoneyText(quote.dialect, tongue().code))
    keep_quote(out, quote)
    speak_sheet(sheet, quote.dialect)
    speak(f"Quote: {write_paper(out, sheet, paper, quote.dialect, csv_text(quote_lines(quote)))}")
    return Outcome.HELD if job.held else Outcome.DONE
