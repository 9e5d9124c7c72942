from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.hand import by_hand
from longpoint.forecast.tapping.lie import lie_of
from longpoint.forecast.tapping.programme import TapRules, best_moves
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import planted, without
from tests.unit.forecast.tapping.wall import window

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
RULES = TapRules(free=frozenset({0, 2}))


@pytest.mark.parametrize("seed", range(6))
def test_moves_come_in_tenths_and_are_nearly_as_good_as_unrounded(seed: int) -> None:
    frame = window()
    lie = lie_of(frame, planted(frame, Observable.POSE, Random(seed)).read(), LIMITS)
    exact = best_moves(lie, RULES, HighsSolver())
    assert exact is not None
    moves = by_hand(lie, RULES, exact)
    assert all(abs(m * 10 - round(m * 10)) < 1e-9 for m in moves)
    gaps = [(row.after_mm(exact), row.after_mm(moves)) for row in lie if row.is_gap]
    assert max(g for _, g in gaps) <= max(g for g, _ in gaps) + 0.1
    assert min(g for _, g in gaps) >= -0.05


def test_no_piece_is_tapped_further_than_it_may_go() -> None:
    frame = window()
    lie = lie_of(frame, planted(frame, Observable.LENGTHS, Random(1)).read(), LIMITS)
    rules = TapRules(fixed=frozenset({3}), tap_room_mm=0.45)
    exact = best_moves(lie, rules, HighsSolver())
    assert exact is not None
    moves = by_hand(lie, rules, exact)
    assert max(map(abs, moves[:9])) <= 0.4 + 1e-9
    assert moves[9:] == (0.0, 0.0, 0.0)


@pytest.mark.parametrize("seed", range(4))
def test_rounding_does_not_open_what_was_not_read(seed: int) -> None:
    frame = window()
    seen = without(planted(frame, Observable.POSE, Random(seed)).read(), [5])
    lie = lie_of(frame, seen, LIMITS)
    exact = best_moves(lie, RULES, HighsSolver())
    assert exact is not None
    moves = by_hand(lie, RULES, exact)
    (unread,) = (row for row in lie if row.is_gap and not row.is_read)
    assert unread.change_mm(moves) <= 1e-9
