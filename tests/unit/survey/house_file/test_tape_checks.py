from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.house_file import read_house
from tests.house_documents import codes, found, house, window


def with_tape(**tape: Any) -> dict[str, Any]:  # noqa: ANN401
    return house(tapes={"T1": {"class": "II", **tape}}, openings=[window()])


@pytest.mark.parametrize(
    ("inside", "outside", "told"),
    [
        (1001.5, 1000, ["1.5 mm too much between two faces"]),
        (999, 1000, ["1 mm too little between two faces"]),
        (1000, 1000.6, ["0.6 mm too much hooked over the end"]),
        (1002, 1002, ["2 mm too much between two faces", "2 mm too much hooked over the end"]),
    ],
)
def test_a_tape_that_differs_from_its_stick_is_warned_of(
    inside: float, outside: float, told: list[str]
) -> None:
    check = {"stick": 1000, "inside": inside, "outside": outside}

    (finding,) = found(read_house(with_tape(check=check)), "tape-off")

    assert (finding.place, finding.severity) == ("Wren House", Severity.WARNING)
    assert all(part in finding.read for part in told)
    assert "nothing was taken off" in finding.wrong
    assert "same tape" in finding.do
    assert "take_off" in finding.do


def test_a_tape_within_half_its_step_of_the_stick_is_not_warned_of() -> None:
    check = {"stick": 1000, "inside": 1000.5, "outside": 999.5}

    assert codes(read_house(with_tape(check=check))) == []


def test_what_is_taken_off_already_is_not_warned_of_again() -> None:
    check = {"stick": 1000, "inside": 1001.5}

    assert codes(read_house(with_tape(take_off=1.5, check=check))) == ["taken-off"]


def test_the_offset_of_a_tape_is_taken_off_each_reading_and_said_once() -> None:
    result = read_house(with_tape(take_off=1.5))

    readings = result.house.openings[0].readings.lengths
    assert [(r.value_mm, r.written) for r in readings[:2]] == [(1185.5, "1187"), (1184.5, "1186")]
    (finding,) = found(result, "taken-off")
    assert "1.5 mm more" in finding.read
    assert "taken off each" in finding.wrong


def test_a_tape_that_reads_too_little_is_added_to() -> None:
    result = read_house(with_tape(take_off=-2))

    assert result.house.openings[0].readings.lengths[0].value_mm == 1189.0
    assert "added to each" in found(result, "taken-off")[0].wrong


def test_nothing_is_left_of_a_reading_shorter_than_the_offset() -> None:
    document = house(
        tapes={"T1": {"class": "II", "take_off": 12}}, openings=[window(left=11, right=462)]
    )

    result = read_house(document)

    assert [entry.mark for entry in result.house.held] == ["W1"]
