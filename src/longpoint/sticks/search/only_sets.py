"""Sets that every plan for a goal holds: a piece that stands in one set only must come from that.

At prices that give a bound z, no stick of a plan that costs `goal` loses more than goal - z
(`longpoint.sticks.search.every_pattern`). Let every piece be cut exactly once: parts of sets are
sets themselves, so nothing is lost by that. Count in how many of the sets that lose no more each
piece may stand (`longpoint.sticks.search.counted_ways`: never too few). Where a piece stands in
none, no plan costs so little. Where it stands in one, every such plan holds that set, as often as
the piece's copies ask for; if they can't be had, no plan costs so little either. What is left is a
smaller problem of the same kind, whose goal is less by those sticks, and in it other pieces stand
in fewer sets. All this is true of plans that cost the goal or less only: other plans may hold other
sets.

Charges are whole numbers, rounded to the side on which more sets are counted, and prices are worth
what they are: how good they are says how much is found, never whether it is true.
"""

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.sticks.search.every_pattern import Sieve
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced
from longpoint.sticks.search.table_sets import Ways

MOST_STEPS: Final = 1_500_000
"""Of one count: a hundred megabytes or so."""
_MOST_LISTED: Final = 20_000
_FEW: Final = 50


@dataclass(frozen=True, slots=True)
class Rest:
    """What is left of a plan when some sets are taken.

    Attributes:
        remaining: What is still to be cut.
        goal: What its sticks may cost. [steps]
        taken: The sets taken, one for each stick.
    """

    remaining: Remaining
    goal: int
    taken: tuple[Pattern, ...]


@dataclass(frozen=True, slots=True)
class Counted:
    """What is left, and in how many sets its pieces may stand.

    Attributes:
        rest: What is left; each of its pieces stands in two sets at least.
        ways: How many sets there are; None where they are too many to be counted.
    """

    rest: Rest
    ways: Ways | None

    @property
    def done(self) -> bool:
        """Whether nothing is left to be cut."""
        return not any(self.rest.remaining.pieces)

    @property
    def freedom(self) -> int:
        """In how many sets the pieces may stand, all together; what stands in many counts alike."""
        if self.ways is None:
            return 0
        return sum(min(_FEW, self.ways.holding[group]) for group in self._left())

    def tightest(self) -> int:
        """Return the group that stands in the fewest sets; of such the longest."""
        holding = self.ways.holding if self.ways else {}
        return min(self._left(), key=lambda group: (holding.get(group, 0), group))

    def _left(self) -> list[int]:
        return [group for group, count in enumerate(self.rest.remaining.pieces) if count]


class OnlySets:
    """Finds the sets that alone hold a piece.

    Args:
        master: Costs, and the layout in which sets are tried.
        least: Needs that no set undercuts.
        grid: Step of the knapsack's lengths. [0.01 mm]

    Attributes:
        unsure: Sets that nobody knows how to cut; they count as if they could be.
    """

    def __init__(self, master: Master, least: Needs, grid: int) -> None:
        self._master, self._least, self._grid = master, least, grid
        self._sieve = Sieve(master)
        self.unsure = self._sieve.unsure

    def counted(self, rest: Rest, prices: Prices) -> Counted | None:
        """Take sets as long as one alone holds a piece; None where no plan reaches the goal."""
        while any(rest.remaining.pieces) and not self._master.stop():
            priced = Priced(self._master, self._least, prices, rest.remaining, self._grid)
            ways = priced.ways(rest.goal, MOST_STEPS)
            if ways is None:
                return Counted(rest, None)
            left = [group for group, count in enumerate(rest.remaining.pieces) if count]
            if not all(ways.holding.get(group, 0) for group in left):
                return None
            single = [group for group in left if ways.holding[group] == 1]
            found = self._sets(priced, single, rest) if single else None
            if found is None:
                return Counted(rest, ways)
            after = with_only_sets(self._master, rest, single, found)
            if after is None:
                return None
            rest = after
        return Counted(rest, None)

    def choices(self, rest: Rest, prices: Prices, group: int) -> list[Pattern] | None:
        """Return every set that a plan may hold with a piece of this group; None: too many."""
        priced = Priced(self._master, self._least, prices, rest.remaining, self._grid)
        return self._sets(priced, (group,), rest)

    def _sets(self, priced: Priced, groups: Collection[int], rest: Rest) -> list[Pattern] | None:
        found = priced.holding(frozenset(groups), rest.goal, _MOST_LISTED)
        if found is None:
            return None
        return [pattern for pattern in found if self._sieve.may_be_cut(pattern)]


def with_only_sets(
    master: Master, rest: Rest, groups: Sequence[int], sets: Sequence[Pattern]
) -> Rest | None:
    """Take the one set that holds each of some groups; None where that can't be done.

    Args:
        master: Costs.
        rest: What is left.
        groups: Groups that stand in one of the sets, or in none.
        sets: All sets that hold one of them.
    """
    for group in groups:
        copies = rest.remaining.pieces[group]
        if not copies:
            continue
        only = [(p, count) for p in sets for held, count in p.counts if held == group]
        if not only:
            return None
        pattern, held = only[0]
        times, left_over = divmod(copies, held)
        if left_over:
            return None
        for _ in range(times):
            if not rest.remaining.holds(pattern):
                return None
            rest = with_set(master, rest, pattern)
        if rest.goal < 0:
            return None
    return rest


def with_set(master: Master, rest: Rest, pattern: Pattern) -> Rest:
    """Take one set."""
    return replace(
        rest,
        remaining=rest.remaining.less(pattern),
        goal=rest.goal - master.steps[pattern.bar],
        taken=(*rest.taken, pattern),
    )
