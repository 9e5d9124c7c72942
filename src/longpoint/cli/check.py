"""`longpoint check`: what is wrong with the readings."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits, outcome
from longpoint.cli.plan_folder import planned_code, void_sheets
from longpoint.cli.spoken import speak, tongue
from longpoint.exchange.house_files import load_house
from longpoint.pipeline import check_house
from longpoint.sheets.terminal import findings_text
from longpoint.speech.said import say
from longpoint.survey.house_file import readings_code


@click.command(name="check")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--sheets",
    type=click.Path(path_type=Path, file_okay=False, exists=True),
    default=None,
    help="Folder of sheets made earlier: marked VOID when the readings have changed since.",
)
@exits
def command(house: Path, sheets: Path | None) -> Outcome:
    """Say what is wrong or doubtful in HOUSE, and what was assumed."""
    survey = load_house(house)
    _, findings = check_house(survey)
    speak(findings_text(survey.house, findings, tongue=tongue(survey.house.dialect)))
    if sheets is not None and planned_code(sheets) != readings_code(survey.house):
        is_voided = void_sheets(sheets, None)
        said = (
            say("are now marked VOID") if is_voided else say("can't be voided: don't cut from them")
        )
        speak(
            say(
                "\nThe readings have changed since: the sheets in {sheets} {said}.",
                sheets=sheets,
                said=said,
            )
        )
    return outcome(findings)
