import pytest

from longpoint.errors import ShapeError
from longpoint.shape.network import Angle, Bearing
from longpoint.shape.opening_fit import fit_opening
from longpoint.shape.sightings import (
    assumptions,
    first_guess,
    gauge_sightings,
    level_assumption,
    tape_sightings,
)
from longpoint.survey.instruments import Tape
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings, Place, Reading
from tests.drawn_openings import readings_of

TAPE = Tape(name="T1")


def assumed(readings: OpeningReadings) -> list[str]:
    seen = tape_sightings(readings, TAPE)
    return [a.name for a in assumptions(first_guess(readings), seen)]


def test_a_place_read_twice_is_one_sighting_of_its_mean_and_weighs_more() -> None:
    once, twice = (tape_sightings(readings_of(top=top), TAPE)[0] for top in (1186, (1186, 1187)))
    assert twice.read == 1186.5
    assert twice.u == pytest.approx(once.u / 2**0.5)


def test_one_width_stands_for_the_bottom_and_one_height_for_the_left() -> None:
    found = tape_sightings(readings_of(width=900, height=600), TAPE)
    assert [(s.name, s.start, s.end) for s in found] == [("width", 0, 1), ("height", 3, 0)]


def test_a_width_beside_a_top_is_not_counted_twice() -> None:
    found = tape_sightings(readings_of(width=900, top=901, height=600), TAPE)
    assert [s.name for s in found] == ["top", "height"]


def test_a_lean_to_the_right_is_a_bearing_under_90() -> None:
    (plumb,) = gauge_sightings((AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=0.4, u_deg=0.1),))
    assert isinstance(plumb, Bearing)
    assert plumb.read == pytest.approx(89.6)


@pytest.mark.parametrize(
    ("gauge", "corner"),
    [(Gauge.BEVEL_BL, 0), (Gauge.BEVEL_BR, 1), (Gauge.BEVEL_TR, 2), (Gauge.BEVEL_TL, 3)],
)
def test_a_bevel_is_the_angle_at_its_corner(gauge: Gauge, corner: int) -> None:
    (bevel,) = gauge_sightings((AngleReading(gauge=gauge, value_deg=90.5, u_deg=0.25),))
    assert isinstance(bevel, Angle)
    assert (bevel.corner, bevel.read) == (corner, 90.5)
    assert bevel.predict(_UNIT_SQUARE, 0.0)[0] == pytest.approx(90.0)


def test_the_floor_is_taken_as_about_level_only_where_no_level_was_read_there() -> None:
    plumb = AngleReading(gauge=Gauge.PLUMB_LEFT, value_deg=0.0, u_deg=0.1)
    floor = AngleReading(gauge=Gauge.LEVEL_FLOOR, value_deg=0.0, u_deg=0.1)
    assert len(level_assumption((plumb,))) == 1
    assert level_assumption((plumb, floor)) == ()
    assert level_assumption(()) == ()


def test_no_more_is_assumed_than_the_shape_needs() -> None:
    sides = {"top": 900, "bottom": 900, "left": 600, "right": 600}
    assert assumed(readings_of(**sides, rising=1082, falling=1082)) == []
    assert assumed(readings_of(**sides, rising=1082)) == []
    assert assumed(readings_of(**sides)) == ["square (both diagonals the same)"]
    assert assumed(readings_of(top=900, height=600, rising=1082, bottom=900)) == [
        "right as long as left"
    ]
    assert len(assumed(readings_of(width=900, height=600))) == 3


def test_without_a_width_there_is_no_shape() -> None:
    with pytest.raises(ShapeError):
        first_guess(readings_of(left=600, right=600))


def test_the_first_guess_is_near_a_raked_opening() -> None:
    raked = readings_of(bottom=1386, left=1124, right=1642, top=1480, rising=2149, falling=1784)
    bl, br, tr, tl = first_guess(raked)
    assert bl == (0.0, 0.0)
    assert br.x_mm == 1386
    assert tr == pytest.approx((1386, 1642), abs=5)
    assert tl == pytest.approx((0, 1124), abs=5)


_UNIT_SQUARE = first_guess(readings_of(width=900, height=900))


def test_a_side_that_was_not_read_is_steadied_by_the_one_opposite() -> None:
    # Width, height and both diagonals fix the shape but leave the right side to small differences
    # of large readings: its doubt would be about 2.7 mm without the assumption, which is 1 mm.
    readings = OpeningReadings(
        lengths=tuple(
            Reading(place=place, value_mm=value_mm, written=f"{value_mm}")
            for place, value_mm in (
                (Place.WIDTH, 1200.0),
                (Place.HEIGHT, 1050.0),
                (Place.RISING, 1594.5),
                (Place.FALLING, 1594.5),
            )
        ),
        tape="T1",
    )
    fitted = fit_opening("W1", readings, Tape(name="T1", max_error_mm=0.0, tape_class=None)).fitted
    assert fitted.assumed == ("top as long as bottom", "right as long as left")
    assert max(fitted.side_u_mm) < 1.2
    assert fitted.misclosure is None
