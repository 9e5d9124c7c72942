"""`longpoint pieces`: the pieces on the screen."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.errors import SurveyError
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.sheets.terminal import pieces_text


@click.command(name="pieces")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--of", "mark", default=None, help="Only the opening, run or trim of this mark.")
@exits
def command(house: Path, mark: str | None) -> Outcome:
    """Show the pieces of HOUSE: both lengths, hook reading, saw settings, and the sum behind."""
    survey = load_house(house)
    plan = plan_house(survey)
    marks = {
        *(o.mark for o in plan.house.openings),
        *(piece.place for piece in plan.pieces),
        *plan.held,
    }
    if mark is not None and mark not in marks:
        raise SurveyError(
            f"The pieces of {mark!r} are asked for.",
            f"{plan.house.name} has no opening, run or trim of that mark.",
            f"Ask for one of: {', '.join(sorted(marks))}.",
        )
    click.echo(pieces_text(plan, mark))
    return outcome(plan.findings)
