"""The shape of each end of a piece, as it lies at the saw: read by shape, not by number alone."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.pieces.piece import HookEnd
from longpoint.sheets.blocks import Drawing, Ink, Outline
from longpoint.sheets.value_words import shown
from longpoint.speech.said import say
from longpoint.sticks.order.saw_setting import SawSetting, Side
from longpoint.survey.instruments import SkirtingCut

WIDTH_MM: Final = 13.0
FACE_MM: Final = 5.8
"""Height of the picture of a piece on its back; the far edge is at the top."""
EDGE_MM: Final = 3.0
"""The same for skirting that stands at the fence and is seen from above."""
ROOM_MM: Final = 1.4
"""Free space round the outline, for the hook."""
STEEPEST_DEG: Final = 60.0
"""A longer slant than this would run out of the picture; it is drawn at this one."""

_Points = tuple[tuple[float, float], ...]


class HookEdge(StrEnum):
    """At which edge, seen at the saw, the tape is hooked."""

    FAR = "far"
    NEAR = "near"


@dataclass(frozen=True, slots=True, kw_only=True)
class SeenEnd:
    """One end of a piece as it lies at the saw.

    Attributes:
        end: Which end, as you face the saw.
        setting: How it is cut.
        hold: On its back, or standing at the fence.
        is_scribed: True when it is worked to its neighbour's section after the cut.
        hook: Where the tape is hooked on at this end; None when it isn't.
    """

    end: HookEnd
    setting: SawSetting
    hold: SkirtingCut = SkirtingCut.FLAT
    is_scribed: bool = False
    hook: HookEdge | None = None


def end_picture(seen: SeenEnd) -> Drawing:
    """Return the outline of one end with its true lean, and the hook where the tape goes on.

    The picture is drawn for the right end and mirrored for the left.
    """
    height_mm = EDGE_MM if seen.hold is SkirtingCut.STANDING else FACE_MM
    lean_deg = far_longer_deg(seen.setting.swing, seen.setting.swing_deg, seen.end)
    back_deg = far_longer_deg(seen.setting.tilt, seen.setting.tilt_deg, seen.end)
    far_mm, near_mm = _edges(lean_deg, height_mm)
    outlines = [_body(far_mm, near_mm, height_mm, is_scribed=seen.is_scribed)]
    outlines += _slope_lines(back_deg, far_mm, near_mm, height_mm)
    if seen.hook is not None:
        outlines.append(_hook(seen.hook, far_mm, near_mm, height_mm))
    if seen.end is HookEnd.LEFT:
        outlines = [_mirrored(outline) for outline in outlines]
    return Drawing(
        width_mm=WIDTH_MM,
        height_mm=height_mm + 2 * ROOM_MM,
        marks=tuple(outlines),
        described=_described(seen, lean_deg),
    )


def far_longer_deg(side: Side, angle_deg: float, end: HookEnd) -> float:
    """Return a swing as + where the edge at the fence is the longer; a tilt, where the back is.

    Example:
        >>> far_longer_deg(Side.LEFT, 45.0, HookEnd.RIGHT)
        45.0
        >>> far_longer_deg(Side.LEFT, 45.0, HookEnd.LEFT)
        -45.0
    """
    if side is Side.SQUARE:
        return 0.0
    return angle_deg if (side is Side.LEFT) is (end is HookEnd.RIGHT) else -angle_deg


def _edges(lean_deg: float, height_mm: float) -> tuple[float, float]:
    """Return where the far and the near edge end; the longer one reaches the picture's side."""
    held_deg = max(-STEEPEST_DEG, min(STEEPEST_DEG, lean_deg))
    lean_mm = height_mm * math.tan(math.radians(held_deg))
    reach_mm = WIDTH_MM - ROOM_MM
    lean_mm = max(-reach_mm, min(reach_mm, lean_mm))
    return (reach_mm, reach_mm - lean_mm) if lean_mm >= 0 else (reach_mm + lean_mm, reach_mm)


def _body(far_mm: float, near_mm: float, height_mm: float, *, is_scribed: bool) -> Outline:
    top, bottom = ROOM_MM, ROOM_MM + height_mm
    end: _Points = ((far_mm, top), (near_mm, bottom))
    if is_scribed:
        end = _wave(far_mm, near_mm, top, bottom)
    return Outline(points=((0.0, top), *end, (0.0, bottom)), ink=Ink.PIECE, closed=False)


def _wave(far_mm: float, near_mm: float, top: float, bottom: float) -> _Points:
    """Return a scribed end: the line of the cut with a moulding's curve bitten into it."""
    steps = 12
    points = []
    for step in range(steps + 1):
        part = step / steps
        bite_mm = 0.9 + 0.9 * math.sin(2 * math.pi * part)
        x = far_mm + (near_mm - far_mm) * part - bite_mm
        points.append((max(0.0, x), top + (bottom - top) * part))
    return tuple(points)


def _slope_lines(
    back_deg: float, far_mm: float, near_mm: float, height_mm: float
) -> Sequence[Outline]:
    """Return the arris that a slope through the thickness shows: firm where seen, else dotted."""
    if abs(back_deg) < 1.0:
        return ()
    in_mm = 2.2
    ink = Ink.MARK if back_deg > 0 else Ink.TRUE
    line = (
        (max(0.0, far_mm - in_mm), ROOM_MM),
        (max(0.0, near_mm - in_mm), ROOM_MM + height_mm),
    )
    return (Outline(points=line, ink=ink, closed=False),)


def _hook(edge: HookEdge, far_mm: float, near_mm: float, height_mm: float) -> Outline:
    """Return the tape's hook over the long point."""
    x = (far_mm if edge is HookEdge.FAR else near_mm) + 0.3
    start = max(0.0, x - 5.0)
    points = (
        (start, -1.3),
        (x + 1.1, -1.3),
        (x + 1.1, 2.2),
        (x, 2.2),
        (x, -0.3),
        (start, -0.3),
    )
    if edge is HookEdge.FAR:
        return Outline(points=tuple((px, ROOM_MM + py) for px, py in points), ink=Ink.HOOK)
    return Outline(points=tuple((px, ROOM_MM + height_mm - py) for px, py in points), ink=Ink.HOOK)


def _mirrored(outline: Outline) -> Outline:
    points = tuple((WIDTH_MM - x, y) for x, y in outline.points)
    return Outline(points=points, ink=outline.ink, closed=outline.closed)


def _described(seen: SeenEnd, lean_deg: float) -> str:
    if abs(lean_deg) < 1.0:
        shape = say("square")
    else:
        shape = say("far edge longer") if lean_deg > 0 else say("near edge longer")
    hooked = say(", hook at the {hook} edge", hook=shown(seen.hook.value)) if seen.hook else ""
    return say("{end} end, {shape}{hooked}", end=shown(seen.end.value), shape=shape, hooked=hooked)
