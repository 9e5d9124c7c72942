"""`longpoint handover`: what is up, judged, and a page for whoever takes over."""

from datetime import date
from pathlib import Path

import click

from longpoint.cli.days import on_day
from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.paper_option import on_paper
from longpoint.cli.sheet_folder import out_option, write_sheets
from longpoint.cli.spoken import speak
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.sheets.handover_sheets import handover_sheets, handover_text

PDF = "handover.pdf"


@click.command(name="handover")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@out_option
@on_paper
@on_day
@exits
def command(house: Path, out: Path | None, paper: Paper | None, on: date) -> Outcome:
    """Judge what was read of HOUSE's finished work, and write the pages of handing over."""
    plan = plan_house(load_house(house))
    speak(handover_text(plan, on), plan.house.dialect)
    if out is not None:
        written = write_sheets(out, PDF, handover_sheets(plan, on), paper, plan.house.dialect)
        speak(f"\nSheets: {written}")
    return outcome(plan.findings)
