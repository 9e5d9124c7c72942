"""Three devices that pass entries on now and then: they come to one house, and nothing is lost."""

import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, Final

import pytest
from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from longpoint.journal import Entry, Key, Seen, key_of, lacking, merged, seen
from longpoint.phone.entries import LineState
from longpoint.phone.fold import fold
from longpoint.phone.messages import Fold
from longpoint.phone.opening_lines import lines_of
from longpoint.store.sqlite_store import SqliteStore, open_store
from longpoint.survey.openings import OpeningKind
from tests.saw_states import after_cutting, as_text, from_text

HOUSE: Final = "h"
DEVICES: Final = ("laptop", "phone", "tablet")
OPENINGS: Final = ("W1", "W2")
LINES: Final = ("top", "left")
APART_MM: Final = next(e.apart for e in lines_of(OpeningKind.WINDOW) if e.line == "top")


@dataclass
class Phone:
    """A device that keeps its journal as a browser does: entries by key, in no order."""

    name: str
    journal: dict[Key, Entry] = field(default_factory=dict)

    def write(self, body: dict[str, Any], at: str) -> Entry:
        last = max((key.counter for key in self.journal), default=0)
        entry = {**body, "device": self.name, "counter": last + 1, "at": at, "house": HOUSE}
        self.journal[key_of(entry)] = entry
        return entry

    def take(self, entries: list[Entry]) -> None:
        found = merged(self.journal.values(), entries)
        assert found.clashes == ()
        self.journal = {key_of(entry): entry for entry in found.entries}

    def entries(self) -> tuple[Entry, ...]:
        return tuple(self.journal.values())

    def seen(self) -> Seen:
        return seen(self.journal)

    def lacking(self, there: Seen) -> tuple[Entry, ...]:
        return tuple(self.journal[key] for key in lacking(self.journal, there))


@dataclass
class Laptop:
    """The same with the real store behind it."""

    store: SqliteStore

    def write(self, body: dict[str, Any], at: str) -> Entry:
        return self.store.write(HOUSE, at, [body])[0]

    def take(self, entries: list[Entry]) -> None:
        assert self.store.take(entries).clashes == ()

    def entries(self) -> tuple[Entry, ...]:
        return tuple(each.entry for each in self.store.entries(HOUSE))

    def seen(self) -> Seen:
        return self.store.seen()

    def lacking(self, there: Seen) -> tuple[Entry, ...]:
        return self.store.lacking(there)


@contextmanager
def in_memory() -> Iterator[Path]:
    """Yield a folder in memory where there is one: nothing here is about the disk."""
    folder = "/dev/shm" if os.access("/dev/shm", os.W_OK) else None
    with TemporaryDirectory(dir=folder) as name:
        yield Path(name)


