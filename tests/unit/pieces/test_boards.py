import pytest

from longpoint.pieces.boards import (
    Corner,
    corner_angles,
    is_possible_corner,
    left_corner,
    right_corner,
)
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.rooms import RunEnd
from tests.room_builder import a_house, a_room, a_wall


def test_a_fitted_corner_is_believed_before_the_gauge() -> None:
    room = a_room(
        a_wall("N", 3000, 91.0),
        a_wall("E", 2000),
        a_wall("S", 3000),
        a_wall("W", 2000),
        diagonals=[("W", "E", 3605.55), ("N", "S", 3605.55)],
    )
    house = a_house(rooms=[room])
    shapes = Shapes(rooms=fit_rooms(house)[0])
    here = Corner("Den", 0)
    assert corner_angles(house, shapes, frozenset())[here] == pytest.approx(90.0, abs=0.05)
    assert corner_angles(house, shapes, frozenset({"Den"}))[here] == 91.0


def test_a_chain_has_a_last_corner_only_where_it_was_read() -> None:
    open_ended = a_room(a_wall("A", 1000, 90.0), a_wall("B", 500, None), closed=False)
    house = a_house(rooms=[open_ended])
    shapes = Shapes(rooms=fit_rooms(house)[0])
    assert list(corner_angles(house, shapes, frozenset())) == [Corner("Den", 0)]


def test_a_wall_starts_in_the_corner_of_the_wall_before() -> None:
    room = a_room(a_wall("N", 1), a_wall("E", 1), a_wall("S", 1))
    assert left_corner(room, 0) == Corner("Den", 2)
    assert right_corner(room, 0) == Corner("Den", 0)


def test_a_chain_begins_in_no_corner() -> None:
    assert left_corner(a_room(a_wall("N", 1), closed=False), 0) is None


@pytest.mark.parametrize(
    ("kind", "corner_deg", "possible"),
    [
        (RunEnd.INTERNAL, 90.0, True),
        (RunEnd.INTERNAL, 29.0, False),
        (RunEnd.INTERNAL, 178.0, False),
        (RunEnd.INTERNAL, 270.0, False),
        (RunEnd.EXTERNAL, 225.0, True),
        (RunEnd.EXTERNAL, 181.0, False),
        (RunEnd.EXTERNAL, 90.5, False),
    ],
)
def test_only_corners_that_skirting_goes_round_are_possible(
    kind: RunEnd, corner_deg: float, possible: bool
) -> None:
    assert is_possible_corner(kind, corner_deg) is possible
