from collections import Counter
from dataclasses import replace

import pytest

from longpoint.errors import StockError
from longpoint.quantities.length import Units
from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import AtTheSaw, nothing_cut, told
from longpoint.sticks.news.delivery import as_delivered, delivery_in_words
from longpoint.sticks.news.plan_again import plan_again
from longpoint.sticks.news.saw_document import kept_saw, saw_document
from longpoint.sticks.news.saw_news import Cut
from longpoint.sticks.plan_sticks import plan_sticks
from tests.random_sticks import house_of, house_pieces

PIECES = house_pieces(3, openings=8)
HOUSE = house_of(lengths_mm=(4200.0, 5400.0))
PLAN = plan_sticks(PIECES, HOUSE, effort=QUICK)
STATE = nothing_cut(PLAN)


def lengths(state: AtTheSaw) -> Counter[float]:
    return Counter(stick.length_mm for stick in state.sticks if stick.length_mm)


ORDERED = lengths(STATE)


def test_what_came_as_ordered_changes_nothing() -> None:
    assert as_delivered(STATE, {"OG": ORDERED}) == STATE
    assert as_delivered(STATE, {}) == STATE


def test_a_short_count_leaves_sticks_missing_and_their_pieces_loose() -> None:
    fewer = ORDERED - Counter({5400.0: 2})
    state = as_delivered(STATE, {"OG": fewer})
    assert lengths(state) == fewer
    assert [stick.length_mm for stick in state.sticks].count(0.0) == 2
    assert len(state.loose) > 0


def test_another_length_takes_the_place_of_one_that_did_not_come() -> None:
    came = ORDERED - Counter({5400.0: 1}) + Counter({5100.0: 1})
    state = as_delivered(STATE, {"OG": came})
    assert lengths(state) == came
    assert len(state.sticks) == len(STATE.sticks)


def test_what_came_on_top_lies_at_the_saw_under_a_name_of_its_own() -> None:
    state = as_delivered(STATE, {"OG": ORDERED + Counter({2700.0: 1})})
    assert state.loose == ()
    (spare,) = (stick for stick in state.sticks if not stick.next)
    assert spare.length_mm == 2700.0
    assert spare.name not in {stick.name for stick in STATE.sticks}
    assert kept_saw(saw_document(state, "K7M2QX", {})).state == state


def test_the_second_lorry_brings_what_was_missing() -> None:
    first = as_delivered(STATE, {"OG": ORDERED - Counter({5400.0: 2})})
    again = as_delivered(first, {"OG": ORDERED})
    assert lengths(again) == ORDERED
    assert as_delivered(again, {"OG": ORDERED}) == again


def test_a_stick_that_is_begun_stays_as_it_is() -> None:
    first = STATE.sticks[0]
    begun = told(STATE, [Cut(piece=first.next[0].piece)])
    state = as_delivered(begun, {"OG": {}})
    assert state.sticks[0] == begun.sticks[0]
    assert {stick.length_mm for stick in state.sticks[1:]} == {0.0}


def test_the_rest_is_planned_with_what_is_there_and_a_spare_saves_a_stick() -> None:
    missing = ORDERED - Counter({5400.0: 1})
    bare = plan_again(as_delivered(STATE, {"OG": missing}), PIECES, HOUSE)
    spared = plan_again(as_delivered(STATE, {"OG": missing + Counter({5400.0: 1})}), PIECES, HOUSE)
    assert (len(bare.new) > 0, spared.new) == (True, ())
    assert bare.state.loose == spared.state.loose == ()


def test_what_is_told_is_read_in_the_unit_of_the_house() -> None:
    sentences = ("came OG 5400 4", "came OG 5400 2", "crooked OG 5400 1", "moisture OG 16")
    delivery = delivery_in_words(sentences, HOUSE)
    assert delivery.came == {"OG": {5400.0: 5}}
    assert delivery.moisture_percent == {"OG": 16.0}
    inches = replace(HOUSE, units=Units.INCH)
    found = delivery_in_words(("came OG 212 1/2 3",), inches)
    assert found.came == {"OG": {5397.5: 3}}


def test_a_section_counts_only_where_it_is_another() -> None:
    assert delivery_in_words(("section OG 66.2 18",), HOUSE).sections == {}
    assert delivery_in_words(("section OG 64 18",), HOUSE).sections == {"OG": (64.0, 18.0)}


@pytest.mark.parametrize(
    "sentences",
    [
        ("arrived OG 5400 6",),
        ("came OG",),
        ("came OG 5400",),
        ("came OG long 6",),
        ("came OG 5400 -1",),
        ("came OG 5400 99999999",),
        ("came XX 5400 1",),
        ("crooked OG 5400 1",),
        ("came OG 5400 1", "crooked OG 5400 2"),
        ("section OG 57",),
        ("section XX 57 18",),
        ("moisture OG 0",),
        ("moisture OG damp",),
    ],
)
def test_what_cannot_be_understood_is_refused(sentences: tuple[str, ...]) -> None:
    with pytest.raises(StockError):
        delivery_in_words(sentences, HOUSE)
