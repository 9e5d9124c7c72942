"""`longpoint houses`: the houses of the store; house files in and out."""

from pathlib import Path

import click

from longpoint.catalogue.all_trims import trim_tables
from longpoint.cli.data_folder import new_name
from longpoint.cli.kept_houses import (
    KeptHouse,
    all_houses,
    effect_lines,
    entries_of,
    folded,
    house_named,
    kept_house,
    mark_revision,
    stale_plans,
)
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import at_moment, store_option
from longpoint.cli.store_places import StorePlace, open_store, open_to_read
from longpoint.exchange.house_files import load_house_document, load_house_text
from longpoint.exchange.safe_files import write_new_text
from longpoint.phone.entry_words import entry_words
from longpoint.phone.file_changes import Body, file_changes, without_days
from longpoint.phone.house_text import house_text
from longpoint.speech.said import say, say_many
from longpoint.survey.house_file import read_house

_SHOWN = 12
"""So many changes are told one by one."""


@click.group(name="houses", invoke_without_command=True)
@store_option
@click.pass_context
def command(context: click.Context, store: StorePlace) -> None:
    """List the houses of the store, or put house files into it and get them out.

    The store keeps every reading that ever was, which phone or file it came from, and which sheets
    were made from it. House files by themselves go on working without it.
    """
    context.obj = store
    if context.invoked_subcommand is None:
        exits(_listed)(store)


@command.command()
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--as-new", is_flag=True, help="It is another house of the same name.")
@store_option
@at_moment
@exits
def add(file: Path, as_new: bool, store: StorePlace, at: str) -> Outcome:
    """Put a house FILE into the store, or what was changed in it since it was last put in.

    A house is known by its name. What phones read meanwhile stays, unless the same figure was
    changed in the file.
    """
    document = without_days(load_house_document(file))
    survey = read_house(document, trim_tables())
    text = load_house_text(file)
    kept = open_store(store, new_name())
    try:
        known = [] if as_new else [h for h in all_houses(kept) if h.name == survey.house.name]
        if known:
            before = known[0] if len(known) == 1 else house_named(kept, survey.house.name)
            bodies = _changes(kept.device, before, document, text)
        else:
            before = None
            bodies = ({"what": "opened-file", "text": text},)
        key = before.key if before is not None else new_name()
        kept.write(key, at, bodies)
        after = mark_revision(kept, kept_house(kept, key), at)
        _say_added(before, after, bodies, store)
    finally:
        kept.close()
    return Outcome.DONE


@command.command()
@click.argument("house")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@store_option
@exits
def write(house: str, file: Path, store: StorePlace) -> Outcome:
    """Write HOUSE, as it stands in the store, to a house FILE that isn't there yet."""
    kept = open_to_read(store)
    try:
        found = house_named(kept, house)
    finally:
        kept.close()
    write_new_text(file, house_text(found.document))
    speak(
        say(
            "{found} is in {file}, as it stands in the store.",
            found=found.name,
            file=file,
        )
    )
    return Outcome.DONE


def _listed(path: StorePlace) -> Outcome:
    store = open_to_read(path)
    try:
        houses = all_houses(store)
    finally:
        store.close()
    for house in houses:
        read = (
            say("{read} of {asked} lines read", read=house.now.read, asked=house.now.asked)
            if house.now.asked
            else say("no opening")
        )
        count = say_many("{count} entry", "{count} entries", count=len(house.entries))
        revision = (
            say("revision {revisions}", revisions=len(house.revisions))
            if house.revisions
            else say("no revision yet")
        )
        speak(f"{house.name}: {read}, {revision}, {count}")
        stale = {plan.number for plan in stale_plans(house)}
        for plan in house.plans:
            how = say("STALE: made from older readings") if plan.number in stale else say("current")
            speak(say("  sheets in {said}: {how}", said=plan.said.get("folder"), how=how))
    speak(f"\nStore: {path}")
    return Outcome.DONE


def _changes(
    device: str, house: KeptHouse, document: dict[str, object], text: str
) -> tuple[Body, ...]:
    """Return what the file changed since it was last put in, or the whole file if that is simpler.

    It is held against what this laptop itself last wrote, or what the others that put files in did:
    what came from phones isn't in the file, and isn't taken out by it.
    """
    everything = entries_of(house)
    with_files = {entry["device"] for entry in everything if entry["what"] == "opened-file"}
    own = [entry for entry in everything if entry["device"] == device]
    own = own or [entry for entry in everything if entry["device"] in with_files]
    base = folded(own or everything).document
    changes = file_changes(without_days(base), document, everything)
    if changes is not None and _come_out(own or everything, changes, document):
        return changes
    return ({"what": "opened-file", "text": text},)


def _come_out(entries: object, changes: tuple[Body, ...], document: dict[str, object]) -> bool:
    """Tell whether a few entries make the house what the file says."""
    written = list(entries)  # type: ignore[call-overload]
    last = max(entry["counter"] for entry in written)
    head = {"device": written[-1]["device"], "at": "", "house": written[-1]["house"]}
    more = [{**head, "counter": last + n, **body} for n, body in enumerate(changes, start=1)]
    for each in more:
        if "over" in each:
            each["over"] = [{"device": e["device"], "counter": e["counter"]} for e in written]
    return bool(without_days(folded([*written, *more]).document) == document)


def _say_added(
    before: KeptHouse | None, after: KeptHouse, bodies: tuple[Body, ...], store: StorePlace
) -> None:
    if before is None:
        speak(
            say(
                "{after} is in the store: {entry}.",
                after=after.name,
                entry=entry_words(bodies[0]),
            )
        )
    elif not bodies:
        speak(
            say(
                "{after}: nothing was changed in the file since it was last put in.",
                after=after.name,
            )
        )
    else:
        speak(
            say(
                "{after} was in the store already; what was changed in the file:",
                after=after.name,
            )
        )
        for body in bodies[:_SHOWN]:
            speak(f"  {entry_words(body)}")
        if len(bodies) > _SHOWN:
            speak(
                say(
                    "  and {bodies} more; `longpoint history` lists them",
                    bodies=len(bodies) - _SHOWN,
                )
            )
    for line in effect_lines(before, after):
        speak(line)
    speak(f"Store: {store}")
