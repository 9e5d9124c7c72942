"""Spares: the likelier a piece is cut again, the more of them, and never fewer."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.forecast.recut_counts import recut_counts
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.spare_sticks import SpareSticks, spare_sticks
from longpoint.survey.crew import Crew
from tests.random_sticks import architrave_piece, house_of, house_pieces

pytestmark = pytest.mark.property


@given(count=st.integers(1, 60), first=st.floats(0.0, 50.0), second=st.floats(0.0, 50.0))
def test_more_slips_never_ask_for_fewer_spares(count: int, first: float, second: float) -> None:
    pieces = tuple(architrave_piece(f"W{n}-head", 900.0, 45, 45) for n in range(count))
    fewer, more = (
        recut_counts(pieces, Crew(slips=slips), None)[0].p90 for slips in sorted((first, second))
    )
    assert fewer <= more <= count


@given(seed=st.integers(0, 40), counts=st.tuples(st.integers(0, 9), st.integers(0, 9)))
def test_more_pieces_to_cover_never_buy_less(seed: int, counts: tuple[int, int]) -> None:
    pieces = house_pieces(seed, openings=5)
    house = house_of()
    plan = plan_sticks(pieces, house, effort=QUICK)
    few, many = (spare_sticks(plan, pieces, house, {"OG": n})[0] for n in sorted(counts))
    assert many.covered[: len(few.covered)] == few.covered
    assert metres(few) <= metres(many)


def metres(spare: SpareSticks) -> float:
    return sum(length_mm * count for length_mm, count in spare.buy) / 1000.0
