"""A verdict as a word and a small picture: told apart by shape, so that grey print keeps them."""

import math
from dataclasses import replace
from typing import Final

from longpoint.forecast.records import Verdict
from longpoint.sheets.blocks import Drawing, Ink, Outline
from longpoint.speech.said import say

WIDTH_MM: Final = 11.0
HEIGHT_MM: Final = 9.0
TEETH: Final = 12

IN_ORDER: Final = (
    Verdict.PROVE_SAW,
    Verdict.READ_FIRST,
    Verdict.CUT_LONG,
    Verdict.HOLD,
    Verdict.BATCH,
)
"""What is done first comes first."""

_Points = tuple[tuple[float, float], ...]


def verdict_words(verdict: Verdict) -> str:
    """Return a verdict as it is said to a carpenter.

    Example:
        >>> verdict_words(Verdict.BATCH), verdict_words(Verdict.CUT_LONG)
        ('cut as planned', 'cut the head long')
    """
    match verdict:
        case Verdict.BATCH:
            return say("cut as planned")
        case Verdict.READ_FIRST:
            return say("read first")
        case Verdict.PROVE_SAW:
            return say("prove the saw first")
        case Verdict.CUT_LONG:
            return say("cut the head long")
        case Verdict.HOLD:
            return say("held")


def verdict_picture(verdict: Verdict, part: float = 1.0) -> Drawing:
    """Return the picture of a verdict: a tick, a rule, a blade, a piece left long, or bars.

    Args:
        verdict: The verdict.
        part: Its size against the largest that is drawn. > 0
    """
    return Drawing(
        width_mm=round(WIDTH_MM * part, 2),
        height_mm=round(HEIGHT_MM * part, 2),
        marks=tuple(
            replace(mark, points=tuple((x * part, y * part) for x, y in mark.points))
            for mark in _marks(verdict)
        ),
        described=verdict_words(verdict),
    )


def _marks(verdict: Verdict) -> tuple[Outline, ...]:
    match verdict:
        case Verdict.BATCH:
            return _tick()
        case Verdict.READ_FIRST:
            return _rule()
        case Verdict.PROVE_SAW:
            return _blade()
        case Verdict.CUT_LONG:
            return _left_long()
        case Verdict.HOLD:
            return _barred()


def _tick() -> tuple[Outline, ...]:
    tick = ((2.7, 4.8), (3.9, 3.6), (5.2, 5.1), (8.1, 1.6), (9.4, 2.6), (5.4, 7.5))
    return (
        Outline(points=_box(1.5, 0.5, 9.5, 8.5), ink=Ink.OPENING),
        Outline(points=tick, ink=Ink.HOOK),
    )


def _rule() -> tuple[Outline, ...]:
    """Return a rule with its graduation, every other line longer."""
    lines = (
        ((1.9 + 1.2 * step, 2.2), (1.9 + 1.2 * step, 5.4 if step % 2 else 4.0)) for step in range(7)
    )
    return (
        Outline(points=_box(0.4, 2.2, 10.6, 7.0), ink=Ink.PIECE),
        *(Outline(points=line, ink=Ink.CUT, closed=False) for line in lines),
    )


def _blade() -> tuple[Outline, ...]:
    return (
        Outline(points=_toothed(4.4, 3.3), ink=Ink.HOOK),
        Outline(points=_toothed(1.5, 1.5), ink=Ink.LEFT),
    )


def _toothed(tip_mm: float, root_mm: float) -> _Points:
    """Return a disc with raked teeth round the middle of the picture."""
    points = []
    for tooth in range(TEETH):
        for part, radius_mm in ((0.0, root_mm), (0.15, tip_mm)):
            turn = 2.0 * math.pi * (tooth + part) / TEETH
            x, y = radius_mm * math.cos(turn), radius_mm * math.sin(turn)
            points.append((round(WIDTH_MM / 2 + x, 2), round(HEIGHT_MM / 2 + y, 2)))
    return tuple(points)


def _left_long() -> tuple[Outline, ...]:
    """Return a piece that runs on past where it would end, and an arrow that way."""
    return (
        Outline(points=_box(6.2, 2.6, 10.7, 6.4), ink=Ink.LEFT),
        Outline(points=((0.3, 2.6), (6.2, 2.6), (6.2, 6.4), (0.3, 6.4)), ink=Ink.PIECE),
        Outline(points=((7.0, 3.1), (10.2, 4.5), (7.0, 5.9)), ink=Ink.HOOK),
    )


def _barred() -> tuple[Outline, ...]:
    """Return the same slanting bars that lie over a held opening's drawing."""
    bars = (
        ((0.5, 4.5), (0.5, 6.9), (6.9, 0.5), (4.5, 0.5)),
        ((2.1, 8.5), (4.5, 8.5), (10.5, 2.5), (10.5, 0.5), (10.1, 0.5)),
    )
    return (
        *(Outline(points=bar, ink=Ink.BAR) for bar in bars),
        Outline(points=_box(0.5, 0.5, 10.5, 8.5), ink=Ink.CUT),
    )


def _box(left: float, top: float, right: float, bottom: float) -> _Points:
    return ((left, top), (right, top), (right, bottom), (left, bottom))
