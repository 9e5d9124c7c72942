"""`longpoint restore`: a backup comes back, and nothing goes."""

from pathlib import Path

import click

from longpoint.cli.data_folder import new_name
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import store_file_option
from longpoint.speech.said import say
from longpoint.store.copies import Restored, restore


@click.command(name="restore")
@click.argument("backup", type=click.Path(path_type=Path, dir_okay=False))
@store_file_option
@exits
def command(backup: Path, store: Path) -> Outcome:
    """Bring back what is in BACKUP. Nothing that the store holds is taken out of it.

    Where the store is gone, the backup becomes it. A sound store takes in what it lacks. A damaged
    one is set aside, and what is still sound in it is kept.
    """
    done = restore(backup, store, new_name())
    for line in _lines(done):
        speak(line)
    speak(
        say(
            "{entries} entries are in the store now: {store}",
            entries=done.entries,
            store=store,
        )
    )
    return Outcome.HELD if done.lost != 0 or done.clashes else Outcome.DONE


def _lines(done: Restored) -> list[str]:
    lines = [say("Came from the backup: {added}.", added=done.added)]
    if done.set_aside is not None:
        lines.append(
            say(
                "The store was damaged; it lies in {set_aside} as it was.",
                set_aside=done.set_aside,
            )
        )
        lines.append(
            say(
                "Still sound in it, and in no backup: {salvaged}. They are kept.",
                salvaged=done.salvaged,
            )
        )
    if done.lost is None:
        lines.append(
            say(
                "How many it held can't be read any more. Look through the last "
                "houses, and read again what is missing."
            )
        )
    elif done.lost:
        lines.append(
            say(
                "LOST: {lost}. They were damaged and are in no backup. `longpoint "
                "history` shows what is there; read again what is missing, or get it "
                "from the phone that read it.",
                lost=done.lost,
            )
        )
    if done.clashes:
        lines.append(
            say(
                "Refused: {clashes} of the backup. Other entries stand under their "
                "names; a store was copied by hand and both copies were written to.",
                clashes=len(done.clashes),
            )
        )
    return lines
