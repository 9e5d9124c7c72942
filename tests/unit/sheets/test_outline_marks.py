import math

import pytest

from longpoint.shape.point import Point
from longpoint.sheets.blocks import Anchor, Word
from longpoint.sheets.dialects import words_for
from longpoint.sheets.opening_pictures import WIDTH_MM
from longpoint.sheets.outline_marks import (
    HEIGHT_MM,
    SHORTEST_ANGLE_MM,
    SHORTEST_READING_MM,
    Named,
    Page,
    corner_angles,
    piece_names,
    side_reading,
)
from longpoint.survey.house import Dialect

SQUARE = (Point(0, 0), Point(1000, 0), Point(1000, 1000), Point(0, 1000))
WORDS = words_for(Dialect.UK)


def strip(name: str, *corners: tuple[float, float]) -> Named:
    """Return a piece by its inner edge and, back again, its outer edge."""
    return name, tuple(Point(*corner) for corner in corners)


def names(*named: Named) -> list[Word]:
    page = Page.holding([p for _, ring in named for p in ring] + list(SQUARE))
    return [mark for mark in piece_names(named, page, WORDS) if isinstance(mark, Word)]


@pytest.mark.parametrize(("wide", "high"), [(4000, 500), (500, 4000), (1000, 1000)])
def test_a_page_holds_all_points_within_the_paper(wide: float, high: float) -> None:
    page = Page.holding([Point(-50, 30), Point(-50 + wide, 30 + high)])
    for x, y in page.put([Point(-50, 30), Point(-50 + wide, 30 + high)]):
        assert 0.0 < x < WIDTH_MM
        assert 0.0 < y < page.height_mm <= HEIGHT_MM + 1e-9


def test_up_is_up() -> None:
    page = Page.holding(SQUARE)
    assert page.at(Point(0, 1000))[1] < page.at(Point(0, 0))[1]
    assert page.at(Point(1000, 0))[0] > page.at(Point(0, 0))[0]


def test_a_name_stands_outside_the_piece_it_names() -> None:
    bottom = strip("side-1", (0, 0), (1000, 0), (1060, -60), (-60, -60))
    left = strip("left-leg", (0, 1000), (0, 0), (-60, -60), (-60, 1060))
    page = Page.holding([p for _, ring in (bottom, left) for p in ring] + list(SQUARE))
    below, beside = names(bottom, left)
    assert below.text == "side 1"
    assert below.y_mm > page.at(Point(0, -60))[1]
    assert beside.text == "left leg"
    assert beside.turn_deg == -90.0
    assert beside.x_mm < page.at(Point(-60, 0))[0]


def test_the_name_of_a_slanting_piece_begins_or_ends_beside_it() -> None:
    left = strip("side-2", (0, 600), (500, 1000), (500, 1100), (-60, 660))
    right = strip("side-3", (500, 1000), (1000, 600), (1060, 660), (500, 1100))
    before, after = names(left, right)
    assert (before.anchor, after.anchor) == (Anchor.END, Anchor.START)


def test_a_short_piece_has_its_number_alone_and_one_without_a_name_none() -> None:
    short = strip("segment-4", (0, 0), (40, 0), (50, -60), (-10, -60))
    band = strip("", (0, 0), (1000, 0), (1060, -60), (-60, -60))
    assert [word.text for word in names(short, band)] == ["4"]


def test_a_reading_stands_inside_its_side_along_it() -> None:
    page = Page.holding(SQUARE)
    for side in range(4):
        ends = (SQUARE[side], SQUARE[(side + 1) % 4])
        (word,) = side_reading(page, ends, page.middle, "1000")
        assert isinstance(word, Word)
        (x1, y1), (x2, y2) = page.put(ends)
        mx, my = page.at(page.middle)
        assert math.dist((word.x_mm, word.y_mm), (mx, my)) < math.dist(
            ((x1 + x2) / 2, (y1 + y2) / 2), (mx, my)
        )
        assert -90.0 < word.turn_deg <= 90.0


def test_what_has_no_room_is_left_out() -> None:
    page = Page.holding(SQUARE)
    short = Point(0.8 * SHORTEST_READING_MM / page.scale, 0.0)
    assert side_reading(page, (Point(0, 0), short), page.middle, "5") == []
    small = 0.9 * SHORTEST_ANGLE_MM / page.scale
    tight = (Point(0, 0), Point(small, 0), Point(small, small), Point(0, small))
    assert corner_angles(page, tight, (90.0,) * 4, tight) == []


def test_an_angle_stands_inside_its_corner() -> None:
    page = Page.holding(SQUARE)
    marks = corner_angles(page, SQUARE, (90.0, 90.0, 90.0, 90.0), SQUARE)
    assert len(marks) == 4
    for mark, corner in zip(marks, SQUARE, strict=True):
        assert isinstance(mark, Word)
        assert mark.text == "90.0°"
        x, y = page.at(corner)
        mx, my = page.at(page.middle)
        assert (mark.x_mm - x) * (mx - x) > 0
        assert (mark.y_mm - y) * (my - y) > 0
