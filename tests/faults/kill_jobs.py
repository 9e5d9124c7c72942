"""What a child of the crash proof does until it is killed; it acknowledges what is on the disk."""

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import count
from pathlib import Path
from typing import Any, Final

from longpoint.journal import Entry, as_written
from longpoint.store.copies import back_up, restore
from longpoint.store.schema import MIGRATIONS, Migration
from longpoint.store.sqlite_store import SqliteStore, open_store
from longpoint.survey.rack import RACK_KEY, RackPiece, Section, rack_changes, rack_now

AT: Final = "2026-03-02T07:15:00Z"
SECTIONS: Final = (("OG57", Section(name="OG57", width_mm=57.0, thickness_mm=18.0)),)
NEXT: Final = (
    *MIGRATIONS,
    Migration(
        does="a table more, filled from one that is there",
        statements=(
            "CREATE TABLE devices (device TEXT PRIMARY KEY, entries INTEGER NOT NULL) STRICT",
            "INSERT INTO devices SELECT device, count(*) FROM entries GROUP BY device",
            "CREATE INDEX entries_by_device ON entries (device, number)",
        ),
    ),
)
"""The tables that a later version might have."""


@dataclass(frozen=True)
class Scene:
    """Where a child works, and how it tells what is done.

    Attributes:
        folder: Its folder; the store and its backups are in it.
        acknowledge: Told of an entry's text, or of a backup's name, once it is on the disk.
        number: Of the kill, so that no two children write the same.
    """

    folder: Path
    acknowledge: Callable[[str], None]
    number: int

    @property
    def store(self) -> Path:
        """File of the store."""
        return self.folder / "houses.store"

    @property
    def backup(self) -> Path:
        """A backup that holds all that was acknowledged before."""
        return self.folder / "kept.backup"


def reading(number: int, step: int) -> dict[str, Any]:
    """Return an entry's body that no other child writes; some are longer than a page."""
    more = "x" * (6000 if step % 7 == 3 else 40)
    return {
        "what": "reading",
        "opening": f"W{number}",
        "line": "top",
        "value_text": more + f"{step}",
    }


def keep_on_writing(scene: Scene) -> None:
    """Write one entry or a few after the other, letting go of the store now and then."""
    for turn in count():
        store = open_store(scene.store, "laptop")
        for step in range(turn * 100, turn * 100 + 12):
            bodies = [reading(scene.number, step)] * (1 + step % 3)
            acknowledge(scene, store.write(f"house-{step % 4}", AT, bodies))
            acknowledge(scene, store.write(RACK_KEY, AT, put_up(store, scene, step)))
        store.close()


def put_up(store: SqliteStore, scene: Scene, step: int) -> Sequence[Mapping[str, Any]]:
    """Return what puts one more offcut up, under a label that nobody gave before."""
    rack = rack_now(each.entry for each in store.entries(RACK_KEY)).rack
    length_mm = 300.0 + scene.number + step / 100
    more, _ = replace(rack, sections=SECTIONS).with_piece(
        RackPiece(label="", section="OG57", length_mm=length_mm, put_up=date(2026, 3, 2))
    )
    return rack_changes(rack, more)


def keep_on_taking(scene: Scene) -> None:
    """Take in what another device wrote, some of it twice."""
    store = open_store(scene.store, "laptop")
    for step in count():
        head = {"device": f"phone-{scene.number}", "at": AT, "house": "house-1"}
        entries = [
            {**head, "counter": counter, **reading(scene.number, counter)}
            for counter in range(max(1, 4 * step - 2), 4 * step + 5)
        ]
        acknowledge(scene, store.take(entries).added)


def bring_up_to_date(scene: Scene) -> None:
    """Migrate a store, then write to it."""
    store = open_store(scene.store, "laptop", NEXT)
    scene.acknowledge("migrated")
    for step in count():
        acknowledge(scene, store.write("house-1", AT, [reading(scene.number, step)]))


def keep_on_copying(scene: Scene) -> None:
    """Write and copy by turns."""
    store: SqliteStore = open_store(scene.store, "laptop")
    for step in count():
        acknowledge(scene, store.write("house-1", AT, [reading(scene.number, step)]))
        target = scene.folder / f"copy-{scene.number}-{step}.backup"
        back_up(store, target)
        scene.acknowledge(f"backup {target.name}")


def bring_back(scene: Scene) -> None:
    """Restore a store that is damaged or gone, again and again."""
    for _ in count():
        restore(scene.backup, scene.store, f"restored-{scene.number}-{os.getpid()}")
        scene.acknowledge("restored")
        with scene.store.open("r+b") as file:
            file.seek(4096)
            file.write(os.urandom(3000))


def promise_too_early(scene: Scene) -> None:
    """Acknowledge before it is written: a planted fault, which the proof has to find."""
    store = open_store(scene.store, "laptop")
    for step in count(1000):
        body = {"device": "hasty", "counter": scene.number * 10_000 + step, "at": AT, "house": "h"}
        entry = {**body, **reading(scene.number, step)}
        acknowledge(scene, (entry,))
        store.take([entry])


JOBS: Final[Mapping[str, Callable[[Scene], None]]] = {
    "write": keep_on_writing,
    "take": keep_on_taking,
    "migrate": bring_up_to_date,
    "backup": keep_on_copying,
    "restore": bring_back,
}
PLANTED: Final[Mapping[str, Callable[[Scene], None]]] = {"hasty": promise_too_early}


def acknowledge(scene: Scene, entries: tuple[Entry, ...]) -> None:
    """Tell of entries, each as it has to be found again."""
    for entry in entries:
        scene.acknowledge(f"entry {as_written(entry)}")