class Crew(RuleBasedStateMachine):
    """Reads, mends, cuts and takes back on three devices; sends in any order, twice, or never."""

    def __init__(self) -> None:
        super().__init__()
        self._folder = in_memory()
        store = open_store(self._folder.__enter__() / "houses.store", DEVICES[0])
        self.devices: list[Laptop | Phone] = [Laptop(store), *map(Phone, DEVICES[1:])]
        self.written: dict[Key, Entry] = {}
        self.under_way: list[tuple[int, list[Entry]]] = []

    @initialize()
    def begin(self) -> None:
        made = {"what": "house-made", "name": "Wren", "units": "mm", "dialect": "uk"}
        self._write(0, made)
        for opening in OPENINGS:
            where = {"opening": opening, "room": "Hall", "kind": "window", "trim": "all-round"}
            self._write(0, {"what": "opening-added", **where})
        first = list(self.devices[0].entries())
        for device in self.devices[1:]:
            device.take(first)

    def _write(self, device: int, body: dict[str, Any], clock_s: int = 0) -> Entry:
        # A clock may be years off; nothing may hang on it.
        entry = self.devices[device].write(body, f"{2026 + clock_s % 7 - 3}-03-02T07:15:00Z")
        self.written[key_of(entry)] = entry
        return entry

    @rule(
        device=st.integers(0, 2),
        opening=st.sampled_from(OPENINGS),
        line=st.sampled_from(LINES),
        value=st.sampled_from((1000, 1001, 1012, 1021)),
        again=st.booleans(),
        clock_s=st.integers(0, 100),
    )
    def read(
        self, device: int, opening: str, line: str, value: int, again: bool, clock_s: int
    ) -> None:
        """Read a line: what its author sees of it is superseded, or held against it."""
        said = {"what": "reading", "opening": opening, "line": line, "unit": "mm", "again": again}
        here = [e for e in self.devices[device].entries() if e["what"] == "reading"]
        over = [
            {"device": e["device"], "counter": e["counter"]}
            for e in here
            if (e["opening"], e["line"]) == (opening, line)
        ]
        body = {**said, "value_text": str(value), "over": [] if again else over}
        self._write(device, body, clock_s)

    @rule(device=st.integers(0, 2), clock_s=st.integers(0, 100))
    def take_back(self, device: int, clock_s: int) -> None:
        """Take back the last reading that this device sees."""
        found = [e for e in self.devices[device].entries() if e["what"] in ("reading", "undo")]
        if found:
            of = max(found, key=lambda e: (e["counter"], e["device"]))
            body = {"device": of["device"], "counter": of["counter"]}
            self._write(device, {"what": "undo", "of": body}, clock_s)

    @rule(device=st.integers(0, 2), stick=st.integers(0, 2), clock_s=st.integers(0, 100))
    def cut(self, device: int, stick: int, clock_s: int) -> None:
        """Cut what is next on a stick, as this device sees it."""
        state = from_text(fold(self.devices[device].entries()).saw).state
        waiting = state.sticks[stick].next
        if waiting:
            piece = waiting[0].piece
            after = as_text(after_cutting(state, piece))
            self._write(
                device, {"what": "cut-news", "told": f"cut {piece}", "state": after}, clock_s
            )

    @rule(sender=st.integers(0, 2), receiver=st.integers(0, 2))
    def send(self, sender: int, receiver: int) -> None:
        """Send what the other lacks; it is under way until it arrives, or for ever."""
        entries = self.devices[sender].lacking(self.devices[receiver].seen())
        self.under_way.append((receiver, list(entries)))

    @rule(data=st.data(), stays=st.booleans())
    def arrive(self, data: st.DataObject, stays: bool) -> None:
        """Let something arrive: out of turn, shuffled, in part, perhaps once more later."""
        if self.under_way:
            number = data.draw(st.integers(0, len(self.under_way) - 1))
            receiver, entries = self.under_way[number]
            some = data.draw(st.permutations(entries))[: data.draw(st.integers(0, len(entries)))]
            self.devices[receiver].take([*some, *some[:2]])
            if not stays:
                del self.under_way[number]

    @invariant()
    def nobody_forgets(self) -> None:
        """What a device wrote stands there as it was written."""
        for device in self.devices:
            for entry in device.entries():
                assert self.written[key_of(entry)] == dict(entry)

    def teardown(self) -> None:
        """Bring all together again, and look."""
        try:
            for _ in range(3):
                for sender in self.devices:
                    for receiver in self.devices:
                        if sender is not receiver:
                            receiver.take(list(sender.lacking(receiver.seen())))
            houses = [fold(device.entries()) for device in self.devices]
            for device in self.devices:
                assert {key_of(e) for e in device.entries()} == self.written.keys()
            assert houses[0] == houses[1] == houses[2]
            if self.written:
                self._look(houses[0])
        finally:
            laptop = self.devices[0]
            assert isinstance(laptop, Laptop)
            assert laptop.store.verify() == ()
            laptop.store.close()
            self._folder.__exit__(None, None, None)

    def _look(self, house: Fold) -> None:
        cut = {e["told"][4:] for e in self.written.values() if e["what"] == "cut-news"}
        assert cut <= from_text(house.saw).state.done
        for opening in house.openings:
            for line in LINES:
                texts = self._standing(opening.mark, line)
                if len(texts) == 2 and abs(texts[0] - texts[1]) > APART_MM:
                    assert opening.state is LineState.HELD, (opening.mark, line, texts)

    def _standing(self, opening: str, line: str) -> list[int]:
        """Return the readings that count and that no other took the place of, by hand."""
        undone: set[Key] = set()
        counting: list[Entry] = []
        for key in sorted(self.written, key=lambda k: (k.counter, k.device), reverse=True):
            entry = self.written[key]
            if key in undone:
                continue
            if entry["what"] == "undo":
                undone.add(Key(entry["of"]["device"], entry["of"]["counter"]))
            else:
                counting.append(entry)
        readings = [
            e
            for e in counting
            if e["what"] == "reading" and (e["opening"], e["line"]) == (opening, line)
        ]
        over = {Key(o["device"], o["counter"]) for e in readings for o in e["over"]}
        return [int(e["value_text"]) for e in readings if key_of(e) not in over]


class LongCrew(Crew):
    """The same for longer."""


TestSync = Crew.TestCase
TestSync.settings = settings(max_examples=40, stateful_step_count=30, deadline=None)

TestSyncAtLength = pytest.mark.long(LongCrew.TestCase)
TestSyncAtLength.settings = settings(max_examples=200, stateful_step_count=50, deadline=None)
"""10,000 steps."""
