"""Prices to the last digit, from the middle of all that are best: a proof where the bound is tight.

Some plans are dearer than the bound rounded up, by nothing but what whole sticks can't do. Then a
cheaper plan could hold hardly a pattern that loses anything, and few patterns lose nothing; but
only at prices that are best to the last digit, and in the middle of all that are: at a corner many
more patterns seem to lose nothing. So the master is solved again without anything beside the cost,
until no pattern gains, and then for the prices in the middle. What is listed at those prices
(`longpoint.sticks.search.every_pattern`) is often a few hundred patterns instead of many ten
thousand.
"""

from typing import Final

from longpoint.sticks.search.every_pattern import Outcome, from_every_pattern
from longpoint.sticks.search.must_be_cut import from_only_sets
from longpoint.sticks.search.only_sets import MOST_STEPS
from longpoint.sticks.search.pricing import Priced
from longpoint.sticks.search.sharp_prices import SharpAsked, central

TIGHT: Final = 0.5
"""In steps of cost: how near a bound must be to a plan's cost for patterns to be few enough.

Of houses by metres, a step is 300 mm; half of it, spread over all sticks, is little.
"""
_NO_LOSS: Final = 0.01
"""In steps: what a plan may lose at most for pieces to stand in one set only."""
_ALONE: Final = 0.1
"""Share of the groups that must stand in one set at most, unless this is the last that is tried.

Where all have a choice, as among pieces of which many threes fill a stick, a dive finds sooner.
"""
_BRANCHES: Final = 100


def from_sharp_prices(asked: SharpAsked, most: int | None = None) -> Outcome | None:
    """Return the best plan that costs the goal or less, or what any plan costs at least.

    Args:
        asked: The goal, and what is known.
        most: Most patterns that are listed; None: as many as ever, as nothing else is left to try.

    Returns:
        None where there are too many patterns even so, or the solver gave up.
    """
    sharp, known = asked.sharpened()
    least, near, goal, grid = asked.least, asked.near, asked.goal, asked.grid
    if near.steps > goal:
        return Outcome(near.steps, ())
    if near.exact < goal - TIGHT:
        return None
    middle = central(sharp, known, least, near, grid, sharp.whole)
    for prices in (middle, near.prices):
        found = from_every_pattern(sharp, least, prices, goal, near.steps, grid, most)
        if found is not None:
            return found
    if near.exact < goal - _NO_LOSS or sharp.stop():
        return None
    is_last = most is None
    if not is_last and not _many_stand_alone(Priced(sharp, least, middle, sharp.whole, grid), goal):
        return None
    return from_only_sets(sharp, known, least, middle, goal, asked.rounds, grid, _BRANCHES)


def _many_stand_alone(priced: Priced, goal: int) -> bool:
    """Tell whether taking sets that alone hold a piece may lead anywhere."""
    ways = priced.ways(goal, MOST_STEPS)
    if ways is None:
        return False
    alone = sum(count <= 1 for count in ways.holding.values())
    return alone >= _ALONE * len(ways.holding)
