from dataclasses import replace

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import EndCut
from longpoint.quantities.length import Units
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.news_words import told_in_words
from longpoint.sticks.plan import Laid, StickSource
from tests.random_sticks import architrave_piece


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


def test_sticks_of_a_wrong_length_are_told_all_at_once() -> None:
    state = at_saw("W1-head")
    begun = replace(state.sticks[0], name="OG 57-2", spent_mm=500.0, next=())
    state = replace(state, sticks=(*state.sticks, begun))
    read = told_in_words(state, ["delivered OG 57 5400 5100"], Units.MM)

    assert [(s.length_mm, s.listed_mm) for s in read.sticks] == [(5100.0, 5400.0), (5400.0, 0.0)]
    with pytest.raises(StockError, match="isn't begun"):
        told_in_words(state, ["delivered OG 57 4800 5100"], Units.MM)


def test_a_stick_may_be_longer_than_it_should_be() -> None:
    assert after("long OG 57-1 5440").sticks[0].length_mm == 5440.0


def test_a_begun_stick_that_is_missing_ends_where_it_was_cut() -> None:
    state = after("cut W1-head", "missing OG 57-1")

    assert state.sticks[0].length_mm == 1000.0
    assert state.done == {"W1-head"}


PIECE = architrave_piece("W1-head", 1000.0, 45.0, 44.5)


@pytest.mark.parametrize(
    ("said", "lengths_mm", "cuts"),
    [
        ("short 4", (1127.0,), ((PIECE.left, PIECE.right),)),
        ("whole", (1131.0,), ((PIECE.left, PIECE.right),)),
        ("right 700", (700.0,), ((PIECE.left, None),)),
        ("left 700", (700.0,), ((None, PIECE.right),)),
        ("at 412", (412.0, 719.0), ((PIECE.left, None), (None, PIECE.right))),
    ],
)
def test_a_spoiled_piece_keeps_the_ends_that_are_still_good(
    said: str, lengths_mm: tuple[float, ...], cuts: tuple[tuple[EndCut | None, ...], ...]
) -> None:
    state = told_in_words(
        at_saw("W1-head"), [f"spoiled W1-head {said}"], Units.MM, {"W1-head": PIECE}
    )
    rests = [stick.rest for stick in state.sticks if stick.rest is not None]

    # 66 x (tan 45 + tan 44.5) = 130.9 beyond the inner edge.
    assert [rest.length_mm for rest in rests] == pytest.approx(lengths_mm, abs=0.2)
    assert tuple((rest.left, rest.right) for rest in rests) == cuts


def test_left_and_right_are_told_as_the_piece_lay_at_the_saw() -> None:
    state = at_saw("W1-head")
    turned = replace(state.sticks[0].next[0], turned=True)
    state = replace(state, sticks=(replace(state.sticks[0], next=(turned,)),))
    state = told_in_words(state, ["spoiled W1-head right 700"], Units.MM, {"W1-head": PIECE})

    rest = state.sticks[1].rest
    assert rest is not None
    assert (rest.left, rest.right) == (None, PIECE.right)


@pytest.mark.parametrize(
    "said", ["short", "whole 4", "at 4000", "left", "sideways 3", "short 4", "at 412 430"]
)
def test_what_can_not_be_left_of_a_piece_is_refused(said: str) -> None:
    pieces = {} if said == "short 4" else {"W1-head": PIECE}
    with pytest.raises(StockError):
        told_in_words(at_saw("W1-head"), [f"spoiled W1-head {said}"], Units.MM, pieces)


def test_a_piece_that_fits_after_all_is_told_so() -> None:
    assert after("cut W1-head", "fits W1-head").tried == ("W1-head",)


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
