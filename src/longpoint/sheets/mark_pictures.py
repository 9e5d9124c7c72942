"""Small marks for what passes, fails or was not looked at: told apart by shape as well as word."""

import math
from enum import StrEnum
from typing import Final

from longpoint.sheets.blocks import Drawing, Ink, Outline
from longpoint.sheets.value_words import shown

SIZE_MM: Final = 5.0
_RING: Final = 16


class Passed(StrEnum):
    """How something came out."""

    YES = "passes"
    NO = "FAILS"
    UNKNOWN = "not read"
    NO_NUMBER = "no number"


def mark_picture(passed: Passed) -> Drawing:
    """Return a tick, a barred square, a ring, or a dash."""
    marks: tuple[Outline, ...] = ()
    match passed:
        case Passed.YES:
            marks = (_line((0.7, 2.6), (2.0, 4.1), (4.4, 0.8)),)
        case Passed.NO:
            box = ((0.3, 0.3), (4.7, 0.3), (4.7, 4.7), (0.3, 4.7))
            marks = (
                Outline(points=box, ink=Ink.BAR),
                _line((1.0, 1.0), (4.0, 4.0)),
                _line((1.0, 4.0), (4.0, 1.0)),
            )
        case Passed.UNKNOWN:
            turns = [2.0 * math.pi * k / _RING for k in range(_RING)]
            ring = tuple(
                (round(2.5 + 1.9 * math.cos(t), 3), round(2.5 + 1.9 * math.sin(t), 3))
                for t in turns
            )
            marks = (Outline(points=ring, ink=Ink.OPENING),)
        case Passed.NO_NUMBER:
            marks = (_line((0.9, 2.5), (4.1, 2.5)),)
    return Drawing(width_mm=SIZE_MM, height_mm=SIZE_MM, marks=marks, described=shown(passed.value))


def _line(*points: tuple[float, float]) -> Outline:
    return Outline(points=points, ink=Ink.CUT, closed=False)
