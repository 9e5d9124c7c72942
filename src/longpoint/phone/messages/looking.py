"""One place or one piece by itself: drawing, pieces, what a label says."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLook:
    """How does one opening or other place look by itself?

    Attributes:
        place: The way to it: "openings", "W1".
        held: From the fold.
    """

    ask: Literal["look"] = "look"
    document: Document
    place: tuple[str, ...]
    held: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """One face of an opening or one view of a place, drawn, and what its drawing asks."""

    svg: str
    question: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceRow:
    """A piece of an opening or another place.

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
    """One opening or other place by itself.

    Attributes:
        lines: Plain sentences: what was assumed, in what order to work.
    """

    kind: Literal["look"] = "look"
    mark: str
    is_held: bool
    faces: tuple[Face, ...]
    pieces: tuple[PieceRow, ...]
    findings: tuple[Said, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLabel:
    """Which piece is this label of?

    Attributes:
        text: What its code says.
        held: From the fold.
        saw: Where the cutting stands, as in `AskPlan`.
    """

    ask: Literal["label"] = "label"
    text: str
    document: Document
    held: tuple[Said, ...]
    saw: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelRead:
    """The piece that a label is of, as the house stands now.

    Attributes:
        opening: The opening that it goes to; empty where it goes elsewhere.
        what: The piece in words, its place among them.
        findings: What is to be minded: a label of other readings.
    """

    kind: Literal["label"] = "label"
    piece: str
    opening: str
    what: str
    room: str
    is_cut: bool
    row: PieceRow
    findings: tuple[Said, ...]
