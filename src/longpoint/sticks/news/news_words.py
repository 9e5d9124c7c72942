"""What happened at the saw, in the words in which it is told."""

import re
from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final

from longpoint.errors import QuantityError, StockError
from longpoint.pieces.piece import Piece
from longpoint.quantities.length import Units, parse_length
from longpoint.speech.said import joined, say
from longpoint.sticks.news.at_the_saw import AtTheSaw, told
from longpoint.sticks.news.remains import Remains, left_part, right_part, tip_to_tip_mm, whole
from longpoint.sticks.news.saw_news import BadZone, Cut, Fits, Lost, News, Spoiled, StickRead
from longpoint.sticks.plan import StickSource

_FRACTION: Final = re.compile(r"(?<=\s)(\d+)\s+(\d+/\d+)")
"""Inches as a carpenter writes them, "12 1/2": read as one figure."""

_HOW: Final = frozenset({"short", "whole", "at", "left", "right"})
_SAME_MM: Final = 0.5
"""Two lengths told that differ by less are the same: a tape shows no more."""

WAYS: Final = (
    say("cut MARK"),
    say("cut STICK"),
    say("spoiled MARK"),
    say("spoiled MARK LENGTH-LEFT"),
    say("spoiled MARK short BY"),
    say("spoiled MARK whole"),
    say("spoiled MARK at SPOT"),
    say("spoiled MARK left LENGTH-LEFT"),
    say("spoiled MARK right LENGTH-LEFT"),
    say("lost MARK"),
    say("fits MARK"),
    say("short STICK LENGTH"),
    say("long STICK LENGTH"),
    say("missing STICK"),
    say("delivered PROFILE LENGTH LENGTH"),
    say("bad STICK FROM TO"),
)
"""Every way to tell something, with what stands for what."""


def told_in_words(
    state: AtTheSaw,
    sentences: Sequence[str],
    units: Units,
    pieces: Mapping[str, Piece] = MappingProxyType({}),
) -> AtTheSaw:
    """Return the state after what was told, one sentence after the other.

    Args:
        state: Where the cutting stands.
        sentences: Such as "cut W1-head", "spoiled W2-head short 4", "bad OG57-3 1200 1350".
        units: Unit of a bare number.
        pieces: Pieces by mark as they were cut, for the end cuts that a spoiled one keeps.

    Raises:
        StockError: A sentence can't be understood, or tells of what isn't there.
    """
    for sentence in sentences:
        state = told(state, _news(state, sentence, units, pieces))
    return state


def _news(
    state: AtTheSaw, sentence: str, units: Units, pieces: Mapping[str, Piece]
) -> tuple[News, ...]:
    what, _, rest = sentence.strip().partition(" ")
    rest = rest.strip()
    match what.casefold():
        case "cut":
            return _cut(state, rest)
        case "spoiled":
            return (_spoiled(state, sentence, rest, units, pieces),)
        case "lost":
            return (Lost(piece=rest),)
        case "fits":
            return (Fits(piece=rest),)
        case "short" | "long":
            name, (length_mm,) = named_lengths(sentence, rest, 1, units)
            return (StickRead(stick=name, length_mm=length_mm),)
        case "missing":
            spent = (stick.spent_mm for stick in state.sticks if stick.name == rest)
            return (StickRead(stick=rest, length_mm=next(spent, 0.0)),)
        case "delivered":
            profile, (ordered_mm, came_mm) = named_lengths(sentence, rest, 2, units)
            return _delivered(state, sentence, profile, ordered_mm, came_mm)
        case "bad":
            name, (from_mm, to_mm) = named_lengths(sentence, rest, 2, units)
            return (BadZone(stick=name, from_mm=from_mm, to_mm=to_mm),)
        case _:
            raise _not_understood(sentence)


def _cut(state: AtTheSaw, name: str) -> tuple[News, ...]:
    """A piece, or all that still waits on a stick."""
    for stick in state.sticks:
        if stick.name == name:
            return tuple(Cut(piece=laid.piece) for laid in stick.next)
    return (Cut(piece=name),)


def _delivered(
    state: AtTheSaw, sentence: str, profile: str, ordered_mm: float, came_mm: float
) -> tuple[News, ...]:
    """Every new stick of one length that isn't begun turned out another length."""
    found = tuple(
        StickRead(stick=stick.name, length_mm=came_mm)
        for stick in state.sticks
        if (stick.profile, stick.source) == (profile, StickSource.STOCK)
        and abs(stick.length_mm - ordered_mm) < _SAME_MM
        and not stick.is_begun
    )
    if not found:
        raise StockError(
            say("It is told: {sentence!r}.", sentence=sentence),
            say(
                "No new stick of {profile} that isn't begun has the first of the two lengths.",
                profile=profile,
            ),
            say("Name the profile, the length on the cutting list, then the length that came."),
        )
    return found


