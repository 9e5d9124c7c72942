"""Closed outlines: joined from pieces, measured, turned, and held against their mirror image."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.speech.said import say

Point = tuple[float, float]
Line = tuple[Point, ...]

JOIN_MM: Final = 0.02
"""Ends of two pieces that lie so near to each other are one corner. Ours."""
LIKE_MM: Final = 0.1
"""A section is the same from both edges when it lies so near to its mirror image. Ours."""
STEP_MM: Final = 1.0
MOST_POINTS: Final = 400
SMALLEST_MM: Final = 1.0


def area_mm2(outline: Sequence[Point]) -> float:
    """Return the area inside a closed outline; negative when it runs clockwise.

    Example:
        >>> area_mm2([(0, 0), (57, 0), (57, 18), (0, 18)])
        1026.0

    References:
        The shoelace sum, half of it.
    """
    return 0.5 * math.fsum(
        a[0] * b[1] - b[0] * a[1] for a, b in zip(outline, [*outline[1:], outline[0]], strict=True)
    )


def extent(outline: Sequence[Point]) -> tuple[float, float, float, float]:
    """Return the least x and y, and the largest x and y."""
    across, up = zip(*outline, strict=True)
    return min(across), min(up), max(across), max(up)


def joined(lines: Sequence[Line], read: str, join_mm: float = JOIN_MM) -> tuple[Line, ...]:
    """Return closed outlines, joined end to end from pieces in any order and direction.

    Args:
        lines: Pieces, each two points or more; a closed one ends where it starts.
        read: First sentence of a refusal.
        join_mm: How far two ends of one corner may lie apart. [mm]

    Raises:
        ExchangeError: A piece is left whose ends meet no other.
    """
    rest = [tuple(line) for line in lines if len(line) > 1 and _reach(line) > join_mm]
    closed: list[Line] = []
    while rest:
        chain = rest.pop(0)
        while math.dist(chain[0], chain[-1]) > join_mm:
            near = _nearest(chain[-1], rest)
            if near is None or near[0] > join_mm:
                gap = near[0] if near else math.dist(chain[0], chain[-1])
                raise ExchangeError(
                    read,
                    say(
                        "Its outline isn't closed: near {chain:.1f}, {chain_2:.1f} it "
                        "stands open by {gap:.2f} mm.",
                        chain=chain[-1][0],
                        chain_2=chain[-1][1],
                        gap=gap,
                    ),
                    say(
                        "Close it in the drawing, and take out lines that are no part "
                        "of the outline."
                    ),
                )
            _, at, is_end = near
            more = rest.pop(at)
            chain += (more[::-1] if is_end else more)[1:]
        closed.append(_without_doubles(chain[:-1], join_mm))
    return tuple(line for line in closed if len(line) > 2)


def _reach(line: Line) -> float:
    low_x, low_y, high_x, high_y = extent(line)
    return math.hypot(high_x - low_x, high_y - low_y)


def _nearest(point: Point, lines: Sequence[Line]) -> tuple[float, int, bool] | None:
    ends = [
        (math.dist(point, line[-1 if is_end else 0]), n, is_end)
        for n, line in enumerate(lines)
        for is_end in (False, True)
    ]
    return min(ends, default=None)


def _without_doubles(line: Line, join_mm: float) -> Line:
    kept: list[Point] = []
    for point in line:
        if not kept or math.dist(point, kept[-1]) > min(join_mm, 1e-6):
            kept.append(point)
    return tuple(kept)


def laid_down(outline: Sequence[Point]) -> Line:
    """Return an outline as a section lies at the saw: its face across, its back down on the table.

    The longer way is taken for the face. Of the two long sides, the one that touches the table
    over more of its length is the back. It is turned, never mirrored.
    """
    low_x, low_y, high_x, high_y = extent(outline)
    line = tuple(outline)
    if high_y - low_y > high_x - low_x:
        line = tuple((y, -x) for x, y in line)
    if _touching(line, is_top=True) > _touching(line, is_top=False) + 1e-9:
        line = tuple((-x, -y) for x, y in line)
    low_x, low_y, _, _ = extent(line)
    line = tuple((x - low_x, y - low_y) for x, y in line)
    if area_mm2(line) < 0:
        line = line[::-1]
    start = min(range(len(line)), key=lambda n: (round(line[n][1], 6), round(line[n][0], 6)))
    return line[start:] + line[:start]


def _touching(line: Line, *, is_top: bool) -> float:
    level = extent(line)[3 if is_top else 1]
    return math.fsum(
        abs(b[0] - a[0])
        for a, b in zip(line, [*line[1:], line[0]], strict=True)
        if abs(a[1] - level) < LIKE_MM and abs(b[1] - level) < LIKE_MM
    )


def is_same_from_both_edges(outline: Sequence[Point], like_mm: float = LIKE_MM) -> bool:
    """Tell whether a section may be turned end for end.

    Args:
        outline: The section, its face across.
        like_mm: How far it may lie off its own mirror image. [mm]

    Example:
        >>> is_same_from_both_edges([(0, 0), (57, 0), (57, 18), (0, 18)])
        True
        >>> is_same_from_both_edges([(0, 0), (57, 0), (57, 18), (0, 9)])
        False
    """
    low_x, _, high_x, _ = extent(outline)
    mirrored = [(low_x + high_x - x, y) for x, y in outline]
    return all(_off(point, outline) <= like_mm for point in _along(mirrored))


def _along(outline: Sequence[Point]) -> list[Point]:
    points = []
    for a, b in zip(outline, [*outline[1:], outline[0]], strict=True):
        steps = max(1, math.ceil(math.dist(a, b) / STEP_MM))
        points += [
            (a[0] + (b[0] - a[0]) * n / steps, a[1] + (b[1] - a[1]) * n / steps)
            for n in range(steps)
        ]
    return points


def _off(point: Point, outline: Sequence[Point]) -> float:
    return min(
        _from_line(point, a, b) for a, b in zip(outline, [*outline[1:], outline[0]], strict=True)
    )


def _from_line(point: Point, a: Point, b: Point) -> float:
    across, up = b[0] - a[0], b[1] - a[1]
    length2 = across * across + up * up
    if length2 == 0:
        return math.dist(point, a)
    along = ((point[0] - a[0]) * across + (point[1] - a[1]) * up) / length2
    along = min(1.0, max(0.0, along))
    return math.dist(point, (a[0] + along * across, a[1] + along * up))
