"""Of three readings of one thing the odd one is left out, and that is said."""

from typing import Any

import pytest

from longpoint.survey.checks import check_survey
from longpoint.survey.house_file import read_house
from longpoint.survey.house_file.document import house_document
from longpoint.survey.odd_one import disagree, standing
from longpoint.survey.readings import Place


def written(top: list[int]) -> dict[str, Any]:
    sides = {"left": 1200, "right": 1200, "bottom": 1178, "top": top}
    opening = {"mark": "W1", "kind": "window", "trim": "all-round", "architrave": "A"} | sides
    return {
        "format": "longpoint-house/1",
        "name": "Dunnock Cottage",
        "profiles": {"A": {"face": 66, "thickness": 18}},
        "openings": [opening],
    }


def test_a_third_reading_decides_which_of_two_is_reckoned_with() -> None:
    house = read_house(written([1187, 1178, 1179])).house
    (opening,) = house.openings
    assert opening.readings.mean_mm(Place.TOP) == 1178.5
    (note,) = (f for f in check_survey(house) if f.place == "W1" and "1187" in f.read)
    assert note.code == "reading-left-out"
    assert "1178 and 1179 agree" in note.wrong


def test_what_is_left_out_stays_in_the_house_file() -> None:
    house = read_house(written([1187, 1178, 1179])).house
    document: dict[str, Any] = dict(house_document(house))
    (opening,) = document["openings"]
    assert sorted(opening["top"]) == [1178, 1179, 1187]


@pytest.mark.parametrize("top", [[1187, 1178], [1187, 1178, 1169]])
def test_where_no_two_agree_nothing_is_decided(top: list[int]) -> None:
    house = read_house(written(top)).house
    codes = {f.code for f in check_survey(house) if f.place == "W1"}
    assert "repeats-disagree" in codes
    assert not house.openings[0].readings.left_out


def test_readings_that_agree_one_by_one_are_kept() -> None:
    assert standing([1180, 1178, 1176], 2.5) == (True, True, True)
    assert not disagree([1180, 1178, 1176], 2.5)


def test_the_larger_company_wins() -> None:
    assert standing([1187, 1178, 1187, 1186], 2.5) == (True, False, True, True)
