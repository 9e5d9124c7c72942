"""Lists of sets at sharp prices, the shortest first: a plan of the least cost, or a better bound.

Where lengths cost the same by the metre, a plan loses next to nothing on any stick, and a hundred
thousand sets of a house's pieces lose as little. Where all sets that a plan of the least cost may
hold make a short list, the solver's own search goes through them at once. Else it begins with those
that lose least of all, as such a plan is mostly made of a few thousand of them; only where that
fails are more listed, in the end all: then it proves that there is none, or comes to its limits.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from longpoint.sticks.search.choosing import ChoiceEffort, from_choice
from longpoint.sticks.search.every_pattern import Outcome
from longpoint.sticks.search.generation import Bound
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.sets_to_choose import SetChooser
from longpoint.sticks.search.sharp_prices import central, first_numbers, sharpen

_LAST: Final = ChoiceEffort(sets=700_000, nodes=60, work=60_000_000)
_SOON: Final = replace(_LAST, nodes=30, work=40_000_000)
_EFFORTS: Final = (
    # Where all there is makes a short list, that says most.
    replace(_LAST, sets=60_000),
    *(replace(_SOON, part=part) for part in (32, 8, 4, 2)),
    _LAST,
)


def from_lists(
    coarse: Master,
    numbers: Sequence[int],
    least: Needs,
    near: Bound,
    goal: int,
    rounds: int,
    grid: int,
    choose: SetChooser,
) -> Outcome | None:
    """Return a plan that costs `goal` or less, or what any plan costs at least.

    Args:
        coarse: A master that has patterns already.
        numbers: Numbers of its patterns that may serve to begin with.
        least: Needs that no pattern undercuts.
        near: A good bound, bettered in place.
        goal: Most that the plan may cost, in steps.
        rounds: Most rounds of master and knapsack.
        grid: Step of the knapsack's lengths. [0.01 mm]
        choose: Chooses among listed patterns.

    Returns:
        None where neither came of it.
    """
    sharp = coarse.sharper()
    every = [coarse.patterns[number] for number in numbers]
    known = first_numbers(sharp, every, near.prices, sharp.whole)
    sharpen(sharp, known, least, near, rounds, grid, sharp.whole, goal)
    if near.steps > goal:
        return Outcome(near.steps, ())
    prices = central(sharp, known, least, near, grid, sharp.whole)
    for effort in _EFFORTS:
        found = from_choice(choose, sharp, least, prices, (goal,), grid, effort)
        if found is None:
            if effort is _EFFORTS[0]:
                continue
            break
        if found.patterns or found.floor > goal:
            return found
        if effort.part == 1 or sharp.stop():
            break
    return None
