from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.thumb_words import ThumbText, figures_line, thumb_texts
from longpoint.trims.thumb_figures import Rule, ThumbFigures

pytestmark = pytest.mark.no_cover

PLAIN = ThumbFigures()


def by_rule(figures: ThumbFigures = PLAIN, units: Units = Units.MM) -> dict[Rule, ThumbText]:
    return dict(zip(Rule, thumb_texts(figures, units), strict=True))


def test_a_reading_by_the_add_on_rule_is_said_beside_the_true_one() -> None:
    here = by_rule()[Rule.ADD_ON].here
    assert here == "The rule says 1257, the tape has to show 1257.7: 0.73 too short."


def test_past_the_one_right_size_the_rule_is_too_long() -> None:
    here = by_rule(replace(PLAIN, size_mm=4000.0))[Rule.ADD_ON].here
    assert here.endswith("too long.")


def test_the_span_is_rounded_inwards_to_what_a_tape_shows() -> None:
    holds = by_rule()[Rule.ADD_ON].holds
    assert "openings of 1375.3 to 4279.7 along" in holds
    assert "2101.5 alone" in holds


def test_a_rule_without_a_longest_piece_says_and_more() -> None:
    texts = by_rule(replace(PLAIN, limit_mm=1.0))
    assert "and more along" in texts[Rule.ADD_ON].holds
    assert "and more along" in texts[Rule.TAPE_ALONG].holds


def test_a_rule_that_adds_nothing_is_never_right_to_the_hair() -> None:
    assert "hair" not in by_rule(replace(PLAIN, add_mm=0.0))[Rule.ADD_ON].holds


def test_inches_are_thirty_seconds_and_gaps_as_fine() -> None:
    """A face of 2 1/2, an opening of 47, quirks of 0.197: by rule 49.925, the tape 49.956."""
    figures = replace(PLAIN, face_mm=63.5, size_mm=1193.8, add_mm=25.4 / 32.0)
    here = by_rule(figures, Units.INCH)[Rule.ADD_ON].here
    assert here == "The rule says 49 15/16, the tape has to show 49 31/32: 1/32 too short."
    assert figures_line(PLAIN, Units.INCH).endswith("Lengths in inches, angles in degrees.")


def test_the_count_of_drawn_openings_is_called_model_output() -> None:
    here = by_rule()[Rule.LONG_RESIDUAL].here
    assert "Model output, no count of houses." in here
    assert "about 1 in 6" in here


def test_no_sentence_carries_a_percentage() -> None:
    for text in thumb_texts(PLAIN):
        assert "%" not in f"{text.rule}{text.short}{text.truth}{text.here}{text.holds}"
