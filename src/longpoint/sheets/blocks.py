"""The few kinds of block that every sheet is made of."""

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.speech.tongue import ENGLISH, Tongue


class Ink(StrEnum):
    """How a line or area is drawn; each differs in grey as well as in colour."""

    PIECE = "piece"
    """Timber that is kept: light fill, firm outline."""
    WASTE = "waste"
    """Timber that is lost: hatched."""
    LEFT = "left"
    """Timber that goes back on the rack: white, dashed outline."""
    OPENING = "opening"
    """Edge of the reveal: firm thin line."""
    TRUE = "true"
    """What square would look like: dotted."""
    CUT = "cut"
    """A saw cut: heavy line."""
    MARK = "mark"
    """Dimension lines and pointers: thin line."""
    HOOK = "hook"
    """Where the tape is hooked: solid black."""
    BAR = "bar"
    """The bars over what may not be cut: broad, mid grey."""


class Anchor(StrEnum):
    """Which point of a text its position names."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A polygon or polyline on a drawing, in drawing millimetres, y down."""

    points: tuple[tuple[float, float], ...]
    ink: Ink
    closed: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """A text on a drawing, in drawing millimetres, y down (baseline)."""

    x_mm: float
    y_mm: float
    text: str
    size_mm: float = 3.5
    bold: bool = False
    anchor: Anchor = Anchor.MIDDLE
    turn_deg: float = 0.0


Mark: TypeAlias = Outline | Word


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A picture to scale, of a given size on paper.

    Attributes:
        width_mm: Width on paper.
        height_mm: Height on paper.
        marks: Outlines and words, painted in order.
        caption: Said below the drawing.
        described: The picture in words, for those who can't see it.
    """

    width_mm: float
    height_mm: float
    marks: tuple[Mark, ...]
    caption: str = ""
    described: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """A heading within a sheet; level 2 or 3."""

    text: str
    level: int = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """Running text.

    Attributes:
        text: The text.
        is_small: True when it is set smaller, as below a drawing.
        lead: A few words in front, set bold; may be empty.
        picture: A small drawing without words in front of all.
    """

    text: str
    is_small: bool = False
    lead: str = ""
    picture: Drawing | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A finding or a caution, marked by word and shape as well as colour.

    Attributes:
        severity: How far it reaches.
        title: A word or mark in front.
        text: The sentences.
        ask: What is to be written behind it by hand, with a box to tick; empty: nothing.
        small: A last line, set smaller; may be empty.
    """

    severity: Severity
    title: str
    text: str
    ask: str = ""
    small: str = ""


class Blank(StrEnum):
    """What is left free for the pencil."""

    TICK = "tick"
    """A box to tick."""
    LINE = "line"
    """A line to write a figure on."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One cell that holds more than a plain text.

    Attributes:
        text: Its figure or words; may be empty.
        behind: A word or two behind it, set smaller.
        small: Lines below it, set smaller.
        picture: A small drawing beside the text.
        picture_last: True when the picture stands behind the text.
        blank: What is left free for the pencil.
        is_key: Set large and bold, as the figure read at the saw.
    """

    text: str = ""
    behind: str = ""
    small: tuple[str, ...] = ()
    picture: Drawing | None = None
    picture_last: bool = False
    blank: Blank | None = None
    is_key: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column of a table.

    Attributes:
        title: What stands in it.
        is_number: Aligned at the right.
        is_key: Set large and bold: the figure read at the saw.
        share: Its part of the width against the other columns; 0: as wide as its text.
    """

    title: str
    is_number: bool = False
    is_key: bool = False
    share: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """Rows of text under columns; a group row stands above the rows it gathers.

    Attributes:
        columns: Columns from left to right.
        rows: One text or cell per column.
        groups: (index of the first row, text) of each group; may be empty.
        steps: (index of the row, lines) of what else is to be done to what a row names; below it,
            over its whole width.
        under: (index of the row, text) of what stands small below a row, over its whole width.
        under_is_said: True when that is sentences, read from the left, rather than a sum.
        caption: Said above the table.
        is_close: True when its rows stand close, to be looked up in rather than written on.
    """

    columns: tuple[Column, ...]
    rows: tuple[tuple[str | Cell, ...], ...]
    groups: tuple[tuple[int, str], ...] = ()
    steps: tuple[tuple[int, tuple[str, ...]], ...] = ()
    under: tuple[tuple[int, str], ...] = ()
    under_is_said: bool = False
    caption: str = ""
    is_close: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Blocks that stand side by side where the page is wide enough, else one under the other.

    Attributes:
        left: At the left, or first.
        right: At the right, or below.
        left_share: Part of the width that the left takes, 0 to 1.
    """

    left: tuple["Plain", ...]
    right: tuple["Plain", ...]
    left_share: float = 0.6


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Blocks that must not be torn over two pages."""

    blocks: tuple["Plain | Beside", ...]


Plain: TypeAlias = Heading | Paragraph | Note | Table | Drawing
Block: TypeAlias = Plain | Beside | Together


class SheetState(StrEnum):
    """Whether a sheet may be cut from."""

    CURRENT = "current"
    STALE = "stale"
    """Made from readings that have changed since: void."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet.

    Attributes:
        name: File name without ending: "findings", "outlook", "openings", "trims", "order",
            "cut".
        title: What it is.
        house: The house's name.
        readings_code: Short code of the readings it was made from; printed on every page.
        state: Current or stale.
        subtitle: The few words that hold for the whole sheet: unit, way of fixing.
        blocks: What stands on it.
        cautions: Printed at its foot.
        made_from: What the code is of, the word in front of it.
        tongue: Language that it is written in.
    """

    name: str
    title: str
    house: str
    readings_code: str
    state: SheetState = SheetState.CURRENT
    subtitle: str = ""
    blocks: tuple[Block, ...] = ()
    cautions: tuple[str, ...] = ()
    made_from: str = say("readings")
    tongue: Tongue = ENGLISH
