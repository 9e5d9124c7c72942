"""The path of an SVG drawing as straight lines, none further from the curve than is stated."""

import math
import re
from collections.abc import Callable, Iterator
from typing import Final

from longpoint.exchange.sections.outlines import Line, Point

CHORD_MM: Final = 0.02
"""How far a line may lie off the curve that it stands for. Ours."""
MOST_STEPS: Final = 400
MOST_POINTS: Final = 200_000
"""Of all lines of a path together, and of a drawing. Ours; a section has a few hundred."""
MOST_LINES: Final = 2_000
_TOKEN: Final = re.compile(
    r"([MmLlHhVvCcSsQqTtAaZz])|([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)|([\s,]+)|(.)"
)
_COUNT: Final = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}


def path_lines(text: str, chord: float = CHORD_MM) -> tuple[Line, ...]:
    """Return the lines of a path's data, one for each of its parts.

    It ends where they come to over MOST_LINES lines or MOST_POINTS corners, more than any section
    has; who asks looks at that.

    Args:
        text: What stands behind ``d``.
        chord: How far a line may lie off its curve, in the drawing's unit. > 0.

    Raises:
        ValueError: It breaks the rules of a path.

    Example:
        >>> path_lines("M 0 0 h 57 v 18 H 0 z")
        (((0.0, 0.0), (57.0, 0.0), (57.0, 18.0), (0.0, 18.0), (0.0, 0.0)),)

    References:
        SVG 1.1, chapter 8 and appendix F.6 (arcs).
    """
    lines: list[list[Point]] = []
    at: Point = (0.0, 0.0)
    last = ""
    handle: Point | None = None
    count = 0
    for name, numbers in _orders(text):
        if count > MOST_POINTS or len(lines) > MOST_LINES:
            return tuple(map(tuple, lines))
        kind, is_relative = name.upper(), name.islower()
        own = at if is_relative else (0.0, 0.0)
        if kind == "M":
            at = (own[0] + numbers[0], own[1] + numbers[1])
            lines.append([at])
            handle, last = None, kind
            continue
        if not lines:
            raise ValueError("a path starts with M")
        if last == "Z" and len(lines[-1]) != 1:
            lines.append([at])
        line = lines[-1]
        count -= len(line)
        points = [
            (own[0] + numbers[n], own[1] + numbers[n + 1]) for n in range(0, len(numbers) - 1, 2)
        ]
        match kind:
            case "L":
                line.append(points[0])
            case "H":
                line.append((own[0] + numbers[0], at[1]))
            case "V":
                line.append((at[0], own[1] + numbers[0]))
            case "C" | "S":
                first = points[0] if kind == "C" else _mirrored(handle, at, last in {"C", "S"})
                second, end = points[-2], points[-1]
                line += _cubic(at, first, second, end, chord)
                handle = second
            case "Q" | "T":
                control = points[0] if kind == "Q" else _mirrored(handle, at, last in {"Q", "T"})
                end = points[-1]
                line += _cubic(at, _two_thirds(at, control), _two_thirds(end, control), end, chord)
                handle = control
            case "A":
                end = (own[0] + numbers[5], own[1] + numbers[6])
                line += _arc(at, numbers[:5], end, chord)
            case _:
                line.append(line[0])
        count += len(line)
        at, last = line[-1], kind
        if kind not in {"C", "S", "Q", "T"}:
            handle = None
    return tuple(tuple(line) for line in lines if len(line) > 1)


def _orders(text: str) -> Iterator[tuple[str, list[float]]]:
    name, numbers = "", list[float]()
    tokens = _split_flags(text)
    for letter, number in tokens:
        if letter:
            if numbers or (name and name.upper() != "Z" and not name.endswith("!")):
                raise ValueError("numbers are missing")
            name, numbers = letter, []
            if letter.upper() == "Z":
                yield letter, []
                name = "Z!"
            continue
        if not name or name == "Z!":
            raise ValueError("a number without an order")
        bare = name.rstrip("!")
        numbers.append(number)
        if len(numbers) == _COUNT[bare.upper()]:
            if not all(math.isfinite(each) and abs(each) < 1e7 for each in numbers):
                raise ValueError("far too large")
            yield bare, numbers
            # Further pairs behind a move are lines.
            name = {"M": "L!", "m": "l!"}.get(bare, f"{bare}!")
            numbers = []
    if numbers or (name and not name.endswith("!")):
        raise ValueError("numbers are missing")


