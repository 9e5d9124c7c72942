"""`longpoint variation`: what the readings ask for beyond the quote, with reasons."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.paper_option import on_paper
from longpoint.cli.priced import job_in, speak_sheet, write_paper
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.paper_files import keep_variation, kept_quote, kept_variations
from longpoint.pricing.variation import make_variation
from longpoint.render.money_text import BabelMoneyText
from longpoint.render.paper import Paper
from longpoint.sheets.money_rows import csv_text, variation_lines
from longpoint.sheets.variation_sheet import variation_sheet


@click.command(name="variation")
@click.argument("folder", metavar="PAPERS", type=click.Path(path_type=Path, file_okay=False))
@click.argument("job_file", metavar="JOB", type=click.Path(path_type=Path, dir_okay=False))
@on_day
@on_paper
@exits
def command(folder: Path, job_file: Path, on: date, paper: Paper | None) -> Outcome:
    """Say what a JOB as read asks for beyond its quote, at the quote's prices.

    PAPERS is the folder that `longpoint quote` wrote, JOB the house file with readings. The
    variation is kept there, to be signed before its work is done.
    """
    quote = kept_quote(folder)
    earlier = kept_variations(folder, quote)
    job = job_in(job_file, None, quote.limits, quote.running_units)
    variation = make_variation(
        quote,
        earlier,
        job.tasks,
        job.estimate.timber.at(quote.sure).sticks,
        day=on,
        made_from=job.made_from,
        held=job.held,
    )
    keep_variation(folder, variation)
    sheet = variation_sheet(variation, quote, BabelMoneyText(quote.dialect, tongue().code))
    speak_sheet(sheet, quote.dialect)
    rows = csv_text(variation_lines(variation, quote))
    speak(f"Variation: {write_paper(folder, sheet, paper, quote.dialect, rows)}")
    return Outcome.HELD if job.held else Outcome.DONE
