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
