"""The echo of an opening: its lean drawn larger than it is, beside what square would be."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.pieces.piece import Piece, Role
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.point import Point
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.dialects import Words, role_words
from longpoint.sheets.opening_stance import (
    Corners,
    as_it_stands,
    exaggerated,
    lean_words,
    level_words,
    times_shown,
    true_rectangle,
)
from longpoint.sheets.opening_trim import trim_rings
from longpoint.speech.said import say
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

WIDTH_MM: Final = 86.0
HEIGHT_MM: Final = 56.0
"""So low that two openings share a page."""
NAME_MM: Final = 6.5
"""Room on each side of the trim for the name of a piece."""
EDGE_MM: Final = 1.5
"""Room below the trim where no name stands there."""
NEXT_NAME_MM: Final = 4.0
"""From one name below the trim to the next."""
BESIDE: Final = (Role.HEAD, Role.LEFT_LEG, Role.RIGHT_LEG)
"""Pieces named above or beside the trim; the others' names stand below it."""
CORNER_MM: Final = 21.0
"""Room for a corner's figures beside the trim, where the trim is narrow."""
ROWS_MM: Final = 9.5
"""Room for a corner's two rows of figures above and below the trim."""
WIDE_MM: Final = 66.0
"""Trim drawn this wide has room for its corner figures above and below it."""
NARROW_MM: Final = 14.0
"""An opening drawn narrower than this has no room for its readings; the table beside has them."""
READING_MM: Final = 3.2
SMALL_MM: Final = 2.7


@dataclass(frozen=True, slots=True, kw_only=True)
class Echo:
    """An opening drawn, and what is said below it.

    Attributes:
        drawing: The picture.
        times: How many times as crooked as it is it was drawn.
        question: What it looks like in words, to be confirmed before cutting.
    """

    drawing: Drawing
    times: int
    question: str


