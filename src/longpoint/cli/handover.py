"""`longpoint handover`: what is up, judged, and a page for whoever takes over."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.paper_option import on_paper
from longpoint.cli.sheet_folder import out_option, write_sheets
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.house_files import load_house
from longpoint.exchange.paper_files import kept_quote, kept_variations
from longpoint.pipeline import plan_house
from longpoint.render.money_text import BabelMoneyText
from longpoint.render.paper import Paper
from longpoint.sheets.handover_sheets import handover_sheets, handover_text
from longpoint.sheets.variation_sheet import variation_line

PDF = "handover.pdf"


@click.command(name="handover")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@out_option
@click.option(
    "--papers",
    type=click.Path(path_type=Path, file_okay=False),
    default=None,
    help="Folder that `longpoint quote` wrote: its variations stand on the supervisor's page.",
)
@on_paper
@on_day
@exits
def command(
    house: Path, out: Path | None, papers: Path | None, paper: Paper | None, on: date
) -> Outcome:
    """Judge what was read of HOUSE's finished work, and write the pages of handing over."""
    variations = variation_lines(papers) if papers is not None else ()
    plan = plan_house(load_house(house))
    speak(handover_text(plan, on), plan.house.dialect)
    if out is not None:
        written = write_sheets(
            out, PDF, handover_sheets(plan, on, variations=variations), paper, plan.house.dialect
        )
        speak(f"\nSheets: {written}")
    return outcome(plan.findings)


def variation_lines(papers: Path) -> tuple[str, ...]:
    """Return a sentence on each variation of a quote.

    Raises:
        PricingError: No quote is kept there, or it can't be read.
    """
    quote = kept_quote(papers)
    money = BabelMoneyText(quote.dialect, tongue().code)
    return tuple(variation_line(each, money) for each in kept_variations(papers, quote))
