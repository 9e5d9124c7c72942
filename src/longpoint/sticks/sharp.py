"""Prices to the last digit, from the middle of all that are best: a proof where the bound is tight.

Some plans are dearer than the bound rounded up, by nothing but what whole sticks can't do. Then a
cheaper plan could hold hardly a pattern that loses anything, and few patterns lose nothing; but
only at prices that are best to the last digit, and in the middle of all that are: at a corner many
more patterns seem to lose nothing. So the master is solved again without anything beside the cost,
until no pattern gains, and then for the prices in the middle. What is listed at those prices
(`longpoint.sticks.every_pattern`) is often a few hundred patterns instead of many ten thousand.
"""

from collections.abc import Sequence
from typing import Final

from longpoint.sticks.every_pattern import Outcome, from_every_pattern
from longpoint.sticks.generation import Bound, better, one_round
from longpoint.sticks.master import Master, Prices
from longpoint.sticks.needs import Needs
from longpoint.sticks.pricing import Priced

TIGHT: Final = 0.5
"""In steps of cost: how near a bound must be to a plan's cost for patterns to be few enough.

Of houses by metres, a step is 300 mm; half of it, spread over all sticks, is little.
"""
_CALM: Final = 0.5
_CALMER: Final = 0.1
_EXACT: Final = 1e-10
_FIRST: Final = 8
_CENTRAL_ROUNDS: Final = 20


def from_sharp_prices(
    coarse: Master,
    numbers: Sequence[int],
    least: Needs,
    near: Bound,
    goal: int,
    rounds: int,
    grid: int,
    most: int | None = None,
) -> Outcome | None:
    """Return the best plan that costs `goal` or less, or what any plan costs at least.

    Args:
        coarse: A master that has patterns already.
        numbers: Numbers of its patterns that may serve to begin with.
        least: Needs that no pattern undercuts.
        near: A good bound, bettered in place.
        goal: Most that the plan may cost, in steps.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]
        most: Most patterns that are listed; None: as many as ever.

    Returns:
        None where there are too many patterns even so, or the solver gave up.
    """
    sharp = coarse.sharper()
    ranked = sorted(numbers, key=lambda number: -coarse.gain(coarse.patterns[number], near.prices))
    first = ranked[: _FIRST * len(sharp.whole.pieces)]
    known = sharp.numbers_of(coarse.patterns[number] for number in first)
    _sharpen(sharp, known, least, near, rounds, grid)
    if near.steps > goal:
        return Outcome(near.steps, ())
    if near.exact < goal - TIGHT:
        return None
    for prices in (_central(sharp, known, least, near, grid), near.prices):
        found = from_every_pattern(sharp, least, prices, goal, near.steps, grid, most)
        if found is not None:
            return found
    return None


def _sharpen(
    sharp: Master, numbers: list[int], least: Needs, bound: Bound, rounds: int, grid: int
) -> None:
    """Add patterns until none gains; the bound is then what the master costs."""
    calm = _CALM
    for _ in range(rounds):
        if sharp.stop():
            break
        solution = sharp.solve(numbers, sharp.whole)
        prices = sharp.prices(solution)
        if prices is None or bound.exact >= sharp.pure_cost(numbers, solution) - _EXACT:
            break
        found, new, calm = one_round(sharp, numbers, least, prices, bound.prices, calm, grid)
        better(bound, found, prices.mixed(bound.prices, calm))
        if not new:
            break
        numbers.extend(new)
        calm = min(_CALM, calm + _CALMER)


def _central(sharp: Master, numbers: list[int], least: Needs, bound: Bound, grid: int) -> Prices:
    """Prices from the middle of all that are best, as far as they are found."""
    known = set(numbers)
    for _ in range(_CENTRAL_ROUNDS):
        if sharp.stop():
            break
        prices = sharp.prices(sharp.solve(numbers, sharp.whole, central=True))
        if prices is None:
            break
        priced = Priced(sharp, least, prices, sharp.whole, grid)
        better(bound, priced, prices)
        new = [n for n in sharp.numbers_of(priced.patterns(prices)) if n not in known]
        if not new:
            return prices
        known.update(new)
        numbers.extend(new)
    return bound.prices
