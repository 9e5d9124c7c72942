"""`longpoint proof` turns eight gaps into what the 45 cuts and the line to write."""

import tomllib

import pytest

from longpoint.survey.house_file import read_house
from tests.house_documents import house
from tests.unit.cli.house_files import longpoint

STEEP = ("0.4", "0", "0.4", "0", "0.35", "0", "0.45", "0")


def test_heels_open_by_0_4_on_66_are_0_12_steep() -> None:
    """By hand: 1.6 / (8 x 66 x 1.414) rad is 0.123 degrees."""
    done = longpoint("proof", "--width", "66", *STEEP)
    assert done.exit_code == 0, done.output
    assert "steep by 0.12" in done.output
    assert "found = { left = 45.12, right = 45.12 }" in done.output
    assert "give or take 0.04" in done.output


def test_the_line_can_be_pasted_into_a_house_file() -> None:
    done = longpoint("proof", "--width", "66", "--saw", "big saw", *STEEP)
    lines = [line.strip() for line in done.output.splitlines()]
    start = lines.index('[saws."big saw"]')
    saws = tomllib.loads("\n".join(lines[start : start + 2]))["saws"]
    document = house(saws={"big saw": {"kerf": 3, **saws["big saw"]}})
    document["defaults"]["saw"] = "big saw"
    saw = read_house(document).house.saw
    assert (saw.is_proved, saw.found_left_deg) == (True, 45.12)


def test_gaps_within_doubt_leave_the_stop_and_prove_the_saw() -> None:
    done = longpoint("proof", "--width", "66", *["0.05", "0"] * 4)
    assert "leave the stop where it is" in done.output
    assert "found = { left = 45.0, right = 45.0 }" in done.output


def test_without_gaps_it_tells_how_to_make_the_frame_and_what_to_mind() -> None:
    done = longpoint("proof")
    assert done.exit_code == 0
    assert "two long and two short" in done.output
    assert "Never hold a short piece at the blade" in done.output


@pytest.mark.parametrize(
    "words",
    [
        ("--width", "66", "0.4", "0"),
        ("--width", "66", *STEEP, "0"),
        ("--width", "66", "much", *STEEP[1:]),
        ("--width", "0", *STEEP),
        ("--width", "66", "--feeler", "0", *STEEP),
        STEEP,
    ],
)
def test_too_few_gaps_or_no_width_end_with_status_2_and_three_sentences(
    words: tuple[str, ...],
) -> None:
    done = longpoint("proof", *words)
    assert done.exit_code == 2
    assert len([line for line in done.output.splitlines() if line.strip()]) == 3
