import pytest

from longpoint.survey.house_file import read_house
from longpoint.survey.readings import AngleReading, Gauge, Place, Plane
from tests.house_documents import codes, found, house, the_opening, window


def test_readings_keep_their_order_their_repeats_and_how_they_were_written() -> None:
    opening = the_opening(window(right=[462, "461"], middle={"height": 462, "width": "1186.50"}))

    lengths = opening.readings.lengths
    assert [r.place for r in lengths] == [
        Place.TOP,
        Place.BOTTOM,
        Place.LEFT,
        Place.RIGHT,
        Place.RIGHT,
        Place.RISING,
        Place.FALLING,
        Place.MIDDLE_HEIGHT,
        Place.MIDDLE_WIDTH,
    ]
    assert [r.value_mm for r in opening.readings.at(Place.RIGHT)] == [462.0, 461.0]
    assert [r.written for r in opening.readings.at(Place.MIDDLE_WIDTH)] == ["1186.50"]


def test_angle_readings_carry_the_doubt_of_their_gauge() -> None:
    opening = the_opening(
        window(
            plumb={"left": 0.1, "right": [-0.2, -0.1]},
            plumb_u=0.05,
            level={"floor": 0.4},
            bevel={"bl": 90.5},
        )
    )

    assert opening.readings.angles == (
        AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=0.1, u_deg=0.05),
        AngleReading(gauge=Gauge.PLUMB_RIGHT, value_deg=-0.2, u_deg=0.05),
        AngleReading(gauge=Gauge.PLUMB_RIGHT, value_deg=-0.1, u_deg=0.05),
        AngleReading(gauge=Gauge.LEVEL_FLOOR, value_deg=0.4, u_deg=0.1),
        AngleReading(gauge=Gauge.BEVEL_BL, value_deg=90.5, u_deg=0.25),
    )


def test_a_plane_read_in_part_is_taken_as_flush_elsewhere_and_said() -> None:
    result = read_house(house(openings=[window(plane={"tl": 2, "br": [-1, -2]})]))

    plane = result.house.openings[0].readings.plane
    assert plane == Plane(tl_mm=2.0, tr_mm=0.0, br_mm=-1.5, bl_mm=0.0)
    assert "tr, bl" in found(result, "plane-part-read")[0].read


def test_without_plane_readings_there_is_no_plane() -> None:
    assert the_opening(window()).readings.plane is None


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"width": 1187}, "keys-clash"),
        ({"height": 462}, "keys-clash"),
        ({"left": None, "right": None, "rising": None, "falling": None}, "readings-missing"),
        ({"top": None, "bottom": None, "rising": None, "falling": None}, "readings-missing"),
        (dict.fromkeys(("top", "bottom", "left", "right")), "readings-missing"),
    ],
)
def test_readings_that_tell_a_size_twice_or_not_at_all_hold_the_opening(
    changes: dict[str, object], code: str
) -> None:
    result = read_house(house(openings=[window(**changes)]))

    assert codes(result) == [code]
    assert [entry.mark for entry in result.house.held] == ["W1"]


@pytest.mark.parametrize(
    "sides",
    [{"width": 1187, "height": 462}, {"top": 1187, "left": 462}, {"top": 1187, "rising": 1274}],
)
def test_a_width_and_a_height_or_diagonal_are_enough(sides: dict[str, object]) -> None:
    opening = {"mark": "W1", "kind": "window", "trim": "all-round", **sides}

    assert len(the_opening(opening).readings.lengths) == 2
