"""What happened at the saw, in the words in which it is told."""

import re
from collections.abc import Sequence
from typing import Final

from longpoint.errors import QuantityError, StockError
from longpoint.quantities.length import Units, parse_length
from longpoint.sticks.at_the_saw import (
    AtTheSaw,
    BadZone,
    Cut,
    Lost,
    News,
    Spoiled,
    StickRead,
    told,
)

_FRACTION: Final = re.compile(r"(?<=\s)(\d+)\s+(\d+/\d+)")
"""Inches as a carpenter writes them, "12 1/2": read as one figure."""

WAYS: Final = (
    "cut MARK",
    "cut STICK",
    "spoiled MARK",
    "spoiled MARK LENGTH-LEFT",
    "lost MARK",
    "short STICK LENGTH",
    "missing STICK",
    "bad STICK FROM TO",
)
"""Every way to tell something, with what stands for what."""


def told_in_words(state: AtTheSaw, sentences: Sequence[str], units: Units) -> AtTheSaw:
    """Return the state after what was told, one sentence after the other.

    Args:
        state: Where the cutting stands.
        sentences: Such as "cut W1-head", "spoiled W2-head 900", "bad OG57-3 1200 1350".
        units: Unit of a bare number.

    Raises:
        StockError: A sentence can't be understood, or tells of what isn't there.
    """
    for sentence in sentences:
        state = told(state, _news(state, sentence, units))
    return state


def _news(state: AtTheSaw, sentence: str, units: Units) -> tuple[News, ...]:
    what, _, rest = sentence.strip().partition(" ")
    match what.casefold():
        case "cut":
            return _cut(state, rest.strip())
        case "spoiled":
            return (_spoiled(state, sentence, rest.strip(), units),)
        case "lost":
            return (Lost(piece=rest.strip()),)
        case "short":
            name, (length_mm,) = _lengths(sentence, rest, 1, units)
            return (StickRead(stick=name, length_mm=length_mm),)
        case "missing":
            return (StickRead(stick=rest.strip(), length_mm=0.0),)
        case "bad":
            name, (from_mm, to_mm) = _lengths(sentence, rest, 2, units)
            return (BadZone(stick=name, from_mm=from_mm, to_mm=to_mm),)
        case _:
            raise _not_understood(sentence)


def _cut(state: AtTheSaw, name: str) -> tuple[News, ...]:
    """A piece, or all that still waits on a stick."""
    for stick in state.sticks:
        if stick.name == name:
            return tuple(Cut(piece=laid.piece) for laid in stick.next)
    return (Cut(piece=name),)


def _spoiled(state: AtTheSaw, sentence: str, rest: str, units: Units) -> Spoiled:
    # A mark may hold blanks and end in a figure, so the whole is tried first.
    if rest in state.open_marks | state.done or " " not in rest:
        return Spoiled(piece=rest)
    mark, (left_mm,) = _lengths(sentence, rest, 1, units)
    return Spoiled(piece=mark, left_mm=left_mm)


def _lengths(sentence: str, rest: str, count: int, units: Units) -> tuple[str, tuple[float, ...]]:
    words = _FRACTION.sub(r"\1-\2", rest).split()
    if len(words) <= count:
        raise _not_understood(sentence)
    try:
        lengths = tuple(parse_length(word, units) for word in words[-count:])
    except QuantityError as error:
        raise StockError(f"It is told: {sentence!r}. {error.read}", error.wrong, error.do) from None
    return " ".join(words[:-count]), lengths


def _not_understood(sentence: str) -> StockError:
    return StockError(
        f"It is told: {sentence!r}.",
        "That can't be understood.",
        f"Tell it in one of these ways: {'; '.join(WAYS)}.",
    )
