"""The solver's search among listed sets, at charges: is there a plan that is charged no more?"""

from collections.abc import Callable
from typing import Final

from longpoint.sticks.aims.goal_program import Charges, Stock
from longpoint.sticks.search.every_pattern import Sieve
from longpoint.sticks.search.patterns import PatternList
from longpoint.sticks.search.sets_to_choose import SetChoice, SetChooser

SPARE: Final = 1
"""Steps of charge by which a plan may be above what it may be charged, and still isn't ruled out:
more than what all small errors of linear solutions come to."""


def chooses(stock: Stock) -> bool:
    """Tell whether the solver brings a search among sets."""
    return getattr(stock.solver, "choose_sets", None) is not None


def chosen(
    stock: Stock,
    at: Charges,
    sets: PatternList,
    most: int,
    nodes: int,
    work: int,
    leaves: Callable[[int], bool | None] | None = None,
) -> tuple[int, ...] | None:
    """Return the numbers of sets that make a plan charged no more.

    Args:
        stock: What is asked.
        at: The charges.
        sets: All sets that such a plan may hold.
        most: Most that it may be charged. [steps of charge]
        nodes: Most linear solutions that may be branched on.
        work: Most sets that may be priced, each counted as often as it is.
        leaves: Tells of a set with the offcut, by its number, whether it can be cut so that it
            leaves that; None: no offcut is wanted.

    Returns:
        Empty where there is no such plan; None where nobody knows.
    """
    choose: SetChooser | None = getattr(stock.solver, "choose_sets", None)
    if choose is None:
        return None
    sieve, pieces = Sieve(at.master), at.master.whole.pieces

    def can_be_cut(number: int) -> bool | None:
        pattern = sets.pattern(number)
        if leaves is not None and pattern.counts[-1][0] == len(pieces):
            return leaves(number)
        return sieve.can_be_cut(pattern)

    found = choose(
        SetChoice(
            patterns=sets,
            costs=at.master.steps,
            pieces=pieces if leaves is None else (*pieces, 1),
            limits=at.master.whole.sticks,
            able=(most + SPARE,),
            prices=at.prices.pieces if leaves is None else (*at.prices.pieces, 0.0),
            can_be_cut=can_be_cut,
            nodes=nodes,
            work=work,
            stop=stock.effort.stop,
        )
    )
    if not found.numbers and found.floor <= most + SPARE:
        return None
    return found.numbers
