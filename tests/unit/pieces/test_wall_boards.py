import math
from collections.abc import Sequence
from dataclasses import replace

import pytest

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Corner, corner_angles
from longpoint.pieces.wall_boards import Course, room_boards, wall_boards
from longpoint.pieces.wall_doors import reaching
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.house import House
from longpoint.survey.openings import Opening, OpeningKind
from longpoint.survey.rooms import Room, RunEnd
from tests.room_builder import SKIRTING, a_door, a_house, a_room, a_run, a_wall

NOTHING: frozenset[str] = frozenset()


def made(
    house: House, held: frozenset[str] = NOTHING
) -> tuple[dict[str, Board], tuple[Finding, ...]]:
    shapes = Shapes(rooms=fit_rooms(house)[0])
    boards, findings = wall_boards(house, shapes, corner_angles(house, shapes, held), held)
    return {board.mark: board for board in boards}, findings


def kitchen(
    doors: Sequence[tuple[str, float | None]] = (), *, north_mm: float | None = 4606
) -> Room:
    return a_room(
        a_wall("N", north_mm, doors=doors, skirting=True),
        a_wall("E", 2281),
        a_wall("S", 4606),
        a_wall("W", 2281),
        name="Kitchen",
        diagonals=[
            ("W", "E", math.hypot(4606, 2281)),
            ("N", "S", math.hypot(4606, 2281)),
        ],
    )


def house_with(
    doors: Sequence[tuple[str, float | None]] = (),
    openings: Sequence[Opening] = (),
    *,
    north_mm: float | None = 4606,
) -> House:
    return a_house(rooms=[kitchen(doors, north_mm=north_mm)], openings=openings)


def test_a_wall_without_doors_is_one_board_from_corner_to_corner() -> None:
    boards, findings = made(house_with())
    assert findings == ()
    board = boards["Kitchen-N"]
    assert board.length_mm == 4606
    assert board.sum_text == "wall 4606"
    assert (board.left.at, board.right.at) == (Corner("Kitchen", 3), Corner("Kitchen", 0))


def test_a_door_splits_the_wall_at_its_architraves() -> None:
    boards, _ = made(house_with([("D1", 640)], [a_door(room="Kitchen")]))
    # 640 - 5 - 57 = 578 and 4606 - 640 - 819 - 5 - 57 = 3085
    assert boards["Kitchen-N-1"].length_mm == pytest.approx(578)
    assert boards["Kitchen-N-2"].length_mm == pytest.approx(3085)
    assert boards["Kitchen-N-1"].sum_text == "to D1 640 - 5 - 57 = 578"
    assert boards["Kitchen-N-2"].sum_text == "wall 4606 - 640 - 819 - 5 - 57 = 3085"
    assert boards["Kitchen-N-1"].right.kind is RunEnd.ARCHITRAVE
    assert boards["Kitchen-N-2"].left.kind is RunEnd.ARCHITRAVE


def test_the_width_at_the_floor_counts_not_the_one_at_the_head() -> None:
    boards, _ = made(house_with([("D1", 640)], [a_door(room="Kitchen", top=819, bottom=825)]))
    assert boards["Kitchen-N-2"].length_mm == pytest.approx(3079)


def test_between_two_doors_lies_a_board_square_at_both_ends() -> None:
    boards, _ = made(
        house_with(
            [("D1", 640), ("D2", 3000)],
            [a_door("D1", room="Kitchen"), a_door("D2", room="Kitchen", kind=OpeningKind.CASED)],
        )
    )
    # 3000 - 5 - 57 - 640 - 819 - 5 - 57 = 1417
    assert boards["Kitchen-N-2"].length_mm == pytest.approx(1417)
    assert sum(board.length_mm for board in boards.values()) == pytest.approx(4606 - 2 * 943)


def test_a_window_does_not_interrupt() -> None:
    window = a_door("W1", room="Kitchen", kind=OpeningKind.WINDOW)
    boards, findings = made(house_with([("W1", None)], [window]))
    assert list(boards) == ["Kitchen-N"]
    assert findings == ()


def test_a_run_that_names_the_wall_replaces_its_boards() -> None:
    house = a_house(rooms=[kitchen()], runs=[a_run("S1", 4600, room="Kitchen", wall="N")])
    assert made(house) == ({}, ())


