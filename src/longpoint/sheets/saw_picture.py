"""How the saw is swung and where the tape goes, drawn once at the top of the cut sheet."""

from collections.abc import Sequence
from typing import Final

from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.speech.said import say

SWINGS_MM: Final = 76.0
"""Width of the picture of both swings."""
HOOK_MM: Final = 100.0
"""Width of the picture of the hook reading."""
HEIGHT_MM: Final = 27.0
FENCE_MM: Final = 5.0
"""From the top of the picture down to the face of the fence."""
FACE_MM: Final = 8.0
SWING_MM: Final = 34.0
"""Width of the picture of one swing."""

_Points = tuple[tuple[float, float], ...]


def swings_picture() -> Drawing:
    """Return the saw from above, swung each way."""
    return Drawing(
        width_mm=SWINGS_MM,
        height_mm=HEIGHT_MM,
        marks=(*_swing(0.0, say("L"), -1.0), *_swing(42.0, say("R"), 1.0)),
        described=(
            say(
                "The saw from above, fence at the top. L: handle to the left, the cut "
                "leans like a slash. R: handle to the right."
            )
        ),
    )


def hook_picture() -> Drawing:
    """Return a piece with the tape over it as its hook reading is taken."""
    return Drawing(
        width_mm=HOOK_MM,
        height_mm=HEIGHT_MM,
        marks=tuple(_hook_reading(4.0)),
        described=(
            say(
                "The tape hooks over the long point at the far, outer edge and is read "
                "at the near, inner edge of the other end."
            )
        ),
    )


def _swing(x: float, name: str, way: float) -> Sequence[Mark]:
    """Return one swing; the handle goes to the left for -1, to the right for +1."""
    middle = x + SWING_MM / 2
    near, reach = FENCE_MM + FACE_MM, 17.0
    cut = ((middle - way * 4.0, FENCE_MM - 4.0), (middle + way * (reach - 4.0), FENCE_MM + 13.0))
    handle = (middle + way * (reach - 3.0), FENCE_MM + 14.0)
    return (
        _box(x, x + SWING_MM, FENCE_MM, near, Ink.PIECE),
        _box(x, middle - 6.0, FENCE_MM - 1.6, FENCE_MM, Ink.HOOK),
        _box(middle + 6.0, x + SWING_MM, FENCE_MM - 1.6, FENCE_MM, Ink.HOOK),
        Outline(points=cut, ink=Ink.CUT, closed=False),
        Outline(points=_diamond(handle, 2.0), ink=Ink.HOOK),
        Word(x_mm=middle - way * 8.0, y_mm=near + 8.6, text=name, size_mm=8.0, bold=True),
        Word(
            x_mm=x + (0.0 if way > 0 else SWING_MM),
            y_mm=near + 13.4,
            text=say("handle to the right") if way > 0 else say("handle to the left"),
            size_mm=2.9,
            anchor=Anchor.START if way > 0 else Anchor.END,
        ),
    )


def _hook_reading(x: float) -> Sequence[Mark]:
    """Return a piece with the tape from its far long point to the inner edge of the other end."""
    far, near, right = FENCE_MM, FENCE_MM + FACE_MM, HOOK_MM - 2.0
    body = ((x, far), (right, far), (right - FACE_MM, near), (x + FACE_MM, near))
    tape = ((x, far), (right - FACE_MM, near))
    lip = (
        (x + 6.0, far - 1.5),
        (x - 1.2, far - 1.5),
        (x - 1.2, far + 2.2),
        (x, far + 2.2),
        (x, far - 0.3),
        (x + 6.0, far - 0.3),
    )
    return (
        Outline(points=body, ink=Ink.PIECE),
        Outline(points=tape, ink=Ink.CUT, closed=False),
        Outline(points=lip, ink=Ink.HOOK),
        Outline(points=_diamond((right - FACE_MM, near), 1.2), ink=Ink.HOOK),
        Word(x_mm=x + 8.0, y_mm=far - 1.0, text=say("hook here"), size_mm=2.9, anchor=Anchor.START),
        Word(x_mm=right, y_mm=near + 4.2, text=say("read here"), size_mm=2.9, anchor=Anchor.END),
        Word(
            x_mm=(x + right) / 2,
            y_mm=far - 1.0,
            text=say("outer edge, at the fence"),
            size_mm=2.9,
        ),
        Word(
            x_mm=(x + right) / 2,
            y_mm=near + 4.2,
            text=say("inner edge, towards you"),
            size_mm=2.9,
        ),
    )


def _box(left: float, right: float, top: float, bottom: float, ink: Ink) -> Outline:
    return Outline(
        points=((left, top), (right, top), (right, bottom), (left, bottom)),
        ink=ink,
    )


def _diamond(middle: tuple[float, float], size: float) -> _Points:
    x, y = middle
    return ((x - size, y), (x, y - size), (x + size, y), (x, y + size))
