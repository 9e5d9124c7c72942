"""`longpoint undo`: an entry doesn't count any more, or counts again."""

import click

from longpoint.cli.data_folder import new_name
from longpoint.cli.kept_houses import (
    KeptHouse,
    effect_lines,
    entries_of,
    folded,
    house_named,
    kept_house,
    mark_revision,
)
from longpoint.cli.kept_rack import undo_in_rack
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import at_moment, one_of, rack_option, store_option
from longpoint.cli.store_places import StorePlace, open_store, open_to_read
from longpoint.errors import StoreError
from longpoint.journal import Key
from longpoint.phone.entry_words import entry_words
from longpoint.speech.said import say
from longpoint.store.records import Numbered


@click.command(name="undo")
@click.argument("words", nargs=-1, metavar="[HOUSE] [NUMBER]")
@rack_option
@store_option
@at_moment
@exits
def command(words: tuple[str, ...], is_rack: bool, store: StorePlace, at: str) -> Outcome:
    """Take back what was last written of HOUSE, or the entry of a NUMBER of `longpoint history`.

    Nothing is rubbed out: taking back is one more entry, and can be taken back by its own number.
    What is cut stays cut. With --rack instead of a house: an entry of the rack of offcuts.
    """
    house, number = _house_and_number(words, is_rack)
    if house is None:
        for told in undo_in_rack(store, number, at):
            speak(told)
        return Outcome.DONE
    # Read first: a store that isn't there is not to be made by this.
    open_to_read(store).close()
    kept = open_store(store, new_name())
    try:
        before = house_named(kept, house)
        chosen = _chosen(before, number)
        of = {"device": chosen.key.device, "counter": chosen.key.counter}
        _refuse_idle(before, chosen, of)
        kept.write(before.key, at, [{"what": "undo", "of": of}])
        after = mark_revision(kept, kept_house(kept, before.key), at)
        said = entry_words(chosen.entry)
        if chosen.entry["what"] == "undo":
            said = say("an undo; what it took back counts again")
        speak(
            say(
                "Taken back in {after}: {number}, {words}.",
                after=after.name,
                number=chosen.number,
                words=said,
            )
        )
        speak(
            say(
                "To have it back: longpoint undo {quoted} {number}",
                quoted=_quoted(after.name),
                number=after.entries[-1].number,
            )
        )
        for line in effect_lines(before, after):
            speak(line)
    finally:
        kept.close()
    return Outcome.DONE


def _house_and_number(words: tuple[str, ...], is_rack: bool) -> tuple[str | None, int | None]:
    house = None if is_rack or not words else words[0]
    one_of(house, is_rack)
    numbers = words if is_rack else words[1:]
    if len(numbers) > 1 or not all(each.isdecimal() for each in numbers):
        raise click.UsageError(say("After the house comes one whole number, or nothing."))
    return house, int(numbers[0]) if numbers else None


def _chosen(house: KeptHouse, number: int | None) -> Numbered:
    if number is None:
        if house.now.undo is None:
            raise StoreError(
                say("The last entry of {house} was to be taken back.", house=house.name),
                say("There is none after the house was begun or its file was put in."),
                say("Name one by its number in `longpoint history`."),
            )
        of = house.now.undo.of
        key = Key(of.device, of.counter)
        found = [each for each in house.entries if each.key == key]
    else:
        found = [each for each in house.entries if each.number == number]
    if not found:
        raise StoreError(
            say(
                "Entry {number} of {house} was to be taken back.",
                number=number,
                house=house.name,
            ),
            say("The house has none of that number."),
            say("Take the number from `longpoint history`."),
        )
    if found[0].entry["what"] in ("house-made", "opened-file") and len(house.entries) == 1:
        raise StoreError(
            say(
                "Entry {number} of {house} was to be taken back.",
                number=number,
                house=house.name,
            ),
            say("It is all there is of the house."),
            say("Leave it; a house that isn't wanted does no harm."),
        )
    return found[0]


def _refuse_idle(house: KeptHouse, chosen: Numbered, of: dict[str, object]) -> None:
    """Refuse to take back what doesn't count as it is."""
    written = entries_of(house)
    last = max(entry["counter"] for entry in written)
    undo = {**chosen.entry, "counter": last + 1, "what": "undo", "of": of}
    after = folded([*written, undo])
    if (after.document, after.saw, after.gaps) == (
        house.now.document,
        house.now.saw,
        house.now.gaps,
    ):
        raise StoreError(
            say(
                "Entry {number} of {house} was to be taken back.",
                number=chosen.number,
                house=house.name,
            ),
            say("It doesn't count now: it was taken back before, or another took its place."),
            say("Look through `longpoint history` for the one that does."),
        )


def _quoted(name: str) -> str:
    return f'"{name}"' if " " in name else name
