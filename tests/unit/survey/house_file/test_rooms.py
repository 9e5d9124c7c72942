from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house import EntryKind, HeldEntry
from longpoint.survey.house_file import house_document, read_house
from longpoint.survey.rooms import FloorFit, RoomDiagonal, RunEnd, WallOpening
from tests.house_documents import codes, defaults, house, skirting_run, the_house, wall


def room(**changes: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"name": "Kitchen", "walls": [wall("N"), wall("E")], **changes}


def test_a_room_keeps_what_was_said_of_it() -> None:
    walls = [
        wall(
            "N",
            length=[4606, 4605],
            corner=[90.5, 90.1],
            corner_u=0.3,
            bow=-4,
            skirting=True,
            openings=[
                {"mark": "D1", "from_left": 640},
                {"mark": "D2"},
                {"mark": "W", "from_left": 0},
            ],
        ),
        {"mark": "E"},
    ]
    diagonals = [{"from": "N", "to": "E", "length": 5141}]

    (read,) = the_house(
        rooms=[room(walls=walls, closed=False, diagonals=diagonals, floor_cover=8, accept=["x"])]
    ).rooms

    north, east = read.walls
    assert (north.length_mm, north.corner_deg, north.corner_u_deg) == (4605.5, 90.3, 0.3)
    assert (north.bow_mm, north.skirting, north.profile) == (-4.0, True, "SK95")
    assert north.openings == (
        WallOpening(mark="D1", from_left_mm=640.0),
        WallOpening(mark="D2"),
        WallOpening(mark="W", from_left_mm=0.0),
    )
    assert (east.length_mm, east.corner_deg, east.corner_u_deg) == (None, None, 0.5)
    assert (east.skirting, east.profile) == (False, "")
    assert read.diagonals == (RoomDiagonal(start="N", end="E", length_mm=5141.0),)
    assert (read.closed, read.tape, read.floor_cover_mm) == (False, "T1", 8.0)
    assert read.accept == ("x",)


@pytest.mark.parametrize(
    ("walls", "place", "code"),
    [
        ([wall("N"), wall("E", length=-1)], "Kitchen E", "unreadable-value"),
        ([wall("N"), {"length": 900}], "Kitchen wall 2", "missing-key"),
        ([wall("N"), 7], "Kitchen wall 2", "not-a-table"),
        ([wall("N"), wall("N")], "Kitchen N", "mark-twice"),
        ([wall("N", crner=90)], "Kitchen N", "unknown-key"),
        ([wall("N", openings=[{"from_left": 1}])], "Kitchen N", "missing-key"),
        ([wall("N", openings=[7])], "Kitchen N", "not-a-table"),
        ([wall("N", profile="SK59")], "Kitchen N", "profile-unknown"),
        ([], "Kitchen", "missing-key"),
    ],
)
def test_trouble_with_a_wall_holds_its_room_and_no_other(
    walls: list[object], place: str, code: str
) -> None:
    result = read_house(house(rooms=[room(walls=walls), room(name="Loft")]))

    assert [(f.code, f.place, f.severity) for f in result.findings] == [
        (code, place, Severity.STOP)
    ]
    assert result.house.held == (HeldEntry(kind=EntryKind.ROOM, mark="Kitchen", room="Kitchen"),)
    assert [r.name for r in result.house.rooms] == ["Loft"]


@pytest.mark.parametrize(
    ("diagonal", "code"),
    [
        ({"from": "N", "to": "South", "length": 5141}, "wall-unknown"),
        ({"from": "N", "to": "N", "length": 5141}, "keys-clash"),
        ({"from": "N", "to": "E"}, "missing-key"),
    ],
)
def test_a_diagonal_joins_two_corners_of_its_room(diagonal: dict[str, object], code: str) -> None:
    result = read_house(house(rooms=[room(diagonals=[diagonal])]))

    assert codes(result) == [code]
    assert [entry.mark for entry in result.house.held] == ["Kitchen"]


def test_walls_and_runs_read_with_a_tape_that_is_off_are_mended_too() -> None:
    tapes = {"T1": {"class": "II", "take_off": 1.5}}

    home = the_house(tapes=tapes, rooms=[room()], runs=[skirting_run(length=[2284, 2285])])

    assert home.rooms[0].walls[0].length_mm == 4604.5
    assert home.runs[0].length_mm == 2283.0


