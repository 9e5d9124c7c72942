"""Counts and last sums of a store: what vouches for its rows, and moves on with each of them."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Self

from longpoint.errors import StoreError
from longpoint.speech.said import say
from longpoint.store.sums import START, facts_sum, next_sum


@dataclass(frozen=True, slots=True, kw_only=True)
class Tail:
    """How far a store has come.

    Attributes:
        device: Name under which it writes entries of its own.
        changes: How many transactions wrote to it.
        entries: How many entries it holds.
        entries_sum: Sum of the last.
        milestones: How many milestones it holds.
        milestones_sum: Sum of the last.
    """

    device: str
    changes: int = 0
    entries: int = 0
    entries_sum: bytes = START
    milestones: int = 0
    milestones_sum: bytes = START

    def with_entry(self, text: str) -> Self:
        """Return the tail after one entry more."""
        number = self.entries + 1
        total = next_sum(self.entries_sum, numbered(number, text))
        return replace(self, entries=number, entries_sum=total)

    def with_milestone(self, text: str) -> Self:
        """Return the tail after one milestone more."""
        number = self.milestones + 1
        total = next_sum(self.milestones_sum, numbered(number, text))
        return replace(self, milestones=number, milestones_sum=total)

    def facts(self) -> dict[str, str]:
        """Return it as rows of the table of facts, with a sum over them."""
        facts = {
            "device": self.device,
            "changes": str(self.changes),
            "entries": str(self.entries),
            "entries_sum": self.entries_sum.hex(),
            "milestones": str(self.milestones),
            "milestones_sum": self.milestones_sum.hex(),
        }
        return {**facts, "sum": facts_sum(facts)}


def numbered(number: int, text: str) -> str:
    """Return what a row's sum is made of."""
    return f"{number} {text}"


def is_sum(total: object, before: object, number: object, text: object) -> bool:
    """Tell whether a row's sum is that of the row; values of a damaged row may be anything.

    Args:
        total: What stands as its sum.
        before: Sum of the row before; None for the first.
        number: Its number.
        text: Its text.
    """
    if before is None and number == 1:
        before = START
    if not (isinstance(total, bytes) and isinstance(before, bytes)):
        return False
    if not (isinstance(number, int) and isinstance(text, str)):
        return False
    return total == next_sum(before, numbered(number, text))


def read_tail(facts: Mapping[str, str], store: str) -> Tail:
    """Return the tail that stands in the table of facts.

    Args:
        facts: Its rows.
        store: Name of the store, for the refusal.

    Raises:
        StoreError: They aren't as they were written.
    """
    own = {name: value for name, value in facts.items() if name != "sum"}
    try:
        tail = Tail(
            device=own["device"],
            changes=int(own["changes"]),
            entries=int(own["entries"]),
            entries_sum=bytes.fromhex(own["entries_sum"]),
            milestones=int(own["milestones"]),
            milestones_sum=bytes.fromhex(own["milestones_sum"]),
        )
    except (KeyError, ValueError, TypeError):
        raise _damaged(store) from None
    if facts != tail.facts():
        raise _damaged(store)
    return tail


def _damaged(store: str) -> StoreError:
    return StoreError(
        say("The store {store} says how many entries it holds.", store=store),
        say("That isn't as it was written: the file is damaged."),
        say(
            "Write nothing more to it. `longpoint restore` takes your last backup and "
            "what is still sound here."
        ),
    )
