"""The goals that follow the cost: no plan betters what is called the best, by trying them all."""

import itertools
import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace

from hypothesis import given

from longpoint.pieces.piece import Piece
from longpoint.sticks.aims.goals import packing_goals
from longpoint.sticks.effort import QUICK
from longpoint.sticks.lay.bars import Bar, bars_of
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import Packing, cost_of, fit
from longpoint.sticks.lay.laying import Workload, left_over, used_length
from longpoint.sticks.lay.tidy import tidied
from longpoint.sticks.lay.together import gathered, spread
from longpoint.sticks.plan import CutPlan, Goal, Reached, StickSource
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.property.test_sticks import all_layings, architraves, houses, work_of

Part = tuple[int, ...]
Filled = tuple[int, int]
"""Number of a stick's length, and what it leaves. [0.01 mm]"""


def parts_of(pieces: Part) -> Iterator[tuple[Part, ...]]:
    if not pieces:
        yield ()
        return
    first, others = pieces[0], pieces[1:]
    for size in range(len(others) + 1):
        for some in itertools.combinations(others, size):
            rest = tuple(piece for piece in others if piece not in some)
            for more in parts_of(rest):
                yield ((first, *some), *more)


def all_plans(pieces: Sequence[Piece], house: House) -> Iterator[tuple[Filled, ...]]:
    """Every way to share pieces out to the sticks there are, each laid so that it leaves most."""
    work = work_of(pieces, house)
    bars = bars_of("OG", house.stock, house.offcuts, house.saw).bars
    fillings: dict[Part, list[Filled]] = {}

    def of(part: Part) -> list[Filled]:
        if part not in fillings:
            layings = list(all_layings(work, part))
            fillings[part] = [
                (number, max(left_over(work, places, bar.room) for places in able))
                for number, bar in enumerate(bars)
                if (able := [lay for lay in layings if used_length(work, lay) <= bar.room])
            ]
        return fillings[part]

    for parts in parts_of(tuple(range(len(work.mid)))):
        for sticks in itertools.product(*(of(part) for part in parts)):
            taken = Counter(number for number, _ in sticks)
            if all(taken[n] <= (bar.count or math.inf) for n, bar in enumerate(bars)):
                yield sticks


def of_goal(plan: CutPlan, goal: Goal) -> Reached:
    return next(one for one in plan.reached if one.goal is goal)


@given(architraves(4, shortest_mm=700.0), houses())
def test_of_few_pieces_no_plan_is_better_by_any_goal(
    pieces: tuple[Piece, ...], house: House
) -> None:
    plan = plan_sticks(pieces, house, effort=QUICK)
    if plan.unplaced:
        return
    bars = bars_of("OG", house.stock, house.offcuts, house.saw)

    def worth(sticks: tuple[Filled, ...]) -> tuple[int, int, int]:
        new = sum(bars.bars[number].source is StickSource.STOCK for number, _ in sticks)
        longest = max(left for _, left in sticks)
        return sum(bars.bars[number].cost for number, _ in sticks), new, -longest

    cost, new, less_left = min(map(worth, all_plans(pieces, house)))
    sticks, offcut = of_goal(plan, Goal.FEW_STICKS), of_goal(plan, Goal.LONG_OFFCUT)
    assert round(plan.proofs[0].cost * bars.per_unit) == cost
    assert (sticks.value, sticks.limit) == (new, new)
    assert round(offcut.value * 100) == round(offcut.limit * 100) == -less_left
    assert offcut.value == max(stick.left_mm for stick in plan.sticks)


@given(architraves(4, shortest_mm=700.0), houses())
def test_no_plan_of_that_cost_betters_the_limits_by_sums(
    pieces: tuple[Piece, ...], house: House
) -> None:
    house = replace(house, offcuts=())
    work, bars = work_of(pieces, house), bars_of("OG", house.stock, (), house.saw)
    packing = tidied(work, bars.bars, fit(work, bars.bars, QUICK.refills))
    if packing.unplaced:
        return
    floor = floor_of(work, bars.bars)
    sticks, offcut = packing_goals("OG", work, bars, floor, packing)
    cost = cost_of(bars.bars, packing)
    as_cheap = [
        found
        for found in all_plans(pieces, house)
        if sum(bars.bars[number].cost for number, _ in found) <= cost
    ]
    assert min(map(len, as_cheap)) >= sticks.limit
    as_few = [found for found in as_cheap if len(found) <= sticks.value]
    assert max(left for found in as_few for _, left in found) <= offcut.limit * 100.0 + 1e-6


@given(architraves(12), houses())
def test_bringing_openings_together_gives_nothing_up(
    pieces: tuple[Piece, ...], house: House
) -> None:
    work = work_of(pieces, house)
    bars = bars_of("OG", house.stock, house.offcuts, house.saw).bars
    packing = tidied(work, bars, fit(work, bars, refills=3))
    if packing.unplaced:
        return
    openings = [f"W{piece % 4}" for piece in range(len(work.mid))]
    found = gathered(work, bars, openings, packing)
    assert spread(openings, found.sticks) <= spread(openings, packing.sticks)
    assert cost_of(bars, found) == cost_of(bars, packing)
    assert longest(work, bars, found) >= longest(work, bars, packing)
    assert sorted(place.piece for stick in found.sticks for place in stick.places) == sorted(
        range(len(work.mid))
    )
    for stick in found.sticks:
        assert used_length(work, stick.places) == stick.used <= bars[stick.bar].room


def longest(work: Workload, bars: Sequence[Bar], packing: Packing) -> int:
    return max(left_over(work, stick.places, bars[stick.bar].room) for stick in packing.sticks)


@given(architraves(8), houses())
def test_what_a_plan_says_of_its_goals_is_what_it_has(
    pieces: tuple[Piece, ...], house: House
) -> None:
    matched = tuple(replace(profile, grain_matched=True) for profile in house.profiles)
    plan = plan_sticks(pieces, replace(house, profiles=matched), effort=QUICK)
    if plan.unplaced or not plan.sticks:
        return
    order = [one.goal for one in plan.reached]
    assert sorted(order, key=list(Goal).index) == [
        Goal.FEW_STICKS,
        Goal.LONG_OFFCUT,
        Goal.BIG_FIRST,
        Goal.TOGETHER,
        Goal.FEW_SETTINGS,
    ]
    bought = [stick for stick in plan.sticks if stick.source is StickSource.STOCK]
    assert of_goal(plan, Goal.FEW_STICKS).value == len(bought)
    assert of_goal(plan, Goal.BIG_FIRST).value == 0
    assert all(one.limit <= one.value or one.goal is Goal.LONG_OFFCUT for one in plan.reached)
