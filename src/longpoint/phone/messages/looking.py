"""One place by itself: its drawing, its pieces."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLook:
    """How does one opening look by itself?"""

    ask: Literal["look"] = "look"
    document: Document
    opening: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One face of an opening, drawn, and the question that its drawing asks."""

    svg: str
    question: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceRow:
    """A piece of an opening.

    Attributes:
        figure: What it is cut to, and how that is read.
    """

    mark: str
    what: str
    figure: str
    how: str
    left: str
    right: str
    short: str
    long: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One opening by itself."""

    kind: Literal["look"] = "look"
    mark: str
    is_held: bool
    faces: tuple[Face, ...]
    pieces: tuple[PieceRow, ...]
    findings: tuple[Said, ...]
