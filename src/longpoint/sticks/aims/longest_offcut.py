"""The longest offcut of plans that cost no more and open no more sticks: a limit, and a plan.

Whatever the charges, one knapsack says how much of a stick a plan may leave that costs so much and
opens so many sticks (`longpoint.sticks.aims.priced_rests`). Good charges are the duals of a linear
program in which the offcut of one stick is what is wanted (`longpoint.sticks.aims.goal_program`).

Then for some length all sets are listed of plans that leave it or more, one of them on the stick
that leaves it; the solver's search finds such a plan, or proves that there is none. So the plan and
its limit come nearer to each other, until no plan leaves more that can be told from it.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.aims.charged_sets import SPARE, chooses, chosen
from longpoint.sticks.aims.every_plan import MOST_PIECES, roomiest
from longpoint.sticks.aims.goal_program import Charges, Duals, GoalProgram, Stock, charges
from longpoint.sticks.aims.priced_rests import PricedRests
from longpoint.sticks.lay.bound import Floor
from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.laying import Place, left_over, used_length
from longpoint.sticks.plan import SHOWN_MM
from longpoint.sticks.search.master import Prices
from longpoint.sticks.search.needs import Needs, least_needs
from longpoint.sticks.search.patterns import Pattern, PatternList, joined_lists

SHOWN: Final = round(SHOWN_MM * PER_MM)
"""What an offcut must be longer to be called longer. [0.01 mm]"""
_ROUNDS: Final = 6
_CALM: Final = 0.5
_LEAST_CALM: Final = 0.2
_HARDLY_CALM: Final = 0.1
"""Never less: the program's own duals may charge nothing at all."""
_FEW_PIECES: Final = 60
"""Of more pieces the limit is that at the prices of the cost, and no longer offcut is looked for:
even charges that serve it best leave more sets than can be listed."""
_MOST_LISTED: Final = 6_000
_MOST_LOOKS: Final = 12
_NEAR: Final = 300
"""Where plan and limit are no further apart, what is looked for is any longer offcut. [0.01 mm]"""
_MOST_IN_VAIN: Final = 2
"""Looks, and those of them that neither find nor prove anything."""
_NODES: Final = 30
_WORK: Final = 1_500_000


@dataclass(frozen=True, slots=True)
class LongestOffcut:
    """What is known of the longest offcut.

    Attributes:
        limit: No plan that costs no more and opens no more sticks leaves a longer one. [0.01 mm]
        patterns: A plan that leaves a longer one than was known; empty where none was found.
    """

    limit: int
    patterns: tuple[Pattern, ...]


def longest_offcut(
    stock: Stock,
    floor: Floor,
    plan: Sequence[Pattern],
    left: int,
    known: Sequence[Pattern],
    prices: Prices | None,
) -> LongestOffcut:
    """Return the longest offcut that such plans may leave, and a plan if one leaves a longer one.

    Args:
        stock: What is asked.
        floor: Least needs of the pieces, most room of the sticks.
        plan: The plan that is known, as patterns.
        left: The longest offcut it leaves. [0.01 mm]
        known: Other patterns to begin with.
        prices: Prices that gave a good bound of the cost, in steps; None: none are known.

    Returns:
        The limit, and the patterns; the one that leaves the offcut is laid so that it does.
    """
    search = _Search(stock, floor, plan, left)
    search.begin(prices)
    if len(stock.layout.work.mid) <= _FEW_PIECES and chooses(stock):
        search.better_limit((*plan, *known))
        search.look()
    return LongestOffcut(max(search.limit, search.left), search.best)