def _spoiled(
    state: AtTheSaw, sentence: str, rest: str, units: Units, pieces: Mapping[str, Piece]
) -> Spoiled:
    # A mark may hold blanks and end in a word or a figure, so the longest that is known counts.
    known = state.open_marks | state.done
    marks = [mark for mark in known if rest == mark or rest.startswith(f"{mark} ")]
    if not marks:
        return Spoiled(piece=rest)
    mark = max(marks, key=len)
    said = rest[len(mark) :].strip()
    if not said:
        return Spoiled(piece=mark)
    how, _, figure = said.partition(" ")
    if how.casefold() not in _HOW:
        good_mm = _one_length(sentence, mark, said, units)
        return Spoiled(piece=mark, rests=(Remains(of=mark, length_mm=good_mm),) * (good_mm > 0.0))
    if mark not in pieces:
        raise StockError(
            say("It is told: {sentence!r}.", sentence=sentence),
            say("{mark} isn't in the plan now, so its end cuts aren't known.", mark=mark),
            say(
                'Say only how much of it is good, square across: "spoiled {mark} LENGTH-LEFT".',
                mark=mark,
            ),
        )
    is_whole = how.casefold() == "whole"
    if is_whole == bool(figure.strip()):
        raise _not_understood(sentence)
    told_mm = 0.0 if is_whole else _one_length(sentence, mark, figure, units)
    return Spoiled(piece=mark, rests=_rests(state, sentence, pieces[mark], how.casefold(), told_mm))


def _rests(
    state: AtTheSaw, sentence: str, piece: Piece, how: str, told_mm: float
) -> tuple[Remains, ...]:
    """What is left of a piece as it lay at the saw."""
    length_mm = tip_to_tip_mm(piece)
    if not 0.0 <= told_mm < length_mm:
        raise StockError(
            say("It is told: {sentence!r}.", sentence=sentence),
            say(
                "From point to point {mark} is {length_mm:.1f} mm long.",
                mark=piece.mark,
                length_mm=length_mm,
            ),
            say("Measure along the piece, from the point of the end that is named."),
        )
    turned = any(
        laid.turned
        for stick in state.sticks
        for laid in (*stick.done, *stick.next)
        if laid.piece == piece.mark
    )
    found: tuple[Remains | None, ...]
    match how:
        case "at":
            found = (
                left_part(piece, told_mm, turned=turned),
                right_part(piece, length_mm - told_mm, turned=turned),
            )
        case "left":
            found = (right_part(piece, told_mm, turned=turned),)
        case "right":
            found = (left_part(piece, told_mm, turned=turned),)
        case _:
            found = (whole(piece, told_mm),)
    return tuple(rest for rest in found if rest is not None)


def _one_length(sentence: str, mark: str, said: str, units: Units) -> float:
    name, (length_mm,) = named_lengths(
        sentence, say("{mark} {said}", mark=mark, said=said), 1, units
    )
    if name != mark:
        raise _not_understood(sentence)
    return length_mm


def named_lengths(
    sentence: str, rest: str, count: int, units: Units
) -> tuple[str, tuple[float, ...]]:
    """Return a name, which may hold blanks, and the lengths behind it. [mm]

    Args:
        sentence: All that was told, for the refusal.
        rest: Name and lengths.
        count: How many lengths there must be.
        units: Unit of a bare number.

    Raises:
        StockError: There are fewer, or one can't be read.
    """
    words = _FRACTION.sub(r"\1-\2", rest).split()
    if len(words) <= count:
        raise _not_understood(sentence)
    try:
        lengths = tuple(parse_length(word, units) for word in words[-count:])
    except QuantityError as error:
        raise StockError(
            say(
                "It is told: {sentence!r}. {read}",
                sentence=sentence,
                read=error.read,
            ),
            error.wrong,
            error.do,
        ) from None
    return joined(" ", words[:-count]), lengths


def _not_understood(sentence: str) -> StockError:
    return StockError(
        say("It is told: {sentence!r}.", sentence=sentence),
        say("That can't be understood."),
        say("Tell it in one of these ways: {ways}.", ways=joined("; ", WAYS)),
    )
