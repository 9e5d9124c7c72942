"""Beyond the pieces of which every plan is looked at: limits and plans held to every plan."""

from hypothesis import assume, given
from hypothesis import strategies as st

from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.aims.every_plan import every_plan
from longpoint.sticks.aims.fewest_sticks import fewest_sticks
from longpoint.sticks.aims.goal_program import Stock
from longpoint.sticks.aims.goals import longest_left, new_sticks
from longpoint.sticks.aims.longest_offcut import longest_offcut
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import cost_of, fit
from longpoint.sticks.search.patterns import Layout, groups_of
from tests.small_plans import patterns_of, small_job

SEEDS = st.integers(0, 1_000_000)


@given(SEEDS)
def test_no_plan_that_costs_no_more_opens_fewer_sticks_than_the_floor(seed: int) -> None:
    work, bars = small_job(seed)
    packing = fit(work, bars.bars, refills=3)
    every = every_plan(work, bars.bars, packing)
    solver = HighsSolver()
    assume(every is not None)
    assert every is not None
    if cost_of(bars.bars, packing) > cost_of(bars.bars, every.packing):
        packing = every.packing
    layout = Layout(work, bars.bars, groups_of(work))
    stock = Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)
    plan = patterns_of(stock, packing)
    found = fewest_sticks(stock, floor_of(work, bars.bars), plan, ())
    assert found.floor <= every.sticks <= stock.sticks(found.patterns or plan)
    if found.patterns:
        assert stock.cost(found.patterns) <= stock.cost(plan)
        assert stock.sticks(found.patterns) < stock.sticks(plan)
        packed = layout.packing(found.patterns)
        assert all(stick.used <= bars.bars[stick.bar].room for stick in packed.sticks)
        pieces = sorted(place.piece for stick in packed.sticks for place in stick.places)
        assert pieces == list(range(len(work.mid)))


@given(SEEDS)
def test_no_plan_that_costs_no_more_leaves_a_longer_offcut_than_the_limit(seed: int) -> None:
    work, bars = small_job(seed)
    packing = fit(work, bars.bars, refills=3)
    every = every_plan(work, bars.bars, packing)
    solver = HighsSolver()
    assume(every is not None and any(bar.cost for bar in bars.bars))
    assert every is not None
    best = (cost_of(bars.bars, every.packing), every.sticks)
    if (cost_of(bars.bars, packing), new_sticks(bars, packing)) != best:
        packing = every.packing
    layout = Layout(work, bars.bars, groups_of(work))
    stock = Stock(layout=layout, bars=bars, solver=solver, effort=QUICK)
    plan, left = patterns_of(stock, packing), longest_left(work, bars, packing)
    found = longest_offcut(stock, floor_of(work, bars.bars), plan, left, (), None)
    assert found.limit >= every.longest
    if found.patterns:
        packed = layout.packing(found.patterns)
        assert stock.cost(found.patterns) == stock.cost(plan)
        assert stock.sticks(found.patterns) == stock.sticks(plan)
        assert left < longest_left(work, bars, packed) <= every.longest
        assert all(stick.used <= bars.bars[stick.bar].room for stick in packed.sticks)
        pieces = sorted(place.piece for stick in packed.sticks for place in stick.places)
        assert pieces == list(range(len(work.mid)))
