import re
from dataclasses import replace

import pytest

from longpoint.pieces.piece import Role
from longpoint.quantities.length import Units
from longpoint.shape.point import Point
from longpoint.sheets.blocks import Drawing, Ink, Outline, Word
from longpoint.sheets.dialects import role_words, words_for
from longpoint.sheets.opening_pictures import Echo, echo_of
from longpoint.survey.house import Dialect
from tests.unit.sheets.sample import OPENINGS, PIECES, fitted

WORDS = words_for(Dialect.UK)
BY_MARK = {opening.mark: opening for opening in OPENINGS}


def echo(mark: str) -> Echo:
    opening = BY_MARK[mark]
    pieces = tuple(piece for piece in PIECES if piece.opening == mark)
    return echo_of(opening, fitted(mark), opening.readings, pieces, WORDS, Units.MM)


def outlines(drawing: Drawing, ink: Ink) -> list[Outline]:
    return [m for m in drawing.marks if isinstance(m, Outline) and m.ink is ink]


def texts(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Word)]


def test_the_lean_is_drawn_as_many_times_larger_as_the_caption_says() -> None:
    seen = echo("W1")
    (drawn,) = outlines(seen.drawing, Ink.OPENING)
    (square,) = (o for o in outlines(seen.drawing, Ink.TRUE) if o.closed)
    assert f"drawn {seen.times} x as crooked as it is" in seen.drawing.caption
    found = re.search(r"Sizes 1 : (\d+)", seen.drawing.caption)
    assert found
    (left, _), (right, _) = square.points[:2]
    scale = (right - left) / 1186.5
    true = fitted("W1").corners
    # Top left stands 3 mm to the right of bottom left.
    drawn_lean = drawn.points[3][0] - drawn.points[0][0]
    true_lean = (true[3].x_mm - true[0].x_mm) * scale
    assert drawn_lean == pytest.approx(seen.times * true_lean, rel=1e-3)


@pytest.mark.parametrize("mark", ["W1", "W2", "D1"])
def test_every_piece_and_reading_stands_on_the_drawing(mark: str) -> None:
    shown = texts(echo(mark).drawing)
    roles = {piece.role.value.replace("-", " ") for piece in PIECES if piece.opening == mark}
    assert roles - {"sill"} <= set(shown)
    for reading in BY_MARK[mark].readings.lengths:
        assert f"{reading.value_mm:g}" in shown


def test_proud_and_shy_stand_at_their_corners() -> None:
    drawing = echo("W1").drawing
    words = {m.text: m for m in drawing.marks if isinstance(m, Word)}
    assert words["2 proud"].y_mm < drawing.height_mm / 2 < words["1 shy"].y_mm
    assert words["2 proud"].x_mm < drawing.width_mm / 2


@pytest.mark.parametrize("mark", ["W1", "W2", "D1"])
def test_nothing_is_drawn_outside_the_paper(mark: str) -> None:
    drawing = echo(mark).drawing
    for mark_ in drawing.marks:
        points = mark_.points if isinstance(mark_, Outline) else ((mark_.x_mm, mark_.y_mm),)
        for x, y in points:
            assert 0 <= x <= drawing.width_mm
            assert 0 <= y <= drawing.height_mm


def test_a_very_narrow_opening_is_drawn_without_its_readings() -> None:
    narrow = replace(
        fitted("W2"), corners=(Point(0, 0), Point(90, 0), Point(90, 2400), Point(0, 2400))
    )
    opening = BY_MARK["W2"]
    seen = echo_of(opening, narrow, opening.readings, (), WORDS, Units.MM)
    assert "886" not in texts(seen.drawing)
    assert outlines(seen.drawing, Ink.OPENING)


def test_pieces_of_one_kind_are_named_once_below_the_trim() -> None:
    opening = BY_MARK["W2"]
    own = tuple(piece for piece in PIECES if piece.opening == "W2")
    blocks = tuple(
        replace(own[0], mark=f"W2-{corner}-block", role=Role.CORNER_BLOCK)
        for corner in ("top-left", "top-right")
    )
    shown = echo_of(opening, fitted("W2"), opening.readings, (*own, *blocks), WORDS, Units.MM)
    assert texts(shown.drawing).count(role_words(Role.CORNER_BLOCK, WORDS)) == 1
