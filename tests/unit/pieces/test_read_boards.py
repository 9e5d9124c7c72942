import math

import pytest

from longpoint.errors import Severity
from longpoint.pieces.boards import Corner
from longpoint.pieces.read_boards import read_boards
from longpoint.survey.rooms import Room
from tests.room_builder import a_house, a_room, a_run, a_wall

NOTHING: frozenset[str] = frozenset()


def den() -> Room:
    return a_room(*(a_wall(m, 3000) for m in "NESW"))


def test_a_run_on_a_wall_stands_in_the_wall_s_corners() -> None:
    angles = {Corner("Den", 0): 91.0, Corner("Den", 1): 89.0}
    house = a_house(rooms=[den()], runs=[a_run("S1", 3000, wall="E")])
    (board,), findings = read_boards(house, angles, NOTHING)
    assert findings == ()
    assert (board.left.at, board.left.corner_deg) == (Corner("Den", 0), 91.0)
    assert (board.right.at, board.right.corner_deg) == (Corner("Den", 1), 89.0)


def test_of_two_runs_along_a_wall_only_the_outer_ends_stand_in_its_corners() -> None:
    runs = [a_run("S1", 1200, wall="E"), a_run("S2", 900, wall="E")]
    boards, _ = read_boards(a_house(rooms=[den()], runs=runs), {}, NOTHING)
    assert [board.left.at for board in boards] == [Corner("Den", 0), None]
    assert [board.right.at for board in boards] == [None, Corner("Den", 1)]


def test_a_corner_read_at_the_run_is_believed_before_the_room_s() -> None:
    house = a_house(rooms=[den()], runs=[a_run("S1", 3000, wall="E", left_corner_deg=88.0)])
    (board,), _ = read_boards(house, {Corner("Den", 0): 91.0}, NOTHING)
    assert board.left.corner_deg == 88.0


@pytest.mark.parametrize(("end", "corner_deg"), [("internal", 90.0), ("external", 270.0)])
def test_a_corner_that_nobody_read_is_taken_as_square(end: str, corner_deg: float) -> None:
    (board,), _ = read_boards(a_house(runs=[a_run("S1", 900, end, "square")]), {}, NOTHING)
    assert (board.left.corner_deg, board.left.is_assumed) == (corner_deg, True)


def test_an_external_corner_under_180_was_read_on_the_solid_and_that_is_said() -> None:
    run = a_run("R6", 342, "square", "external", right_corner_deg=90.5)
    (board,), (note,) = read_boards(a_house(runs=[run]), {}, NOTHING)
    assert board.right.corner_deg == pytest.approx(269.5)
    assert (note.code, note.severity) == ("corner-on-solid", Severity.NOTE)


@pytest.mark.parametrize(
    ("end", "corner_deg"), [("internal", 270.0), ("internal", 12.0), ("external", 181.0)]
)
def test_an_end_that_contradicts_its_corner_is_held(end: str, corner_deg: float) -> None:
    run = a_run("S1", 900, end, "square", left_corner_deg=corner_deg)
    (board,), (stop,) = read_boards(a_house(runs=[run]), {}, NOTHING)
    assert board.is_held
    assert (stop.code, stop.severity, stop.place) == ("end-mismatch", Severity.STOP, "S1")


def test_an_external_end_in_an_internal_corner_of_the_room_is_held() -> None:
    house = a_house(rooms=[den()], runs=[a_run("S1", 900, "external", "square", wall="E")])
    (board,), _ = read_boards(house, {Corner("Den", 0): 90.0}, NOTHING)
    assert board.is_held


def test_a_held_run_says_nothing_again() -> None:
    run = a_run("S1", 900, "internal", "square", left_corner_deg=270.0)
    (board,), findings = read_boards(a_house(runs=[run]), {}, frozenset({"S1"}))
    assert board.is_held
    assert findings == ()


def test_the_doubt_of_a_run_is_one_wall_reading_and_the_tape() -> None:
    (board,), _ = read_boards(a_house(runs=[a_run("S1", 2284)]), {}, NOTHING)
    # Class II at 3 m, hook as zero: 0.3 + 0.2 x 3 + 0.2 = 1.1; MID 2014/32/EU, Annex X.
    parts = (0.47, 1 / math.sqrt(12), 1.5, 1.1 / math.sqrt(3))
    assert board.u_mm == pytest.approx(math.hypot(*parts))
