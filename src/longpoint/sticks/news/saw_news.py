"""What can happen at the saw."""

from dataclasses import dataclass
from typing import TypeAlias

from longpoint.sticks.news.remains import Remains


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A piece was cut, and is good."""

    piece: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoiled:
    """A piece was cut, and is not good, or isn't any more.

    Attributes:
        piece: Its mark; it has to be cut again.
        rests: What is left of it and can still be used.
    """

    piece: str
    rests: tuple[Remains, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Lost:
    """A piece that had been cut is gone, or broke on the wall; it has to be cut again."""

    piece: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fits:
    """A piece cut before its readings changed was tried in its place, and is good."""

    piece: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StickRead:
    """A stick was measured, and is not as long as it should be.

    Attributes:
        stick: Its name.
        length_mm: What the tape showed; 0 when the stick isn't there at all.
    """

    stick: str
    length_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BadZone:
    """A part of a stick can't be used: a knot, a split, a dent.

    Attributes:
        stick: Its name.
        from_mm: Where it begins, from the stick's left end.
        to_mm: Where it ends.
    """

    stick: str
    from_mm: float
    to_mm: float


News: TypeAlias = Cut | Spoiled | Lost | Fits | StickRead | BadZone
