"""All patterns that can still matter, and a search that chooses among them: plan and proof.

The losses of all sticks of a plan add up to its cost less the bound (`sticks/every_pattern`), so
for a plan of a certain cost the patterns that lose too much may be left out. Here the rest may be a
hundred thousand: the solver's own search (`sticks/sets_to_choose`) holds them as arrays. It needs
every pattern, also those that are part of another one: each piece is cut exactly once.
"""

from collections.abc import Sequence
from typing import Final

from longpoint.sticks.every_pattern import Outcome, Sieve
from longpoint.sticks.master import Master, Prices
from longpoint.sticks.patterns import PatternList
from longpoint.sticks.pricing import Needs, Priced
from longpoint.sticks.sets_to_choose import SetChoice, SetChooser

MOST_SETS: Final = 100_000
FEW_SETS: Final = 10_000
_MOST_ENTRIES: Final = 24_000_000
"""Sets times groups of pieces: the memory that the search may take."""
_WORK: Final = 14_000_000


def from_choice(
    choose: SetChooser,
    master: Master,
    least: Needs,
    prices: Prices,
    able: Sequence[int],
    most: int,
    grid: int,
    nodes: int,
    *,
    proof: bool,
) -> Outcome | None:
    """Return the best plan found that has one of the costs, and what any plan costs at least.

    The patterns are those of plans up to the dearest cost for which they aren't too many.

    Args:
        choose: The search.
        master: Costs, and the layout in which patterns are tried.
        least: Needs that no pattern undercuts.
        prices: Prices that give a good bound.
        able: Costs that a plan may have, ascending, in steps. Not empty.
        most: Most patterns.
        grid: Step of the knapsack's lengths. [0.01 mm]
        nodes: Most linear solutions that may be branched on.
        proof: Whether only plans up to that dearest cost are looked for; else any may be found.

    Returns:
        None where there are too many patterns even for the least cost.
    """
    most = min(most, _MOST_ENTRIES // len(master.whole.pieces))
    listed = _listed(Priced(master, least, prices, master.whole, grid), able, most)
    if listed is None:
        return None
    place, patterns = listed
    sieve = Sieve(master)

    def can_be_cut(number: int) -> bool | None:
        pattern = patterns.pattern(number)
        if not sieve.may_be_cut(pattern):
            return False
        return None if pattern in sieve.unsure else True

    found = choose(
        SetChoice(
            patterns=patterns,
            costs=master.steps,
            pieces=master.whole.pieces,
            limits=master.whole.sticks,
            able=tuple(able[: place + 1] if proof else able),
            prices=prices.pieces,
            can_be_cut=can_be_cut,
            nodes=nodes,
            work=_WORK,
            stop=master.stop,
        )
    )
    chosen = tuple(patterns.pattern(number) for number in found.numbers)
    floor = found.floor if place == len(able) - 1 else min(found.floor, able[place + 1])
    return Outcome(floor, chosen)


def _listed(priced: Priced, able: Sequence[int], most: int) -> tuple[int, PatternList] | None:
    """The place of the dearest cost whose patterns aren't too many, and these."""
    found: tuple[int, PatternList] | None = None
    low, high, place = 0, len(able) - 1, len(able) - 1
    while low <= high:
        sets = priced.listed(able[place], most)
        if sets is None:
            high = place - 1
        else:
            found, low = (place, sets), place + 1
        place = (low + high) // 2
    return found
