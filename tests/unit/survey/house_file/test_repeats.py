"""Readings that stand several times: at walls, runs, diagonals, trim, boards, linings, outlines."""

from typing import Any

import pytest

from longpoint.errors import Finding, Severity
from longpoint.survey.checks import accepted
from longpoint.survey.house_file import house_document, read_house
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.house_file.trim_tables import TrimTables, trim_table
from longpoint.survey.odd_one import apart_along_wall_mm, apart_mm
from tests.house_documents import house, skirting_run, the_house, wall, window

RAILS: TrimTables = {
    "peg-rail": trim_table(
        "a peg rail",
        (
            Key(name="length", kind=Kind.READING, meaning="Its length.", example=900, above=True),
            Key(name="ends", kind=Kind.READINGS, meaning="Ends.", example=[1], left_out="none"),
        ),
    )
}


def said(document: dict[str, Any]) -> list[Finding]:
    survey = read_house(document, RAILS)
    codes = ("repeats-disagree", "reading-left-out")
    return [finding for finding in survey.findings if finding.code in codes]


def with_wall(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    walls = [wall("N", **keys), wall("E"), wall("S"), wall("W")]
    return house(rooms=[{"name": "Hall", "walls": walls}])


def test_two_lengths_of_a_wall_that_contradict_each_other_hold_it_and_name_the_slip() -> None:
    (finding,) = said(with_wall(length=[4178, 4187]))
    assert (finding.place, finding.code) == ("Hall N", "repeats-disagree")
    assert finding.severity is Severity.WARNING
    assert finding.read == "Length was read as 4178 mm and 4187 mm."
    assert finding.wrong.endswith("leaves; perhaps by digits swapped.")
    (finding,) = said(with_wall(length=[4200, 4300]))
    assert finding.severity is Severity.STOP
    assert "100 mm apart, more than a careful hand leaves; perhaps by a mark" in finding.wrong


def test_what_a_hand_between_plastered_corners_leaves_is_their_mean() -> None:
    tape = the_house().tape("T1")
    assert apart_mm(tape) < 6.0 < apart_along_wall_mm(tape) < 7.0
    document = with_wall(length=[4200, 4206])
    assert said(document) == []
    assert read_house(document).house.rooms[0].walls[0].length_mm == 4203.0


def test_a_third_reading_decides_and_the_odd_one_is_named() -> None:
    document = with_wall(length=[4200, 4300, 4201], corner=[90, 95, 90.2])
    length, corner = said(document)
    (north, *_) = read_house(document).house.rooms[0].walls
    assert (north.length_mm, north.corner_deg) == (4200.5, 90.1)
    assert length.severity is corner.severity is Severity.NOTE
    assert length.read == "Length was read as 4200 mm and 4201 mm, and as 4300 mm."
    assert length.wrong == "4200 mm and 4201 mm agree, so 4300 mm is left out."
    assert corner.read == "Corner was read as 90.0 degrees and 90.2 degrees, and as 95.0 degrees."


@pytest.mark.parametrize(
    ("document", "place", "read", "severity"),
    [
        (
            with_wall(openings=[{"mark": "D1", "from_left": [640, 740]}]),
            "Hall N",
            "Openings D1, from_left was read as 640 mm and 740 mm.",
            Severity.STOP,
        ),
        (
            with_wall(corner=[90, 95]),
            "Hall N",
            "Corner was read as 90.0 degrees and 95.0 degrees.",
            Severity.WARNING,
        ),
        (with_wall(bow=[-4, 9]), "Hall N", "Bow was read as -4 mm and 9 mm.", Severity.WARNING),
        (
            house(
                rooms=[
                    {
                        "name": "Hall",
                        "walls": [wall("N"), wall("E"), wall("S"), wall("W")],
                        "diagonals": [{"from": "N", "to": "S", "length": [5000, 5100]}],
                    }
                ]
            ),
            "Hall",
            "Diagonals 1, length was read as 5000 mm and 5100 mm.",
            Severity.WARNING,
        ),
        (
            house(runs=[skirting_run(mark="S1", length=[2284, 2248])]),
            "S1",
            "Length was read as 2284 mm and 2248 mm.",
            Severity.STOP,
        ),
        (
            house(runs=[skirting_run(mark="S1", right="rake", right_rake=[38, 41])]),
            "S1",
            "Right_rake was read as 38.0 degrees and 41.0 degrees.",
            Severity.WARNING,
        ),
        (
            house(trims=[{"mark": "PG1", "kind": "peg-rail", "length": [900, 904]}]),
            "PG1",
            "Length was read as 900 mm and 904 mm.",
            Severity.WARNING,
        ),
        (
            house(trims=[{"mark": "PG1", "kind": "peg-rail", "length": 900, "ends": [5, [6, 60]]}]),
            "PG1",
            "Ends 2 was read as 6 mm and 60 mm.",
            Severity.STOP,
        ),
        (
            house(openings=[window(lining_edge=[6, 14])]),
            "W1",
            "Lining_edge was read as 6 mm and 14 mm.",
            Severity.WARNING,
        ),
        (
            house(openings=[window(plane={"tl": [0, 8], "tr": 0, "br": 0, "bl": 0})]),
            "W1",
            "Plane.tl was read as 0 mm and 8 mm.",
            Severity.WARNING,
        ),
    ],
)
def test_wherever_a_reading_stands_twice_it_is_held_against_the_other(
    document: dict[str, Any], place: str, read: str, severity: Severity
) -> None:
    (finding,) = said(document)
    assert (finding.place, finding.read, finding.severity) == (place, read, severity)


def test_the_crew_may_accept_their_mean() -> None:
    document = with_wall(length=[4200, 4300])
    document["rooms"][0]["accept"] = ["repeats-disagree"]
    survey = read_house(document)
    assert survey.house.rooms[0].walls[0].length_mm == 4250.0
    (finding,) = [f for f in survey.findings if f.code == "repeats-disagree"]
    (lifted,) = accepted([finding], survey.house)
    assert (finding.severity, lifted.severity) == (Severity.STOP, Severity.WARNING)


def test_a_wall_read_twice_is_written_back_as_read_twice() -> None:
    first = read_house(with_wall(length=[4200, 4201])).house
    (north, east, *_) = first.rooms[0].walls
    assert (north.read_twice, east.read_twice) == (True, False)
    assert read_house(house_document(first)).house == first
    contradicted = read_house(with_wall(length=[4200, 4300])).house
    (north, *_) = contradicted.rooms[0].walls
    assert (north.read_twice, north.contradicted_mm) == (False, (4200.0, 4300.0))
    assert read_house(house_document(contradicted)).house == contradicted
    assert not read_house(with_wall(length=[4200, 4208])).house.rooms[0].walls[0].contradicted_mm
