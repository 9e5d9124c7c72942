"""The outlines in an SVG drawing, in mm."""

import io
import math
import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path
from typing import Final

from longpoint.errors import ExchangeError
from longpoint.exchange.bounded_files import bounded_bytes, shown_name
from longpoint.exchange.sections.outlines import Line, Point
from longpoint.exchange.sections.svg_paths import (
    CHORD_MM,
    MOST_LINES,
    MOST_POINTS,
    path_lines,
)

LARGEST_BYTES: Final = 2_000_000
MOST_SHAPES: Final = 2_000
DEEPEST: Final = 40
MM_IN: Final = {"mm": 1.0, "cm": 10.0, "in": 25.4}
_NUMBER: Final = r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?"
_LENGTH: Final = re.compile(rf"^\s*({_NUMBER})\s*([a-z%]*)\s*$")
_CHANGE: Final = re.compile(r"\s*,?\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)")

Matrix = tuple[float, float, float, float, float, float]
"""a b c d e f: x' = a x + c y + e, y' = b x + d y + f."""
SAME: Final[Matrix] = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


def svg_outlines(path: Path, unit: str | None = None) -> tuple[Line, ...]:
    """Return the lines of every shape in an SVG drawing, curves cut into straight pieces.

    Args:
        path: The file.
        unit: mm, cm or in for one step of the drawing; None: what its width and height say.

    Raises:
        ExchangeError: It can't be read, is a trap, or doesn't say how large it is.
    """
    read = f"The file {shown_name(path)} was to be read as an SVG drawing."
    data = bounded_bytes(path, LARGEST_BYTES, "an SVG drawing")
    root = _root(read, data)
    scale = MM_IN[unit] if unit else _scale(read, root)
    chord = CHORD_MM / scale
    lines, points = list[Line](), 0
    try:
        for count, (shape, matrix) in enumerate(_shapes(root, SAME, 1), start=1):
            if count > MOST_SHAPES:
                raise ExchangeError(
                    read,
                    f"It holds over {MOST_SHAPES} shapes, so it is no section of a moulding.",
                    "Save the section alone as its own drawing.",
                )
            # A change may stretch a curve, so its chords are held finer by as much.
            stretch = max(1e-6, math.hypot(*matrix[:2]), math.hypot(*matrix[2:4]))
            for line in _shape_lines(shape, chord / stretch):
                lines.append(tuple(_millimetres(_moved(matrix, p), scale) for p in line))
                points += len(line)
            if points > MOST_POINTS or len(lines) > MOST_LINES:
                raise ExchangeError(
                    read,
                    f"It holds over {MOST_LINES} lines or {MOST_POINTS} corners,"
                    " far more than a section.",
                    "Save the section alone as its own drawing.",
                )
    except (ValueError, ZeroDivisionError, OverflowError):
        raise ExchangeError(
            read,
            "One of its shapes or transforms breaks the rules of SVG.",
            "Save it again from the program that made it, as plain SVG.",
        ) from None
    return tuple(lines)


def _root(read: str, data: bytes) -> ET.Element:
    start = data[:400]
    if b"<!DOCTYPE" in data or b"<!ENTITY" in data:
        # The document type that old programs write is harmless; what it declares isn't looked at.
        raise ExchangeError(
            read,
            "It declares a document type or entities, which may be a trap.",
            "Save it again as plain SVG, or take out the lines that begin with <!.",
        )
    declared = re.search(rb"encoding\s*=\s*[\"']([^\"']+)", start)
    is_utf8 = declared is None or declared[1].lower() in {b"utf-8", b"us-ascii", b"iso-8859-1"}
    if start.startswith((b"\xff\xfe", b"\xfe\xff")) or b"\0" in start or not is_utf8:
        raise ExchangeError(
            read, "It isn't written as UTF-8.", "Save it again as plain SVG, UTF-8."
        )
    try:
        depth = 0
        for event, _ in ET.iterparse(io.BytesIO(data), events=("start", "end")):
            depth += 1 if event == "start" else -1
            if depth > DEEPEST:
                raise ExchangeError(
                    read,
                    f"Its shapes are nested over {DEEPEST} deep, so it is no drawing.",
                    "Save the section alone as plain SVG.",
                )
        root: ET.Element | None = ET.fromstring(data)
    except (ET.ParseError, ValueError):
        root = None
    if root is None or root.tag.rpartition("}")[2] != "svg":
        raise ExchangeError(
            read,
            "It is no SVG drawing, or it is damaged.",
            "Save it again from the program that made it, as plain SVG.",
        )
    return root


def _scale(read: str, root: ET.Element) -> float:
    """Millimetres to one step of the drawing, by its width and its view box."""
    width, box = root.get("width", ""), root.get("viewBox", "")
    found = _LENGTH.match(width)
    numbers = [float(each) for each in re.findall(_NUMBER, box)]
    if found and found[2] in MM_IN and len(numbers) == 4 and numbers[2] > 0 and float(found[1]) > 0:
        return float(found[1]) * MM_IN[found[2]] / numbers[2]
    raise ExchangeError(
        read,
        "It doesn't say how large it is: its width has no mm, cm or in, or it has no view box.",
        "Say what one step of it is: --units mm, cm or in.",
    )


