"""`longpoint backup`: the store as one file, somewhere else."""

from itertools import count
from pathlib import Path

import click

from longpoint.cli.data_folder import new_name
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import at_moment, store_file_option
from longpoint.speech.said import say
from longpoint.store.copies import back_up
from longpoint.store.sqlite_store import open_store, open_to_read


@click.command(name="backup")
@click.argument("to", type=click.Path(path_type=Path))
@store_file_option
@at_moment
@exits
def command(to: Path, store: Path, at: str) -> Outcome:
    """Copy the store to the file or folder TO, and look through the copy.

    In a folder the copy is named by its day. Keep it on another disk than the store: a stick, or a
    folder that is copied off this machine. The seal beside it belongs to it.
    """
    open_to_read(store).close()
    target = _named(to, at[:10]) if to.is_dir() else to
    kept = open_store(store, new_name())
    try:
        entries = back_up(kept, target)
    finally:
        kept.close()
    speak(
        say(
            "{entries} entries are in {target}, and the copy was looked through: it is sound.",
            entries=entries,
            target=target,
        )
    )
    return Outcome.DONE


def _named(folder: Path, day: str) -> Path:
    names = (f"houses-{day}{'' if n == 1 else f'-{n}'}.backup" for n in count(1))
    return next(folder / name for name in names if not (folder / name).exists())
