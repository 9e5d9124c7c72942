"""A label off a piece, and the houses that it could be of."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.entries import Entry


@dataclass(frozen=True, slots=True, kw_only=True)
class JournalHere:
    """All that a phone has of one house."""

    house: str
    entries: tuple[Entry, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskLabelHouse:
    """Of which house is a label?

    Attributes:
        text: What its code says.
    """

    ask: Literal["label-house"] = "label-house"
    text: str
    journals: tuple[JournalHere, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelHouse:
    """It is of this one; where it is of none, there is a refusal.

    Attributes:
        house: Its key.
        name: What it is called.
        piece: The piece's mark.
        is_old: True when the house was read on since the label was printed.
        since: What was written first after it, in words.
    """

    kind: Literal["label-house"] = "label-house"
    house: str
    name: str
    piece: str
    is_old: bool
    since: str
