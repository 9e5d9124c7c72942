"""A file that holds a store: opened, made, and brought up to this version's tables."""

import sqlite3
from collections.abc import Sequence
from pathlib import Path
from typing import Final

from longpoint.errors import StoreError
from longpoint.speech.said import say
from longpoint.store.disk import beside, put_in_place, settle_folder
from longpoint.store.schema import APPLICATION_ID, MIGRATIONS, Migration
from longpoint.store.sqlite_words import told
from longpoint.store.tail import Tail

WAITS_S: Final = 10.0
"""How long to wait for another longpoint that writes."""


def connected(path: Path, *, writes: bool = True) -> sqlite3.Connection:
    """Return a connection to a file, with every setting that a store relies on.

    Args:
        path: The file; one to write to is made when it isn't there.
        writes: False: nothing is changed, not even by bringing it up to date.

    Raises:
        StoreError: The file can't be opened.
    """
    with told(path, "written" if writes else "read"):
        return _writing(path) if writes else _reading(path)


def version_of(connection: sqlite3.Connection, path: Path) -> int:
    """Return the version of a store's tables; 0 for a file in which there is nothing yet.

    Raises:
        StoreError: The file is something else.
    """
    with told(path, "read"):
        application = connection.execute("PRAGMA application_id").fetchone()[0]
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
        tables = connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0]
    if not application and not version and not tables:
        return 0
    if application != APPLICATION_ID or not version:
        raise StoreError(
            say("The file {path} was to be a store of houses.", path=path.name),
            say("It is a database of something else."),
            say("Name another place with --store."),
        )
    return version


def bring_up_to_date(
    connection: sqlite3.Connection,
    path: Path,
    device: str,
    migrations: Sequence[Migration] = MIGRATIONS,
) -> None:
    """Make what a store of this version has, each step in one transaction, a copy kept first.

    Args:
        connection: To the file.
        path: The file.
        device: Name under which a new store writes.
        migrations: The steps.

    Raises:
        StoreError: The store is of a newer longpoint, or a step can't be made; what was done before
            that step holds, and nothing of it.
    """
    version = refuse_newer(connection, path, migrations)
    if 0 < version < len(migrations):
        keep_copy(connection, path, beside(path, f"before-v{len(migrations)}"))
    for number, migration in enumerate(migrations, start=1):
        if version_of(connection, path) < number:
            _migrate(connection, path, device, number, migration)
    if not version:
        settle_folder(path.parent)


def refuse_newer(
    connection: sqlite3.Connection, path: Path, migrations: Sequence[Migration] = MIGRATIONS
) -> int:
    """Return the version of a store's tables, if this longpoint knows it.

    Raises:
        StoreError: It doesn't.
    """
    version = version_of(connection, path)
    if version > len(migrations):
        raise StoreError(
            say(
                "The store {path} has tables of version {version}.",
                path=path.name,
                version=version,
            ),
            say(
                "This longpoint knows them up to version {migrations}: a newer one made it.",
                migrations=len(migrations),
            ),
            say("Bring longpoint up to date; nothing was changed."),
        )
    return version


def keep_copy(connection: sqlite3.Connection, path: Path, target: Path) -> None:
    """Copy a store while it may be in use; the copy is one whole file, on the disk.

    Args:
        connection: To the store.
        path: Its file.
        target: Where to; what is there goes.

    Raises:
        StoreError: It can't be copied; what was there stays.
    """
    part = beside(target, "part")
    with told(path, "copied"):
        try:
            part.unlink(missing_ok=True)
            copy = sqlite3.connect(part, isolation_level=None)
            try:
                connection.backup(copy)
                copy.execute("PRAGMA journal_mode=DELETE")
            finally:
                copy.close()
            put_in_place(part, target)
        finally:
            for left in (part, beside(part, "wal"), beside(part, "shm"), beside(part, "journal")):
                left.unlink(missing_ok=True)


def _writing(path: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(path, timeout=WAITS_S, isolation_level=None)
    try:
        # In this order: the journal's mode is the first thing that touches the file.
        connection.execute("PRAGMA journal_mode=WAL")
        connection.execute("PRAGMA synchronous=FULL")
        connection.execute("PRAGMA foreign_keys=ON")
        connection.execute("PRAGMA trusted_schema=OFF")
        connection.execute("PRAGMA cell_size_check=ON")
        connection.execute("BEGIN IMMEDIATE")
        connection.execute("ROLLBACK")
    except BaseException:
        connection.close()
        raise
    return connection


def _reading(path: Path) -> sqlite3.Connection:
    try:
        return _opened(path, "mode=ro")
    except sqlite3.OperationalError:
        # On a disk that can't be written to SQLite has no place for its lock file. With no log
        # beside it, and nobody who could write, the file itself is all there is.
        log = path.with_name(f"{path.name}-wal")
        if not path.exists() or (log.exists() and log.stat().st_size):
            raise
        return _opened(path, "immutable=1")


def _opened(path: Path, how: str) -> sqlite3.Connection:
    name = f"{path.resolve().as_uri()}?{how}"
    connection = sqlite3.connect(name, uri=True, timeout=WAITS_S, isolation_level=None)
    try:
        connection.execute("PRAGMA trusted_schema=OFF")
        connection.execute("PRAGMA cell_size_check=ON")
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
    except BaseException:
        connection.close()
        raise
    return connection


def _migrate(
    connection: sqlite3.Connection, path: Path, device: str, number: int, migration: Migration
) -> None:
    with told(path, say("brought up to date")):
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Another longpoint may have made the step while this one waited.
            if version_of(connection, path) < number:
                for statement in migration.statements:
                    connection.execute(statement)
                if number == 1:
                    connection.executemany(
                        "INSERT INTO facts (name, value) VALUES (?, ?)",
                        Tail(device=device).facts().items(),
                    )
                connection.execute(f"PRAGMA application_id={APPLICATION_ID}")
                connection.execute(f"PRAGMA user_version={number}")
            connection.execute("COMMIT")
        except BaseException:
            if connection.in_transaction:
                connection.execute("ROLLBACK")
            raise