class _Search:
    """The plan's longest offcut, its limit, and the charges that gave it."""

    def __init__(self, stock: Stock, floor: Floor, plan: Sequence[Pattern], left: int) -> None:
        self._stock, self._layout = stock, stock.layout
        self._cost, self._sticks = stock.cost(plan), stock.sticks(plan)
        self._least: Needs = least_needs(stock.layout, floor)
        work = stock.layout.work
        self._kerf = min((*work.left_kerf, *work.right_kerf))
        self._program = GoalProgram(stock, self._cost, self._sticks)
        self._rests: dict[Pattern, tuple[tuple[Place, ...], int, bool]] = {}
        self.left, self.limit = left, max(floor.rooms)
        self.best: tuple[Pattern, ...] = ()
        self._duals: Duals | None = None

    def begin(self, prices: Prices | None) -> None:
        """Take the limit at the prices of the cost alone."""
        stock = self._stock
        rate = min(
            step / bar.room
            for bar, step in zip(stock.bars.bars, stock.steps, strict=True)
            if step and bar.room > 0
        )
        if prices is None:
            by_length = tuple(need * rate for need in self._least.pieces)
            prices = Prices(by_length, tuple(0.0 for _ in stock.steps))
        self._better(
            Duals(
                tuple(price / rate for price in prices.pieces),
                tuple(price / rate for price in prices.sticks),
                1.0 / rate,
                0.0,
            )
        )

    def better_limit(self, known: Iterable[Pattern]) -> None:
        """Better the limit, with new patterns beside those known, until little is to be gained."""
        self._add(known)
        for _ in range(min(_ROUNDS, self._stock.effort.pricings)):
            if self.limit < self.left + SHOWN or self._stock.effort.stop():
                break
            solution = self._program.solve()
            duals = self._program.duals(solution)
            if duals is None or self._duals is None:
                break
            calm = _CALM
            new = self._better(duals.mixed(self._duals, calm))
            while not new and calm > _HARDLY_CALM:
                calm = calm / 2 if calm > _LEAST_CALM else _HARDLY_CALM
                new = self._better(duals.mixed(self._duals, calm))
            if not new or self.limit < SHOWN - solution.objective:
                break

    def _better(self, duals: Duals) -> int:
        """Better the limit by some duals; return how many patterns are new."""
        at = charges(self._stock, duals)
        if at is None:
            return 0
        priced = self._priced(at)
        longest = priced.longest(at.most(self._cost, self._sticks), self._kerf)
        if self._duals is None or longest < self.limit:
            self.limit, self._duals = min(self.limit, longest), duals
        return self._add([*priced.patterns(at.prices), *priced.leaving(at.unit)])

    def _priced(self, at: Charges) -> PricedRests:
        return PricedRests(at.master, self._least, at.prices, at.master.whole, self._stock.grid)

    def _add(self, patterns: Iterable[Pattern]) -> int:
        new, work = 0, self._layout.work
        for pattern in patterns:
            new += self._program.add([pattern])
            room = self._layout.bars[pattern.bar].room
            places = self._layout.places(pattern.counts, room)
            if used_length(work, places) <= room:
                new += self._program.add([pattern], left_over(work, places, room))
        return new

    def look(self) -> None:
        """Look for plans that leave more: first for any, then half-way between plan and limit."""
        at = charges(self._stock, self._duals) if self._duals else None
        if at is None:
            return
        priced, in_vain = self._priced(at), 0
        unknown = target = self.left + SHOWN
        for _ in range(_MOST_LOOKS):
            if self.limit < unknown or in_vain >= _MOST_IN_VAIN or self._stock.effort.stop():
                break
            sets = priced.sets_leaving(
                at.most(self._cost, self._sticks) + SPARE, target, self._kerf, _MOST_LISTED
            )
            found = None if sets is None else self._leaving(at, sets, target)
            if found is None:
                unknown, in_vain = target + 1, in_vain + 1
            elif found:
                self.best = found
                unknown = max(unknown, self.left + SHOWN)
            else:
                self.limit = target - 1
            near = self.limit - unknown < _NEAR
            target = unknown if near else (unknown + self.limit) // 2

    def _leaving(
        self, at: Charges, listed: tuple[PatternList, PatternList], rest: int
    ) -> tuple[Pattern, ...] | None:
        """A plan that leaves so much, empty where there is none, None if nobody knows."""
        others, leaving = listed
        if not len(leaving):
            return ()
        stock, most = self._stock, at.most(self._cost, self._sticks)
        # The offcut that is wanted is one piece more.
        sets = joined_lists(others, leaving, len(self._layout.groups))

        def pattern_of(number: int) -> Pattern:
            behind = number - len(others)
            return others.pattern(number) if behind < 0 else leaving.pattern(behind)

        def leaves(number: int) -> bool | None:
            _, left, is_most = self._roomiest(pattern_of(number))
            if left >= rest:
                return True
            return False if is_most else None

        numbers = chosen(stock, at, sets, most, _NODES, _WORK, leaves)
        if not numbers:
            return None if numbers is None else ()
        found = [pattern_of(number) for number in numbers]
        if stock.cost(found) > self._cost or stock.sticks(found) > self._sticks:
            return None
        offcut = pattern_of(max(numbers))
        places, self.left, _ = self._roomiest(offcut)
        self._layout.known(places, self._layout.bars[offcut.bar].room)
        return tuple(found)

    def _roomiest(self, pattern: Pattern) -> tuple[tuple[Place, ...], int, bool]:
        """An order that leaves much, how much, and whether none leaves more. [-, 0.01 mm, -]"""
        if pattern not in self._rests:
            layout, room = self._layout, self._layout.bars[pattern.bar].room
            work = layout.work
            pieces = [piece for group, n in pattern.counts for piece in layout.groups[group][:n]]
            is_most = work.plain_kerf is not None or len(pieces) <= MOST_PIECES
            places: tuple[Place, ...] | None = layout.places(pattern.counts, room)
            if work.plain_kerf is None and is_most:
                places = roomiest(work, pieces, room)
            if places is None or used_length(work, places) > room:
                self._rests[pattern] = ((), -1, is_most)
            else:
                self._rests[pattern] = (places, left_over(work, places, room), is_most)
        return self._rests[pattern]
