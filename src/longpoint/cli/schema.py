"""`longpoint schema`: the house file, described for machines."""

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.outcome import Outcome, exits
from longpoint.survey.house_file import schema_text


@click.command(name="schema")
@exits
def command() -> Outcome:
    """Print the JSON Schema of the house file."""
    click.echo(schema_text(trim_tables()), nl=False)
    return Outcome.DONE
