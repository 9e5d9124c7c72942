"""Plans that fill every stick, or none: checked against assigning every piece to a stick."""

import numpy as np
import pytest
from scipy import optimize, sparse

from longpoint.linear.port import LinearProblem, LinearSolution, LinearStatus
from longpoint.sticks.search import must_be_cut
from longpoint.sticks.search.sharp import from_sharp_prices
from tests.bench.cutting_stock import CuttingStock
from tests.unit.sticks.tight_sticks import STICK, stage, tight


def three_do(instance: CuttingStock) -> bool:
    """Whether three sticks hold all, by a program with one unknown for each piece and stick."""
    lengths = [length for length, demand in instance.lengths for _ in range(demand)]
    count = len(lengths)
    each_once = sparse.hstack([sparse.identity(count)] * 3)
    no_stick_too_full = sparse.block_diag([np.array([lengths])] * 3)
    found = optimize.milp(
        c=np.zeros(3 * count),
        constraints=[
            optimize.LinearConstraint(each_once.tocsr(), 1, 1),
            optimize.LinearConstraint(no_stick_too_full.tocsr(), -np.inf, STICK),
        ],
        integrality=np.ones(3 * count),
        bounds=optimize.Bounds(0, 1),
    )
    return bool(found.status == 0)


@pytest.mark.parametrize("seed", range(24))
def test_a_plan_without_waste_is_found_or_proved_not_to_exist(seed: int) -> None:
    at = stage(tight(seed))
    found = from_sharp_prices(at.asked(3))
    at.is_settled(found, 3, is_able=three_do(tight(seed)))


def test_both_kinds_are_among_those_that_are_tried() -> None:
    assert {three_do(tight(seed)) for seed in range(24)} == {True, False}


def test_where_the_bound_is_far_below_nothing_is_listed() -> None:
    instance = CuttingStock(name="loose", stick=STICK, lengths=((31, 4), (7, 3)))
    at = stage(instance)
    assert from_sharp_prices(at.asked(6)) is None
    assert at.bound.steps == 4


def test_a_bound_above_the_goal_needs_no_list() -> None:
    instance = CuttingStock(name="long", stick=STICK, lengths=((31, 4),))
    at = stage(instance)
    found = from_sharp_prices(at.asked(3))
    assert found is not None
    assert (found.floor, found.patterns) == (4, ())


class GivesUp:
    """A solver that solves nothing."""

    def solve(self, problem: LinearProblem) -> LinearSolution:
        return LinearSolution(status=LinearStatus.UNSOLVED, solver="none")


def test_a_solver_that_gives_up_proves_nothing() -> None:
    at = stage(tight(0), GivesUp())
    found = from_sharp_prices(at.asked(3))
    assert found is None or (found.floor <= 3 and not found.patterns)
    assert at.bound.steps == 3


def test_where_nothing_may_be_listed_counting_says_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(must_be_cut, "_LISTED", 0)
    decided = list[bool]()
    for seed in range(24):
        instance = tight(seed)
        at = stage(instance)
        found = from_sharp_prices(at.asked(3), most=0)
        if found is not None:
            decided.append(three_do(instance))
            assert found.floor == (3 if decided[-1] else 4)
            assert len(found.patterns) == (3 if decided[-1] else 0)
    assert set(decided) == {True, False}


def test_where_every_piece_has_a_choice_nothing_is_tried() -> None:
    """Nine pieces from 16 to 24: three sticks, each piece in two full ones or more."""
    lengths = tuple((length, 1) for length in range(24, 15, -1))
    at = stage(CuttingStock(name="nine", stick=STICK, lengths=lengths))
    assert from_sharp_prices(at.asked(3), most=0) is None
    assert at.bound.steps == 3


def test_where_a_plan_may_lose_something_nothing_is_tried() -> None:
    """Any three of eight pieces fit a stick: the bound is eight thirds."""
    lengths = ((20, 2), (19, 2), (18, 2), (17, 2))
    at = stage(CuttingStock(name="loose", stick=STICK, lengths=lengths))
    assert from_sharp_prices(at.asked(3), most=0) is None
    assert at.bound.exact < 2.7
