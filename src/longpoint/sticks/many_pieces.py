"""A builder's batch: thousands of pieces of one profile, planned in parts of sticks first.

A plan in parts (`sticks/parts_of_sticks`) says about how often which lengths are cut together.
Its whole sticks are cut from pieces that are near (`sticks/near_lengths`), what is left is planned
in parts again, and the last few score pieces as those of a house are. The bound comes from the
first plan in parts alone.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.sticks.bars import Bars
from longpoint.sticks.best_packing import Improved
from longpoint.sticks.bound import floor_of, simple_bound
from longpoint.sticks.end_classes import many_pieces
from longpoint.sticks.fit import Filled, Packing, downsized
from longpoint.sticks.laying import Place, Workload, workload
from longpoint.sticks.near_lengths import NearLengths
from longpoint.sticks.parts_of_sticks import Part, PartPlanner
from longpoint.sticks.patterns import groups_of
from longpoint.sticks.pricing import whole_steps

MANY: Final = 450
"""From so many different pieces on they are planned in parts first."""
_FEW: Final = 110
"""So many pieces are left to be planned one by one."""
_ROUNDS: Final = 30
_LIKELY: Final = 0.6
"""A pattern is cut once more when this part of a stick is left of it."""

_LOSS: Final = 2e-3
_MORE: Final = 2.0
"""Part of its cost by which a stick may be worth less, and by how much that grows a round."""
_GOOD: Final = 5e-4
"""Part of its cost that a stick may be worth less without a better one being looked for."""

PlanOfRest = Callable[[Workload, Bars], Packing]


def part_planner(work: Workload, bars: Bars, solver: LinearSolver | None) -> PartPlanner | None:
    """Return who plans in parts, None where the solver can't or it isn't worth it."""
    planner: PartPlanner | None = getattr(solver, "plan_in_parts", None)
    if planner is None or len(groups_of(work)) < MANY:
        return None
    endless = [bar.room for bar in bars.bars if bar.count is None and bar.cost]
    return planner if max(endless, default=0) >= max(work.alone) else None


def plan_many(work: Workload, bars: Bars, planner: PartPlanner, rest: PlanOfRest) -> Improved:
    """Return a plan of all pieces, and a bound.

    Args:
        work: The pieces.
        bars: The lengths; of one that holds every piece there must be as many as needed.
        planner: Plans in parts.
        rest: Plans what is left, on the lengths that are left.
    """
    exact = planner(many_pieces(work, bars), roughly=False)
    simple = simple_bound(floor_of(work, bars.bars), bars)
    left, sticks = tuple(range(len(work.mid))), list[Filled]()
    for turn in range(_ROUNDS):
        if len(left) <= _FEW:
            break
        made = _round(_some(work, left), _without(bars, sticks), planner, turn)
        if not made:
            break
        sticks += [_named(stick, left) for stick in made]
        gone = {place.piece for stick in sticks for place in stick.places}
        left = tuple(piece for piece in left if piece not in gone)
    last = rest(_some(work, left), _without(bars, sticks)) if left else Packing(())
    sticks += [_named(stick, left) for stick in last.sticks]
    unplaced = tuple(left[piece] for piece in last.unplaced)
    return Improved(
        packing=downsized(work, bars.bars, Packing(tuple(sticks), unplaced)),
        bound=max(simple, whole_steps(exact.floor) * bars.step),
        solved_by=exact.solver,
    )


def _round(work: Workload, bars: Bars, planner: PartPlanner, turn: int) -> list[Filled]:
    """Plan in parts, and cut what comes out as whole sticks."""
    many = many_pieces(work, bars)
    plan, loss = planner(many, roughly=True), _LOSS * _MORE**turn
    near = NearLengths(work, many, plan.prices, groups_of(work))
    sticks, taken = list[Filled](), [0] * len(bars.bars)
    for part in _whole(plan.parts):
        bar = bars.bars[part.bar]
        if bar.count is not None and taken[part.bar] >= bar.count:
            continue
        cost = bar.cost / bars.step
        stick = near.cut(part, bar.room, (1.0 - loss) * cost, (1.0 - _GOOD) * cost)
        if stick is not None:
            sticks.append(stick)
            taken[part.bar] += 1
    return sticks


def _whole(parts: Sequence[Part]) -> list[Part]:
    """Whole sticks of each pattern, all patterns by turns; the likeliest one at least."""
    counts = [math.floor(part.count + 1 - _LIKELY) for part in parts]
    if not any(counts) and parts:
        counts[max(range(len(parts)), key=lambda number: parts[number].count)] = 1
    turns = [
        ((copy + 0.5) / count, number)
        for number, count in enumerate(counts)
        for copy in range(count)
    ]
    return [parts[number] for _, number in sorted(turns)]


def _some(work: Workload, pieces: Sequence[int]) -> Workload:
    return workload([work.demands[piece] for piece in pieces])


def _named(stick: Filled, pieces: Sequence[int]) -> Filled:
    """The stick with its pieces numbered as they were."""
    places = tuple(Place(pieces[place.piece], place.turned) for place in stick.places)
    return Filled(stick.bar, places, stick.used)


def _without(bars: Bars, sticks: Sequence[Filled]) -> Bars:
    """The lengths that are left, under the same numbers."""
    taken = [0] * len(bars.bars)
    for stick in sticks:
        taken[stick.bar] += 1
    return replace(
        bars,
        bars=tuple(
            bar if bar.count is None else replace(bar, count=bar.count - gone)
            for bar, gone in zip(bars.bars, taken, strict=True)
        ),
    )
