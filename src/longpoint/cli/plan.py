"""`longpoint plan`: the main job."""

import sys
from pathlib import Path
from typing import Final

import click

from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.plan_folder import void_sheets, write_plan
from longpoint.errors import LongpointError
from longpoint.exchange.house_files import load_house_document
from longpoint.pipeline import plan_house
from longpoint.render.paper import Paper
from longpoint.sheets.terminal import plan_text
from longpoint.solvers.highs import HighsSolver
from longpoint.survey.house_file import read_house

LONG_WORK: Final = 40
"""From so many openings on the work takes more than a breath, and is announced on a screen."""


@click.command(name="plan")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--out",
    type=click.Path(path_type=Path, file_okay=False),
    required=True,
    help="Folder for the sheets; made when it isn't there.",
)
@click.option(
    "--paper",
    type=click.Choice([p.value for p in Paper]),
    default=Paper.A4.value,
    show_default=True,
    help="Paper of the PDF.",
)
@exits
def command(house: Path, out: Path, paper: str) -> Outcome:
    """Plan HOUSE and write its sheets to a folder.

    The folder gets sheets.pdf, each sheet as a page for the screen, a drawing of each opening,
    plan.json, and readings.json, a copy of the readings that the sheets were made from.
    """
    try:
        document = load_house_document(house)
        survey = read_house(document)
    except LongpointError:
        if void_sheets(out, Paper(paper)):
            click.echo(f"The sheets in {out} are of older readings; they are marked VOID.")
        raise
    if len(survey.house.openings) >= LONG_WORK and sys.stderr.isatty():
        click.echo(f"Planning {len(survey.house.openings)} openings ...", err=True)
    plan = plan_house(survey, HighsSolver() if HighsSolver.is_installed() else None)
    written = write_plan(plan, document, out, Paper(paper))
    click.echo(plan_text(plan))
    click.echo(f"\nSheets: {written}")
    return outcome(plan.findings)
