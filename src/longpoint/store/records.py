"""What a store gives back."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from longpoint.journal import Clash, Entry, Key


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What came of writing entries; all of it is on the disk.

    Attributes:
        added: Those that are new.
        known: How many were here before.
        clashes: Those refused: another entry stands here under their key.
    """

    added: tuple[Entry, ...]
    known: int = 0
    clashes: tuple[Clash, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Numbered:
    """An entry and its number in this store: the order in which entries came here.

    Attributes:
        number: 1, 2, 3 ... through all houses of the store; never given again.
        entry: The entry as it was written.
    """

    number: int
    entry: Entry

    @property
    def key(self) -> Key:
        """Key of the entry."""
        return Key(self.entry["device"], self.entry["counter"])


class MilestoneKind(StrEnum):
    """What is remembered of a house on this machine beside its entries."""

    REVISION = "revision"
    """The readings became others: from here on they have another code."""
    PLAN = "plan"
    """Sheets were made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A revision of the readings, or a plan made from them.

    Attributes:
        number: 1, 2, 3 ... through all houses of the store; 0: not kept yet.
        house: Key of the house.
        kind: What it is.
        at: When it was written down.
        after: Number of the last entry that counted.
        code: Code of the readings.
        said: What else is remembered, such as the folder of the sheets.
    """

    number: int = 0
    house: str
    kind: MilestoneKind
    at: str
    after: int
    code: str
    said: Mapping[str, Any]
