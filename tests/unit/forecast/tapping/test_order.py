from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.hand import by_hand
from longpoint.forecast.tapping.lie import LieRow, lie_of, moves_of
from longpoint.forecast.tapping.order import in_order, is_no_worse
from longpoint.forecast.tapping.programme import TapRules, best_moves
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import planted
from tests.unit.forecast.tapping.wall import window

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
RULES = TapRules(free=frozenset({0, 2}))


def wanted(frame: Frame, seed: int) -> tuple[tuple[LieRow, ...], tuple[float, ...]]:
    lie = lie_of(frame, planted(frame, Observable.POSE, Random(seed)).read(), LIMITS)
    moves = best_moves(lie, RULES, HighsSolver())
    assert moves is not None
    return lie, by_hand(lie, RULES, moves)


@pytest.mark.parametrize("seed", range(8))
def test_every_step_on_the_way_is_no_worse(seed: int) -> None:
    frame = window()
    lie, moves = wanted(frame, seed)
    taps = in_order(frame, lie, moves)
    assert taps
    before_mm = max(row.now_mm for row in lie if row.is_gap)
    for count in range(1, len(taps) + 1):
        so_far = moves_of(4, taps[:count])
        assert is_no_worse(frame, lie, so_far)
        assert max(row.after_mm(so_far) for row in lie if row.is_gap) <= before_mm + 1e-9


def test_most_sets_are_brought_all_the_way() -> None:
    frame, arrived = window(), 0
    for seed in range(12):
        lie, moves = wanted(frame, seed)
        arrived += moves_of(4, in_order(frame, lie, moves)) == pytest.approx(moves)
    assert arrived >= 9


def test_some_order_of_the_same_taps_would_make_it_worse() -> None:
    frame = window()
    lie, moves = wanted(frame, 2)
    taps = in_order(frame, lie, moves)
    alone = [is_no_worse(frame, lie, moves_of(4, [tap])) for tap in taps]
    assert alone[0]
    assert not all(alone)


def test_a_move_that_would_open_the_worst_joint_is_not_taken() -> None:
    frame = window()
    lie = lie_of(frame, SeenFrame(joints=(SeenJoint(heel_mm=0.5, toe_mm=0.5),) * 4), LIMITS)
    everything_out = (0.0, 0.3, 0.3) * 4
    assert not is_no_worse(frame, lie, everything_out)
    assert in_order(frame, lie, everything_out) == ()


def test_a_move_that_would_drive_wood_into_wood_is_not_taken() -> None:
    frame = window()
    lie = lie_of(frame, SeenFrame(joints=(SeenJoint(heel_mm=0.1, toe_mm=0.1),) * 4), LIMITS)
    assert not is_no_worse(frame, lie, (0.0, -0.5, -0.5) * 4)


def test_a_move_that_might_open_an_end_not_read_is_not_taken() -> None:
    frame = window()
    joints = (SeenJoint(heel_mm=1.0), *(SeenJoint(heel_mm=1.0, toe_mm=1.0),) * 3)
    lie = lie_of(frame, SeenFrame(joints=joints), LIMITS)
    assert is_no_worse(frame, lie, (0.0,) * 12)
    assert not is_no_worse(frame, lie, (-0.3, *(0.0,) * 11))
    assert is_no_worse(frame, lie, (0.0,) * 6 + (0.0, -0.3, -0.3) + (0.0,) * 3)


def test_nothing_wanted_is_nothing_tapped() -> None:
    frame = window()
    lie, _ = wanted(frame, 0)
    assert in_order(frame, lie, (0.0,) * 12) == ()
