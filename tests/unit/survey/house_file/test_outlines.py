from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import house_document, read_house
from longpoint.survey.outlines import Across
from tests.house_documents import defaults, found, house, the_opening


def shaped(**keys: Any) -> dict[str, Any]:  # noqa: ANN401
    return {"mark": "W1", "kind": "window", "trim": "all-round", **keys}


def test_corners_are_kept_as_they_were_written() -> None:
    opening = the_opening(shaped(corners=[[0, 0], [900, 0], [450, "700.5"]]))

    assert opening.outline is not None
    assert opening.outline.corners == ((0.0, 0.0), (900.0, 0.0), (450.0, 700.5))
    assert opening.readings.lengths == ()


def test_sides_are_the_mean_of_their_readings_less_what_the_tape_reads_too_much() -> None:
    opening = the_opening(
        shaped(sides=[900, [700, 702], 800], angles=[60, 50], across=[]),
        tapes={"T1": {"class": "II", "take_off": 1}},
    )

    assert opening.outline is not None
    assert opening.outline.sides_mm == (899.0, 700.0, 799.0)
    assert opening.outline.angles_deg == (60.0, 50.0)
    assert opening.outline.tape == "T1"


def test_lengths_across_name_their_corners() -> None:
    across = [{"from": 1, "to": 3, "length": 1000}]
    opening = the_opening(shaped(sides=[600] * 5, across=across))

    assert opening.outline is not None
    assert opening.outline.across == (Across(start=1, end=3, length_mm=1000.0),)


def test_an_outline_comes_back_as_it_was_read() -> None:
    across = [{"from": 1, "to": 3, "length": "1000.5"}]
    document = house(
        openings=[
            shaped(sides=[600, 600, 600, 600, "600.5"], angles=[108], across=across, tape="T1"),
            shaped(mark="W2", corners=[[0, 0], [900, 0], [450, 700]]),
        ],
        tapes={"T1": {"class": "II", "take_off": 1.5}},
    )
    read = read_house(document).house

    assert read_house(house_document(read)).house.openings == read.openings


@pytest.mark.parametrize(
    ("keys", "code"),
    [
        ({"corners": [[0, 0], [900, 0]]}, "readings-missing"),
        ({"sides": [900, 800]}, "readings-missing"),
        ({"across": [{"from": 1, "to": 3, "length": 900}]}, "readings-missing"),
        ({"sides": [900] * 3, "angles": [60] * 4}, "keys-clash"),
        ({"sides": [900] * 3, "top": 900}, "keys-clash"),
        ({"corners": [[0, 0], [9, 0], [9, 9]], "angles": [90]}, "keys-clash"),
        ({"corners": [[0, 0], [9, 0], [9, 9]], "arch": {"rise": 9}}, "keys-clash"),
        ({"sides": [900] * 5, "across": [{"from": 1, "to": 2, "length": 9}]}, "keys-clash"),
        ({"sides": [900] * 5, "across": [{"from": 1, "to": 6, "length": 9}]}, "keys-clash"),
        ({"sides": [900] * 5, "across": [{"from": 5, "to": 1, "length": 9}]}, "keys-clash"),
        ({"sides": [900] * 5, "across": [{"from": 1, "to": 3}]}, "missing-key"),
    ],
)
def test_an_outline_that_tells_no_shape_is_held_with_a_reason(
    keys: dict[str, Any], code: str
) -> None:
    result = read_house(house(openings=[shaped(**keys)], defaults=defaults()))

    assert [f.place for f in found(result, code) if f.severity is Severity.STOP] == ["W1"]
    assert [entry.mark for entry in result.house.held] == ["W1"]
