"""All sets of pieces that a plan of some charge may hold, and the solver's search among them."""

from typing import Final

from longpoint.sticks.every_pattern import Sieve
from longpoint.sticks.goal_program import Charges, Stock
from longpoint.sticks.patterns import Pattern
from longpoint.sticks.pricing import Priced
from longpoint.sticks.sets_to_choose import SetChoice, SetChooser

_WORK: Final = 5_000_000
_SPARE: Final = 1
"""Steps of charge by which a plan may be above what it may be charged, and still isn't ruled out:
more than what all small errors of linear solutions come to."""


def chosen_at(
    stock: Stock, at: Charges, priced: Priced, most: int, most_listed: int, nodes: int
) -> tuple[Pattern, ...] | None:
    """Return a plan that is charged no more.

    Args:
        stock: What is asked.
        at: The charges.
        priced: The knapsack with these, at the charges.
        most: Most that a plan may be charged. [steps of charge]
        most_listed: Most sets.
        nodes: Most linear solutions that may be branched on.

    Returns:
        Empty where there is none; None where nobody knows.
    """
    choose: SetChooser | None = getattr(stock.solver, "choose_sets", None)
    most += _SPARE
    sets = priced.listed(most, most_listed) if choose is not None else None
    if choose is None or sets is None:
        return None
    sieve = Sieve(at.master)

    def can_be_cut(number: int) -> bool | None:
        pattern = sets.pattern(number)
        if not sieve.may_be_cut(pattern):
            return False
        return None if pattern in sieve.unsure else True

    found = choose(
        SetChoice(
            patterns=sets,
            costs=at.master.steps,
            pieces=at.master.whole.pieces,
            limits=at.master.whole.sticks,
            able=(most,),
            prices=at.prices.pieces,
            can_be_cut=can_be_cut,
            nodes=nodes,
            work=_WORK,
            stop=stock.effort.stop,
        )
    )
    if found.numbers:
        return tuple(sets.pattern(number) for number in found.numbers)
    return () if found.floor > most else None
