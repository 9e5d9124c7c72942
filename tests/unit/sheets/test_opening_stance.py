from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.shape.point import Point
from longpoint.sheets.opening_stance import (
    as_it_stands,
    exaggerated,
    lean_words,
    level_words,
    times_shown,
    true_rectangle,
)
from tests.unit.sheets.sample import OPENINGS, fitted

BY_MARK = {opening.mark: opening for opening in OPENINGS}


def test_swapped_diagonals_give_the_mirrored_lean() -> None:
    shape = fitted("W1").corners
    mirrored = tuple(Point(1186 - p.x_mm, p.y_mm) for p in (shape[1], shape[0], shape[3], shape[2]))
    assert "3.5 mm to the right" in lean_words(shape, Units.MM)
    assert "3.5 mm to the left" in lean_words(mirrored, Units.MM)


def test_a_square_opening_is_said_to_be_square() -> None:
    square = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
    assert lean_words(square, Units.MM) == "It stands square as near as the tape can tell."


def test_the_falling_floor_of_a_door_is_not_taken_for_leaning_legs() -> None:
    falling = replace(
        fitted("D1"),
        corners=(Point(0, 0), Point(822, 0), Point(844.2, 2026.9), Point(22.2, 2035.9)),
    )
    stands = as_it_stands(BY_MARK["D1"], falling)
    assert stands[2].y_mm == pytest.approx(stands[3].y_mm)
    assert lean_words(stands, Units.MM, bottom="floor").endswith(
        "The floor is 9 mm higher at the right."
    )


def test_a_level_reading_turns_the_drawing() -> None:
    turned = as_it_stands(BY_MARK["W2"], replace(fitted("W2"), level_deg=1.0))
    assert turned[1].y_mm == pytest.approx(886 * 0.017452, rel=1e-3)


def test_what_was_taken_as_level_is_said_unless_a_level_was_read() -> None:
    assert "its head is drawn level" in level_words(BY_MARK["D1"], fitted("D1"))
    assert "its bottom is drawn level" in level_words(BY_MARK["W1"], fitted("W1"))
    assert level_words(BY_MARK["W1"], replace(fitted("W1"), level_deg=0.0)) == ""


def test_a_shape_drawn_once_is_itself_and_a_square_one_stays_square() -> None:
    shape = fitted("W1").corners
    square = true_rectangle(shape)
    for same in (
        zip(exaggerated(shape, square, 1), shape, strict=True),
        zip(exaggerated(square, square, 40), square, strict=True),
    ):
        assert all(a.distance_mm(b) < 1e-9 for a, b in same)


def test_the_more_square_an_opening_the_more_its_lean_is_enlarged() -> None:
    crooked, straight = fitted("W1").corners, fitted("W2").corners
    assert times_shown(crooked, true_rectangle(crooked)) < times_shown(
        straight, true_rectangle(straight)
    )


def test_a_raked_opening_is_not_enlarged() -> None:
    raked = (Point(0, 0), Point(900, 0), Point(900, 1400), Point(0, 1050))
    assert times_shown(raked, true_rectangle(raked)) == 1
