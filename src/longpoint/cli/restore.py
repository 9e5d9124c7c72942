"""`longpoint restore`: a backup comes back, and nothing goes."""

from pathlib import Path

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.store_options import new_name, store_option
from longpoint.store.copies import Restored, restore


@click.command(name="restore")
@click.argument("backup", type=click.Path(path_type=Path, dir_okay=False))
@store_option
@exits
def command(backup: Path, store: Path) -> Outcome:
    """Bring back what is in BACKUP. Nothing that the store holds is taken out of it.

    Where the store is gone, the backup becomes it. A sound store takes in what it lacks. A damaged
    one is set aside, and what is still sound in it is kept.
    """
    done = restore(backup, store, new_name())
    for line in _lines(done):
        click.echo(line)
    click.echo(f"{done.entries} entries are in the store now: {store}")
    return Outcome.HELD if done.lost != 0 or done.clashes else Outcome.DONE


def _lines(done: Restored) -> list[str]:
    lines = [f"Came from the backup: {done.added}."]
    if done.set_aside is not None:
        lines.append(f"The store was damaged; it lies in {done.set_aside} as it was.")
        lines.append(f"Still sound in it, and in no backup: {done.salvaged}. They are kept.")
    if done.lost is None:
        lines.append(
            "How many it held can't be read any more. Look through the last houses, and read again "
            "what is missing."
        )
    elif done.lost:
        lines.append(
            f"LOST: {done.lost}. They were damaged and are in no backup. `longpoint history` shows "
            "what is there; read again what is missing, or get it from the phone that read it."
        )
    if done.clashes:
        lines.append(
            f"Refused: {len(done.clashes)} of the backup. Other entries stand under their names; "
            "a store was copied by hand and both copies were written to."
        )
    return lines