def echo_of(
    opening: Opening,
    fitted: FittedOpening,
    readings: OpeningReadings,
    pieces: Sequence[Piece],
    words: Words,
    units: Units,
) -> Echo:
    """Return the picture of one face of an opening with its pieces named in place."""
    shape = as_it_stands(opening, fitted)
    square = true_rectangle(shape)
    times = times_shown(shape, square)
    drawn = exaggerated(shape, square, times)
    trim = trim_rings(opening, fitted.face, drawn, pieces)
    outer = [point for ring in (*trim, drawn, square) for point in ring]
    page = _Page.holding(outer, len(_names_below(pieces, words)))
    marks: list[Mark] = [Outline(points=page.put(ring), ink=Ink.PIECE) for ring in trim]
    marks.append(Outline(points=page.put(square), ink=Ink.TRUE))
    marks.append(Outline(points=page.put(drawn), ink=Ink.OPENING))
    if page.scale * square[0].distance_mm(square[1]) >= NARROW_MM:
        marks += _diagonals(drawn, readings, page, units)
        marks += _side_readings(drawn, readings, page, units)
    marks += _piece_names(page, outer, pieces, words)
    marks += _corner_words(page, outer, fitted, readings, units)
    bottom = say("floor") if opening.stands_on_floor else say("bottom")
    question = lean_words(shape, units, bottom=bottom)
    return Echo(
        drawing=Drawing(
            width_mm=WIDTH_MM,
            height_mm=page.height_mm,
            marks=tuple(marks),
            caption=say(
                "{caption} {level}",
                caption=_caption(times, page.scale),
                level=level_words(opening, fitted),
            ).rstrip(),
            described=say(
                "{mark} seen from inside the room. {question}",
                mark=opening.mark,
                question=question,
            ),
        ),
        times=times,
        question=question,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Page:
    """Where the opening's millimetres fall on the drawing."""

    scale: float
    is_wide: bool
    x_mm: float
    y_mm: float
    height_mm: float

    @classmethod
    def holding(cls, points: Sequence[Point], names_below: int) -> "_Page":
        low_x, high_x = min(p.x_mm for p in points), max(p.x_mm for p in points)
        low_y, high_y = min(p.y_mm for p in points), max(p.y_mm for p in points)
        below_mm = NAME_MM + NEXT_NAME_MM * (names_below - 1) if names_below else EDGE_MM
        wide, high = max(1.0, high_x - low_x), max(1.0, high_y - low_y)
        scale = min((WIDTH_MM - 2 * NAME_MM) / wide, (HEIGHT_MM - 2 * ROWS_MM) / high)
        is_wide = scale * wide >= WIDE_MM
        if not is_wide:
            scale = min(
                (WIDTH_MM - 2 * CORNER_MM) / wide,
                (HEIGHT_MM - NAME_MM - below_mm) / high,
                scale * 1.2,
            )
        ends_mm = ROWS_MM if is_wide else NAME_MM
        return cls(
            scale=scale,
            is_wide=is_wide,
            x_mm=WIDTH_MM / 2 - scale * (low_x + high_x) / 2,
            y_mm=ends_mm + scale * high_y,
            height_mm=ends_mm + scale * high + (ROWS_MM if is_wide else below_mm),
        )

    def put(self, points: Sequence[Point]) -> tuple[tuple[float, float], ...]:
        return tuple(self.at(point) for point in points)

    def at(self, point: Point) -> tuple[float, float]:
        return (self.x_mm + self.scale * point.x_mm, self.y_mm - self.scale * point.y_mm)


def _diagonals(drawn: Corners, readings: OpeningReadings, page: _Page, units: Units) -> list[Mark]:
    bl, br, tr, tl = drawn
    marks: list[Mark] = []
    for place, start, end in ((Place.RISING, bl, tr), (Place.FALLING, br, tl)):
        value_mm = readings.mean_mm(place)
        if value_mm is None:
            continue
        (x1, y1), (x2, y2) = page.at(start), page.at(end)
        marks.append(Outline(points=((x1, y1), (x2, y2)), ink=Ink.MARK, closed=False))
        turn = math.degrees(math.atan2(y2 - y1, x2 - x1))
        turn = turn - 180 if turn > 90 else turn + 180 if turn < -90 else turn
        part = 0.30 if page.is_wide else 0.24
        nx, ny = math.sin(math.radians(turn)), -math.cos(math.radians(turn))
        marks.append(
            Word(
                x_mm=x1 + part * (x2 - x1) + nx * 0.9,
                y_mm=y1 + part * (y2 - y1) + ny * 0.9,
                text=format_length(value_mm, units),
                size_mm=READING_MM,
                turn_deg=turn,
            )
        )
    return marks


def _side_readings(
    drawn: Corners, readings: OpeningReadings, page: _Page, units: Units
) -> list[Mark]:
    bl, br, tr, tl = (page.at(corner) for corner in drawn)
    placed = (
        (Place.TOP, tl, tr, 0.0, (0.0, 4.2)),
        (Place.BOTTOM, bl, br, 0.0, (0.0, -1.6)),
        (Place.LEFT, tl, bl, -90.0, (4.2, 0.0)),
        (Place.RIGHT, tr, br, -90.0, (-1.6, 0.0)),
    )
    return [
        Word(
            x_mm=(start[0] + end[0]) / 2 + off[0],
            y_mm=(start[1] + end[1]) / 2 + off[1],
            text=format_length(value_mm, units),
            size_mm=READING_MM,
            bold=True,
            turn_deg=turn,
        )
        for place, start, end, turn, off in placed
        if (value_mm := readings.side_mm(place)) is not None
    ]


def _piece_names(
    page: _Page, outer: Sequence[Point], pieces: Sequence[Piece], words: Words
) -> list[Mark]:
    left, right, top, bottom = _bounds(page, outer)
    middle_x, middle_y = (left + right) / 2, (top + bottom) / 2
    places = {
        Role.HEAD: (middle_x, top - 2.0, 0.0),
        Role.LEFT_LEG: (left - 2.0, middle_y, -90.0),
        Role.RIGHT_LEG: (right + 4.2, middle_y, -90.0),
    }
    named = [
        (role_words(piece.role, words), places[piece.role])
        for piece in pieces
        if piece.role in BESIDE
    ]
    named += [
        (name, (middle_x, bottom + 4.2 + NEXT_NAME_MM * row, 0.0))
        for row, name in enumerate(_names_below(pieces, words))
    ]
    return [
        Word(x_mm=x, y_mm=y, text=name, size_mm=READING_MM, bold=True, turn_deg=turn)
        for name, (x, y, turn) in named
    ]


def _names_below(pieces: Sequence[Piece], words: Words) -> tuple[str, ...]:
    """Return the names that stand below the trim, each once, the board's first."""
    below = sorted(
        (piece for piece in pieces if piece.role not in BESIDE),
        key=lambda piece: piece.role is not Role.BOARD,
    )
    return tuple(dict.fromkeys(role_words(piece.role, words) for piece in below))


def _corner_words(
    page: _Page,
    outer: Sequence[Point],
    fitted: FittedOpening,
    readings: OpeningReadings,
    units: Units,
) -> list[Mark]:
    left, right, top, bottom = _bounds(page, outer)
    plane = readings.plane.corners_mm() if readings.plane else (0.0, 0.0, 0.0, 0.0)
    if page.is_wide:
        spots = (
            (left, bottom + 3.4, 1, Anchor.START),
            (right, bottom + 3.4, 1, Anchor.END),
            (right, top - 1.4, -1, Anchor.END),
            (left, top - 1.4, -1, Anchor.START),
        )
    else:
        spots = (
            (left - 1.6, bottom - 3.4, 1, Anchor.END),
            (right + 1.6, bottom - 3.4, 1, Anchor.START),
            (right + 1.6, top + 6.0, -1, Anchor.START),
            (left - 1.6, top + 6.0, -1, Anchor.END),
        )
    marks: list[Mark] = []
    figures = zip(spots, fitted.corner_deg, fitted.corner_u_deg, plane, strict=True)
    for (x, y, way, anchor), angle, u, out_mm in figures:
        lines = [
            say(
                "{angle}° ± {u:.{value}f}",
                angle=format_angle(angle),
                u=u,
                value=1 if u >= 0.1 else 2,
            )
        ]
        if format_length(abs(out_mm), units) != "0":
            lines.append(
                say(
                    "{out} {proud}",
                    out=format_length(abs(out_mm), units),
                    proud=say("proud") if out_mm > 0 else say("shy"),
                )
            )
        for row, text in enumerate(lines):
            marks.append(
                Word(
                    x_mm=x,
                    y_mm=y + way * 3.7 * row,
                    text=text,
                    size_mm=SMALL_MM,
                    bold=row > 0,
                    anchor=anchor,
                )
            )
    return marks


def _bounds(page: _Page, points: Sequence[Point]) -> tuple[float, float, float, float]:
    put = page.put(points)
    xs, ys = [x for x, _ in put], [y for _, y in put]
    return min(xs), max(xs), min(ys), max(ys)


def _caption(times: int, scale: float) -> str:
    crooked = (
        say("drawn as crooked as it is")
        if times == 1
        else say(
            "drawn {times} x as crooked as it is",
            times=times,
        )
    )
    return say(
        "Seen from inside the room; {crooked}; dotted: true square. Sizes 1 : "
        "{scale:.0f}. Angles with their standard doubt.",
        crooked=crooked,
        scale=1 / scale,
    )
