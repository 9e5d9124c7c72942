"""The mark over a place that may not be cut: a word and broad bars, plain in grey print."""

from dataclasses import replace
from typing import Final

from longpoint.sheets.blocks import Drawing, Ink, Mark, Outline, Word
from longpoint.speech.said import say

WIDTH_MM: Final = 106.0
HEIGHT_MM: Final = 62.0
BAR_MM: Final = 7.0
STEP_MM: Final = 21.0
WORD_MM: Final = 24.0


def hold_picture(place: str, kind: str) -> Drawing:
    """Return the picture of a held place: no length stands on it.

    Args:
        place: Its mark.
        kind: What it is, e.g. "window".
    """
    left, right, top, bottom = 26.0, WIDTH_MM - 26.0, 6.0, HEIGHT_MM - 6.0
    frame = ((left, top), (right, top), (right, bottom), (left, bottom))
    marks: list[Mark] = [Outline(points=frame, ink=Ink.OPENING)]
    marks += [Outline(points=bar, ink=Ink.BAR) for bar in diagonal_bars(WIDTH_MM, HEIGHT_MM)]
    plate = ((15.0, 17.0), (WIDTH_MM - 15.0, 17.0), (WIDTH_MM - 15.0, 46.0), (15.0, 46.0))
    marks.append(Outline(points=plate, ink=Ink.LEFT))
    marks.append(Word(x_mm=WIDTH_MM / 2, y_mm=40.0, text=say("HOLD"), size_mm=WORD_MM, bold=True))
    return Drawing(
        width_mm=WIDTH_MM,
        height_mm=HEIGHT_MM,
        marks=tuple(marks),
        caption=say("No length is given until it has been read again or accepted."),
        described=say("HOLD: {place}, {kind}, is not to be cut.", place=place, kind=kind),
    )


def voided(drawing: Drawing) -> Drawing:
    """Return a drawing struck through because the readings have changed since."""
    bars = tuple(
        Outline(points=bar, ink=Ink.BAR)
        for bar in diagonal_bars(drawing.width_mm, drawing.height_mm)
    )
    middle = drawing.height_mm / 2
    plate = (
        (0.0, middle - 9.0),
        (drawing.width_mm, middle - 9.0),
        (drawing.width_mm, middle + 9.0),
        (0.0, middle + 9.0),
    )
    size_mm = min(14.0, drawing.width_mm / 5.0)
    return replace(
        drawing,
        marks=(
            *drawing.marks,
            *bars,
            Outline(points=plate, ink=Ink.LEFT),
            Word(
                x_mm=drawing.width_mm / 2,
                y_mm=middle + 1.0,
                text=say("VOID"),
                size_mm=min(9.0, size_mm),
                bold=True,
            ),
            Word(x_mm=drawing.width_mm / 2, y_mm=middle + 6.5, text=say("readings have changed")),
        ),
        described=say(
            "VOID, readings have changed. {described}",
            described=drawing.described,
        ),
    )


def diagonal_bars(width_mm: float, height_mm: float) -> tuple[tuple[tuple[float, float], ...], ...]:
    """Return slanting bars that fill a rectangle from side to side, clipped to it."""
    bars = []
    start = -height_mm
    while start < width_mm:
        bar = _clipped(
            (
                (start, height_mm),
                (start + BAR_MM, height_mm),
                (start + BAR_MM + height_mm, 0.0),
                (start + height_mm, 0.0),
            ),
            width_mm,
        )
        if len(bar) >= 3:
            bars.append(bar)
        start += STEP_MM
    return tuple(bars)


def _clipped(
    points: tuple[tuple[float, float], ...], width_mm: float
) -> tuple[tuple[float, float], ...]:
    """Return the part of a convex outline between x = 0 and x = width."""
    for limit, sign in ((0.0, 1.0), (width_mm, -1.0)):
        kept: list[tuple[float, float]] = []
        for index, (x, y) in enumerate(points):
            px, py = points[index - 1]
            inside, was_inside = sign * (x - limit) >= 0, sign * (px - limit) >= 0
            if inside is not was_inside:
                part = (limit - px) / (x - px)
                kept.append((limit, py + part * (y - py)))
            if inside:
                kept.append((x, y))
        points = tuple(kept)
    return points
