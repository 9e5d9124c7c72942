import pytest

from longpoint.survey.checks.wall_witness import hear_witness
from longpoint.survey.rooms import Room
from tests.room_builder import a_room, a_wall


def box(**corners: float) -> Room:
    return a_room(
        a_wall("N", 3651, corners.get("north", 90.0)),
        a_wall("E", 3389),
        a_wall("S", 3638),
        a_wall("W", 3208),
    )


def test_the_wall_opposite_speaks_for_the_run() -> None:
    room = box()
    heard = hear_witness(room, room.walls[1], 3190.0)
    assert heard is not None
    assert (heard.opposite_mm, heard.speaks_for_sum) == (3208.0, True)


def test_it_is_silent_when_a_degree_out_of_square_explains_the_difference() -> None:
    room = box()
    assert hear_witness(room, room.walls[1], 3340.0) is None


def test_in_an_l_shape_the_walls_beside_are_taken_off() -> None:
    room = a_room(
        a_wall("a", 2000),
        a_wall("b", 1500, 270.0),
        a_wall("c", 2000),
        a_wall("d", 2500),
        a_wall("e", 4000),
        a_wall("f", 4000),
    )
    heard = hear_witness(room, room.walls[1], 1600.0)
    assert heard is not None
    assert (heard.opposite_mm, heard.speaks_for_sum) == (1500.0, False)


@pytest.mark.parametrize(
    "room",
    [
        box(north=120.0),
        box(north=270.0),
        a_room(a_wall("N", 3000), a_wall("E", 3389), closed=False),
        a_room(a_wall("N", None), a_wall("E", 3389), a_wall("S", 3000), a_wall("W", 3208)),
    ],
    ids=["not square", "does not go round", "a chain", "a wall not read"],
)
def test_rooms_that_are_not_square_and_closed_say_nothing(room: Room) -> None:
    assert hear_witness(room, room.walls[1], 3190.0) is None
