"""The port of the search that chooses sets of pieces from a list, each piece exactly once."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from longpoint.sticks.search.patterns import Layout, PatternList


@dataclass(frozen=True, slots=True, kw_only=True)
class SetChoice:
    """Take sets from a list, so that every piece is in exactly one of them, for the least cost.

    Attributes:
        patterns: The sets, each with the length that it is cut from; none twice on one length.
        costs: Cost of the stick of each length, in whole steps.
        pieces: How many pieces there are of each group.
        limits: How many sticks there are of each length; None: as many as needed.
        able: Costs that a plan can have, ascending; the last is the most it may cost.
        prices: What pieces and sticks are worth, about; only to begin with.
        can_be_cut: Tells of the set of a number whether it can be cut; None: nobody knows.
        nodes: Most linear solutions that may be branched on.
        work: Most sets that may be priced, each counted as often as it is.
        stop: Asked between two steps; once it says yes, the search ends.
        layout: Pieces and lengths, by which sets that can't be cut are left out before anything is
            chosen; None: they are only once they are used.
        pairs: Whether pairs of pieces are branched on, last of all.
    """

    patterns: PatternList
    costs: tuple[int, ...]
    pieces: tuple[int, ...]
    limits: tuple[int | None, ...]
    able: tuple[int, ...]
    prices: tuple[float, ...]
    can_be_cut: Callable[[int], bool | None]
    nodes: int
    work: int
    stop: Callable[[], bool]
    layout: Layout | None = None
    pairs: bool = True


@dataclass(frozen=True, slots=True)
class ChosenSets:
    """What the search says.

    Attributes:
        floor: No choice costs less; one more than the most it may cost where there is none. [steps]
        numbers: The sets taken, as often as they are; empty where no choice was found.
    """

    floor: int
    numbers: tuple[int, ...]


class SetChooser(Protocol):
    """Chooses the sets; repeats for the same list."""

    def __call__(self, choice: SetChoice) -> ChosenSets:
        """Return the best choice found within the limits, and what any choice costs."""
        ...