def test_more_readings_in_the_sum_make_more_doubt() -> None:
    boards, _ = made(house_with([("D1", 640)], [a_door(room="Kitchen")]))
    assert boards["Kitchen-N-1"].u_mm < boards["Kitchen-N-2"].u_mm


def test_a_held_door_holds_the_boards_beside_it_only() -> None:
    house = house_with(
        [("D1", 640), ("D2", 3000)],
        [a_door("D1", room="Kitchen"), a_door("D2", room="Kitchen")],
    )
    boards, findings = made(house, frozenset({"D1"}))
    assert {mark: board.is_held for mark, board in boards.items()} == {
        "Kitchen-N-1": True,
        "Kitchen-N-2": True,
        "Kitchen-N-3": False,
    }
    assert [(f.code, f.severity, f.place) for f in findings] == [
        ("run-held", Severity.STOP, "Kitchen-N-1"),
        ("run-held", Severity.STOP, "Kitchen-N-2"),
    ]


@pytest.mark.parametrize("place", ["Kitchen", "Kitchen N"])
def test_a_held_room_or_wall_holds_its_boards(place: str) -> None:
    boards, findings = made(house_with(), frozenset({place}))
    assert boards["Kitchen-N"].is_held
    assert [f.code for f in findings] == ["run-held"]


def test_another_wall_held_leaves_this_one_alone() -> None:
    boards, findings = made(house_with(), frozenset({"Kitchen E"}))
    assert not boards["Kitchen-N"].is_held
    assert findings == ()


def test_a_run_held_already_says_nothing_again() -> None:
    boards, findings = made(house_with(), frozenset({"Kitchen-N", "Kitchen"}))
    assert boards["Kitchen-N"].is_held
    assert findings == ()


def test_a_wall_not_read_is_worked_out_when_the_others_fix_it() -> None:
    boards, findings = made(house_with(north_mm=None))
    assert findings == ()
    assert boards["Kitchen-N"].length_mm == pytest.approx(4606, abs=0.1)
    assert boards["Kitchen-N"].sum_text.startswith("wall worked out")


def test_a_wall_that_the_others_fix_badly_is_held() -> None:
    room = a_room(
        a_wall("N", None, skirting=True), a_wall("E", 2281), a_wall("S", 4606), a_wall("W", 2281)
    )
    boards, findings = made(a_house(rooms=[room]))
    assert boards == {}
    assert [(f.code, f.place) for f in findings] == [("wall-unsure", "Den N")]


def test_a_wall_not_read_in_a_room_without_a_plan_is_held() -> None:
    room = a_room(a_wall("N", None, skirting=True), closed=False)
    _, findings = made(a_house(rooms=[room]))
    assert [f.code for f in findings] == ["wall-unread"]


def test_a_door_that_overlaps_the_corner_is_held() -> None:
    boards, findings = made(house_with([("D1", 40)], [a_door(room="Kitchen")]))
    assert [(f.code, f.place) for f in findings] == [("no-room-for-run", "Kitchen-N-1")]
    assert boards["Kitchen-N-1"].is_held
    assert not boards["Kitchen-N-2"].is_held


def test_an_architrave_that_fills_the_wall_to_the_corner_leaves_no_board_and_says_so() -> None:
    boards, findings = made(house_with([("D1", 62)], [a_door(room="Kitchen")]))
    assert list(boards) == ["Kitchen-N-2"]
    assert [(f.code, f.severity) for f in findings] == [("no-board", Severity.NOTE)]


def test_a_wall_without_a_profile_is_held() -> None:
    room = a_room(*(a_wall(m, 3000, skirting=True, profile="Nope") for m in "NESW"))
    boards, findings = made(a_house(rooms=[room]))
    assert boards == {}
    assert {f.code for f in findings} == {"skirting-unnamed"}


def test_the_ends_of_a_chain_are_square_and_said() -> None:
    room = a_room(
        a_wall("A", 1000, 90.0, skirting=True),
        a_wall("B", 900, None, skirting=True),
        closed=False,
    )
    boards, findings = made(a_house(rooms=[room]))
    assert boards["Den-A"].left.kind is RunEnd.SQUARE
    assert boards["Den-A"].right.kind is RunEnd.INTERNAL
    assert boards["Den-B"].right.kind is RunEnd.SQUARE
    assert [f.code for f in findings] == ["chain-end", "chain-end"]


