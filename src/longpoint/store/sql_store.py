"""A store in a database: what SQLite and PostgreSQL have in common, which is nearly all."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from longpoint.errors import Finding, StoreError
from longpoint.journal import (
    Clash,
    Entry,
    Key,
    Seen,
    as_written,
    checked_entry,
    key_of,
    lacking,
    read_entry,
    seen,
)
from longpoint.store.link import Link
from longpoint.store.milestone_text import milestone_text, read_milestone
from longpoint.store.records import Milestone, Numbered, Taken
from longpoint.store.tail import Tail, is_sum, read_tail
from longpoint.store.verify import verified

ONE_BY_ONE: Final = 50


class SqlStore:
    """A store behind a link; see `port.HouseStore` for what each call means."""

    def __init__(self, link: Link) -> None:
        self._link = link
        with link.transaction(writes=False):
            self._device = self._tail().device

    @property
    def device(self) -> str:
        """Name under which this store writes entries of its own."""
        return self._device

    def write(
        self,
        house: str,
        at: str,
        bodies: Sequence[Mapping[str, Any]],
        last: int | None = None,
    ) -> tuple[Entry, ...]:
        """Write entries of this device, counted on from the highest count of any device here."""
        with self._link.transaction(writes=True):
            self._refuse_overtaken(house, last)
            tail = self._tail()
            highest = self._highest()
            head = {"device": self._writer(tail), "at": at, "house": house}
            written = tuple(
                checked_entry({**body, **head, "counter": highest + number})
                for number, body in enumerate(bodies, start=1)
            )
            self._put(self._with_entries(tail, written))
        return written

    def take(self, entries: Iterable[Entry]) -> Taken:
        """Take in entries of any device; those here stay, and another under their key is refused.

        Raises:
            SurveyError: One of them is no entry; none was taken then.
        """
        arrived = [checked_entry(entry) for entry in entries]
        added: dict[Key, Entry] = {}
        clashes, known = [], 0
        with self._link.transaction(writes=True):
            for entry in arrived:
                key = key_of(entry)
                here = added.get(key) or self._entry(key)
                if here is None:
                    added[key] = entry
                elif as_written(here) == as_written(entry):
                    known += 1
                else:
                    clashes.append(Clash(key=key, here=here, there=entry))
            if added:
                self._put(self._with_entries(self._tail(), tuple(added.values())))
        return Taken(added=tuple(added.values()), known=known, clashes=tuple(clashes))

    def houses(self) -> tuple[str, ...]:
        """Return the keys of all houses, in the order in which they came."""
        with self._link.transaction(writes=False):
            rows = self._link.rows("SELECT house FROM houses ORDER BY place")
        return tuple(row[0] for row in rows)

    def entries(self, house: str) -> tuple[Numbered, ...]:
        """Return the entries of a house, in the order in which they came.

        Raises:
            StoreError: One of them isn't as it was written.
        """
        with self._link.transaction(writes=False):
            rows = self._link.rows(
                "SELECT e.number, e.entry, e.sum, b.sum FROM entries e"
                " LEFT JOIN entries b ON b.number = e.number - 1"
                " WHERE e.house = ? ORDER BY e.number",
                (house,),
            )
        for number, text, total, before in rows:
            if not is_sum(total, before, number, text):
                raise self._changed(f"Entry {number}")
        return tuple(Numbered(number=row[0], entry=read_entry(row[1])) for row in rows)

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        """Return the keys of the entries of a house, each with its number, as they came."""
        with self._link.transaction(writes=False):
            rows = self._link.rows(
                "SELECT number, device, counter FROM entries"
                " WHERE house = ? AND number > ? ORDER BY number",
                (house, after),
            )
        return tuple((number, Key(device, counter)) for number, device, counter in rows)

    def texts(self, keys: Sequence[Key]) -> tuple[str | None, ...]:
        """Return entries as they were written; None where there is none of that key.

        Raises:
            StoreError: One of them isn't as it was written.
        """
        with self._link.transaction(writes=False):
            return tuple(self._text(key) for key in keys)

    def highest(self) -> int:
        """Return the highest count of any device; 0 where there is none."""
        with self._link.transaction(writes=False):
            return self._highest()

    def seen(self) -> Seen:
        """Return which entries of each device are here."""
        with self._link.transaction(writes=False):
            return seen(self._keys())

    def lacking(self, there: Seen) -> tuple[Entry, ...]:
        """Return what another device lacks, in the order of counts."""
        with self._link.transaction(writes=False):
            keys = lacking(self._keys(), there)
            # Few are asked for one by one; many come quicker all at once.
            if len(keys) <= ONE_BY_ONE:
                found = {key: self._entry(key) for key in keys}
            else:
                wanted = set(keys)
                rows = self._link.rows("SELECT device, counter, entry FROM entries")
                found = {
                    key: read_entry(text)
                    for device, counter, text in rows
                    if (key := Key(device, counter)) in wanted
                }
        return tuple(entry for key in keys if (entry := found[key]) is not None)

    def keep(self, milestone: Milestone) -> Milestone:
        """Remember a revision or a plan; returns it with its number."""
        with self._link.transaction(writes=True):
            text = milestone_text(milestone)
            tail = self._tail().with_milestone(text)
            self._link.rows(
                "INSERT INTO milestones (number, house, milestone, sum) VALUES (?, ?, ?, ?)",
                (tail.milestones, milestone.house, text, tail.milestones_sum),
            )
            self._put(tail)
        return replace(milestone, number=tail.milestones)

    def milestones(self, house: str) -> tuple[Milestone, ...]:
        """Return what is remembered of a house, in the order in which it was.

        Raises:
            StoreError: Some of it isn't as it was written.
        """
        with self._link.transaction(writes=False):
            rows = self._link.rows(
                "SELECT m.number, m.milestone, m.sum, b.sum FROM milestones m"
                " LEFT JOIN milestones b ON b.number = m.number - 1"
                " WHERE m.house = ? ORDER BY m.number",
                (house,),
            )
        for number, text, total, before in rows:
            if not is_sum(total, before, number, text):
                raise self._changed(f"Milestone {number}")
        return tuple(read_milestone(row[0], row[1]) for row in rows)

    def call_itself(self, device: str) -> None:
        """Go on under another name: a copy that counts on under the old one would give keys twice.

        Args:
            device: Unique among all devices.
        """
        with self._link.transaction(writes=True):
            self._put(replace(self._tail(), device=device))
        self._device = device

    def verify(self) -> tuple[Finding, ...]:
        """Return what is wrong with what is kept; nothing where all is as it was written."""
        return verified(self._link)

    def close(self) -> None:
        """Let go of it; what was written stays."""
        self._link.close()

    def _keys(self) -> list[Key]:
        return [Key(*row) for row in self._link.rows("SELECT device, counter FROM entries")]

    def _writer(self, tail: Tail) -> str:
        """Return the name under which to write: a file's own, as it stands there now."""
        return tail.device

    def _highest(self) -> int:
        return int(self._link.rows("SELECT coalesce(max(counter), 0) FROM entries")[0][0])

    def _tail(self) -> Tail:
        facts = dict(self._link.rows("SELECT name, value FROM facts"))
        return read_tail(facts, self._link.name)

    def _put(self, tail: Tail) -> None:
        for name, value in replace(tail, changes=tail.changes + 1).facts().items():
            self._link.rows("UPDATE facts SET value = ? WHERE name = ?", (value, name))

    def _entry(self, key: Key) -> Entry | None:
        rows = self._link.rows(
            "SELECT entry FROM entries WHERE device = ? AND counter = ?", (key.device, key.counter)
        )
        return read_entry(rows[0][0]) if rows else None

    def _text(self, key: Key) -> str | None:
        rows = self._link.rows(
            "SELECT e.number, e.entry, e.sum, b.sum FROM entries e"
            " LEFT JOIN entries b ON b.number = e.number - 1"
            " WHERE e.device = ? AND e.counter = ?",
            (key.device, key.counter),
        )
        for number, text, total, before in rows:
            if not is_sum(total, before, number, text):
                raise self._changed(f"Entry {number}")
            return str(text)
        return None

    def _with_entries(self, tail: Tail, entries: Sequence[Entry]) -> Tail:
        houses = {row[0] for row in self._link.rows("SELECT house FROM houses")}
        for entry in entries:
            if entry["house"] not in houses:
                houses.add(entry["house"])
                self._link.rows(
                    "INSERT INTO houses (house, place) VALUES (?, ?)", (entry["house"], len(houses))
                )
            text = as_written(entry)
            tail = tail.with_entry(text)
            self._link.rows(
                "INSERT INTO entries (device, counter, number, house, entry, sum)"
                " VALUES (?, ?, ?, ?, ?, ?)",
                (*key_of(entry), tail.entries, entry["house"], text, tail.entries_sum),
            )
        return tail

    def _refuse_overtaken(self, house: str, last: int | None) -> None:
        if last is None:
            return
        statement = "SELECT coalesce(max(number), 0) FROM entries WHERE house = ?"
        if self._link.rows(statement, (house,))[0][0] != last:
            raise StoreError(
                f"Something was to be written to the store {self._link.name}.",
                "Somebody else wrote to the same in the meantime.",
                "Do it again: it is read anew. Nothing was written.",
            )

    def _changed(self, what: str) -> StoreError:
        return StoreError(
            f"{what} of the store {self._link.name} was read.",
            "It isn't as it was written: the file is damaged.",
            "Cut nothing from this house. `longpoint verify` says how far it goes; `longpoint "
            "restore` takes your last backup and what is still sound here.",
        )
