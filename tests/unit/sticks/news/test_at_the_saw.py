from typing import Any

import pytest

from longpoint.errors import StockError
from longpoint.sticks.news.at_the_saw import AtTheSaw, nothing_cut, told
from longpoint.sticks.news.remains import Remains
from longpoint.sticks.news.saw_news import BadZone, Cut, Fits, Lost, Spoiled, StickRead
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource


def start() -> AtTheSaw:
    laid = (
        Laid(piece="W1-head", start_mm=10.0, end_mm=1310.0),
        Laid(piece="W2-head", start_mm=1314.0, end_mm=2614.0),
    )
    stick = CutStick(
        name="OG-1",
        profile="OG",
        length_mm=3600.0,
        source=StickSource.STOCK,
        laid=laid,
        used_mm=2624.0,
        left_mm=973.0,
    )
    return nothing_cut(CutPlan(sticks=(stick,), unplaced=("W3-head",)))


def rest_of(length_mm: float) -> Remains:
    return Remains(of="W1-head", length_mm=length_mm)


def test_before_the_first_cut_everything_waits_where_it_was_planned() -> None:
    state = start()

    assert state.done == frozenset()
    assert state.open_marks == {"W1-head", "W2-head", "W3-head"}
    assert state.loose == ("W3-head",)
    assert not state.sticks[0].is_begun


def test_a_good_piece_is_done_and_the_next_one_waits() -> None:
    (stick,) = told(start(), [Cut(piece="W1-head")]).sticks

    assert [laid.piece for laid in stick.done] == ["W1-head"]
    assert [laid.piece for laid in stick.next] == ["W2-head"]
    assert stick.spent_mm == 1310.0


def test_a_spoiled_piece_is_loose_and_what_is_left_of_it_is_a_stick() -> None:
    state = told(start(), [Spoiled(piece="W1-head", rests=(rest_of(900.0),))])
    stick, rest = state.sticks

    assert state.loose == ("W3-head", "W1-head")
    assert stick.done == ()
    assert stick.spent_mm == 1310.0
    assert (rest.profile, rest.length_mm, rest.source) == ("OG", 900.0, StickSource.REST)


def test_two_rests_of_one_mark_have_two_names() -> None:
    once = told(start(), [Spoiled(piece="W1-head", rests=(rest_of(900.0),))])
    first = once.sticks[0]
    laid = Laid(piece="W1-head", start_mm=1314.0, end_mm=2614.0)
    waiting = AtTheSaw(
        sticks=(
            type(first)(
                name=first.name,
                profile=first.profile,
                length_mm=first.length_mm,
                source=first.source,
                next=(laid,),
                spent_mm=first.spent_mm,
            ),
            *once.sticks[1:],
        )
    )
    twice = told(waiting, [Spoiled(piece="W1-head", rests=(rest_of(500.0),))])

    assert len({stick.name for stick in twice.sticks}) == 3


def test_a_piece_lost_after_it_was_cut_is_loose_and_its_timber_stays_spent() -> None:
    state = told(start(), [Cut(piece="W1-head"), Lost(piece="W1-head")])

    assert "W1-head" in state.loose
    assert state.sticks[0].done == ()
    assert state.sticks[0].spent_mm == 1310.0


def test_a_piece_that_was_good_can_be_spoiled_later_and_leaves_a_rest() -> None:
    state = told(start(), [Cut(piece="W1-head"), Spoiled(piece="W1-head", rests=(rest_of(800.0),))])

    assert state.done == frozenset()
    assert "W1-head" in state.loose
    assert state.sticks[0].spent_mm == 1310.0
    assert state.sticks[1].rest == rest_of(800.0)


def test_a_stick_read_longer_moves_nothing() -> None:
    state = told(start(), [StickRead(stick="OG-1", length_mm=3640.0)])

    assert state.loose == ("W3-head",)
    assert (state.sticks[0].length_mm, state.sticks[0].listed_mm) == (3640.0, 3600.0)


def test_a_piece_that_fits_is_said_so_and_only_of_one_that_was_cut() -> None:
    assert told(start(), [Cut(piece="W1-head"), Fits(piece="W1-head")]).tried == ("W1-head",)
    with pytest.raises(StockError, match="never cut"):
        told(start(), [Fits(piece="W1-head")])


@pytest.mark.parametrize(
    "news",
    [StickRead(stick="OG-1", length_mm=3400.0), BadZone(stick="OG-1", from_mm=2000, to_mm=2050)],
)
def test_a_stick_that_is_not_as_planned_gives_up_what_waits_on_it(news: Any) -> None:  # noqa: ANN401
    state = told(start(), [Cut(piece="W1-head"), news])

    assert state.loose == ("W3-head", "W2-head")
    assert [laid.piece for laid in state.sticks[0].done] == ["W1-head"]


@pytest.mark.parametrize(
    ("news", "said"),
    [
        (Cut(piece="W9-head"), "W9-head"),
        (Cut(piece="W2-head"), "W1-head lies before it"),
        (Lost(piece="W1-head"), "never cut"),
        (StickRead(stick="OG-9", length_mm=1.0), "OG-9"),
        (BadZone(stick="OG-1", from_mm=50.0, to_mm=40.0), "nearer one first"),
        (BadZone(stick="OG-1", from_mm=50.0, to_mm=9000.0), "3600"),
    ],
)
def test_news_of_what_is_not_there_is_refused(news: Any, said: str) -> None:  # noqa: ANN401
    with pytest.raises(StockError) as refused:
        told(start(), [news])
    assert said in str(refused.value)


def test_a_stick_can_not_be_shorter_than_what_came_off_it() -> None:
    with pytest.raises(StockError, match="1310 mm of it are cut"):
        told(start(), [Cut(piece="W1-head"), StickRead(stick="OG-1", length_mm=1000.0)])
