"""The command and its subcommands, each loaded only when it is called."""

import importlib
from typing import Final

import click

import longpoint
from longpoint.cli.spoken import TONGUES, VARIABLE, choose

BY_STEP: Final = {
    "Read and plan": {
        "new": "Write a commented starter file for a new house.",
        "check": "Say what is wrong or doubtful in the readings, before any piece is made.",
        "plan": "Plan a house: pieces, sticks and sheets.",
        "pieces": "Show the pieces of a house, or of one opening, run or trim.",
        "street": "Plan every house file of a folder, and sum them up.",
    },
    "Money": {
        "estimate": "Say what a job will take: hours, sticks and money, as ranges.",
        "quote": "Make a quote for the client, from counts or from readings.",
        "variation": "Say what the readings ask for beyond the quote, with reasons.",
        "invoice": "Make an invoice: quote and signed variations, less what is paid.",
    },
    "Timber": {
        "order": "Write the order of a plan for each supplier: text, tables and UBL XML.",
        "delivery": "Check a delivery, tell what came, and get the rest planned with it.",
        "labels": "Write a label for each piece, a test print, and the list of bundles.",
        "rack": "Keep the crew's rack of offcuts: list it, put offcuts up, take them out.",
    },
    "At the saw": {
        "proof": "Say what a frame of four offcuts tells of the saw.",
        "stops": "Say at how few settings of the stop bench-made frames can be cut.",
        "creep": "Say whether the saw's stop creeps, by pieces checked in their order.",
        "recut": "Tell what happened at the saw, and get the rest planned again.",
    },
    "On the wall": {
        "fixing": "Say which nails to load in each room, where they go, and in which order.",
        "tap": "Say what to tap at a set that stands open.",
        "learn": "Learn what a saw and a tape are out by, from finished work.",
        "handover": "Judge finished work by a guide, and write the pages of handing over.",
        "book": "Write all sheets of a house as one PDF, with contents and bookmarks.",
    },
    "Phone, and other people's files": {
        "app": "Serve the phone app on this machine, or copy it for a web host.",
        "serve": "Share kept houses with the phones of a crew.",
        "crew": "See which phones share with this laptop, put one out, look back.",
        "bring": "Bring in other people's files, each figure confirmed before it is used.",
        "give": "Give a house to other people's programs: CSV, XLSX, DXF, IFC.",
    },
    "Houses kept with their history": {
        "houses": "Keep houses with their history in a store: house files in and out.",
        "history": "List all that was written of a kept house, and the sheets made from it.",
        "undo": "Take back what was last written of a house of the store.",
        "backup": "Copy the store to another disk, and look through the copy.",
        "restore": "Bring a backup of the store back; nothing that is there goes.",
        "verify": "Look through the store: is everything as it was written?",
    },
    "To look up": {
        "catalogue": "List the kinds of trim that a house file may name, and what each asks for.",
        "thumb": "Say what rules of thumb come to with your figures, and where each breaks.",
        "schema": "Print the JSON Schema of the house file.",
    },
}
"""The subcommands by the step of the work that they serve."""

SUBCOMMANDS: Final = {name: help for step in BY_STEP.values() for name, help in step.items()}


class _Lazy(click.Group):
    """A group that imports a subcommand's module when it is asked for, so that help is quick."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(SUBCOMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in SUBCOMMANDS:
            return None
        module = importlib.import_module(f"longpoint.cli.{cmd_name}")
        command = module.command
        if not isinstance(command, click.Command):
            return None
        return command

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        widest = max(map(len, SUBCOMMANDS))
        for step, commands in BY_STEP.items():
            with formatter.section(step):
                formatter.write_dl([(n.ljust(widest), text) for n, text in commands.items()])


@click.group(cls=_Lazy, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(longpoint.__version__, prog_name="longpoint")
@click.option(
    "--tongue",
    type=click.Choice(TONGUES),
    envvar=VARIABLE,
    default="en",
    show_default=True,
    help="Language of sheets, findings and screen.",
)
def main(tongue: str) -> None:
    """Readings of a house in; pieces, sticks and sheets for the fix-out out.

    Exit status: 0 done; 1 done, but some places are held back; 2 the file can't be used.
    """
    choose(tongue)


if __name__ == "__main__":
    main()
