from dataclasses import replace

import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.every_plan import every_plan
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import fit
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search.cut_share import ShareProgram
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.needs import least_needs
from longpoint.sticks.search.patterns import Layout, groups_of
from longpoint.sticks.search.stick_numbers import Numbers
from tests.small_plans import small_job

GRID = 50


def program(work: Workload, bars: Bars) -> ShareProgram:
    layout = Layout(work, bars.bars, groups_of(work))
    least = least_needs(layout, floor_of(work, bars.bars))
    return ShareProgram(Master(layout, bars, HighsSolver()), least, HighsSolver(), GRID)


def holds_all(work: Workload, bars: Bars, numbers: Numbers) -> bool:
    """Tell, by trying every plan, whether so many sticks hold all pieces."""
    counted = tuple(
        replace(bar, count=number) for bar, number in zip(bars.bars, numbers, strict=True) if number
    )
    packing = fit(work, counted, refills=0)
    if not packing.unplaced:
        return True
    best = every_plan(work, counted, packing)
    return best is not None and not best.packing.unplaced


@pytest.mark.parametrize("seed", range(40))
def test_the_sticks_of_a_plan_keep_every_condition_and_are_enough(seed: int) -> None:
    work, bars = small_job(seed)
    packing = fit(work, bars.bars, refills=0)
    if packing.unplaced:
        pytest.skip("there are too few sticks for any plan")
    used = [stick.bar for stick in packing.sticks]
    numbers = tuple(used.count(bar) for bar in range(len(bars.bars)))
    shares = program(work, bars)
    told = shares.share(numbers, shares.worth([1.0] * len(groups_of(work))))
    assert not told.is_short
    assert all(condition.keeps(numbers) for condition in told.conditions)
    # One stick less of each length may do or not; where it is said to be short, it doesn't do.
    for bar, number in enumerate(numbers):
        fewer = (*numbers[:bar], number - 1, *numbers[bar + 1 :])
        if number and any(fewer):
            less = shares.share(fewer, told.worth)
            assert all(condition.keeps(numbers) for condition in less.conditions)
            if less.is_short:
                assert not holds_all(work, bars, fewer)


def test_too_few_sticks_are_told_from_parts_of_sticks() -> None:
    work, bars = small_job(3)
    shares = program(work, bars)
    none = tuple(int(bar == 0) for bar in range(len(bars.bars)))
    near = shares.worth([1.0] * len(groups_of(work)))
    told = shares.share(none, near)
    assert told.is_short
    assert not told.conditions[-1].keeps(none)
