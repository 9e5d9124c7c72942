"""What happened at the saw, and what was read on the wall."""

from dataclasses import dataclass
from typing import Literal

from longpoint.phone.messages.said import Document, Said


@dataclass(frozen=True, slots=True, kw_only=True)
class AskSaw:
    """Where does the cutting stand after this?

    Attributes:
        told: One sentence, such as "spoiled W2-head 900".
    """

    ask: Literal["saw"] = "saw"
    document: Document
    held: tuple[Said, ...]
    saw: str
    told: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AtSaw:
    """Where the cutting stands, to be kept with what was told."""

    kind: Literal["saw"] = "saw"
    saw: str
    new: tuple[str, ...]
    findings: tuple[Said, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class AskWall:
    """What is to be tapped at a set on the wall?"""

    ask: Literal["wall"] = "wall"
    document: Document
    opening: str
    gaps: dict[str, tuple[str, str]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """What to tap, in the order in which it is read."""

    kind: Literal["wall"] = "wall"
    says: tuple[str, ...]
    taps: tuple[str, ...]
    leaves: tuple[str, ...]
    then: tuple[str, ...]
    blind: tuple[str, ...]
