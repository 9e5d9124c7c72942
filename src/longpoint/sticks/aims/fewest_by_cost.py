"""How few new sticks can come to a cost at all: where every length has a price, that tells most."""

from typing import Final

from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.plan import StickSource

_MOST_STEPS: Final = 10**7
"""Of dearer plans, in steps of cost, nothing is told: it would take seconds, then minutes."""


def fewest_by_cost(bars: Bars, least: int, cost: int, most: int) -> int:
    """Return how many new sticks a plan opens at least whose cost lies between two.

    Args:
        bars: The lengths.
        least: A cost that no plan undercuts. [cost units]
        cost: Most that the plan may cost. >= `least`. [cost units]
        most: How many new sticks are known to do; no more than these are tried.

    Returns:
        0 to `most`. Counts of lengths that are limited don't matter, so that it is never too high.
    """
    steps = {bar.cost // bars.step for bar in bars.bars if bar.source is StickSource.STOCK}
    if any(bar.cost for bar in bars.bars if bar.source is not StickSource.STOCK):
        return 0
    low, high = -(-least // bars.step), cost // bars.step
    if high > _MOST_STEPS:
        return 0
    # Bit n stands for a cost of n steps that so many sticks come to.
    within, costs = (1 << high + 1) - 1, 1
    for sticks in range(most):
        if costs >> low:
            return sticks
        dearer = 0
        for step in steps:
            dearer |= costs << step
        costs = dearer & within
    return most