def test_external_corners_of_the_room_are_mitred() -> None:
    lengths_and_corners = [(2000, 90), (1500, 270), (2000, 90), (2500, 90), (4000, 90), (4000, 90)]
    room = a_room(
        *(a_wall(f"w{i}", d, c, skirting=True) for i, (d, c) in enumerate(lengths_and_corners))
    )
    boards, _ = made(a_house(rooms=[room]))
    assert boards["Den-w1"].right.kind is RunEnd.EXTERNAL
    assert boards["Den-w2"].left.kind is RunEnd.EXTERNAL


def test_a_corner_that_is_nearly_straight_is_held() -> None:
    room = a_room(a_wall("A", 1000, 179.0, skirting=True), a_wall("B", 900, None), closed=False)
    boards, findings = made(a_house(rooms=[room]))
    assert boards == {}
    assert "corner-impossible" in [f.code for f in findings]


def a_course(house: House, course: Course, **leans: float) -> dict[str, Board]:
    (room,) = house.rooms
    walls = tuple(replace(wall, lean_deg=leans.get(wall.mark)) for wall in room.walls)
    leaning = replace(room, walls=walls)
    leaned = replace(house, rooms=(leaning,))
    shapes = Shapes(rooms=fit_rooms(leaned)[0])
    angles = corner_angles(leaned, shapes, NOTHING)
    boards, findings = room_boards(leaned, shapes, leaning, course, angles, NOTHING)
    assert findings == ()
    return {board.mark: board for board in boards}


def test_a_rail_runs_round_the_room_under_its_own_marks() -> None:
    course = Course(mark="PR1", profile=SKIRTING, low_mm=1965.0, openings=frozenset())
    boards = a_course(house_with([("D1", 640)], [a_door(room="Kitchen")]), course)
    assert list(boards) == ["PR1-N", "PR1-E", "PR1-S", "PR1-W"]
    assert boards["PR1-N"].length_mm == 4606


def test_a_rail_stops_at_the_doors_that_reach_it() -> None:
    house = house_with([("D1", 640)], [a_door(room="Kitchen")])
    course = Course(mark="DR1", profile=SKIRTING, low_mm=900.0, openings=reaching(house, 900.0))
    boards = a_course(house, course)
    assert boards["DR1-N-1"].right.kind is RunEnd.ARCHITRAVE
    assert boards["DR1-N-2"].length_mm == 4606 - 640 - 819 - 5 - 57


def test_a_rail_is_longer_than_the_floor_where_the_next_walls_lean_back() -> None:
    course = Course(mark="DR1", profile=SKIRTING, low_mm=900.0)
    board = a_course(house_with(), course, N=0.0, E=1.0, S=0.0, W=0.5)["DR1-N"]
    assert board.length_mm == pytest.approx(
        4606 + 900 * (math.tan(math.radians(1.0)) + math.tan(math.radians(0.5)))
    )
    assert board.sum_text == "wall 4606 + 7.9 + 15.7 = 4629.6"
    assert (board.left.lean_deg, board.right.lean_deg) == (0.5, 1.0)


def test_skirting_on_the_floor_keeps_the_length_read_there() -> None:
    course = Course(mark="Kitchen", profile=SKIRTING)
    board = a_course(house_with(), course, N=2.0, E=1.0, S=0.0, W=0.5)["Kitchen-N"]
    assert (board.length_mm, board.lean_deg) == (4606, 2.0)


def test_boards_beside_a_door_each_stand_on_their_part_of_the_floor() -> None:
    house = house_with([("D1", 640)], [a_door(room="Kitchen")])
    (room,) = house.rooms
    falling = replace(room.walls[0], floor=((0.0, 10.0), (4606.0, 0.0)))
    boards, _ = made(replace(house, rooms=(replace(room, walls=(falling, *room.walls[1:])),)))
    left, right = boards["Kitchen-N-1"], boards["Kitchen-N-2"]
    assert left.floor[0] == (0.0, 10.0)
    assert right.floor[-1] == (right.length_mm, 0.0)
    assert right.floor[0][1] == pytest.approx(10.0 * (4606 - 1521) / 4606)


def test_what_bends_to_the_floor_is_not_scribed_over_it() -> None:
    house = house_with()
    (room,) = house.rooms
    falling = replace(room.walls[0], floor=((0.0, 10.0), (4606.0, 0.0)))
    bent = replace(house, rooms=(replace(room, walls=(falling, *room.walls[1:])),))
    boards = a_course(bent, Course(mark="B1", profile=SKIRTING))
    assert boards["B1-N"].floor == ()