def _shapes(element: ET.Element, matrix: Matrix, depth: int) -> Iterator[tuple[ET.Element, Matrix]]:
    name = element.tag.rpartition("}")[2]
    if name in {"defs", "symbol", "clipPath", "mask", "marker", "pattern", "metadata"}:
        return
    if element.get("display") == "none":
        return
    matrix = _after(matrix, _changes(element.get("transform", "")))
    if name in {"path", "rect", "circle", "ellipse", "polygon", "polyline", "line"}:
        yield element, matrix
    for child in element:
        yield from _shapes(child, matrix, depth + 1)


def _changes(text: str) -> Matrix:
    matrix, place = SAME, 0
    while place < len(text.rstrip()):
        change = _CHANGE.match(text, place)
        if change is None:
            raise ValueError("a transform that isn't known")
        numbers = [float(each) for each in re.findall(_NUMBER, change[2])]
        matrix = _after(matrix, _change(change[1], numbers))
        place = change.end()
    return matrix


def _change(name: str, numbers: list[float]) -> Matrix:
    match name, numbers:
        case "matrix", [a, b, c, d, e, f]:
            return (a, b, c, d, e, f)
        case "translate", [x]:
            return (1, 0, 0, 1, x, 0)
        case "translate", [x, y]:
            return (1, 0, 0, 1, x, y)
        case "scale", [x]:
            return (x, 0, 0, x, 0, 0)
        case "scale", [x, y]:
            return (x, 0, 0, y, 0, 0)
        case "rotate", [turn, *centre]:
            if len(centre) not in (0, 2):
                raise ValueError("a turn has one number or three")
            cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
            x, y = centre or (0.0, 0.0)
            return (cos, sin, -sin, cos, x - cos * x + sin * y, y - sin * x - cos * y)
        case "skewX", [turn]:
            return (1, 0, math.tan(math.radians(turn)), 1, 0, 0)
        case "skewY", [turn]:
            return (1, math.tan(math.radians(turn)), 0, 1, 0, 0)
        case _:
            raise ValueError("a transform with other numbers than it takes")


def _after(outer: Matrix, inner: Matrix) -> Matrix:
    a, b, c, d, e, f = outer
    g, h, i, j, k, m = inner
    return (
        *(a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j),
        *(a * k + c * m + e, b * k + d * m + f),
    )


def _moved(matrix: Matrix, point: Point) -> Point:
    a, b, c, d, e, f = matrix
    return (a * point[0] + c * point[1] + e, b * point[0] + d * point[1] + f)


def _millimetres(point: Point, scale: float) -> Point:
    """A point in mm; a drawing's y runs down, a section's up."""
    x, y = point[0] * scale, -point[1] * scale
    if not (abs(x) < 1e6 and abs(y) < 1e6):
        raise ValueError("far too large")
    return (x, y)


def _shape_lines(shape: ET.Element, chord: float) -> tuple[Line, ...]:
    def number(name: str) -> float:
        return float(shape.get(name, "0").removesuffix("mm").removesuffix("px"))

    match shape.tag.rpartition("}")[2]:
        case "path":
            return path_lines(shape.get("d", ""), chord)
        case "polygon" | "polyline" | "line" as name:
            written = shape.get("points", "")
            if name == "line":
                written = " ".join(shape.get(key, "0") for key in ("x1", "y1", "x2", "y2"))
            end = " Z" if name == "polygon" else ""
            return path_lines(f"M {written}{end}" if written.strip() else "", chord)
        case "rect":
            if number("rx") or number("ry"):
                return path_lines(_rounded(*map(number, ("x", "y", "width", "height", "rx", "ry"))))
            x, y, w, h = map(number, ("x", "y", "width", "height"))
            return path_lines(f"M {x} {y} h {w} v {h} h {-w} Z", chord)
        case name:
            rx = number("r") if name == "circle" else number("rx")
            ry = number("r") if name == "circle" else number("ry")
            x, y = number("cx"), number("cy")
            half = f"A {rx} {ry} 0 1 1"
            return path_lines(f"M {x - rx} {y} {half} {x + rx} {y} {half} {x - rx} {y} Z", chord)


def _rounded(x: float, y: float, w: float, h: float, rx: float, ry: float) -> str:
    rx, ry = min(rx or ry, w / 2), min(ry or rx, h / 2)
    arc = f"a {rx} {ry} 0 0 1"
    return (
        f"M {x + rx} {y} h {w - 2 * rx} {arc} {rx} {ry} v {h - 2 * ry} {arc} {-rx} {ry} "
        f"h {2 * rx - w} {arc} {-rx} {-ry} v {2 * ry - h} {arc} {rx} {-ry} Z"
    )
