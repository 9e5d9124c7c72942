"""Whatever comes on the lorry, nothing is planned on a stick that isn't there."""

from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import nothing_cut
from longpoint.sticks.news.delivery import as_delivered
from longpoint.sticks.news.plan_again import plan_again
from longpoint.sticks.plan_sticks import plan_sticks
from tests.random_sticks import house_of, house_pieces

pytestmark = pytest.mark.property

LENGTHS_MM = (2700.0, 3900.0, 4200.0, 5100.0, 5400.0)
PIECES = house_pieces(7, openings=5)
HOUSE = house_of(lengths_mm=(4200.0, 5400.0))
STATE = nothing_cut(plan_sticks(PIECES, HOUSE, effort=QUICK))


@settings(max_examples=20)
@given(st.dictionaries(st.sampled_from(LENGTHS_MM), st.integers(0, 6)))
def test_the_sticks_at_the_saw_are_those_that_came(came: dict[float, int]) -> None:
    state = as_delivered(STATE, {"OG": came})
    here = Counter(stick.length_mm for stick in state.sticks if stick.length_mm)
    assert here == +Counter(came)
    again = plan_again(state, PIECES, HOUSE)
    assert again.state.loose == ()
    for stick in again.state.sticks:
        assert all(laid.end_mm <= stick.length_mm for laid in stick.next)
    laid = Counter(one.piece for stick in again.state.sticks for one in stick.next)
    assert laid == Counter(piece.mark for piece in PIECES)
    old = [stick for stick in again.state.sticks if stick.name not in again.new]
    assert Counter(stick.length_mm for stick in old if stick.length_mm) == here
