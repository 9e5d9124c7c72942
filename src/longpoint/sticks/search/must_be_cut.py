"""A plan without loss, or a proof that there is none, where the sets are too many to be listed.

Some pieces stand in one set only: those are taken (`longpoint.sticks.search.only_sets`). What is
left gets new sharp prices, at which fewer sets lose nothing; then more pieces may stand in one set
only. Once few sets are left they are listed. Where each piece has a choice, the piece with the
fewest sets is tried in each of them, one after the other. If all of them end where some piece
stands in no set, or the bound of what is left lies above what it may cost, no plan reaches the
goal.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.search.every_pattern import Outcome, from_every_pattern
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.only_sets import Counted, OnlySets, Rest, with_set
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.sharp_prices import bound_at, central, first_numbers, sharpen

_LISTED: Final = 1_000
_WIDEST: Final = 40
"""Sets that a piece may be tried in."""


@dataclass(frozen=True, slots=True)
class _Place:
    """Where the search stands: what is left, and prices that are good for it."""

    counted: Counted
    prices: Prices


def from_only_sets(
    sharp: Master,
    numbers: Sequence[int],
    least: Needs,
    prices: Prices,
    goal: int,
    rounds: int,
    grid: int,
    branches: int,
) -> Outcome | None:
    """Return a plan that costs `goal` or less, or that there is none.

    Args:
        sharp: A master that is solved to the last digit.
        numbers: Numbers of its patterns that may serve to begin with.
        least: Needs that no pattern undercuts.
        prices: Sharp prices from the middle.
        goal: Most that the plan may cost, in steps.
        rounds: Most rounds of master and knapsack, each time that prices are made.
        grid: Step of the knapsack's lengths. [0.01 mm]
        branches: Most pieces that are tried in one set after the other.

    Returns:
        None where that wasn't found out: there were more branches, sets that nobody knows how to
        cut, too many of them to be counted, or the search was stopped.
    """
    search = _Search(sharp, [sharp.patterns[n] for n in numbers], least, rounds, grid)
    stack = [(Rest(sharp.whole, goal, ()), prices)]
    while stack and not sharp.stop():
        found = search.followed(*stack.pop())
        if isinstance(found, tuple):
            return None if search.is_unsure(found) else Outcome(goal, found)
        if found is not None:
            following = search.branched(found) if branches > 0 else None
            if following is None:
                return None
            branches -= 1
            stack += [(each, found.prices) for each in reversed(following)]
    return None if stack or sharp.stop() else Outcome(goal + 1, ())


class _Search:
    """What is done at every place of a search."""

    def __init__(
        self, sharp: Master, patterns: Sequence[Pattern], least: Needs, rounds: int, grid: int
    ) -> None:
        self._sharp, self._patterns, self._least = sharp, list(patterns), least
        self._rounds, self._grid = rounds, grid
        self._only = OnlySets(sharp, least, grid)
        self._seen = set[tuple[Remaining, int]]()

    def is_unsure(self, patterns: Sequence[Pattern]) -> bool:
        """Tell whether nobody knows how to cut one of them."""
        return not self._only.unsure.isdisjoint(patterns)

    def followed(self, rest: Rest, prices: Prices) -> tuple[Pattern, ...] | _Place | None:
        """A whole plan, or a place where every piece has a choice; None: no plan is there."""
        if self._was_here(rest):
            return None
        place = self._settled(rest, prices)
        if place is None:
            return None
        after = place.counted.rest
        if place.counted.done:
            return after.taken
        if after.taken != rest.taken and self._was_here(after):
            return None
        found = from_every_pattern(
            self._sharp,
            self._least,
            place.prices,
            after.goal,
            after.goal,
            self._grid,
            _LISTED,
            after.remaining,
        )
        if found is not None and found.patterns:
            return (*after.taken, *found.patterns)
        return None if found is not None and found.floor > after.goal else place

    def _was_here(self, rest: Rest) -> bool:
        """Tell whether the same was left before; then it came to no plan. Remember it."""
        key = (rest.remaining, rest.goal)
        if key in self._seen:
            return True
        self._seen.add(key)
        return False

    def _settled(self, rest: Rest, prices: Prices) -> _Place | None:
        """Take sets and sharpen the prices by turns, until no more sets are taken."""
        counted = self._only.counted(rest, prices)
        while counted is not None and not counted.done and not self._are_few(counted):
            sharper = self._sharper(counted.rest, prices)
            if sharper is None:
                return None
            after = self._only.counted(counted.rest, sharper)
            if after is None:
                return None
            is_smaller = after.rest != counted.rest
            if is_smaller or after.freedom < counted.freedom:
                counted, prices = after, sharper
            if not is_smaller:
                break
        return None if counted is None else _Place(counted, prices)

    def branched(self, place: _Place) -> list[Rest] | None:
        """What is left for each set of the piece that has the fewest; None: too many to tell."""
        counted = place.counted
        if counted.ways is None:
            return None
        group = counted.tightest()
        if counted.ways.holding[group] > _WIDEST:
            return None
        sets = self._only.choices(counted.rest, place.prices, group)
        if sets is None:
            return None
        able = [pattern for pattern in sets if counted.rest.remaining.holds(pattern)]
        return [with_set(self._sharp, counted.rest, pattern) for pattern in able]

    def _are_few(self, counted: Counted) -> bool:
        return counted.ways is not None and counted.ways.sets <= _LISTED

    def _sharper(self, rest: Rest, near: Prices) -> Prices | None:
        """Sharp prices for what is left; None where their bound lies above what it may cost."""
        numbers = first_numbers(self._sharp, self._patterns, near, rest.remaining)
        known = len(numbers)
        bound = bound_at(self._sharp, self._least, near, self._grid, rest.remaining)
        sharpen(
            self._sharp,
            numbers,
            self._least,
            bound,
            self._rounds,
            self._grid,
            rest.remaining,
            rest.goal,
        )
        if bound.steps > rest.goal:
            return None
        prices = central(self._sharp, numbers, self._least, bound, self._grid, rest.remaining)
        self._patterns += [self._sharp.patterns[number] for number in numbers[known:]]
        return prices
