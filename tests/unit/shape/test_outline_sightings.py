import pytest

from longpoint.errors import ShapeError
from longpoint.shape.network import Angle, Distance
from longpoint.shape.outline_sightings import along_x, first_guesses, outline_sightings
from longpoint.shape.point import Point, interior_angles_deg, side_lengths_mm
from longpoint.survey.instruments import Tape
from longpoint.survey.outlines import Across, OutlineReadings

TAPE = Tape(name="T1")


def read(*sides_mm: float, angles: tuple[float, ...] = ()) -> OutlineReadings:
    return OutlineReadings(sides_mm=sides_mm, angles_deg=angles, tape="T1")


def test_the_first_angle_stands_between_the_first_and_the_second_side() -> None:
    sightings = outline_sightings(read(900, 1400, 966, 1050, angles=(90.0, 68.75)), TAPE)
    angles = [s for s in sightings if isinstance(s, Angle)]
    assert [(a.name, a.corner, a.back, a.onward, a.read) for a in angles] == [
        ("corner 2", 1, 0, 2, 90.0),
        ("corner 3", 2, 1, 3, 68.75),
    ]


def test_the_last_angle_closes_the_list_at_the_first_corner() -> None:
    sightings = outline_sightings(read(3, 4, 5, angles=(90.0, 36.87, 53.13)), TAPE)
    assert sightings[-1].name == "corner 1"


def test_sides_and_lengths_across_are_named_by_the_corners_they_join() -> None:
    across = (Across(start=1, end=3, length_mm=1664.0),)
    outline = OutlineReadings(sides_mm=(900, 1400, 966, 1050), across=across, tape="T1")
    found = outline_sightings(outline, TAPE)
    assert [s.name for s in found] == ["side 1-2", "side 2-3", "side 3-4", "side 4-1", "across 1-3"]
    assert isinstance(found[-1], Distance)
    assert (found[-1].start, found[-1].end) == (0, 2)


@pytest.mark.parametrize(
    "sides_mm",
    [(3, 4, 5), (900, 1400, 966, 1050), (500,) * 8, (10, 3, 3, 4.2), (1, 1, 1, 2.9), (7,) * 24],
)
def test_the_guess_on_a_circle_has_just_these_sides_and_turns_no_corner_in(
    sides_mm: tuple[float, ...],
) -> None:
    guess = first_guesses(read(*sides_mm))[1]
    assert side_lengths_mm(guess) == pytest.approx(sides_mm, rel=1e-6)
    assert max(interior_angles_deg(guess)) < 180.0


def test_the_guess_by_corners_is_the_shape_itself_where_all_corners_were_read() -> None:
    guess = first_guesses(read(500, 500, 500, 500, 500, 500, angles=(120.0,) * 6))[0]
    assert interior_angles_deg(guess) == pytest.approx((120.0,) * 6)


def test_a_side_longer_than_all_others_together_closes_round_nothing() -> None:
    with pytest.raises(ShapeError, match="corner 2 to corner 3"):
        first_guesses(read(300, 900, 300))


@pytest.mark.parametrize("angles", [(120.0,) * 4, (170.0, 179.0, 179.0)])
def test_corners_that_go_round_no_such_shape_are_refused(angles: tuple[float, ...]) -> None:
    with pytest.raises(ShapeError, match="make 360"):
        first_guesses(read(900, 900, 900, 900, angles=angles))


def test_a_shape_is_moved_and_turned_until_its_first_side_lies_along_x() -> None:
    found = along_x((Point(5, 5), Point(5, 9), Point(2, 9)))
    assert [tuple(round(v, 9) + 0.0 for v in p) for p in found] == [(0, 0), (4, 0), (4, 3)]
