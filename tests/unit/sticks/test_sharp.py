"""Plans that fill every stick, or none: checked against assigning every piece to a stick."""

import random
from dataclasses import replace

import numpy as np
import pytest
from scipy import optimize, sparse

from longpoint.linear.port import LinearProblem, LinearSolution, LinearSolver, LinearStatus
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks import every_pattern
from longpoint.sticks.bound import floor_of
from longpoint.sticks.fit import fit
from longpoint.sticks.generation import Bound, first_bound
from longpoint.sticks.master import Master
from longpoint.sticks.needs import Needs, least_needs
from longpoint.sticks.patterns import Layout, Pattern, groups_of
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.sticks.sharp import from_sharp_prices
from tests.bench.cutting_stock import CuttingStock, work_and_bars
from tests.bench.random_houses import random_house

STICK = 60


def tight(seed: int) -> CuttingStock:
    """Pieces that together are as long as three sticks, so that a plan of three has no waste."""
    draw = random.Random(seed)
    while True:
        lengths = [draw.randint(11, 40) for _ in range(8)]
        last = 3 * STICK - sum(lengths)
        if 5 <= last <= 40:
            break
    lengths.append(last)
    counts = {length: lengths.count(length) for length in sorted(lengths, reverse=True)}
    return CuttingStock(name=f"tight-{seed}", stick=STICK, lengths=tuple(counts.items()))


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


def stage(
    instance: CuttingStock, solver: LinearSolver | None = None
) -> tuple[Master, list[int], Needs, Bound]:
    work, bars = work_and_bars(instance)
    layout = Layout(work, bars.bars, groups_of(work))
    master = Master(layout, bars, solver or HighsSolver())
    room = bars.bars[0].room
    packed = fit(work, bars.bars, refills=0).sticks
    numbers = master.numbers_of(Pattern(0, layout.known(stick.places, room)) for stick in packed)
    least = least_needs(layout, floor_of(work, bars.bars))
    return master, list(dict.fromkeys(numbers)), least, first_bound(master, least, 1)


@pytest.mark.parametrize("seed", range(24))
def test_a_plan_without_waste_is_found_or_proved_not_to_exist(seed: int) -> None:
    instance = tight(seed)
    master, numbers, least, bound = stage(instance)
    found = from_sharp_prices(master, numbers, least, bound, 3, 100, 1)
    assert found is not None
    if three_do(instance):
        assert found.floor <= 3
        assert len(found.patterns) == 3
        cut = [piece for pattern in found.patterns for piece in pattern.counts]
        for group, copies in enumerate(master.whole.pieces):
            assert sum(count for number, count in cut if number == group) == copies
    else:
        assert found.floor == 4
        assert not found.patterns


def test_both_kinds_are_among_those_that_are_tried() -> None:
    assert {three_do(tight(seed)) for seed in range(24)} == {True, False}


def test_where_the_bound_is_far_below_nothing_is_listed() -> None:
    instance = CuttingStock(name="loose", stick=STICK, lengths=((31, 4), (7, 3)))
    master, numbers, least, bound = stage(instance)
    assert from_sharp_prices(master, numbers, least, bound, 6, 100, 1) is None
    assert bound.steps == 4


def test_a_bound_above_the_goal_needs_no_list() -> None:
    instance = CuttingStock(name="long", stick=STICK, lengths=((31, 4),))
    master, numbers, least, bound = stage(instance)
    found = from_sharp_prices(master, numbers, least, bound, 3, 100, 1)
    assert found is not None
    assert (found.floor, found.patterns) == (4, ())


class GivesUp:
    """A solver that solves nothing."""

    def solve(self, problem: LinearProblem) -> LinearSolution:
        return LinearSolution(status=LinearStatus.UNSOLVED, solver="none")


def test_a_solver_that_gives_up_proves_nothing() -> None:
    master, numbers, least, bound = stage(tight(0), GivesUp())
    found = from_sharp_prices(master, numbers, least, bound, 3, 100, 1)
    assert found is None or (found.floor <= 3 and not found.patterns)
    assert bound.steps == 3


def test_too_many_patterns_prove_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(every_pattern, "MOST_LISTED", 0)
    able = next(instance for instance in map(tight, range(24)) if three_do(instance))
    master, numbers, least, bound = stage(able)
    assert from_sharp_prices(master, numbers, least, bound, 3, 100, 1) is None


def test_a_plan_one_step_above_a_bound_that_is_all_but_whole_is_proved() -> None:
    pieces, house = random_house(12)
    by_metres = replace(house, stock=tuple(replace(each, price=None) for each in house.stock))
    ours = tuple(piece for piece in pieces if piece.profile == "P1")
    proof = plan_sticks(ours, by_metres, HighsSolver()).proofs[0]
    # The linear master comes to 266 steps of 0.3 m; no plan of whole sticks does.
    assert proof.cost == pytest.approx(80.1)
    assert proof.optimal
