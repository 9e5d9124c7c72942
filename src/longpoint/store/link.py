"""What the shared part of the adapters asks of a database: statements in transactions."""

from collections.abc import Sequence
from contextlib import AbstractContextManager
from typing import Any, Protocol

from longpoint.errors import Finding


class Link(Protocol):
    """A database with the tables of `schema`; statements have a `?` for each value."""

    @property
    def name(self) -> str:
        """What to call it in front of a person."""

    def transaction(self, *, writes: bool) -> AbstractContextManager[None]:
        """Do what is inside as a whole: on the disk at its end, or not at all if it raises.

        Args:
            writes: True: nobody else writes meanwhile. False: what is read is of one moment.

        Raises:
            StoreError: The database refuses, from inside as well.
        """

    def rows(self, statement: str, values: Sequence[object] = ()) -> list[tuple[Any, ...]]:
        """Run a statement inside a transaction, and return what it gives."""

    def inspected(self) -> list[Finding]:
        """Return what the database finds wrong with itself; inside a transaction."""

    def close(self) -> None:
        """Let go of it."""
