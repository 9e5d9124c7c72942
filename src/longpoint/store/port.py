"""What a store of houses is asked; each of its adapters passes the same tests."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Protocol

from longpoint.errors import Finding
from longpoint.journal import Entry, Key, Seen
from longpoint.store.records import Milestone, Numbered, Taken


class HouseStore(Protocol):
    """Houses with their entries, revisions and plans. Nothing in it is ever changed or taken out.

    Each call is one transaction: when it comes back, what it wrote is on the disk; when it doesn't,
    nothing of it was written. Every call may raise `StoreError`.
    """

    @property
    def device(self) -> str:
        """Name under which this store writes entries of its own."""

    def write(
        self,
        house: str,
        at: str,
        bodies: Sequence[Mapping[str, Any]],
        last: int | None = None,
    ) -> tuple[Entry, ...]:
        """Write entries of this device, counted on from the highest count of any device here.

        So whatever was in sight when an entry was written has a lower count.

        Args:
            house: Key of the house.
            at: The time, ISO 8601 in UTC.
            bodies: The entries without device, count, time and house.
            last: Number of the last entry of the house that was in sight, 0 for none: where another
                has come since, it is refused. None: it doesn't matter.
        """

    def take(self, entries: Iterable[Entry]) -> Taken:
        """Take in entries of any device; those here stay, and another under their key is refused.

        Raises:
            SurveyError: One of them is no entry; none was taken then.
        """

    def houses(self) -> tuple[str, ...]:
        """Return the keys of all houses, in the order in which they came."""

    def entries(self, house: str) -> tuple[Numbered, ...]:
        """Return the entries of a house, in the order in which they came."""

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        """Return the keys of the entries of a house, each with its number, as they came.

        Args:
            house: Key of the house.
            after: Number of the last one that isn't wanted.
        """

    def texts(self, keys: Sequence[Key]) -> tuple[str | None, ...]:
        """Return entries as they were written; None where there is none of that key."""

    def highest(self) -> int:
        """Return the highest count of any device; 0 where there is none."""

    def seen(self) -> Seen:
        """Return which entries of each device are here."""

    def lacking(self, there: Seen) -> tuple[Entry, ...]:
        """Return what another device lacks, in the order of counts."""

    def keep(self, milestone: Milestone) -> Milestone:
        """Remember a revision or a plan; returns it with its number."""

    def milestones(self, house: str) -> tuple[Milestone, ...]:
        """Return what is remembered of a house, in the order in which it was."""

    def verify(self) -> tuple[Finding, ...]:
        """Return what is wrong with what is kept; nothing where all is as it was written."""

    def close(self) -> None:
        """Let go of it; what was written stays."""
