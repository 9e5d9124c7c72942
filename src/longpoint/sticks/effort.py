"""How hard the nester tries, in counts, so that a plan repeats on every machine."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final


def never() -> bool:
    """Never stop: the counts alone are the limits."""
    return False


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """Limits of every step of the nester.

    Attributes:
        refills: Times that a few sticks are emptied and filled again, without a solver.
        pricings: Knapsacks solved for patterns, and once more as many for the bound.
        masters: Masters solved in one dive from the linear solution to whole sticks; the first
            two may solve three times as many.
        dives: Dives, each another way.
        closely: Whether a plan that dives didn't prove is looked at closely, by sharper prices and
            long lists of patterns. Most of the time goes there, and mostly for the proof.
        grid: Step of the knapsacks' lengths. [0.01 mm]
        seconds: Longest time of one call of the solver; None: none. A backstop only: a plan that
            ran into it may not repeat.
        stop: Asked between two steps of the search; once it says yes, the best plan and the best
            bound so far are returned. A plan that was stopped may not repeat.
    """

    refills: int = 100
    pricings: int = 200
    masters: int = 80
    dives: int = 2
    closely: bool = True
    grid: int = 100
    seconds: float | None = 20.0
    stop: Callable[[], bool] = never


QUICK: Final = Effort(refills=40, pricings=12, masters=20, dives=1)
AT_THE_SAW: Final = Effort(refills=400)
"""For a plan made again while somebody waits: many refills, which need no solver."""
STANDARD: Final = Effort()
ON_A_PHONE: Final = Effort(closely=False)
"""A phone's tables and solver are slow, and whatever else is asked of it waits meanwhile."""
AT_THE_SAW_ON_A_PHONE: Final = Effort(refills=400, closely=False)
THOROUGH: Final = Effort(refills=400, pricings=400, masters=200, dives=40, grid=50)
