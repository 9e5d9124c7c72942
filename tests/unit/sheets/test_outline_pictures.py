import math
from typing import Any

import pytest

from longpoint.pieces.other_shapes import fitted_faces, outline_faces
from longpoint.sheets.blocks import Drawing, Ink, Outline, Word
from longpoint.sheets.dialects import words_for
from longpoint.sheets.opening_pictures import Echo
from longpoint.sheets.outline_pictures import arch_echo, outline_echo
from tests.shaped_houses import GABLE, HALL, read, shapes

OCTAGON = {"sides": [500] * 8, "angles": [135] * 8}
DOOR = {
    "kind": "cased",
    "trim": "legs-and-head",
    "top": 900,
    "bottom": 900,
    "left": 2000,
    "right": 2003,
    "arch": {"rise": 450, "blank": "BD140", "segments": 5},
}


def echo(opening: dict[str, Any], **changes: Any) -> Echo:  # noqa: ANN401
    house = read({**opening, **changes})
    (one,) = house.openings
    words = words_for(house.dialect)
    if one.arch is not None:
        (fitted,) = fitted_faces(one, shapes(house))
        return arch_echo(house, one, fitted, one.readings, words)
    outlined = outline_faces(one, shapes(house))[0]
    return outline_echo(house, one, outlined, words)


def outlines(drawing: Drawing, ink: Ink) -> list[Outline]:
    return [m for m in drawing.marks if isinstance(m, Outline) and m.ink is ink]


def texts(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Word)]


def test_every_piece_of_an_arched_set_is_drawn_and_named() -> None:
    drawing = echo(HALL).drawing
    assert len(outlines(drawing, Ink.PIECE)) == 6
    words = texts(drawing)
    assert {"left leg", "right leg", "sill piece", "1", "2", "3"} <= set(words)
    assert {"914", "915", "1012", "1013", "286"} <= set(words)


def test_a_segment_is_drawn_as_sawn_to_the_curve() -> None:
    drawing = echo(HALL).drawing
    (hole,) = outlines(drawing, Ink.OPENING)
    segment = outlines(drawing, Ink.PIECE)[4]
    half = len(segment.points) // 2
    # All points of the inner arc lie as far from one centre: that of the lining's arc too.
    centre = _centre(hole.points[5], hole.points[12], hole.points[20])
    inner = {round(math.dist(centre, point), 6) for point in segment.points[:half]}
    outer = {round(math.dist(centre, point), 6) for point in segment.points[half:]}
    assert len(inner) == len(outer) == 1
    assert inner.pop() < outer.pop()


def _centre(
    a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]
) -> tuple[float, float]:
    (ax, ay), (bx, by), (cx, cy) = a, b, c
    d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    sa, sb, sc = ax**2 + ay**2, bx**2 + by**2, cx**2 + cy**2
    return (
        (sa * (by - cy) + sb * (cy - ay) + sc * (ay - by)) / d,
        (sa * (cx - bx) + sb * (ax - cx) + sc * (bx - ax)) / d,
    )


def test_what_is_asked_of_an_arch_is_how_it_leans_and_where_its_crown_stands() -> None:
    seen = echo(HALL)
    assert seen.question.startswith("Below the springing: ")
    assert "The crown stands 1298.5 mm above the bottom" in seen.question
    assert "Bottom corners 90.0 and 89.9 degrees" in seen.drawing.caption
    assert seen.drawing.described.startswith("W1 seen from inside the room.")


def test_an_arched_doorway_stands_with_its_head_level_and_on_its_blocks() -> None:
    seen = echo(DOOR, plinth="PB75", plinth_height=180)
    assert "The floor is 3 mm higher at the left." in seen.question
    assert len(outlines(seen.drawing, Ink.PIECE)) == 2 + 5 + 2


@pytest.mark.parametrize(("opening", "sides"), [(OCTAGON, 8), (GABLE, 5)])
def test_every_side_is_drawn_and_named(opening: dict[str, Any], sides: int) -> None:
    drawing = echo(opening).drawing
    assert len(outlines(drawing, Ink.PIECE)) == sides
    assert {f"side {k}" for k in range(1, sides + 1)} <= set(texts(drawing))


def test_a_side_is_drawn_where_the_house_file_has_it() -> None:
    drawing = echo(GABLE).drawing
    at = {m.text: m.x_mm for m in drawing.marks if isinstance(m, Word)}
    assert at["side 5"] < at["side 1"] < at["side 2"]


def test_readings_are_those_written_and_all_corners_are_told() -> None:
    drawing = echo(OCTAGON).drawing
    assert texts(drawing).count("500") == 8
    assert drawing.caption.count("135.0") == 8


def test_a_shape_is_said_by_width_height_and_highest_corner() -> None:
    said = echo(GABLE).question
    assert "900 mm wide and 1500 mm high" in said
    assert "450 mm in from its leftmost" in said


def test_corners_tell_how_it_stands_and_sides_do_not() -> None:
    assert "Not read with a level" in echo(OCTAGON).drawing.caption
    assert "Not read with a level" not in echo(GABLE).drawing.caption
    falling = {"corners": [[0, 60], [900, 0], [900, 1050], [450, 1500], [0, 1050]]}
    (hole,) = outlines(echo(falling).drawing, Ink.OPENING)
    # The first side runs down to the right on the page, where y counts down.
    assert hole.points[1][1] > hole.points[0][1]


def test_the_other_face_shows_its_own_left_and_right() -> None:
    lopsided = {"corners": [[0, 0], [900, 0], [900, 1050], [200, 1500], [0, 1050]]}
    house = read({**lopsided, "faces": 2})
    (one,) = house.openings
    words = words_for(house.dialect)
    a, b = (outline_echo(house, one, f, words) for f in outline_faces(one, shapes(house)))
    assert "200 mm in" in a.question
    assert "700 mm in" in b.question