def test_a_run_keeps_what_was_said_of_it() -> None:
    (run,) = the_house(
        runs=[
            skirting_run(
                room="Loft",
                wall="W",
                profile="OG57",
                left="architrave",
                right="return",
                left_corner=90.5,
                right_corner=[270, 271],
                accept=["x"],
            )
        ]
    ).runs

    assert (run.mark, run.room, run.wall, run.profile) == ("S1", "Loft", "W", "OG57")
    assert (run.left, run.right) == (RunEnd.ARCHITRAVE, RunEnd.RETURN)
    assert (run.left_corner_deg, run.right_corner_deg) == (90.5, 270.5)
    assert (run.length_mm, run.tape, run.accept) == (2284.0, "T1", ("x",))


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"left": None}, "missing-key"),
        ({"right": "wall"}, "unreadable-value"),
        ({"length": 0}, "unreadable-value"),
        ({"profile": "SK59"}, "profile-unknown"),
        ({"tape": "T9"}, "tape-unknown"),
    ],
)
def test_a_bad_run_is_held_and_the_next_one_is_not(changes: dict[str, object], code: str) -> None:
    result = read_house(house(runs=[skirting_run(**changes), skirting_run(mark="S2")]))

    assert [(f.code, f.place) for f in result.findings] == [(code, "S1")]
    assert [run.mark for run in result.house.runs] == ["S2"]


def test_without_a_skirting_no_run_can_be_worked_out() -> None:
    result = read_house(
        house(
            defaults=defaults(skirting=None),
            runs=[skirting_run()],
            rooms=[room(walls=[wall(skirting=True)])],
        )
    )

    assert sorted(f.place for f in result.findings) == ["Kitchen N", "S1"]
    assert codes(result) == ["no-skirting", "no-skirting"]


def test_a_wall_that_leans_over_a_floor_that_falls_is_kept_and_written_back() -> None:
    leaning = wall("N", lean=[1.5, 1.7], floor=[[4188, 0], [0, 9]], floor_fit="level")
    home = the_house(rooms=[room(walls=[leaning, wall("E")])])

    north, east = home.rooms[0].walls
    assert north.lean_deg == pytest.approx(1.6)
    assert north.floor == ((0.0, 9.0), (4188.0, 0.0))
    assert north.floor_fit is FloorFit.LEVEL
    assert (east.lean_deg, east.floor, east.floor_fit) == (None, (), FloorFit.FOLLOW)
    assert read_house(house_document(home)).house == home


def test_a_run_keeps_its_leans_its_floor_and_its_rake() -> None:
    home = the_house(
        runs=[
            skirting_run(
                right="rake",
                right_rake=[38.0, 38.2],
                lean=-0.5,
                left_lean=1,
                right_lean=0,
                floor=[[0, -4], [1000, 2.5]],
                floor_fit="follow",
            )
        ]
    )

    (run,) = home.runs
    assert (run.left_rake_deg, run.right_rake_deg) == (None, 38.1)
    assert (run.lean_deg, run.left_lean_deg, run.right_lean_deg) == (-0.5, 1.0, 0.0)
    assert run.floor == ((0.0, -4.0), (1000.0, 2.5))
    assert run.floor_fit is FloorFit.FOLLOW
    assert read_house(house_document(home)).house == home


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"right": "rake"}, "missing-key"),
        ({"right": "rake", "right_rake": 75}, "unreadable-value"),
        ({"lean": 50}, "unreadable-value"),
        ({"floor": [[9, 4188]]}, "unreadable-value"),
        ({"floor": [[-10, 3]]}, "unreadable-value"),
        ({"floor": [[500, 3], [500, 4]]}, "unreadable-value"),
        ({"floor": [1900, 6]}, "unreadable-value"),
        ({"floor_fit": "taper"}, "unreadable-value"),
    ],
)
def test_a_run_whose_lean_floor_or_rake_makes_no_sense_is_held(
    changes: dict[str, object], code: str
) -> None:
    result = read_house(house(runs=[skirting_run(**changes)]))

    assert [(f.code, f.place) for f in result.findings] == [(code, "S1")]
