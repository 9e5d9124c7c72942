import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from tests.house_documents import codes, door, found, house, skirting_run, wall, window

ROOM = {"name": "Bath", "floor_cover": 8, "walls": [wall("N")]}


def test_a_door_planned_for_another_floor_than_its_room_is_warned_of() -> None:
    openings = [
        door(room="Bath"),
        door(mark="D2", room="Bath", floor_cover=0),
        door(mark="D3", room="Loft"),
        window(room="Bath"),
    ]

    result = read_house(house(openings=openings, rooms=[ROOM]))

    (finding,) = found(result, "floor-covers-differ")
    assert (finding.place, finding.severity) == ("D1", Severity.WARNING)
    assert "8 mm" in finding.read


@pytest.mark.parametrize("name", ["Bathh", "bath", "Bth", "Bath "])
def test_a_run_in_a_room_nearly_one_described_is_held_where_the_wall_is_cut_twice(
    name: str,
) -> None:
    rooms = [{"name": "Bath", "floor_cover": 0, "walls": [wall("N", skirting=True), wall("E")]}]
    runs = [skirting_run(room=name, wall="N"), skirting_run(mark="S2", room=name, wall="E")]

    result = read_house(house(runs=runs, rooms=rooms))

    told = [(f.place, f.severity) for f in found(result, "room-unknown")]
    if name.strip() == "Bath":
        assert told == []
        return
    assert told == [("S1", Severity.STOP), ("S2", Severity.WARNING)]
    assert "twice" in found(result, "room-unknown")[0].wrong
    assert 'Did you mean "Bath"?' in found(result, "room-unknown")[0].do


def test_a_wall_that_another_run_stands_for_is_not_cut_twice() -> None:
    rooms = [{"name": "Bath", "floor_cover": 0, "walls": [wall("N", skirting=True)]}]
    runs = [skirting_run(room="Bath", wall="N"), skirting_run(mark="S2", room="Bat", wall="N")]

    result = read_house(house(runs=runs, rooms=rooms))

    assert [(f.place, f.severity) for f in found(result, "room-unknown")] == [
        ("S2", Severity.WARNING)
    ]


@pytest.mark.parametrize(
    ("described", "named"),
    [
        ("Bath", "Loft"),
        ("Bed 1", "Bed 2"),
        ("Bed 1", "Bed"),
        ("Unit A", "Unit B"),
        ("Bed NE", "Bed NW"),
        ("Bedroom", "Bathroom"),
        ("North bed", "South bed"),
    ],
)
def test_a_run_in_another_room_that_is_not_described_stays_quiet(
    described: str, named: str
) -> None:
    rooms = [{"name": described, "floor_cover": 0, "walls": [wall("N", skirting=True)]}]

    result = read_house(house(runs=[skirting_run(room=named, wall="N")], rooms=rooms))

    assert "room-unknown" not in codes(result)


def test_a_run_in_a_room_that_is_held_stays_quiet() -> None:
    rooms = [ROOM, {"name": "Batth", "walls": []}]

    result = read_house(house(runs=[skirting_run(room="Batth", wall="N")], rooms=rooms))

    assert "room-unknown" not in codes(result)


def test_a_run_that_names_a_wall_its_room_does_not_have_is_told() -> None:
    runs = [
        skirting_run(room="Bath", wall="M"),
        skirting_run(mark="S2", room="Bath", wall="N"),
        skirting_run(mark="S3", room="Loft", wall="nib"),
    ]

    result = read_house(house(runs=runs, rooms=[ROOM]))

    assert [(f.place, f.severity) for f in found(result, "wall-not-read")] == [
        ("S1", Severity.NOTE)
    ]
    assert codes(result) == ["wall-not-read"]
