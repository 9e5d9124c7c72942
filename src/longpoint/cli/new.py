"""`longpoint new`: a file to write readings into."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.exchange.safe_files import write_new_text
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house import Dialect
from longpoint.survey.house_file import starter_house


@click.command(name="new")
@click.argument("house", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--name", default=None, help="The house's name; else the file's.")
@click.option("--units", type=click.Choice([u.value for u in Units]), default="mm")
@click.option("--dialect", type=click.Choice([d.value for d in Dialect]), default="uk")
@exits
def command(house: Path, name: str | None, units: str, dialect: str) -> Outcome:
    """Write a commented starter file to HOUSE; a file that is there is never overwritten."""
    title = name or house.stem.replace("-", " ").replace("_", " ").strip().title() or "House"
    write_new_text(house, starter_house(title, Units(units), Dialect(dialect)))
    speak(
        say(
            "Written: {house}. Fill in the readings, then: longpoint plan {house} --out sheets",
            house=house,
        )
    )
    return Outcome.DONE
