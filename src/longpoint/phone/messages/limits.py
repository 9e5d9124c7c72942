"""What a page checks by itself while a figure is typed, and what may be chosen."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLimits:
    """What can be checked at once, while a figure is typed?

    Attributes:
        dialect: In whose words.
    """

    ask: Literal["limits"] = "limits"
    dialect: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LineLimits:
    """One line that is read of an opening.

    Attributes:
        line: Its key.
        short: In a word or two.
        words: In full.
        scale: "length" in the house's unit, "proud" in the same with a sign.
        least: Smallest reading taken. [mm]
        most: Largest. [mm]
        apart: Two readings of it further apart than this disagree. [mm]
        beside: Key of the line across, which is about as long; empty: none.
        beside_apart: Beyond this the two sides are looked at again. [mm]
        asked: False when the opening can be planned without it.
    """

    line: str
    short: str
    words: str
    scale: Literal["length", "proud"]
    least: float
    most: float
    apart: float
    beside: str
    beside_apart: float
    asked: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class KindLimits:
    """What is read of one kind of opening, in the order of the walk."""

    kind: str
    words: str
    lines: tuple[LineLimits, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of several, with what it is called."""

    value: str
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DialectWords:
    """A country, and its words for what is set of a house.

    Attributes:
        value: As a house file has it.
        words: The country's name.
        quirk: Set-back of the trim from the lining's edge.
        skirting: Trim at the floor.
        mitre: Cut on the slant across the face.
    """

    value: str
    words: str
    quirk: str
    skirting: str
    mitre: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FormLine:
    """One thing that is asked of a place.

    Attributes:
        line: Its key.
        short: In a word or two.
        words: In full.
        left_out: What happens when it is left out.
        scale: How it is taken: a length in the house's unit, with or without a sign, an angle, a
            figure, one of the choices, yes or no, a text, names, a row of lengths or angles, points
            along a line with their heights, or entries of another form.
        is_reading: True when it may be read more than once.
        asked: True when the walk stops at it.
        least: Smallest figure taken. [mm or degrees]
        most: Largest.
        apart: Two readings of it further apart than this disagree.
        names: Which names it may be: of profiles, walls, openings, rooms; empty: any text.
        form: The form of its entries.
    """

    line: str
    short: str
    words: str
    left_out: str
    scale: Literal[
        "length",
        "signed",
        "angle",
        "count",
        "number",
        "choice",
        "flag",
        "text",
        "names",
        "lengths",
        "angles",
        "points",
        "tables",
    ]
    is_reading: bool
    asked: bool
    least: float
    most: float
    apart: float
    choices: tuple[Choice, ...]
    names: str
    form: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """What is asked of one kind of place.

    Attributes:
        form: Its name: the lists on the way to such a place, and of trim its kind.
        title: What it describes: "a wall".
        label: The key by which one is called; empty: it has a number.
    """

    form: str
    title: str
    label: str
    lines: tuple[FormLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Limits:
    """What can be checked at once, and what may be chosen.

    Attributes:
        forms: Of rooms, walls, runs and other trim.
        mm_per_inch: Of the trade.
    """

    kind: Literal["limits"] = "limits"
    kinds: tuple[KindLimits, ...]
    forms: tuple[Form, ...]
    dialects: tuple[DialectWords, ...]
    trims: tuple[Choice, ...]
    mm_per_inch: float
