"""`longpoint history`: everything that was written of a house."""

from collections.abc import Iterator, Mapping

import click

from longpoint.cli.kept_houses import KeptHouse, code_of, house_named
from longpoint.cli.kept_rack import kept_rack, rack_history_lines
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import one_of, rack_option, store_option
from longpoint.cli.store_places import StorePlace, open_to_read
from longpoint.journal import Key
from longpoint.phone.entry_words import entry_words
from longpoint.speech.said import say
from longpoint.store import Milestone, MilestoneKind


@click.command(name="history")
@click.argument("house", required=False)
@rack_option
@store_option
@exits
def command(house: str | None, is_rack: bool, store: StorePlace) -> Outcome:
    """List all that was written of HOUSE, with its revisions and the sheets made from them.

    The number in front is what `longpoint undo` takes. With --rack instead of a house: all that was
    written of the rack of offcuts.
    """
    one_of(house, is_rack)
    kept = open_to_read(store)
    if house is None:
        try:
            rack, device = kept_rack(kept), kept.device
        finally:
            kept.close()
        for line in rack_history_lines(rack, device):
            speak(line)
        if not rack.entries:
            speak(say("Nothing was written of a rack yet."))
        return Outcome.DONE
    try:
        found, device = house_named(kept, house), kept.device
    finally:
        kept.close()
    speak(f"{found.name}\n{'=' * len(found.name)}")
    for line in history_lines(found, device):
        speak(line)
    return Outcome.DONE


def history_lines(house: KeptHouse, device: str) -> Iterator[str]:
    """Yield a line for each entry, and below it what came of it.

    Args:
        house: The house.
        device: Name under which this store writes.
    """
    numbers = {each.key: each.number for each in house.entries}
    revisions = {each.number: n for n, each in enumerate(house.revisions, start=1)}
    width = len(str(house.entries[-1].number))
    code = code_of(house.document)
    for each in house.entries:
        entry = each.entry
        words = entry_words(entry) + _of(entry, numbers)
        who = (
            ""
            if entry["device"] == device
            else say(
                " (on {entry})",
                entry=entry["device"][:6],
            )
        )
        yield f"{each.number:>{width}}  {_when(entry['at'])}  {words}{who}"
        for milestone in house.milestones:
            if milestone.after == each.number:
                said = _milestone(house, milestone, revisions, code)
                yield f"{'':>{width}}  {'':16}  {said}"


def _milestone(
    house: KeptHouse, milestone: Milestone, revisions: Mapping[int, int], code: str
) -> str:
    match milestone.kind:
        case MilestoneKind.REVISION:
            known = milestone.code or say("can't be planned")
            return say(
                "-> revision {revisions} of the readings, {known}",
                revisions=revisions[milestone.number],
                known=known,
            )
        case MilestoneKind.PLAN:
            stale = "" if milestone.code == code else say("; STALE: the readings are others now")
            last = milestone in house.plans
            gone = "" if last else say("; planned again since")
            made = say(
                "-> sheets made from revision {revision_at}",
                revision_at=house.revision_at(milestone),
            )
            return say(
                "{made} into {said}{stale}",
                made=made,
                said=milestone.said.get("folder"),
                stale=stale if last else gone,
            )


def _of(entry: Mapping[str, object], numbers: Mapping[Key, int]) -> str:
    """Return which entry is taken back."""
    of = entry.get("of")
    if entry["what"] != "undo" or not isinstance(of, Mapping):
        return ""
    number = numbers.get(Key(str(of.get("device")), int(of.get("counter", 0))))
    return str(number) if number else say("one that isn't here yet")


def _when(at: str) -> str:
    return at[:16].replace("T", " ").ljust(16)
