"""Houses as files."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.entries import Entry
from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskFile:
    """A house as the text of a house file."""

    ask: Literal["file"] = "file"
    document: Document


@dataclass(frozen=True, slots=True, kw_only=True)
class File:
    """The text, and a name for it."""

    kind: Literal["file"] = "file"
    name: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AskOpen:
    """Is this the text of a house file or of another phone's journal, and of which house?

    Attributes:
        highest: The highest count of any device on this phone; 0 where there is none. A journal
            that is far ahead of it is refused.
    """

    ask: Literal["open"] = "open"
    text: str
    highest: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """It is.

    Attributes:
        entries: Of a journal, to be taken over as they are; none where it is a house file: then an
            `opened-file` entry with the same text gives the house.
    """

    kind: Literal["open"] = "open"
    name: str
    openings: int
    findings: tuple[Said, ...]
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskHandOver:
    """A house for another phone: its whole journal."""

    ask: Literal["hand-over"] = "hand-over"
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOver:
    """The journal as the text of a file, and as pictures.

    Attributes:
        count: How many pictures it takes.
        pictures: The pictures, as SVG; none where a file is quicker.
    """

    kind: Literal["hand-over"] = "hand-over"
    text: str
    count: int
    pictures: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskJoined:
    """What do these parts make up, as they were read from pictures?"""

    ask: Literal["joined"] = "joined"
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Joined:
    """The text for `open`; empty while numbers are missing.

    Attributes:
        count: How many parts there are.
        missing: Numbers of those that weren't read yet.
    """

    kind: Literal["joined"] = "joined"
    count: int
    missing: tuple[int, ...]
    text: str
