"""How a house stands after what was written down."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.entries import Entry, EntryKey, LineState
from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskFold:
    """How does a house stand after these entries?"""

    ask: Literal["fold"] = "fold"
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadLine:
    """A line of an opening or another place, as it stands.

    Attributes:
        texts: What counts, as typed; empty: unread.
        by: The entries that it was read by; those of a file that was opened have none.
        differs: True when its readings disagree.
    """

    line: str
    texts: tuple[str, ...]
    by: tuple[EntryKey, ...]
    differs: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FoldedOpening:
    """An opening as it stands.

    Attributes:
        left: How many lines that are asked for are unread.
    """

    mark: str
    room: str
    what: str
    trim: str
    state: LineState
    left: int
    lines: tuple[ReadLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class FoldedPlace:
    """A room, wall, run or other trim as it stands, or a part of one.

    Attributes:
        place: The way to it.
        form: By which it is read.
        title: What it is called: "Kitchen, wall N".
        root: What a finding calls the whole that it is part of: a room's name, a mark.
        left: How many lines that are asked for are unread, its parts' not counted.
    """

    place: tuple[str, ...]
    form: str
    title: str
    root: str
    room: str
    state: LineState
    left: int
    lines: tuple[ReadLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NextLine:
    """Where the walk goes on."""

    opening: str
    line: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CanUndo:
    """The last entry that counts, and what it was in words."""

    of: EntryKey
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fold:
    """A house as it stands.

    Attributes:
        document: As a house file, after it was parsed.
        held: What holds an opening before anything is reckoned.
        saw: Where the cutting stands, for `plan` and `saw`; empty: nothing is cut.
        gaps: What was read of sets on the wall.
    """

    kind: Literal["fold"] = "fold"
    name: str
    units: Literal["mm", "in"]
    dialect: str
    document: Document
    openings: tuple[FoldedOpening, ...]
    places: tuple[FoldedPlace, ...]
    next: NextLine | None
    read: int
    asked: int
    held: tuple[Said, ...]
    undo: CanUndo | None
    saw: str
    gaps: dict[str, dict[str, tuple[str, str]]]
