from dataclasses import replace

import pytest

from longpoint.sheets.outlook_text import outlook_lines
from longpoint.sheets.page import Page
from tests.unit.sheets.outlook_sample import ADVICE
from tests.unit.sheets.sample import FORECAST, OUTLOOK, PLAN, unproved


def test_the_house_is_told_in_two_lines_and_three_while_the_saw_is_not_proved() -> None:
    lines = outlook_lines(PLAN, Page(96))
    assert lines[0] == "Will it close? 1 of 5 openings can be cut as planned."
    said = " ".join(line.strip() for line in lines)
    assert (
        "As it stands: all of 3 openings fit 62 in 100; 0.4 won't on average, nine times in ten "
        "no more than 1." in said
    )
    assert "Once the saw is proved" not in said
    assert "Once the saw is proved: all of 3 openings fit 99 in 100; under 0.1" in " ".join(
        line.strip() for line in outlook_lines(unproved(), Page(96))
    )


def test_every_opening_has_its_verdict_and_the_doubtful_ones_their_reason() -> None:
    lines = outlook_lines(PLAN, Page(96))
    assert "  W2  cut as planned: 99 in 100" in lines
    assert "  W3  held" in lines
    assert f"W1 read first: {ADVICE[0].why}" in " ".join(" ".join(lines).split())


def test_the_figures_are_called_a_models() -> None:
    assert any("A model's figures" in line for line in outlook_lines(PLAN, Page(96)))


@pytest.mark.parametrize("width", [50, 80, 100])
def test_no_line_is_too_long(width: int) -> None:
    assert max(map(len, outlook_lines(unproved(), Page(width)))) <= width


def test_without_a_forecast_nothing_is_said() -> None:
    assert outlook_lines(replace(PLAN, outlook=None), Page(96)) == []
    none = replace(OUTLOOK, forecast=replace(FORECAST, faces=()))
    assert outlook_lines(replace(PLAN, outlook=none), Page(96)) == []
