"""The adapters of the store that can be had here; each passes the tests of the contract."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from longpoint.store import HouseStore
from longpoint.store.sqlite_store import open_store

DEVICE = "laptop"


class Adapter(Protocol):
    """How a test gets at a store."""

    def open(self, device: str = DEVICE) -> HouseStore:
        """Return the same store each time."""

    def spoil(self, old: str, new: str) -> None:
        """Change a text in what is kept, behind the store's back."""


@dataclass(frozen=True)
class SqliteAdapter:
    """A store in a file."""

    path: Path

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
