import pytest

from longpoint.errors import ShapeError
from longpoint.shape.network import Angle
from longpoint.shape.point import Point
from longpoint.shape.room_sightings import first_guess, room_sightings
from longpoint.survey.instruments import Tape
from tests.room_builder import a_room, a_wall, room_of_plan

TAPE = Tape(name="T1")
L_PLAN = [(0, 0), (2000, 0), (2000, -1500), (4000, -1500), (4000, -4000), (0, -4000)]


def test_every_reading_becomes_a_sighting_that_the_true_room_meets() -> None:
    room = room_of_plan(L_PLAN)
    sightings = room_sightings(room, TAPE)
    assert len(sightings) == 6 + 6 + 3
    for sighting in sightings:
        shown, _ = sighting.predict(first_guess(room), 0.0)
        assert shown == pytest.approx(sighting.read, abs=1e-6)


def test_a_corner_not_read_is_a_soft_right_angle() -> None:
    room = a_room(a_wall("N", 1, None), a_wall("E", 1, None), a_wall("S", 1), a_wall("W", 1, 91))
    corners = [s for s in room_sightings(room, TAPE) if isinstance(s, Angle)]
    assert [(s.read, s.is_assumed, s.u) for s in corners] == [
        (90, True, 1.0),
        (90, True, 1.0),
        (90, False, 0.5),
        (91, False, 0.5),
    ]


def test_the_first_guess_closes_a_room_whose_readings_do_not() -> None:
    room = a_room(a_wall("N", 3000, 91), a_wall("E", 2010), a_wall("S", 2990), a_wall("W", 2000))
    corners = first_guess(room)
    assert corners[0] == Point(0, 0)
    assert corners[1].y_mm == pytest.approx(0)
    assert len(corners) == 4


def test_a_chain_with_an_unread_wall_can_t_be_placed() -> None:
    with pytest.raises(ShapeError) as caught:
        first_guess(a_room(a_wall("A", 1000), a_wall("B", None), closed=False))
    assert "B" in caught.value.read
