"""A store in a file of SQLite: a write-ahead log, each write on the disk before it comes back."""

import contextlib
import sqlite3
from collections.abc import Sequence
from pathlib import Path

from longpoint.errors import StoreError
from longpoint.store.schema import MIGRATIONS, Migration
from longpoint.store.seal import Seal, sum_of_file, write_seal
from longpoint.store.sql_store import SqlStore
from longpoint.store.sqlite_file import (
    bring_up_to_date,
    connected,
    keep_copy,
    refuse_newer,
    version_of,
)
from longpoint.store.sqlite_link import SqliteLink
from longpoint.store.sqlite_words import told


class SqliteStore(SqlStore):
    """A store in a file; see `port.HouseStore`."""

    def __init__(self, connection: sqlite3.Connection, path: Path, *, writes: bool) -> None:
        self.path = path
        self._connection = connection
        self._writes = writes
        self._file = SqliteLink(connection, path)
        super().__init__(self._file)

    def copy_to(self, target: Path) -> None:
        """Copy the store while it may be in use, as one whole file on the disk.

        Raises:
            StoreError: It can't be copied.
        """
        keep_copy(self._connection, self.path, target)

    def seal(self) -> bool:
        """Lay a sum over every byte beside the file.

        Returns:
            False when another longpoint is busy with the file: the seal before stays.

        Raises:
            StoreError: The seal can't be written.
        """
        with told(self.path, "sealed"):
            self._connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
        with self._file.transaction(writes=True):
            if not self._file.log_is_empty():
                return False
            seal = self._seal_now()
        with told(self.path, "sealed"):
            write_seal(self.path, seal)
        return True

    def seal_as_it_is(self) -> None:
        """Seal a copy that nobody writes to, without touching the file.

        Raises:
            StoreError: The seal can't be written.
        """
        with self._file.transaction(writes=False):
            seal = self._seal_now()
        with told(self.path, "sealed"):
            write_seal(self.path, seal)

    def leave_one_file(self) -> None:
        """Write all into the file itself, so that it may be moved without its log."""
        with told(self.path, "written"):
            self._connection.execute("PRAGMA journal_mode=DELETE").fetchall()
        self._writes = False

    def _seal_now(self) -> Seal:
        tail = self._file.tail()
        return Seal(
            version=version_of(self._connection, self.path),
            changes=tail.changes,
            entries=tail.entries,
            sha256=sum_of_file(self.path),
        )

    def close(self) -> None:
        """Seal the file if it may be written to, and let go of it; what was written stays."""
        try:
            if self._writes:
                # Without a seal nothing is lost but a check that `verify` could have made.
                with contextlib.suppress(StoreError):
                    self.seal()
        finally:
            super().close()


def open_store(
    path: Path, device: str, migrations: Sequence[Migration] = MIGRATIONS
) -> SqliteStore:
    """Return the store in a file to read and write; it is made when it isn't there.

    Args:
        path: The file.
        device: Name under which the store writes if it is made now; unique among all devices.
        migrations: The steps that make its tables.

    Raises:
        StoreError: The file can't be used.
    """
    with told(path, "written"):
        path.parent.mkdir(parents=True, exist_ok=True)
    connection = connected(path)
    try:
        bring_up_to_date(connection, path, device, migrations)
        return SqliteStore(connection, path, writes=True)
    except BaseException:
        connection.close()
        raise


def open_to_read(path: Path) -> SqliteStore:
    """Return the store in a file, to read only; also from a disk that can't be written to.

    Raises:
        StoreError: There is none, or it can't be used.
    """
    with told(path, "read"):
        is_there = path.exists()
    if not is_there:
        raise StoreError(
            f"The store {path} was to be read.",
            "There is none yet.",
            "Put a house into it with `longpoint houses add`, or name another with --store.",
        )
    connection = connected(path, writes=False)
    try:
        if not refuse_newer(connection, path):
            raise StoreError(
                f"The store {path.name} was to be read.",
                "There is nothing in it.",
                "Put a house into it with `longpoint houses add`.",
            )
        return SqliteStore(connection, path, writes=False)
    except BaseException:
        connection.close()
        raise
