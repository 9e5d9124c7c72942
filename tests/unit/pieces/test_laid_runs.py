"""Where skirting lies: on the walls of a fitted room, by the corner that is known, or nowhere."""

import math
from dataclasses import replace

import pytest

from longpoint.pieces.boards import Side
from longpoint.pieces.laid_runs import STRAIGHT, laid_boards, wall_lying
from longpoint.pieces.lying import FLAT, return_lying
from longpoint.shape.fitted import FittedRoom, Shapes
from longpoint.shape.point import Point
from longpoint.survey.house import House
from tests.room_builder import a_house, a_room, a_run, a_wall

# Clockwise as seen from above: north, east, south, west.
CORNERS = (Point(0, 0), Point(4000, 0), Point(4000, -3000), Point(0, -3000))
DEN = FittedRoom(
    name="Den",
    corners=CORNERS,
    wall_mm=(4000.0, 3000.0, 4000.0, 3000.0),
    wall_u_mm=(1.0,) * 4,
    corner_deg=(90.0,) * 4,
    corner_u_deg=(0.1,) * 4,
)
SHAPES = Shapes(rooms=(DEN,))
WALLS = [a_wall(mark, length) for mark, length in zip("NESW", DEN.wall_mm, strict=True)]


def den(*, skirting: bool = False) -> House:
    return a_house(rooms=[a_room(*(replace(w, skirting=skirting) for w in WALLS))])


def test_a_wall_s_face_looks_into_its_room() -> None:
    middle = (2000.0, -1500.0, 0.0)
    for index in range(4):
        wall = wall_lying(DEN, index)
        towards = sum(o * (m - w) for o, m, w in zip(wall.out, middle, wall.origin, strict=True))
        assert towards > 0.0
        assert wall.across == pytest.approx((0.0, 0.0, 1.0))


def test_a_wall_that_leans_away_takes_its_board_along() -> None:
    wall = wall_lying(DEN, 0, lean_deg=2.0)
    # North is away from the room.
    assert wall.across == pytest.approx(
        (0.0, math.sin(math.radians(2.0)), math.cos(math.radians(2.0)))
    )


def test_boards_worked_out_from_walls_begin_at_their_corners() -> None:
    laid = {board.mark: board for board in laid_boards(den(skirting=True), SHAPES)}
    assert {board.room for board in laid.values()} == {"Den"}
    assert laid["Den-N"].lies.origin == pytest.approx((0.0, 0.0, 0.0))
    assert laid["Den-S"].lies.origin == pytest.approx((4000.0, -3000.0, 0.0))
    assert laid["Den-S"].lies.along == pytest.approx((-1.0, 0.0, 0.0))


@pytest.mark.parametrize(
    ("ends", "start_mm"),
    [(("internal", "square"), 0.0), (("square", "internal"), 2600.0), (("square", "square"), None)],
)
def test_a_run_that_was_read_lies_by_the_corner_it_stands_in(
    ends: tuple[str, str], start_mm: float | None
) -> None:
    run = replace(a_run("A", 1400.0, *ends), room="Den", wall="N")
    (board,) = laid_boards(replace(den(), runs=(run,)), SHAPES)
    if start_mm is None:
        assert (board.room, board.lies) == ("", STRAIGHT)
    else:
        assert board.room == "Den"
        assert board.lies.origin == pytest.approx((start_mm, 0.0, 0.0))


def test_a_held_room_tells_no_place() -> None:
    run = replace(a_run("A", 1400.0, "internal", "square"), room="Den", wall="N")
    (board,) = laid_boards(replace(den(), runs=(run,)), SHAPES, frozenset({"Den"}))
    assert board.room == ""


def test_scarfed_parts_follow_each_other_and_climb_with_the_floor() -> None:
    run = replace(a_run("A", 6000.0, "square", "square"), floor=((0.0, 0.0), (6000.0, 60.0)))
    (board,) = laid_boards(a_house(runs=[run]), Shapes())
    first, second = board.parts["A-1"], board.parts["A-2"]
    assert first.along == second.along
    assert first.along[1] == pytest.approx(0.01, abs=1e-4)
    assert second.origin[1] == pytest.approx(second.origin[0] * 0.01, abs=0.01)


def test_returns_stand_with_their_backs_to_what_they_close() -> None:
    left, right = (return_lying(FLAT, side, 640.0, 18.0) for side in Side)
    assert left.out == (-1.0, 0.0, 0.0)
    assert right.out == (1.0, 0.0, 0.0)
    # Both reach from the wall to the board's face.
    assert left.at((18.0, 0.0, 18.0)) == (0.0, 0.0, 18.0)
    assert right.at((0.0, 0.0, 18.0)) == (640.0, 0.0, 18.0)
