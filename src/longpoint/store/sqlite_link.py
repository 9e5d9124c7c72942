"""SQLite behind the link: one connection, one file."""

import contextlib
import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from longpoint.errors import Finding
from longpoint.store.seal import read_seal, sum_of_file
from longpoint.store.sqlite_file import version_of
from longpoint.store.sqlite_words import told
from longpoint.store.tail import Tail, read_tail
from longpoint.store.verify import damaged


class SqliteLink:
    """A connection to the file of a store; see `link.Link`."""

    def __init__(self, connection: sqlite3.Connection, path: Path) -> None:
        self._connection = connection
        self._path = path

    @property
    def name(self) -> str:
        """Name of the file."""
        return self._path.name

    @contextmanager
    def transaction(self, *, writes: bool) -> Iterator[None]:
        """Do what is inside as a whole, on the disk at its end, or not at all if it raises."""
        with told(self._path, "written" if writes else "read"):
            self._connection.execute("BEGIN IMMEDIATE" if writes else "BEGIN")
            try:
                yield
                self._connection.execute("COMMIT")
            except BaseException:
                with contextlib.suppress(sqlite3.Error):
                    if self._connection.in_transaction:
                        self._connection.execute("ROLLBACK")
                raise

    def rows(self, statement: str, values: Sequence[object] = ()) -> list[tuple[Any, ...]]:
        """Run a statement inside a transaction, and return what it gives."""
        return self._connection.execute(statement, tuple(values)).fetchall()

    def inspected(self) -> list[Finding]:
        """Return what SQLite finds wrong with the file, and whether it is as it was sealed."""
        found = [
            damaged(self.name, "SQLite looked through the file.", f"It says: {row[0]}.")
            for row in self.rows("PRAGMA integrity_check(20)")
            if row[0] != "ok"
        ]
        found += [
            damaged(self.name, f"A row of {row[0]} was read.", "Its house isn't there.")
            for row in self.rows("PRAGMA foreign_key_check")
        ]
        return found + self._seal_broken()

    def tail(self) -> Tail:
        """Return how far the store has come; inside a transaction."""
        return read_tail(dict(self.rows("SELECT name, value FROM facts")), self.name)

    def log_is_empty(self) -> bool:
        """Tell whether all that was written stands in the file itself."""
        log = self._path.with_name(f"{self._path.name}-wal")
        return not log.exists() or log.stat().st_size == 0

    def close(self) -> None:
        """Let go of the file."""
        with told(self._path, "closed"):
            self._connection.close()

    def _seal_broken(self) -> list[Finding]:
        seal, tail = read_seal(self._path), self.tail()
        if seal is None:
            return []
        if seal.changes > tail.changes or seal.entries > tail.entries:
            return [
                damaged(
                    self.name,
                    f"The store was sealed with {seal.entries} entries.",
                    f"{tail.entries} are there: what was written last is lost.",
                )
            ]
        is_same = (seal.changes, seal.version) == (
            tail.changes,
            version_of(self._connection, self._path),
        )
        if is_same and self.log_is_empty() and sum_of_file(self._path) != seal.sha256:
            return [
                damaged(
                    self.name,
                    "Every byte of the file was summed.",
                    "Some of it isn't as it was when it was sealed, and nothing was written since.",
                )
            ]
        return []
