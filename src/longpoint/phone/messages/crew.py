"""What a phone shares with its crew, and what came of it."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.entries import Entry, EntryKey


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenUpTo:
    """Which entries of one device are somewhere; as `journal.UpTo`."""

    counter: int
    sum: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskPassing:
    """What of a house is to be given to the laptop, and has the laptop more of it?

    Attributes:
        keys: Of all entries of the house on this phone.
        there: What the laptop says that it has, by device.
    """

    ask: Literal["passing"] = "passing"
    keys: tuple[EntryKey, ...]
    there: dict[str, SeenUpTo]


@dataclass(frozen=True, slots=True, kw_only=True)
class Passing:
    """What to give.

    Attributes:
        seen: What is on this phone, by device.
        lacking: What the laptop lacks.
        is_behind: True when the laptop has entries that this phone lacks.
    """

    kind: Literal["passing"] = "passing"
    seen: dict[str, SeenUpTo]
    lacking: tuple[EntryKey, ...]
    is_behind: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class AskCame:
    """What do these entries say, that came from others?"""

    ask: Literal["came"] = "came"
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CameFrom:
    """What came from one device.

    Attributes:
        words: "2 readings of W1 top", the most recent last.
        more: How many entries are left out of the words.
    """

    device: str
    words: tuple[str, ...]
    more: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Came:
    """What came, device by device."""

    kind: Literal["came"] = "came"
    by: tuple[CameFrom, ...]
