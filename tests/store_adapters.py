"""The adapters of the store that can be had here; each passes the tests of the contract."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

import psycopg

from longpoint.store import HouseStore
from longpoint.store.postgres_store import open_postgres_store
from longpoint.store.sqlite_store import open_store

DEVICE = "laptop"


class Adapter(Protocol):
    """How a test gets at a store."""

    @property
    def is_shared(self) -> bool:
        """Whether several laptops write to it, each under its own name."""

    def open(self, device: str = DEVICE) -> HouseStore:
        """Return the same store each time."""

    def spoil(self, old: str, new: str) -> None:
        """Change a text in what is kept, behind the store's back."""


@dataclass(frozen=True)
class SqliteAdapter:
    """A store in a file."""

    path: Path
    is_shared: bool = False

    def open(self, device: str = DEVICE) -> HouseStore:
        return open_store(self.path, device)

    def spoil(self, old: str, new: str) -> None:
        assert len(old) == len(new)
        data = self.path.read_bytes()
        assert data.count(old.encode()) == 1
        self.path.write_bytes(data.replace(old.encode(), new.encode()))


@contextmanager
def sqlite_adapter(folder: Path) -> Iterator[Adapter]:
    """Yield a store in a file of its own."""
    yield SqliteAdapter(folder / "houses.store")


@dataclass(frozen=True)
class PostgresAdapter:
    """A store in a database of its own."""

    address: str
    is_shared: bool = True

    def open(self, device: str = DEVICE) -> HouseStore:
        return open_postgres_store(self.address, device)

    def spoil(self, old: str, new: str) -> None:
        with psycopg.connect(self.address) as behind:
            # As whoever looks after the server could: the triggers are off.
            behind.execute("SET session_replication_role = replica")
            changed = 0
            for table, column in (("entries", "entry"), ("milestones", "milestone")):
                done = behind.execute(
                    f"UPDATE {table} SET {column} = replace({column}, %s, %s)"
                    f" WHERE position(%s in {column}) > 0",
                    (old, new, old),
                )
                changed += done.rowcount
            assert changed == 1


@contextmanager
def postgres_adapter(server: str, name: str) -> Iterator[Adapter]:
    """Yield a store in a new database of a server."""
    with psycopg.connect(server, autocommit=True) as connection:
        connection.execute(f"CREATE DATABASE {name} TEMPLATE template0")
    yield PostgresAdapter(server.replace("dbname=postgres", f"dbname={name}"))
