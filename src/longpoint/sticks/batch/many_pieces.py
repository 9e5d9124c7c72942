"""A builder's batch: thousands of pieces of one profile, planned in parts of sticks first.

A plan in parts (`sticks/batch/parts_of_sticks`) says about how often which lengths are cut
together. Its whole sticks are cut from pieces that are near (`sticks/batch/near_lengths`), what is
left is planned in parts again, and the last few score pieces as those of a house are. The bound
comes from the first plan in parts alone.
"""

import math
from collections.abc import Callable, Sequence
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.sticks.batch.end_classes import many_pieces
from longpoint.sticks.batch.mixed_again import Planner, bars_without, mixed_again, named, some_of
from longpoint.sticks.batch.near_lengths import NearLengths
from longpoint.sticks.batch.parts_of_sticks import Part, PartPlanner
from longpoint.sticks.effort import never
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import floor_of, simple_bound
from longpoint.sticks.lay.fit import Filled, Packing, downsized
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search.best_packing import Improved
from longpoint.sticks.search.patterns import groups_of
from longpoint.sticks.search.pricing import whole_steps

MANY: Final = 450
"""From so many different pieces on they are planned in parts first."""
_FEW: Final = 110
"""So many pieces are left to be planned one by one."""
_ROUNDS: Final = 30
_LIKELY: Final = 0.6
_FIRST_LIKELY: Final = 0.9
"""A pattern is cut once more when this part of a stick is left of it. Hardly any in the first
round, where hundreds are begun: what is cut too often of each leaves too little for the others."""

_LOSS: Final = 2e-3
_MORE: Final = 2.0
"""Part of its cost by which a stick may be worth less, and by how much that grows a round."""
_GOOD: Final = 5e-4
"""Part of its cost that a stick may be worth less without a better one being looked for."""


def part_planner(work: Workload, bars: Bars, solver: LinearSolver | None) -> PartPlanner | None:
    """Return who plans in parts, None where the solver can't or it isn't worth it."""
    planner: PartPlanner | None = getattr(solver, "plan_in_parts", None)
    if planner is None or len(groups_of(work)) < MANY:
        return None
    endless = [bar.room for bar in bars.bars if bar.count is None and bar.cost]
    return planner if max(endless, default=0) >= max(work.alone) else None


def plan_many(
    work: Workload,
    bars: Bars,
    planner: PartPlanner,
    rest: Planner,
    again: Planner,
    stop: Callable[[], bool] = never,
) -> Improved:
    """Return a plan of all pieces, and a bound.

    Args:
        work: The pieces.
        bars: The lengths; of one that holds every piece there must be as many as needed.
        planner: Plans in parts.
        rest: Plans what is left, on the lengths that are left.
        again: Plans a hundred pieces or two quickly, to better the plan of all.
        stop: Asked between two steps; once it says yes, what is left is planned as it is.
    """
    exact = planner(many_pieces(work, bars), roughly=False)
    simple = simple_bound(floor_of(work, bars.bars), bars)
    left, sticks = tuple(range(len(work.mid))), list[Filled]()
    for turn in range(_ROUNDS):
        if len(left) <= _FEW or stop():
            break
        made = _round(some_of(work, left), bars_without(bars, sticks), planner, turn)
        if not made:
            break
        sticks += [named(stick, left) for stick in made]
        gone = {place.piece for stick in sticks for place in stick.places}
        left = tuple(piece for piece in left if piece not in gone)
    last = rest(some_of(work, left), bars_without(bars, sticks)) if left else Packing(())
    sticks += [named(stick, left) for stick in last.sticks]
    unplaced = tuple(left[piece] for piece in last.unplaced)
    packing = downsized(work, bars.bars, Packing(tuple(sticks), unplaced))
    worths = [price * bars.step for price in exact.prices]
    return Improved(
        packing=mixed_again(work, bars, packing, worths, again, stop),
        bound=max(simple, whole_steps(exact.floor) * bars.step),
        solved_by=exact.solver,
    )


def _round(work: Workload, bars: Bars, planner: PartPlanner, turn: int) -> list[Filled]:
    """Plan in parts, and cut what comes out as whole sticks."""
    many = many_pieces(work, bars)
    plan, loss = planner(many, roughly=True), _LOSS * _MORE**turn
    near = NearLengths(work, many, plan.prices, groups_of(work))
    sticks, taken = list[Filled](), [0] * len(bars.bars)
    for part in _whole(plan.parts, _LIKELY if turn else _FIRST_LIKELY):
        bar = bars.bars[part.bar]
        if bar.count is not None and taken[part.bar] >= bar.count:
            continue
        cost = bar.cost / bars.step
        stick = near.cut(part, bar.room, (1.0 - loss) * cost, (1.0 - _GOOD) * cost)
        if stick is not None:
            sticks.append(stick)
            taken[part.bar] += 1
    return sticks


def _whole(parts: Sequence[Part], likely: float) -> list[Part]:
    """Whole sticks of each pattern, all patterns by turns; the likeliest one at least."""
    counts = [math.floor(part.count + 1 - likely) for part in parts]
    if not any(counts) and parts:
        counts[max(range(len(parts)), key=lambda number: parts[number].count)] = 1
    turns = [
        ((copy + 0.5) / count, number)
        for number, count in enumerate(counts)
        for copy in range(count)
    ]
    return [parts[number] for _, number in sorted(turns)]
