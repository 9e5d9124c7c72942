import pytest

from longpoint.survey.readings import (
    BEVELS,
    DIAGONALS,
    SIDES,
    Gauge,
    OpeningReadings,
    Place,
    Plane,
    Reading,
)


def read(*lengths: tuple[Place, float]) -> OpeningReadings:
    return OpeningReadings(
        lengths=tuple(
            Reading(place=place, value_mm=value_mm, written=f"{value_mm:g}")
            for place, value_mm in lengths
        ),
        tape="T1",
    )


def test_the_sides_go_round_anticlockwise_from_the_bottom() -> None:
    assert SIDES == (Place.BOTTOM, Place.RIGHT, Place.TOP, Place.LEFT)
    assert DIAGONALS == (Place.RISING, Place.FALLING)


def test_bevels_stand_in_the_order_of_the_corners() -> None:
    assert BEVELS == (Gauge.BEVEL_BL, Gauge.BEVEL_BR, Gauge.BEVEL_TR, Gauge.BEVEL_TL)


def test_repeated_readings_are_kept_and_averaged() -> None:
    readings = read((Place.TOP, 1180.0), (Place.LEFT, 620.0), (Place.TOP, 1181.0))
    assert [r.written for r in readings.at(Place.TOP)] == ["1180", "1181"]
    assert readings.mean_mm(Place.TOP) == 1180.5


def test_what_was_not_read_is_none_and_not_zero() -> None:
    readings = read((Place.TOP, 1180.0))
    assert readings.mean_mm(Place.BOTTOM) is None
    assert readings.side_mm(Place.LEFT) is None


@pytest.mark.parametrize("side", [Place.TOP, Place.BOTTOM])
def test_one_width_stands_for_top_and_bottom(side: Place) -> None:
    assert read((Place.WIDTH, 1180.0), (Place.HEIGHT, 620.0)).side_mm(side) == 1180.0


@pytest.mark.parametrize("side", [Place.LEFT, Place.RIGHT])
def test_one_height_stands_for_left_and_right(side: Place) -> None:
    assert read((Place.WIDTH, 1180.0), (Place.HEIGHT, 620.0)).side_mm(side) == 620.0


def test_a_side_read_itself_goes_before_the_one_width() -> None:
    assert read((Place.WIDTH, 1180.0), (Place.TOP, 1183.0)).side_mm(Place.TOP) == 1183.0


@pytest.mark.parametrize("place", [*DIAGONALS, Place.MIDDLE_WIDTH, Place.MIDDLE_HEIGHT])
def test_neither_width_nor_height_stands_for_what_is_no_side(place: Place) -> None:
    assert read((Place.WIDTH, 1180.0), (Place.HEIGHT, 620.0)).side_mm(place) is None


def test_the_plane_is_told_in_the_order_of_the_corners() -> None:
    plane = Plane(tl_mm=1.0, tr_mm=2.0, br_mm=3.0, bl_mm=4.0)
    assert plane.corners_mm() == (4.0, 3.0, 2.0, 1.0)


def test_a_plane_not_read_at_a_corner_is_flush_there() -> None:
    assert Plane(tl_mm=2.0).corners_mm() == (0.0, 0.0, 0.0, 2.0)
