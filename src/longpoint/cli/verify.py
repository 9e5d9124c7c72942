"""`longpoint verify`: is everything as it was written?"""

import click

from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import store_option
from longpoint.cli.store_places import Database, StorePlace, open_to_read
from longpoint.errors import StoreError
from longpoint.speech.said import say
from longpoint.store.seal import read_seal


@click.command(name="verify")
@store_option
@exits
def command(store: StorePlace) -> Outcome:
    """Look through the store, or a backup of it: every page, every entry, every byte.

    Exit status 2 where anything isn't as it was written.
    """
    kept = open_to_read(store)
    try:
        found = kept.verify()
        count = 0 if found else len(kept.lacking({}))
    finally:
        kept.close()
    if found:
        for finding in found[1:]:
            speak(f"{finding.read} {finding.wrong}", err=True)
        raise StoreError(found[0].read, found[0].wrong, found[0].do)
    speak(
        say(
            "{count} entries, all as they were written, in {store}",
            count=count,
            store=store,
        )
    )
    if isinstance(store, Database):
        return Outcome.DONE
    seal = read_seal(store)
    if seal is None:
        speak(say("There is no seal beside it, so bytes that no entry needs weren't looked at."))
    elif seal.entries < count:
        speak(
            say(
                "{count} of them came after it was last sealed: longpoint was stopped "
                "in the middle. They are on the disk.",
                count=count - seal.entries,
            )
        )
    return Outcome.DONE
