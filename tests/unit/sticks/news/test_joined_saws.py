from dataclasses import replace

from longpoint.sticks.news.at_the_saw import AtTheSaw, told
from longpoint.sticks.news.joined_saws import joined_saws
from longpoint.sticks.news.saw_document import KeptSaw
from longpoint.sticks.news.saw_news import Lost
from tests.saw_states import after_cutting, as_text, begun, from_text


def kept(state: AtTheSaw) -> KeptSaw:
    return from_text(as_text(state))


def test_one_who_knew_the_earlier_story_is_taken_at_his_word() -> None:
    first = after_cutting(begun(), "W1-head")
    later = kept(after_cutting(first, "W2-head"))
    assert joined_saws(kept(first), later) is later


def test_a_piece_that_was_lost_after_it_was_cut_is_not_brought_back() -> None:
    first = after_cutting(begun(), "W1-head")
    later = kept(told(first, [Lost(piece="W1-head")]))
    assert joined_saws(kept(first), later).state.done == frozenset()


def test_what_two_cut_side_by_side_is_all_cut() -> None:
    one = after_cutting(begun(), "W1-head", "W1-left-leg")
    two = after_cutting(begun(), "W2-head")
    for earlier, later in ((one, two), (two, one)):
        found = joined_saws(kept(earlier), kept(later)).state
        assert found.done == {"W1-head", "W1-left-leg", "W2-head"}
        assert len(found.open_marks) == 6
        assert from_text(as_text(found)).state == found


def test_on_one_stick_the_one_who_cut_further_counts() -> None:
    one = after_cutting(begun(), "W1-head", "W1-left-leg")
    two = after_cutting(begun(), "W1-head")
    assert joined_saws(kept(one), kept(two)).state.done == one.done
    assert joined_saws(kept(two), kept(one)).state.done == one.done


def test_a_stick_that_the_later_plan_gave_up_stays_if_it_was_cut() -> None:
    one = after_cutting(begun(), "W3-head")
    fewer = begun()
    gone = fewer.sticks[2]
    two = replace(fewer, sticks=fewer.sticks[:2], loose=tuple(each.piece for each in gone.next))
    found = joined_saws(kept(one), kept(two)).state
    assert found.done == {"W3-head"}
    assert set(found.loose) == {"W3-left-leg", "W3-right-leg"}
    assert found.sticks[2].next == ()


def test_a_piece_that_both_cut_from_different_sticks_is_counted_once_and_both_are_spent() -> None:
    sticks = begun().sticks
    swapped = tuple(
        replace(stick, next=tuple(replace(laid, piece=other.piece) for laid, other in pairs))
        for stick, pairs in (
            (sticks[0], zip(sticks[0].next, sticks[1].next, strict=True)),
            (sticks[1], zip(sticks[1].next, sticks[0].next, strict=True)),
        )
    )
    one = after_cutting(begun(), "W1-head")
    two = after_cutting(AtTheSaw(sticks=(*swapped, sticks[2])), "W1-head")
    found = joined_saws(kept(one), kept(two)).state
    assert found.done == {"W1-head"}
    assert [stick.is_begun for stick in found.sticks] == [True, True, False]
    assert from_text(as_text(found)).state == found
