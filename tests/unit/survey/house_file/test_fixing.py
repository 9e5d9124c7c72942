from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.survey.fixing import FixingSetup, Nail
from longpoint.survey.house_file import house_document, read_house, readings_code
from longpoint.survey.house_file.fixing import read_nail
from longpoint.survey.house_file.trouble import HouseFileTrouble
from tests.house_documents import codes, found, house, the_house, window

TOLD: dict[str, Any] = {
    "country": "ie",
    "nails": ["16 x 50", "18 x 32 x 1.2"],
    "lining": 25,
    "packing": 0,
    "board": 12.5,
    "stud_face": 76,
    "stud_depth": 63,
    "stud_spacing": 400,
    "spacing": 250,
    "first": 40,
    "frame_wood": "hem-fir",
    "built": 1934,
}


def test_what_is_told_of_fixing_is_kept() -> None:
    assert the_house(fixing=TOLD).fixing == FixingSetup(
        country="ie",
        nails=(
            Nail(gauge=16, length_mm=50.0),
            Nail(gauge=18, length_mm=32.0, diameter_mm=1.2),
        ),
        lining_mm=25.0,
        packing_mm=0.0,
        board_mm=12.5,
        stud_face_mm=76.0,
        stud_depth_mm=63.0,
        stud_spacing_mm=400.0,
        spacing_mm=250.0,
        first_mm=40.0,
        frame_wood="hem-fir",
        built=1934,
    )


def test_a_house_that_tells_nothing_of_it_is_told_nothing() -> None:
    result = read_house(house(openings=[window()]))
    assert result.house.fixing == FixingSetup(assumed=True)
    assert codes(result) == []


@pytest.mark.parametrize(
    "bad",
    [
        {"nails": ["fat ones"]},
        {"nails": ["16 x 50 x 1 x 2"]},
        {"nails": ["99 x 50"]},
        {"nails": ["16 x 900"]},
        {"nails": ["16 x 50 x 40"]},
        {"nails": "16 x 50"},
        {"lining": -3},
        {"linning": 3},
        {"frame_wood": "balsa"},
        {"built": "old"},
        {"country": "fr"},
    ],
)
def test_a_bad_part_is_left_out_with_a_warning_and_the_rest_is_kept(bad: dict[str, Any]) -> None:
    result = read_house(house(openings=[window()], fixing={"packing": 7, **bad}))
    (finding,) = found(result, "fixing-unreadable")
    assert finding.severity is Severity.WARNING
    assert result.house.fixing == FixingSetup(packing_mm=7.0)


def test_what_is_no_table_is_left_out_as_a_whole() -> None:
    result = read_house(house(openings=[window()], fixing=[1]))
    assert codes(result) == ["fixing-unreadable"]
    assert result.house.fixing.assumed


@pytest.mark.parametrize("units", ["mm", "in"])
def test_it_is_written_back_as_it_was_read(units: str) -> None:
    told = TOLD if units == "mm" else {**TOLD, "nails": ["16 x 2 1/2"], "lining": "3/4"}
    told = {k: v for k, v in told.items() if units == "mm" or k in ("nails", "lining", "country")}
    first = the_house(units=units, fixing=told)
    again = read_house(house_document(first)).house
    assert again.fixing == first.fixing


def test_nails_and_walls_change_no_readings_code() -> None:
    plain = the_house(openings=[window()])
    told = the_house(openings=[window()], fixing=TOLD)
    assert readings_code(plain) == readings_code(told)


def test_an_inch_nail_is_read_in_inches() -> None:
    assert read_nail("18 x 1 1/4", Units.INCH).length_mm == pytest.approx(31.75)
    with pytest.raises(HouseFileTrouble):
        read_nail("x 50", Units.MM)


def test_a_thin_edge_is_kept_and_changes_no_readings_code() -> None:
    profiles = house()["profiles"]
    thin = {**profiles, "OG57": {**profiles["OG57"], "thin_edge": 9}}
    told = the_house(openings=[window()], profiles=thin)
    assert told.profile("OG57").thin_edge_mm == 9.0
    assert readings_code(told) == readings_code(the_house(openings=[window()]))
    assert read_house(house_document(told)).house.profile("OG57").thin_edge_mm == 9.0


def test_an_edge_thicker_than_the_whole_is_refused() -> None:
    profiles = house()["profiles"]
    thick = {**profiles, "OG57": {**profiles["OG57"], "thin_edge": 19}}
    result = read_house(house(openings=[window()], profiles=thick))
    assert "profile-unreadable" in codes(result)