def _split_flags(text: str) -> Iterator[tuple[str, float]]:
    """Letters and numbers; an arc's flags are single digits, also where they touch the next."""
    place, within, arc = 0, 0, False
    while place < len(text):
        if arc and within % 7 in {3, 4} and text[place] in "01":
            yield "", float(text[place])
            place, within = place + 1, within + 1
            continue
        token = _TOKEN.match(text, place)
        if token is None or token[4]:
            raise ValueError("a sign that is no part of a path")
        if token[1]:
            arc, within = token[1] in "Aa", 0
            yield token[1], 0.0
        elif token[2]:
            within += 1
            yield "", float(token[2])
        place = token.end()


def _two_thirds(start: Point, control: Point) -> Point:
    return (
        start[0] + 2 / 3 * (control[0] - start[0]),
        start[1] + 2 / 3 * (control[1] - start[1]),
    )


def _mirrored(handle: Point | None, at: Point, is_going_on: bool) -> Point:
    if handle is None or not is_going_on:
        return at
    return (2 * at[0] - handle[0], 2 * at[1] - handle[1])


def _steps(curve: Callable[[float], Point], bound: float, chord: float) -> list[Point]:
    count = min(MOST_STEPS, max(1, math.ceil(math.sqrt(bound / chord))))
    return [curve(n / count) for n in range(1, count + 1)]


def _cubic(a: Point, b: Point, c: Point, d: Point, chord: float) -> list[Point]:
    """Lines along a Bézier curve.

    A piece over a step h lies at most h^2 / 8 times the largest second derivative off its chord,
    and that is at most 6 times the larger second difference of the four points.
    """

    def curve(t: float) -> Point:
        s = 1.0 - t
        weights = (s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t)
        points = (a, b, c, d)
        return (
            math.fsum(w * p[0] for w, p in zip(weights, points, strict=True)),
            math.fsum(w * p[1] for w, p in zip(weights, points, strict=True)),
        )

    bend = max(
        math.hypot(p[0] - 2 * q[0] + r[0], p[1] - 2 * q[1] + r[1])
        for p, q, r in ((a, b, c), (b, c, d))
    )
    return [*_steps(curve, 6.0 * bend / 8.0, chord)[:-1], d]


def _arc(start: Point, shape: list[float], end: Point, chord: float) -> list[Point]:
    """Lines along an elliptical arc; the sagitta of a step of the larger radius is the bound."""
    radius_x, radius_y, turn_deg, large, sweep = shape
    if large not in (0, 1) or sweep not in (0, 1):
        raise ValueError("a flag is 0 or 1")
    radius_x, radius_y = abs(radius_x), abs(radius_y)
    if start == end:
        return []
    if radius_x == 0 or radius_y == 0:
        return [end]
    turn = math.radians(turn_deg % 360.0)
    cos, sin = math.cos(turn), math.sin(turn)
    half_x, half_y = (start[0] - end[0]) / 2, (start[1] - end[1]) / 2
    x, y = cos * half_x + sin * half_y, -sin * half_x + cos * half_y
    short = x * x / (radius_x * radius_x) + y * y / (radius_y * radius_y)
    if short > 1:
        radius_x, radius_y = radius_x * math.sqrt(short), radius_y * math.sqrt(short)
    over = radius_x * radius_x * y * y + radius_y * radius_y * x * x
    scale = math.sqrt(max(0.0, (radius_x * radius_x * radius_y * radius_y - over) / over))
    scale = -scale if large == sweep else scale
    middle_x, middle_y = scale * radius_x * y / radius_y, -scale * radius_y * x / radius_x
    first = math.atan2((y - middle_y) / radius_y, (x - middle_x) / radius_x)
    second = math.atan2((-y - middle_y) / radius_y, (-x - middle_x) / radius_x)
    span = (second - first) % (2 * math.pi)
    if not sweep:
        span -= 2 * math.pi
    centre = (
        cos * middle_x - sin * middle_y + (start[0] + end[0]) / 2,
        sin * middle_x + cos * middle_y + (start[1] + end[1]) / 2,
    )

    def curve(t: float) -> Point:
        angle = first + span * t
        u, v = radius_x * math.cos(angle), radius_y * math.sin(angle)
        return (centre[0] + cos * u - sin * v, centre[1] + sin * u + cos * v)

    bound = max(radius_x, radius_y) * span * span / 8.0
    return [*_steps(curve, bound, chord)[:-1], end]
