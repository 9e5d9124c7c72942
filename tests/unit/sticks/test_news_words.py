import pytest

from longpoint.errors import StockError
from longpoint.quantities.length import Units
from longpoint.sticks.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news_words import told_in_words
from longpoint.sticks.plan import Laid, StickSource


def at_saw(*marks: str) -> AtTheSaw:
    laid = tuple(
        Laid(piece=mark, start_mm=1000.0 * n + 10.0, end_mm=1000.0 * n + 1000.0)
        for n, mark in enumerate(marks)
    )
    stick = StickAtSaw(
        name="OG 57-1", profile="OG 57", length_mm=5400.0, source=StickSource.STOCK, next=laid
    )
    return AtTheSaw(sticks=(stick,))


def after(*sentences: str, units: Units = Units.MM) -> AtTheSaw:
    return told_in_words(at_saw("W1-head", "W1-left leg", "Unit 9"), sentences, units)


def test_a_piece_is_told_as_cut_by_its_mark() -> None:
    assert after("cut W1-head", " CUT  W1-left leg ").done == {"W1-head", "W1-left leg"}


def test_a_stick_is_told_as_cut_with_all_that_waits_on_it() -> None:
    assert after("cut OG 57-1").done == {"W1-head", "W1-left leg", "Unit 9"}


def test_a_spoiled_piece_may_leave_a_rest() -> None:
    assert after("spoiled W1-head").sticks[1:] == ()
    assert after("spoiled W1-head 700").sticks[1].length_mm == 700.0
    assert after("spoiled W1-head 12-1/2", units=Units.INCH).sticks[1].length_mm == 317.5
    assert after('spoiled W1-head 12 1/2"', units=Units.INCH).sticks[1].length_mm == 317.5
    bad = after("bad OG 57-1 40 1/2 44", units=Units.INCH).sticks[0].bad
    assert bad == ((40.5 * 25.4, 44 * 25.4),)


def test_a_mark_that_ends_in_a_figure_is_a_mark() -> None:
    state = after("cut W1-head", "cut W1-left leg", "spoiled Unit 9")

    assert state.loose == ("Unit 9",)
    assert len(state.sticks) == 1


def test_sticks_are_told_short_missing_or_bad() -> None:
    assert after("short OG 57-1 5000").sticks[0].length_mm == 5000.0
    assert after("missing OG 57-1").sticks[0].length_mm == 0.0
    assert after("bad OG 57-1 1200 1350").sticks[0].bad == ((1200.0, 1350.0),)


def test_a_refusal_says_what_was_told_and_what_is_so() -> None:
    with pytest.raises(StockError, match="said to be spoiled"):
        after("spoiled W9-head")
    with pytest.raises(StockError, match="cut already"):
        after("cut W1-head", "cut W1-head")


def test_a_piece_is_told_as_lost() -> None:
    assert after("cut W1-head", "lost W1-head").loose == ("W1-head",)


@pytest.mark.parametrize(
    "sentence", ["", "sawn W1-head", "bad OG57-1", "short OG 57-1 long", "spoiled W9-head"]
)
def test_what_can_not_be_understood_is_refused_with_the_ways_to_tell(sentence: str) -> None:
    with pytest.raises(StockError) as refused:
        after(sentence)
    assert refused.value.do
