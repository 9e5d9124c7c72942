"""`longpoint thumb` prints the page for a crew's own figures."""

import re

import pytest
from click.testing import CliRunner, Result

from longpoint.cli.thumb import command


def thumb(*words: str) -> Result:
    return CliRunner().invoke(command, words)


def joined(done: Result) -> str:
    return " ".join(done.output.split())


def test_the_crews_own_figures_are_used() -> None:
    done = thumb("--face", "90", "--quirk", "5", "--size", "450", "--beside", "70")
    assert done.exit_code == 0, done.output
    assert "The rule says 551, the tape has to show 557.3: 6.3 too short." in joined(done)
    assert "90 beside 70" in joined(done)


def test_figures_may_be_inches() -> None:
    done = thumb("--units", "in", "--face", "2-1/2", "--quirk", "3/16", "--size", "35 1/2")
    assert done.exit_code == 0, done.output
    assert "Hook the opening, two quirks, a face and 1/32." in done.output
    assert re.search(r"\D0\.\d{3}\D", done.output) is None


def test_the_rules_are_called_common_practice() -> None:
    assert "Common practice, no source." in thumb().output


def test_a_corner_is_given_in_degrees() -> None:
    assert "At 94.0 the rule says 47.0, right is 43.0." in joined(thumb("--corner", "94"))


@pytest.mark.parametrize(
    "words", [("--face", "0"), ("--face", "much"), ("--corner", "20"), ("--size", "3")]
)
def test_figures_of_no_piece_end_with_status_2_and_three_sentences(words: tuple[str, ...]) -> None:
    done = thumb(*words)
    assert done.exit_code == 2
    assert len([line for line in done.output.splitlines() if line.strip()]) == 3
