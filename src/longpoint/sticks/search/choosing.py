"""All patterns that can still matter, and a search that chooses among them: plan and proof.

The losses of all sticks of a plan add up to its cost less the bound
(`sticks/search/every_pattern`), so for a plan of a certain cost the patterns that lose too much may
be left out. Here the rest may be a hundred thousand: the solver's own search
(`sticks/search/sets_to_choose`) holds them as arrays. It needs every pattern, also those that are
part of another one: each piece is cut exactly once.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.search.every_pattern import Outcome, Sieve
from longpoint.sticks.search.master import Master, Prices
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import PatternList
from longpoint.sticks.search.pricing import Priced
from longpoint.sticks.search.sets_to_choose import SetChoice, SetChooser

_MOST_ENTRIES: Final = 100_000_000
"""Sets times groups of pieces: the memory that the search may take."""
_ENOUGH: Final = 0.6
"""A list that is so long, as a share of the longest, isn't made longer."""


@dataclass(frozen=True, slots=True)
class ChoiceEffort:
    """How hard plans are looked for among listed patterns.

    Attributes:
        sets: Most patterns that are listed.
        nodes: Most linear solutions that may be branched on.
        work: Most patterns that may be priced, each counted as often as it is.
        part: Only patterns that lose no more than this part of what a plan of the least cost may
            lose in all. Unless that is the whole, only a plan can come of it, no bound.
    """

    sets: int
    nodes: int
    work: int
    part: int = 1


USUAL_CHOICE: Final = ChoiceEffort(sets=250_000, nodes=500, work=60_000_000)


def from_choice(
    choose: SetChooser,
    master: Master,
    least: Needs,
    prices: Prices,
    able: Sequence[int],
    grid: int,
    effort: ChoiceEffort = USUAL_CHOICE,
) -> Outcome | None:
    """Return the best plan found that has one of the costs, and what any plan costs at least.

    The patterns are those of plans up to the dearest cost for which they aren't too many. A dearer
    plan may be made of them too, and is taken where it is found.

    Args:
        choose: The search.
        master: Costs, and the layout in which patterns are tried.
        least: Needs that no pattern undercuts.
        prices: Prices that give a good bound.
        able: Costs that a plan may have, ascending, in steps. Not empty.
        grid: Step of the knapsack's lengths. [0.01 mm]
        effort: How hard it is tried.

    Returns:
        None where there are too many patterns even for the least cost.
    """
    most = min(effort.sets, _MOST_ENTRIES // len(master.whole.pieces))
    priced = Priced(master, least, prices, master.whole, grid)
    if effort.part > 1:
        place, patterns = -1, priced.listed(able[0], most, effort.part)
    else:
        place, patterns = _listed(priced, able, most)
    if patterns is None:
        return None
    sieve = Sieve(master)
    found = choose(
        SetChoice(
            patterns=patterns,
            costs=master.steps,
            pieces=master.whole.pieces,
            limits=master.whole.sticks,
            able=tuple(able),
            prices=prices.pieces,
            can_be_cut=lambda number: sieve.can_be_cut(patterns.pattern(number)),
            nodes=effort.nodes,
            work=effort.work,
            stop=master.stop,
            layout=master.layout,
            pairs=effort.part == 1,
        )
    )
    chosen = tuple(patterns.pattern(number) for number in found.numbers)
    floor = found.floor if place == len(able) - 1 else min(found.floor, able[place + 1])
    return Outcome(floor, chosen)


def _listed(priced: Priced, able: Sequence[int], most: int) -> tuple[int, PatternList | None]:
    """The place of the dearest cost whose patterns aren't too many, and these; or -1 and None."""
    found: tuple[int, PatternList | None] = (-1, None)
    low, high, place = 0, len(able) - 1, 0
    while low <= high:
        sets = priced.listed(able[place], most)
        if sets is None:
            high = place - 1
        else:
            found, low = (place, sets), place + 1
            if len(sets) > _ENOUGH * most:
                break
        # The least cost first, then the dearest: mostly one of them says all.
        place = (low + high) // 2 if place else high
    return found
