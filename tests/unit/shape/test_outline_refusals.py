import pytest

from longpoint.errors import ShapeError
from longpoint.shape.outline_refusals import left_open, refuse_no_shape, refuse_short, turned_in
from longpoint.shape.point import Point
from longpoint.survey.outlines import OutlineReadings


def refuse(*corners: tuple[float, float]) -> None:
    points = tuple(Point(*corner) for corner in corners)
    refuse_short(points)
    refuse_no_shape(points, tuple(range(1, len(points) + 1)))


def test_a_convex_shape_is_let_through() -> None:
    refuse((0, 0), (900, 0), (900, 1050), (450, 1500), (0, 1050))


def test_sides_that_cross_are_named() -> None:
    with pytest.raises(ShapeError, match=r"from corner 1 to corner 2 .* from corner 3 to corner 4"):
        refuse((0, 0), (900, 1050), (900, 0), (0, 1050))


def test_a_shape_that_goes_round_twice_crosses_itself() -> None:
    with pytest.raises(ShapeError, match="crosses"):
        refuse((0, 95), (-59, -81), (95, 31), (-95, 31), (59, -81))


def test_a_corner_that_points_in_is_named() -> None:
    with pytest.raises(ShapeError, match=r"Corner 2 .* points into the opening"):
        refuse((0, 0), (450, 400), (900, 0), (900, 900), (0, 900))
    assert "Read corner 7 again" in turned_in(7, 190.0).do


@pytest.mark.parametrize(
    ("corners", "word"),
    [
        (((0, 0), (900, 0), (901, 500), (900, 1000), (0, 1000)), "flat"),
        (((0, 0), (2000, 0), (1000, 40)), "closed up"),
    ],
)
def test_a_corner_that_is_none_is_named(
    corners: tuple[tuple[float, float], ...], word: str
) -> None:
    with pytest.raises(ShapeError, match=word):
        refuse(*corners)


def test_two_corners_in_one_spot_are_refused() -> None:
    with pytest.raises(ShapeError, match="Corners 2 and 3"):
        refuse((0, 0), (900, 0), (900, 0.4), (0, 1000))


def test_a_shape_left_open_says_what_was_read_and_what_it_wants() -> None:
    error = left_open(OutlineReadings(sides_mm=(500,) * 6, angles_deg=(120.0,), tape="T1"), 2)
    assert error.read == "Of this opening 6 sides, 1 corner and 0 lengths across were read."
    assert "2 more readings are needed" in error.wrong
