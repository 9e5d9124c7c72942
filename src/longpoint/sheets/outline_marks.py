"""Marks on the drawing of an opening of any shape: names, readings and corner angles."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import Role
from longpoint.quantities.formatting import format_angle
from longpoint.shape.point import Point
from longpoint.sheets.blocks import Anchor, Mark, Word
from longpoint.sheets.dialects import Words, role_words
from longpoint.sheets.opening_pictures import READING_MM, SMALL_MM, WIDTH_MM
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import say

HEIGHT_MM: Final = 66.0
SIDE_MM: Final = 15.0
"""Room left and right of the trim for the names of pieces."""
ENDS_MM: Final = 7.0
"""Room above and below it."""
NAME_OFF_MM: Final = 1.6
"""From a piece's outer edge to its name."""
UPRIGHT: Final = 0.9
"""A piece whose outside looks sideways by more than this has its name standing beside it."""
SLANTED: Final = 0.3
"""One that looks sideways by more than this has its name begin or end there."""
CORNER_OFF_MM: Final = 7.0
"""From a corner to its angle, inwards."""
SHORTEST_READING_MM: Final = 12.0
"""A side drawn shorter than this has no room for its reading."""
SHORTEST_ANGLE_MM: Final = 21.0
"""Nor has a corner between sides shorter than this for its angle; the words below have all."""
Named = tuple[str, tuple[Point, ...]]
"""A piece's mark without its opening ("" for one that gets no name), and its corners: first those
of its inner edge, then, back again, those of its outer edge. [mm]"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """Where the opening's millimetres fall on the drawing."""

    scale: float
    x_mm: float
    y_mm: float
    height_mm: float
    middle: Point

    @classmethod
    def holding(cls, points: Sequence[Point]) -> "Page":
        """Return a page on which points come to lie as large as it has room."""
        low_x, high_x = min(p.x_mm for p in points), max(p.x_mm for p in points)
        low_y, high_y = min(p.y_mm for p in points), max(p.y_mm for p in points)
        wide, high = max(1.0, high_x - low_x), max(1.0, high_y - low_y)
        scale = min((WIDTH_MM - 2 * SIDE_MM) / wide, (HEIGHT_MM - 2 * ENDS_MM) / high)
        return cls(
            scale=scale,
            x_mm=WIDTH_MM / 2 - scale * (low_x + high_x) / 2,
            y_mm=ENDS_MM + scale * high_y,
            height_mm=2 * ENDS_MM + scale * high,
            middle=Point((low_x + high_x) / 2, (low_y + high_y) / 2),
        )

    def put(self, points: Sequence[Point]) -> tuple[tuple[float, float], ...]:
        """Return where points come to lie. [mm of paper]"""
        return tuple(self.at(point) for point in points)

    def at(self, point: Point) -> tuple[float, float]:
        """Return where a point comes to lie. [mm of paper]"""
        return (self.x_mm + self.scale * point.x_mm, self.y_mm - self.scale * point.y_mm)


def piece_names(named: Sequence[Named], page: Page, words: Words) -> list[Mark]:
    """Return each piece's name outside its outer edge; its number alone where that is short."""
    marks: list[Mark] = []
    for what, ring in named:
        if not what:
            continue
        half = len(ring) // 2
        (x1, y1), (x2, y2) = page.put((ring[half], ring[-1]))
        nx, ny = _outwards(page, ring, (x2 - x1, y2 - y1))
        middle = page.at(ring[half + half // 2]) if half > 2 else ((x1 + x2) / 2, (y1 + y2) / 2)
        text = _name(what, words)
        if what[-1].isdigit() and math.hypot(x2 - x1, y2 - y1) < text_width_mm(text, READING_MM):
            text = what.rpartition("-")[2]
        upright = abs(nx) > UPRIGHT
        below = 0.8 * READING_MM * (1.0 + ny) / 2.0
        x, y = middle[0] + NAME_OFF_MM * nx, middle[1] + NAME_OFF_MM * ny
        marks.append(
            Word(
                x_mm=x + (0.8 * READING_MM * (1.0 + nx) / 2.0 if upright else 0.0),
                y_mm=y if upright else y + below,
                text=text,
                size_mm=READING_MM,
                bold=True,
                turn_deg=-90.0 if upright else 0.0,
                anchor=Anchor.MIDDLE
                if upright or abs(nx) < SLANTED
                else Anchor.START
                if nx > 0
                else Anchor.END,
            )
        )
    return marks


def _outwards(page: Page, ring: Sequence[Point], along: tuple[float, float]) -> tuple[float, float]:
    """Return the unit vector on the page from a piece's inner to its outer edge."""
    size = math.hypot(*along) or 1.0
    nx, ny = -along[1] / size, along[0] / size
    (xi, yi), (xo, yo) = page.put((ring[0], ring[-1]))
    return (nx, ny) if nx * (xo - xi) + ny * (yo - yi) > 0 else (-nx, -ny)


def _name(what: str, words: Words) -> str:
    kind, _, number = what.partition("-")
    if number.isdigit():
        return say("{role} {number}", role=role_words(Role(kind), words), number=number)
    return role_words(Role(what), words)


def side_reading(page: Page, ends: tuple[Point, Point], middle: Point, text: str) -> list[Mark]:
    """Return a side's reading along it, on the inside."""
    (x1, y1), (x2, y2) = page.put(ends)
    length = math.hypot(x2 - x1, y2 - y1)
    if length < SHORTEST_READING_MM:
        return []
    mx, my = page.at(middle)
    nx, ny = -(y2 - y1) / length, (x2 - x1) / length
    x, y = (x1 + x2) / 2, (y1 + y2) / 2
    if (mx - x) * nx + (my - y) * ny < 0:
        nx, ny = -nx, -ny
    turn = math.degrees(math.atan2(y2 - y1, x2 - x1))
    turn = turn - 180 if turn > 90 else turn + 180 if turn <= -90 else turn
    # A word stands on its baseline: where the inside is above it, it needs less room.
    up_x, up_y = math.sin(math.radians(turn)), -math.cos(math.radians(turn))
    off = 1.6 if nx * up_x + ny * up_y > 0 else 1.6 + 0.8 * READING_MM
    return [
        Word(
            x_mm=x + off * nx,
            y_mm=y + off * ny,
            text=text,
            size_mm=READING_MM,
            bold=True,
            turn_deg=turn,
        )
    ]


def corner_angles(
    page: Page,
    at: Sequence[Point],
    angles_deg: Sequence[float],
    corners: Sequence[Point],
) -> list[Mark]:
    """Return the angle of each corner inside it, where its sides are long enough."""
    count = len(corners)
    marks: list[Mark] = []
    for corner, angle_deg in zip(at, angles_deg, strict=True):
        i = corners.index(corner)
        (x, y), (xb, yb), (xa, ya) = page.put((corner, corners[i - 1], corners[(i + 1) % count]))
        back, onward = math.hypot(xb - x, yb - y), math.hypot(xa - x, ya - y)
        if min(back, onward) < SHORTEST_ANGLE_MM:
            continue
        dx = (xb - x) / back + (xa - x) / onward
        dy = (yb - y) / back + (ya - y) / onward
        size = math.hypot(dx, dy) or 1.0
        marks.append(
            Word(
                x_mm=x + CORNER_OFF_MM * dx / size,
                y_mm=y + CORNER_OFF_MM * dy / size + SMALL_MM / 3,
                text=say("{angle}°", angle=format_angle(angle_deg)),
                size_mm=SMALL_MM,
            )
        )
    return marks
