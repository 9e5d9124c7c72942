"""`longpoint fixing`: which nails, where, how many, and in which order."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.paper_option import on_paper
from longpoint.cli.sheet_folder import out_option, write_sheets
from longpoint.cli.spoken import speak
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.sheets.fixing_sheet import fixing_sheets
from longpoint.sheets.fixing_text import fixing_text
from longpoint.survey.openings import Method

PDF = "fixing.pdf"


@click.command(name="fixing")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@out_option
@on_paper
@click.option(
    "--way",
    type=click.Choice([each.value for each in Method]),
    default=None,
    help="Show the order of work of this way of fixing. [default: that of each opening]",
)
@exits
def command(house: Path, out: Path | None, paper: Paper | None, way: str | None) -> Outcome:
    """Say which nails HOUSE needs in each room, and write the fixing sheet to a folder."""
    plan = plan_house(load_house(house))
    speak(fixing_text(plan), plan.house.dialect)
    if out is not None:
        sheets = fixing_sheets(plan, way=Method(way) if way else None)
        speak(f"\nSheet: {write_sheets(out, PDF, sheets, paper, plan.house.dialect)}")
    return outcome(plan.findings)
