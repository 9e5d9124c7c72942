"""The figures of docs/explanation/season.md are those of our code."""

import re
from pathlib import Path

import pytest

from longpoint.forecast.season.joint_opening import mitre_opening, scribe_opening, skirting_opening
from tests.docs.season_page import DAMPEST, DRIEST, advice_lines, known_table, opening_table

PAGE = (Path(__file__).parents[2] / "docs" / "explanation" / "season.md").read_text("utf-8")


def table(name: str) -> list[str]:
    (found,) = re.findall(rf"<!-- {name}: begin -->\n(.*?)<!-- {name}: end -->", PAGE, re.DOTALL)
    return str(found).splitlines()[2:]


def test_the_openings_are_worked_out_anew() -> None:
    assert table("openings") == opening_table()


def test_the_coefficients_are_those_that_the_code_uses() -> None:
    assert table("known") == known_table()


def test_the_advice_is_what_would_be_given() -> None:
    assert [line for line in PAGE.splitlines() if line.startswith("> ")] == advice_lines()


def test_the_figures_in_the_sentences_are_right() -> None:
    assert "1.4 times" in PAGE
    lost_mm = 70.0 * 0.01
    opened_mm = mitre_opening(90.0, (70.0, 70.0), (0.01, 0.01)).gap_mm
    assert opened_mm / lost_mm == pytest.approx(1.4, abs=0.05)

    assert "0.25 mm for 18 mm boards that lost 1 %" in PAGE
    mitre_mm = skirting_opening(90.0, (18.0, 18.0), (0.01, 0.01)).gap_mm
    assert mitre_mm == pytest.approx(0.25, abs=0.005)

    assert "about two thirds" in PAGE
    assert scribe_opening(18.0, 0.01).gap_mm / mitre_mm == pytest.approx(2 / 3, abs=0.05)

    assert "35 and 60 % humidity are 7 and 11 % in the wood, so about 9" in PAGE
    dry, damp = DRIEST.moisture_percent, DAMPEST.moisture_percent
    assert (round(dry), round(damp), round((dry + damp) / 2.0)) == (7, 11, 9)


def test_the_page_is_short_enough_to_be_read() -> None:
    assert len(PAGE.splitlines()) < 120
