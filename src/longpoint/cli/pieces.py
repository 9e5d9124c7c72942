"""`longpoint pieces`: the pieces on the screen."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.spoken import speak, tongue
from longpoint.errors import SurveyError
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.sheets.terminal import pieces_text
from longpoint.speech.said import joined, say


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
            say("The pieces of {mark!r} are asked for.", mark=mark),
            say("{house} has no opening, run or trim of that mark.", house=plan.house.name),
            say("Ask for one of: {marks}.", marks=joined(", ", sorted(marks))),
        )
    speak(pieces_text(plan, mark, tongue=tongue(plan.house.dialect)))
    return outcome(plan.findings)
