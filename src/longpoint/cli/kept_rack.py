"""The rack of the store: as it stands, its history, and an entry of it taken back."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from longpoint.cli.data_folder import new_name
from longpoint.cli.store_places import StorePlace, open_store, open_to_read
from longpoint.errors import Finding, StoreError, SurveyError
from longpoint.journal import Key, counting, in_order
from longpoint.speech.said import say
from longpoint.store import HouseStore
from longpoint.store.records import Numbered
from longpoint.survey.rack import RACK_KEY, Rack, rack_changes, rack_now, rack_words


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptRack:
    """The rack as it stands in the store.

    Attributes:
        entries: What was written of it, in the order in which it came.
        rack: As it stands; an empty one where nothing was written yet.
        findings: What is to be mended by hand.
    """

    entries: tuple[Numbered, ...]
    rack: Rack
    findings: tuple[Finding, ...]

    @property
    def last(self) -> int:
        """Number of its last entry; 0: there is none."""
        return self.entries[-1].number if self.entries else 0


def rack_in_store(place: StorePlace) -> KeptRack:
    """Return the rack of a store.

    Raises:
        StoreError: The store can't be read, or what is kept isn't as it was written.
        SurveyError: What was written comes to no rack.
    """
    store = open_to_read(place)
    try:
        return kept_rack(store)
    finally:
        store.close()


def kept_rack(store: HouseStore) -> KeptRack:
    """Return the rack of an open store; as `rack_in_store`."""
    entries = store.entries(RACK_KEY)
    now = rack_now(each.entry for each in entries)
    return KeptRack(entries=entries, rack=now.rack, findings=now.findings)


def save_rack_in_store(place: StorePlace, before: Rack, after: Rack, at: str) -> None:
    """Write what was done to the rack.

    Args:
        place: The store.
        before: The rack as it was read.
        after: As it is to be.
        at: The moment.

    Raises:
        StoreError: Somebody else changed it meanwhile, or it can't be written.
    """
    store = open_store(place, new_name())
    try:
        kept = kept_rack(store)
        if kept.rack != before:
            raise StoreError(
                say("The rack in the store was to be written."),
                say("Somebody else changed it in the meantime."),
                say("Do it again: it is read anew. Nothing was written."),
            )
        changes = rack_changes(before, after)
        if changes:
            store.write(RACK_KEY, at, changes, kept.last)
    finally:
        store.close()


def rack_history_lines(kept: KeptRack, device: str) -> Iterator[str]:
    """Yield a line for each entry of the rack.

    Args:
        kept: The rack.
        device: Name under which this store writes.
    """
    numbers = {each.key: each.number for each in kept.entries}
    width = len(str(kept.last))
    for each in kept.entries:
        entry = each.entry
        words = rack_words(entry)
        if entry["what"] == "undo":
            words += str(numbers.get(Key(entry["of"]["device"], entry["of"]["counter"]), "?"))
        who = say(" (on {entry})", entry=entry["device"][:6]) if entry["device"] != device else ""
        yield f"{each.number:>{width}}  {entry['at'][:16].replace('T', ' '):16}  {words}{who}"


def undo_in_rack(place: StorePlace, number: int | None, at: str) -> tuple[str, ...]:
    """Take an entry of the rack back; returns what is to be said.

    Args:
        place: The store.
        number: Of the entry, in its history; None: the last that counts.
        at: The moment.

    Raises:
        StoreError: There is none of that number, or it doesn't count.
    """
    open_to_read(place).close()
    store = open_store(place, new_name())
    try:
        kept = kept_rack(store)
        chosen = _chosen(kept, number)
        of = {"device": chosen.key.device, "counter": chosen.key.counter}
        body = {"what": "undo", "of": of}
        _refuse_spoilt(kept, store.device, body)
        (undo,) = store.write(RACK_KEY, at, [body], kept.last)
        after = kept_rack(store)
    finally:
        store.close()
    back = next(each.number for each in after.entries if each.entry == undo)
    words = rack_words(chosen.entry)
    if chosen.entry["what"] == "undo":
        words = say("an undo; what it took back counts again")
    return (
        say("Taken back in the rack: {number}, {words}.", number=chosen.number, words=words),
        say("To have it back: longpoint undo --rack {number}", number=back),
    )


def _refuse_spoilt(kept: KeptRack, device: str, undo: Mapping[str, object]) -> None:
    """Refuse what would leave offcuts of a section that isn't described."""
    highest = max(each.entry["counter"] for each in kept.entries)
    head = {"device": device, "counter": highest + 1, "at": "", "house": RACK_KEY}
    try:
        rack_now([*(each.entry for each in kept.entries), {**head, **undo}])
    except SurveyError as error:
        raise StoreError(
            say("An entry of the rack was to be taken back."),
            say(
                "Without it the rack can't be read. {read} {wrong}",
                read=error.read,
                wrong=error.wrong,
            ),
            say("Take back first what was put up after it. Nothing was written."),
        ) from None


def _chosen(kept: KeptRack, number: int | None) -> Numbered:
    count = counting(in_order(each.entry for each in kept.entries))
    there = [each for each in kept.entries if each.entry in count]
    # An undo counts as long as what it takes back doesn't.
    undone = [e for e in kept.entries if e.entry["what"] == "undo" and _is_undone(kept, e, count)]
    found = [each for each in (*there, *undone) if number in (None, each.number)]
    if number is None:
        found = there[-1:]
    if not found:
        raise StoreError(
            say("An entry of the rack was to be taken back."),
            say("There is none of that number that counts now."),
            say("Take the number from `longpoint history --rack`."),
        )
    return found[0]


def _is_undone(kept: KeptRack, undo: Numbered, count: tuple[object, ...]) -> bool:
    of = undo.entry["of"]
    taken = [e for e in kept.entries if e.key == Key(of["device"], of["counter"])]
    return bool(taken) and taken[0].entry not in count
