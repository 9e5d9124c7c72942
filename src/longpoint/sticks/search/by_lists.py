"""Lists of sets at sharp prices, the shortest first: a plan of the least cost, or a better bound.

Where lengths cost the same by the metre, a plan loses next to nothing on any stick, and a hundred
thousand sets of a house's pieces lose as little. Where all sets that a plan of the least cost may
hold make a short list, the solver's own search goes through them at once. Else it begins with those
that lose least of all, as such a plan is mostly made of a few thousand of them; only where that
fails are more listed, in the end all: then it proves that there is none, or comes to its limits.
"""

from dataclasses import replace
from typing import Final

from longpoint.sticks.search.choosing import ChoiceEffort, from_choice
from longpoint.sticks.search.every_pattern import Outcome
from longpoint.sticks.search.sets_to_choose import SetChooser
from longpoint.sticks.search.sharp_prices import SharpAsked, central

_LAST: Final = ChoiceEffort(sets=700_000, nodes=60, work=60_000_000)
_SHORT: Final = replace(_LAST, sets=60_000)
_SOON: Final = replace(_LAST, nodes=30, work=40_000_000)
_LONGER: Final = (*(replace(_SOON, part=part) for part in (32, 8, 4, 2)), _LAST)


def from_lists(asked: SharpAsked, choose: SetChooser) -> Outcome | None:
    """Return a plan that costs the goal or less, or what any plan costs at least.

    Args:
        asked: The goal, and what is known.
        choose: Chooses among listed patterns.

    Returns:
        None where neither came of it.
    """
    sharp, known = asked.sharpened()
    least, near, goal, grid = asked.least, asked.near, asked.goal, asked.grid
    if near.steps > goal:
        return Outcome(near.steps, ())
    prices = central(sharp, known, least, near, grid, sharp.whole)

    def tried(effort: ChoiceEffort) -> Outcome | None:
        return from_choice(choose, sharp, least, prices, (goal,), grid, effort)

    found = tried(_SHORT)
    if found is None:
        for effort in _LONGER:
            found = tried(effort)
            if found is None or _settles(found, goal) or sharp.stop():
                break
    return found if found is not None and _settles(found, goal) else None


def _settles(found: Outcome, goal: int) -> bool:
    return bool(found.patterns) or found.floor > goal
