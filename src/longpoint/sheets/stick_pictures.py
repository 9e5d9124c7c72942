"""Sticks to scale with their pieces, every lean as it is."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import HookEnd, Piece
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import CutStick, Laid

PAPER_MM: Final = 184.0
"""Width of the longest stick on paper."""
STRIP_TOP_MM: Final = 6.0
NUMBER_MM: Final = 3.4
MARK_MM: Final = 2.7
LEVEL_MM: Final = 3.3
LEVELS: Final = 3
"""Labels that would run into each other step down, at most this many lines."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """What stands at one piece on its stick.

    Attributes:
        number: Its number in the order of sawing.
        words: What it is, e.g. "W1 head".
    """

    number: str
    words: str


def scale_of(sticks: Iterable[CutStick]) -> float:
    """Return millimetres on paper for each millimetre of stick; one scale for all sticks."""
    return PAPER_MM / max((stick.length_mm for stick in sticks), default=1.0)


def stick_picture(
    stick: CutStick,
    pieces: Mapping[str, Piece],
    labels: Mapping[str, Label],
    *,
    rest_mm: float,
    scale: float,
    units: Units,
) -> Drawing:
    """Return one stick with its pieces, saw cuts, waste and rest.

    Args:
        stick: The stick.
        pieces: The house's pieces by mark.
        labels: What to write at each piece, by mark.
        rest_mm: What of it is kept; 0: nothing.
        scale: Millimetres on paper for each millimetre of stick.
        units: Unit in which the rest is written.
    """
    here = [(laid, pieces[laid.piece]) for laid in stick.laid if laid.piece in pieces]
    width_mm = max((piece.width_mm for _, piece in here), default=50.0) * scale
    top, bottom = STRIP_TOP_MM, STRIP_TOP_MM + width_mm
    length = stick.length_mm * scale
    marks: list[Mark] = [
        Outline(points=((0, top), (length, top), (length, bottom), (0, bottom)), ink=Ink.WASTE)
    ]
    marks += _rest(stick, rest_mm, scale, top, bottom)
    for laid, piece in here:
        marks += _piece(laid, piece, scale, top, bottom)
    named, depth_mm = _labels(_spots(stick, labels, rest_mm, scale, units), top, bottom)
    marks += named
    return Drawing(
        width_mm=PAPER_MM,
        height_mm=bottom + depth_mm + 0.6,
        marks=tuple(marks),
        described=_described(stick, labels, rest_mm, units),
    )


def slopes(piece: Piece) -> tuple[float, float]:
    """Return the slope of the left and right end, run over rise; + leans to the right.

    The head of a square window leans out at both ends: -1 and +1.
    """
    return (
        -math.tan(math.radians(piece.left.mitre_deg)),
        math.tan(math.radians(piece.right.mitre_deg)),
    )


def _piece(laid: Laid, piece: Piece, scale: float, top: float, bottom: float) -> list[Mark]:
    left, right = slopes(piece)
    if laid.turned:
        left, right = right, left
    run_left = (bottom - top) * left
    run_right = (bottom - top) * right
    start, end = laid.start_mm * scale, laid.end_mm * scale
    far_left, near_left = (start, start - run_left) if run_left < 0 else (start + run_left, start)
    far_right, near_right = (end, end - run_right) if run_right > 0 else (end + run_right, end)
    body = ((far_left, top), (far_right, top), (near_right, bottom), (near_left, bottom))
    cuts = (((far_left, top), (near_left, bottom)), ((far_right, top), (near_right, bottom)))
    marks: list[Mark] = [
        Outline(points=body, ink=Ink.PIECE),
        *(Outline(points=cut, ink=Ink.CUT, closed=False) for cut in cuts),
    ]
    if piece.hook_from is not None:
        at_left = (piece.hook_from is HookEnd.LEFT) is not laid.turned
        corners = (far_left, near_left) if at_left else (far_right, near_right)
        point = corners[1 if laid.turned else 0]
        edge, way = (bottom, 1.0) if laid.turned else (top, -1.0)
        tip = ((point, edge), (point - 0.9, edge + way * 1.7), (point + 0.9, edge + way * 1.7))
        marks.append(Outline(points=tip, ink=Ink.HOOK))
    return marks


def _rest(stick: CutStick, rest_mm: float, scale: float, top: float, bottom: float) -> list[Mark]:
    if rest_mm <= 0:
        return []
    end = stick.length_mm * scale
    start = end - rest_mm * scale
    box = ((start, top), (end, top), (end, bottom), (start, bottom))
    return [Outline(points=box, ink=Ink.LEFT)]


def _spots(
    stick: CutStick, labels: Mapping[str, Label], rest_mm: float, scale: float, units: Units
) -> list[tuple[float, Label]]:
    """Return the middle of each piece, and of the rest, with what is to be written there."""
    spots = [
        ((laid.start_mm + laid.end_mm) / 2 * scale, labels[laid.piece])
        for laid in stick.laid
        if laid.piece in labels
    ]
    if rest_mm > 0:
        middle = (stick.length_mm - rest_mm / 2) * scale
        rest = say("rest {rest}", rest=format_length(rest_mm, units))
        spots.append((middle, Label(number="", words=rest)))
    return spots


def _labels(
    spots: Iterable[tuple[float, Label]], top: float, bottom: float
) -> tuple[list[Mark], float]:
    """Return the number above and the words below each spot, and how far the words reach down."""
    marks: list[Mark] = []
    taken = [-1.0] * LEVELS
    depth_mm = 0.0
    number_taken = -1.0
    for middle, label in spots:
        half = text_width_mm(label.number, NUMBER_MM) / 2
        if label.number and middle - half > number_taken:
            number_taken = middle + half
            marks.append(
                Word(x_mm=middle, y_mm=top - 1.9, text=label.number, size_mm=NUMBER_MM, bold=True)
            )
        wide = text_width_mm(label.words, MARK_MM)
        start = min(max(0.0, middle - wide / 2), PAPER_MM - wide)
        level = next((n for n in range(LEVELS) if taken[n] <= start), None)
        if level is None:
            continue
        taken[level] = start + wide + 1.2
        baseline = bottom + LEVEL_MM * (level + 1) - 0.3
        if level:
            pointer = ((middle, bottom + 0.3), (middle, baseline - MARK_MM * 0.85))
            marks.append(Outline(points=pointer, ink=Ink.MARK, closed=False))
        marks.append(
            Word(
                x_mm=start,
                y_mm=baseline,
                text=label.words,
                size_mm=MARK_MM,
                anchor=Anchor.START,
            )
        )
        depth_mm = max(depth_mm, LEVEL_MM * (level + 1) + 0.8)
    return marks, depth_mm


def _described(stick: CutStick, labels: Mapping[str, Label], rest_mm: float, units: Units) -> str:
    names = [labels[laid.piece].words for laid in stick.laid if laid.piece in labels]
    text = say(
        "Stick {stick}, {length}: {names}",
        stick=stick.name,
        length=format_length(stick.length_mm, units),
        names=joined(", ", names),
    )
    if rest_mm > 0:
        text += say("; rest {rest}", rest=format_length(rest_mm, units))
    return text
