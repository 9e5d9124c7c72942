import datetime
from typing import Any

import pytest

from longpoint.errors import Severity, SurveyError
from longpoint.quantities.length import Units
from longpoint.survey.house import Dialect, EntryKind, HeldEntry
from longpoint.survey.house_file import read_house
from tests.house_documents import codes, door, found, house, skirting_run, wall, window


def without(key: str) -> dict[str, Any]:
    return {name: value for name, value in house().items() if name != key}


def test_a_house_keeps_its_name_units_and_dialect() -> None:
    read = read_house(house(units="in", dialect="nz")).house

    assert (read.name, read.units, read.dialect) == ("Wren House", Units.INCH, Dialect.NZ)


def test_units_and_dialect_left_out_are_assumed_and_said() -> None:
    result = read_house({"format": "longpoint-house/1", "name": "Wren House"})

    assert codes(result)[:2] == ["units-assumed", "dialect-assumed"]
    assert (result.house.units, result.house.dialect) == (Units.MM, Dialect.UK)


@pytest.mark.parametrize(
    ("document", "told"),
    [
        (without("format"), "Start the file with format"),
        (house(format="longpoint-house/2"), "later version"),
        (house(format="longpoint-house/1000"), "later version"),
        (house(format="longpoint-rates/1"), "another file of this program"),
        (house(format="longpoint-house/0"), "not a house file"),
        (house(format="longpoint-house/²"), "not a house file"),
        (house(format=1), "not a house file"),
        (house(format=None), "not a house file"),
        (without("name"), "name"),
        (house(name=""), "no text"),
        (house(name=["Wren House"]), "not text"),
        (house(name=datetime.date(2024, 5, 1)), "not text"),
        (house(units="cm"), "mm, in"),
        (house(dialect="fr"), "au, nz, uk"),
        (house(opnings=[]), 'Did you mean "openings"?'),
        (house(defaults=[]), "table"),
        (house(profiles=[]), "table"),
        (house(tapes=7), "table"),
        (house(saws="S1"), "table"),
        (house(stock={}), "list of tables"),
        (house(offcuts="none"), "list of tables"),
        (house(openings={}), "list of tables"),
        (house(rooms=7), "list of tables"),
        (house(runs=None), "list of tables"),
        ([], "table of keys"),
    ],
)
def test_a_file_that_cannot_be_used_as_a_whole_is_refused(document: Any, told: str) -> None:  # noqa: ANN401
    with pytest.raises(SurveyError) as refusal:
        read_house(document)

    error = refusal.value
    assert type(error) is SurveyError
    assert told in str(error)
    assert all(sentence for sentence in (error.read, error.wrong, error.do))


@pytest.mark.parametrize(
    ("opening", "mark"),
    [
        (window(mark=None), "opening 2"),
        (window(mark=7), "opening 2"),
        (window(mark="a\nb"), "opening 2"),
        ({}, "opening 2"),
        (7, "opening 2"),
        (window(mark="W9", top="x", room="Loft"), "W9"),
    ],
)
def test_one_bad_opening_never_stops_the_house(opening: object, mark: str) -> None:
    document = house(openings=[window(), opening, door()], runs=[skirting_run()])

    result = read_house(document)

    assert [o.mark for o in result.house.openings] == ["W1", "D1"]
    assert [run.mark for run in result.house.runs] == ["S1"]
    room = "Loft" if mark == "W9" else ""
    assert result.house.held == (HeldEntry(kind=EntryKind.OPENING, mark=mark, room=room),)
    assert {(f.place, f.severity) for f in result.findings} == {(mark, Severity.STOP)}


@pytest.mark.parametrize(
    "changes",
    [
        {"openings": [window(), window(top=900), door()]},
        {"openings": [window(), window(top="x"), door()]},
        {"openings": [window(), door()], "runs": [skirting_run(mark="W1")]},
        {"openings": [window(mark="D"), window(mark="W1"), window(mark="W1"), door()]},
    ],
)
def test_entries_with_one_mark_are_all_held(changes: dict[str, Any]) -> None:
    result = read_house(house(**changes))

    assert [entry.mark for entry in result.house.held] == ["W1", "W1"]
    assert len(found(result, "mark-twice")) == 1
    assert "D1" in [o.mark for o in result.house.openings]


def test_the_mark_of_a_face_counts_as_a_mark() -> None:
    openings = [door(mark="D2", faces=2), window(mark="D2a"), window(mark="D2c")]

    result = read_house(house(openings=openings))

    assert [entry.mark for entry in result.house.held] == ["D2", "D2a"]
    assert [o.mark for o in result.house.openings] == ["D2c"]


def test_rooms_of_one_name_are_all_held() -> None:
    room = {"name": "Loft", "walls": [wall()]}

    result = read_house(house(rooms=[room, room]))

    assert [entry.mark for entry in result.house.held] == ["Loft", "Loft"]
    assert codes(result) == ["mark-twice"]


def test_every_trouble_of_an_opening_is_told_at_once() -> None:
    result = read_house(house(openings=[window(top="x", risng=1, left=True)]))

    assert codes(result) == ["unreadable-value", "unreadable-value", "unknown-key"]
