"""Houses as files."""

from dataclasses import dataclass
from typing import Literal

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
    """Is this the text of a house file, and of which house?"""

    ask: Literal["open"] = "open"
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Opened:
    """It is; a `opened-file` entry with the same text gives the house."""

    kind: Literal["open"] = "open"
    name: str
    openings: int
    findings: tuple[Said, ...]
