"""What a page checks by itself while a figure is typed, and what may be chosen."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLimits:
    """What can be checked at once, while a figure is typed?"""

    ask: Literal["limits"] = "limits"


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
class Limits:
    """What can be checked at once, and what may be chosen.

    Attributes:
        mm_per_inch: Of the trade.
    """

    kind: Literal["limits"] = "limits"
    kinds: tuple[KindLimits, ...]
    dialects: tuple[Choice, ...]
    trims: tuple[Choice, ...]
    mm_per_inch: float
