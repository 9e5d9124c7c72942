"""Backups of a store, and how one comes back: whatever happens, nothing that was kept goes."""

import contextlib
import shutil
from dataclasses import dataclass
from itertools import count
from pathlib import Path

from longpoint.errors import StoreError
from longpoint.journal import Clash, Entry
from longpoint.speech.said import say
from longpoint.store.disk import beside, put_in_place, settle, settle_folder
from longpoint.store.salvage import Salvaged, salvaged
from longpoint.store.seal import seal_path
from longpoint.store.sqlite_store import SqliteStore, open_store, open_to_read
from longpoint.store.sqlite_words import told


@dataclass(frozen=True, slots=True, kw_only=True)
class Restored:
    """What came of restoring a backup.

    Attributes:
        entries: How many the store holds now.
        added: How many came from the backup.
        salvaged: How many came from the damaged store and aren't in the backup.
        lost: How many the damaged store held that are nowhere now; None: nobody can tell.
        set_aside: Where the damaged store lies; None: it was sound, or there was none.
        clashes: Entries of the backup that were refused: others stand under their keys.
    """

    entries: int
    added: int
    salvaged: int = 0
    lost: int | None = 0
    set_aside: Path | None = None
    clashes: tuple[Clash, ...] = ()


def back_up(store: SqliteStore, target: Path) -> int:
    """Copy a store to a file that isn't there yet, and look through the copy.

    Args:
        store: The store; it may be in use.
        target: Where to.

    Returns:
        How many entries the copy holds.

    Raises:
        StoreError: The file is there, can't be written, or the copy isn't sound.
    """
    with told(target, "written"):
        is_there = target.exists()
    if is_there:
        raise StoreError(
            say("A backup was to be written to {target}.", target=target.name),
            say("There is a file of that name, and it may be an older backup."),
            say("Name another file, or a folder: then the name is found for you."),
        )
    with told(target, "written"):
        target.parent.mkdir(parents=True, exist_ok=True)
    store.copy_to(target)
    copy = open_to_read(target)
    try:
        _refuse_damaged(copy)
        copy.seal_as_it_is()
        return len(copy.lacking({}))
    except StoreError:
        target.unlink(missing_ok=True)
        raise
    finally:
        copy.close()


def restore(backup: Path, path: Path, device: str) -> Restored:
    """Bring a backup back; what the store holds beside it stays.

    Where there is no store, the backup becomes it. A sound store takes in what it lacks. A damaged
    one is set aside, the backup takes its place, and what is still sound in the damaged one is
    taken in.

    Args:
        backup: File of the backup.
        path: File of the store.
        device: Name under which the store writes from now on, unless it was sound.

    Raises:
        StoreError: The backup isn't sound, or the store can't be written; the store is as it was.
    """
    copy = open_to_read(backup)
    try:
        _refuse_damaged(copy)
        with told(path, "read"):
            is_there = path.exists()
        if is_there and _is_sound(path):
            return _into_sound(copy, path, device)
        return _in_place(copy, path, device, is_there=is_there)
    finally:
        copy.close()


def _into_sound(copy: SqliteStore, path: Path, device: str) -> Restored:
    store = open_store(path, device)
    try:
        taken = store.take(copy.lacking({}))
        return Restored(
            entries=len(store.lacking({})), added=len(taken.added), clashes=taken.clashes
        )
    finally:
        store.close()


def _in_place(copy: SqliteStore, path: Path, device: str, *, is_there: bool) -> Restored:
    found = salvaged(path) if is_there else Salvaged()
    part = beside(path, "restored")
    with told(path, "written"):
        path.parent.mkdir(parents=True, exist_ok=True)
        _clear(part)
    try:
        copy.copy_to(part)
        entries, more = _renewed(part, device, found.entries)
        set_aside = _set_aside(path) if is_there else None
        with told(path, "written"):
            # A log of the old file must never be read with the new one.
            for ending in ("-wal", "-shm"):
                path.with_name(path.name + ending).unlink(missing_ok=True)
            seal_path(path).unlink(missing_ok=True)
            put_in_place(part, path)
    finally:
        _clear(part)
    open_store(path, device).close()
    return Restored(
        entries=entries,
        added=entries - more,
        salvaged=more,
        lost=_lost(found, entries) if is_there else 0,
        set_aside=set_aside,
    )


def _renewed(part: Path, device: str, more: tuple[Entry, ...]) -> tuple[int, int]:
    store = open_store(part, device)
    try:
        store.call_itself(device)
        added = store.take(more).added
        entries = len(store.lacking({}))
        _refuse_damaged(store)
        store.leave_one_file()
        return entries, len(added)
    finally:
        store.close()


def _lost(found: Salvaged, entries: int) -> int | None:
    return max(0, found.due - entries) if found.due else None


def _set_aside(path: Path) -> Path:
    """Copy a damaged store with its log to a name of its own."""
    with told(path, "copied"):
        for number in count(1):
            target = beside(path, f"damaged-{number}")
            if target.exists():
                continue
            for ending in ("", "-wal"):
                source = path.with_name(path.name + ending)
                if source.exists():
                    shutil.copyfile(source, target.with_name(target.name + ending))
                    settle(target.with_name(target.name + ending))
            settle_folder(target.parent)
            return target
    raise AssertionError


def _is_sound(path: Path) -> bool:
    try:
        store = open_to_read(path)
    except StoreError:
        return False
    try:
        return not store.verify()
    finally:
        store.close()


def _refuse_damaged(store: SqliteStore) -> None:
    found = store.verify()
    if found:
        raise StoreError(
            say("The backup {path} was looked through.", path=store.path.name),
            say(
                "It isn't as it was written. {read} {wrong}",
                read=found[0].read,
                wrong=found[0].wrong,
            ),
            say(
                "Take an older backup, or copy this one again from where it came. "
                "Nothing was changed."
            ),
        )


def _clear(part: Path) -> None:
    for left in (part, *(part.with_name(part.name + end) for end in ("-wal", "-shm", ".seal"))):
        with contextlib.suppress(FileNotFoundError):
            left.unlink()
