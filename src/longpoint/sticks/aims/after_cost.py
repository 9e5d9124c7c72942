"""From the cheapest plan to one that gets further with the goals after the cost, and their limits.

First the pieces are moved about so that what is left lies together. Few pieces: the best of every
plan. More of them: fewer new sticks (`longpoint.sticks.aims.fewest_sticks`), then a longer offcut
(`longpoint.sticks.aims.longest_offcut`), each by a bound and a search.
"""

from dataclasses import dataclass
from typing import Final

from longpoint.linear.port import LinearSolver
from longpoint.sticks.aims.every_plan import every_plan
from longpoint.sticks.aims.fewest_by_cost import fewest_by_cost
from longpoint.sticks.aims.fewest_sticks import fewest_sticks
from longpoint.sticks.aims.goal_program import Stock
from longpoint.sticks.aims.goals import Limits, limits_by_sums, longest_left, new_sticks
from longpoint.sticks.aims.longest_offcut import SHOWN, longest_offcut
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import floor_of
from longpoint.sticks.lay.fit import Packing, cost_of
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.lay.tidy import tidied
from longpoint.sticks.plan import StickSource
from longpoint.sticks.search.best_packing import Improved
from longpoint.sticks.search.patterns import Layout, Pattern, groups_of

_MOST_GROUPS: Final = 300
"""Of more different pieces the goals are judged by sums."""


@dataclass(frozen=True, slots=True)
class AfterCost:
    """A packing that costs no more, and what no plan of that cost can better.

    Attributes:
        packing: The packing.
        limits: What no plan can better; None: not looked for.
    """

    packing: Packing
    limits: Limits | None


def after_cost(
    work: Workload, bars: Bars, found: Improved, solver: LinearSolver | None, effort: Effort
) -> AfterCost:
    """Return a packing that costs no more and is no worse by any goal.

    Args:
        work: The pieces.
        bars: The lengths.
        found: The cheapest packing, and what its search knew.
        solver: Solves the programs; None: few pieces alone are looked at.
        effort: Limits.
    """
    packing = tidied(work, bars.bars, found.packing)
    every = every_plan(work, bars.bars, packing)
    if every is not None:
        best = min(packing, every.packing, key=lambda choice: _worth(work, bars, choice))
        return AfterCost(best, Limits(every.sticks, every.longest))
    groups = groups_of(work)
    is_free = any(bar.cost == 0 and bar.source is StickSource.STOCK for bar in bars.bars)
    has_stock = any(bar.cost for bar in bars.bars)
    if (
        solver is None
        or packing.unplaced
        or not packing.sticks
        or is_free
        or not has_stock
        or len(groups) > _MOST_GROUPS
    ):
        return AfterCost(packing, None)
    stock = Stock(layout=Layout(work, bars.bars, groups), bars=bars, solver=solver, effort=effort)
    return _searched(work, stock, packing, found)


def _searched(work: Workload, stock: Stock, packing: Packing, found: Improved) -> AfterCost:
    """Fewer sticks, where sums don't say that there can't be; then a longer offcut."""
    bars, layout = stock.bars, stock.layout
    floor = floor_of(work, bars.bars)
    sums = limits_by_sums(work, bars, floor, packing)
    known, cost = new_sticks(bars, packing), cost_of(bars.bars, packing)
    fewest = max(sums.sticks, fewest_by_cost(bars, min(found.bound, cost), cost, known))
    if fewest < known:
        few = fewest_sticks(stock, floor, _patterns(stock, packing), found.patterns)
        fewest = max(fewest, few.floor)
        if few.patterns:
            packing = tidied(work, bars.bars, layout.packing(few.patterns))
            sums = limits_by_sums(work, bars, floor, packing)
    left = longest_left(work, bars, packing)
    if left > sums.longest - SHOWN:
        return AfterCost(packing, Limits(fewest, sums.longest))
    offcut = longest_offcut(
        stock, floor, _patterns(stock, packing), left, found.patterns, found.prices
    )
    if offcut.patterns:
        packing = layout.packing(offcut.patterns)
        more = tidied(work, bars.bars, packing)
        if longest_left(work, bars, more) >= longest_left(work, bars, packing):
            packing = more
    return AfterCost(packing, Limits(fewest, min(sums.longest, offcut.limit)))


def _patterns(stock: Stock, packing: Packing) -> tuple[Pattern, ...]:
    rooms = [bar.room for bar in stock.bars.bars]
    return tuple(
        Pattern(stick.bar, stock.layout.known(stick.places, rooms[stick.bar]))
        for stick in packing.sticks
    )


def _worth(work: Workload, bars: Bars, packing: Packing) -> tuple[int, int, int]:
    left = longest_left(work, bars, packing) if packing.sticks else 0
    return cost_of(bars.bars, packing), new_sticks(bars, packing), -left
