from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.lie import lie_of, moves_of
from longpoint.forecast.tapping.programme import (
    NEAT,
    UNREAD_CLOSE_MM,
    TapRules,
    best_moves,
    neat_mm,
)
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from longpoint.linear.port import LinearProblem, LinearSolution, LinearStatus
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import planted, without
from tests.unit.forecast.tapping.wall import Cut, hung, window

LIMITS = FitLimits(gap_mm=0.5)
LOOSE = TapRules(free=frozenset(range(4)))


class NeverSolves:
    """A solver that finds nothing."""

    def solve(self, problem: LinearProblem) -> LinearSolution:
        """Return nothing."""
        return LinearSolution(status=LinearStatus.UNSOLVED, solver="none")


def test_pieces_cut_true_can_be_closed_altogether() -> None:
    frame = window()
    lie = lie_of(frame, hung(frame, (Cut(),) * 4, Random(1)).read(), LIMITS)
    moves = best_moves(lie, LOOSE, HighsSolver())
    assert moves is not None
    assert max(row.after_mm(moves) for row in lie if row.is_gap) <= neat_mm(lie) + 1e-6
    assert min(row.after_mm(moves) for row in lie if row.is_gap) > -1e-6


def test_an_angle_error_is_shared_by_all_joints_and_no_better() -> None:
    frame = window()
    over = (Cut(start_deg=0.2, end_deg=0.2),) * 4
    lie = lie_of(frame, hung(frame, over, Random(1)).read(), LIMITS)
    moves = best_moves(lie, LOOSE, HighsSolver())
    assert moves is not None
    # 2 x root 2 x 70 x 0.2 degrees, in radians: what every joint keeps when all share alike.
    worst_mm = max(row.after_mm(moves) for row in lie if row.is_gap)
    assert worst_mm == pytest.approx(0.69, abs=0.06)


def test_a_piece_that_is_nailed_along_does_not_move() -> None:
    frame = window()
    lie = lie_of(frame, planted(frame, Observable.POSE, Random(2)).read(), LIMITS)
    rules = TapRules(fixed=frozenset({1, 3}), free=frozenset({0}))
    moves = best_moves(lie, rules, HighsSolver())
    assert moves is not None
    assert moves[3:6] == moves[9:12] == (0.0,) * 3
    assert all(abs(m) <= rules.free_room_mm + 1e-6 for m in moves[:3])
    assert all(abs(m) <= rules.tap_room_mm + 1e-6 for m in moves[6:9])


def test_an_end_that_was_not_read_does_not_open() -> None:
    frame = window()
    seen = without(planted(frame, Observable.POSE, Random(3)).read(), [2])
    lie = lie_of(frame, seen, LIMITS)
    moves = best_moves(lie, LOOSE, HighsSolver())
    assert moves is not None
    (unread,) = (row for row in lie if row.is_gap and not row.is_read)
    assert -UNREAD_CLOSE_MM - 1e-6 <= unread.change_mm(moves) <= 1e-6


def test_a_forced_joint_is_eased() -> None:
    joints = (SeenJoint(heel_mm=-0.3, toe_mm=0.2), *(SeenJoint(heel_mm=0.1, toe_mm=0.1),) * 3)
    lie = lie_of(window(), SeenFrame(joints=joints), LIMITS)
    moves = best_moves(lie, TapRules(), HighsSolver())
    assert moves is not None
    assert min(row.after_mm(moves) for row in lie if row.is_gap) > -1e-6


def test_a_forced_joint_between_fixed_pieces_is_forced_no_more_than_it_is() -> None:
    joints = (SeenJoint(heel_mm=-0.3, toe_mm=0.2), *(SeenJoint(heel_mm=0.9, toe_mm=0.9),) * 3)
    lie = lie_of(window(), SeenFrame(joints=joints), LIMITS)
    moves = best_moves(lie, TapRules(fixed=frozenset({0, 1})), HighsSolver())
    assert moves is not None
    assert min(row.after_mm(moves) for row in lie if row.is_gap) > -0.3 - 1e-6


def test_without_a_solution_there_are_no_moves() -> None:
    lie = lie_of(window(), SeenFrame(joints=(SeenJoint(heel_mm=0.3),) * 4), LIMITS)
    assert best_moves(lie, TapRules(), NeverSolves()) is None


def test_neat_is_part_of_what_is_allowed() -> None:
    lie = lie_of(window(), SeenFrame(joints=(SeenJoint(),) * 4), FitLimits(gap_mm=1.0))
    assert neat_mm(lie) == NEAT
    assert moves_of(4, ()) == (0.0,) * 12
