"""The fewest new sticks of plans that cost no more: a bound, and a plan with fewer where there is.

At any prices of a step and of a stick (`longpoint.sticks.aims.goal_program`) no plan is charged
less than the bound of the knapsack. So of plans that cost no more than `cost`, none opens fewer
than

    (bound - price of a step x cost) / price of a stick

new sticks, rounded up. A plan with so few loses no more, over all its sticks, than what its cost
and its sticks are charged at most, less the bound. Where the sets of pieces that lose so little can
be listed, the solver's search among them finds it or proves that there is none
(`longpoint.sticks.search.choosing`); where they are too many, a dive looks for it.
"""

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from longpoint.sticks.aims.charged_sets import SPARE, chooses, chosen
from longpoint.sticks.aims.goal_program import Charges, Duals, GoalProgram, Stock, charges
from longpoint.sticks.lay.bound import Floor
from longpoint.sticks.search.dive import Limit, dive
from longpoint.sticks.search.last_sticks import LastEffort
from longpoint.sticks.search.needs import least_needs, likely_needs
from longpoint.sticks.search.patterns import Pattern
from longpoint.sticks.search.pricing import Priced

_ROUNDS: Final = 10
_CALM: Final = 0.5
_LEAST_CALM: Final = 0.2
_OFF: Final = 1e-6
_SHARE: Final = 0.4
_MASTERS: Final = 20
_LAST: Final = LastEffort(listed=10_000, tried=30_000)
_MOST_DIVED: Final = 100
"""Of more pieces no dive looks for fewer sticks: none that was tried found any."""
_MOST_LISTED: Final = 16_000
_NODES: Final = 60
_WORK: Final = 5_000_000


@dataclass(frozen=True, slots=True)
class FewestSticks:
    """What is known of the number of new sticks.

    Attributes:
        floor: No plan that costs no more opens fewer.
        patterns: A plan with fewer than were known; empty where none was found.
    """

    floor: int
    patterns: tuple[Pattern, ...]


def fewest_sticks(
    stock: Stock, floor: Floor, plan: Sequence[Pattern], known: Sequence[Pattern]
) -> FewestSticks:
    """Return the fewest new sticks that plans of this cost may have, and a plan if one has fewer.

    Args:
        stock: What is asked.
        floor: Least needs of the pieces, most room of the sticks.
        plan: The plan that is known, as patterns.
        known: Other patterns to begin with.
    """
    search = _Search(stock, floor, plan, known)
    least = search.bound()
    best: tuple[Pattern, ...] = ()
    while least < search.sticks and not stock.effort.stop():
        found = search.with_so_few(least)
        if found is None:
            break
        if found:
            best, search.sticks = found, stock.sticks(found)
        else:
            least += 1
    if least < search.sticks:
        best = search.dived(least) or best
    return FewestSticks(least, best)


class _Search:
    def __init__(
        self,
        stock: Stock,
        floor: Floor,
        plan: Sequence[Pattern],
        known: Sequence[Pattern],
    ) -> None:
        self._stock, self._grid = stock, stock.grid
        self._cost, self.sticks = stock.cost(plan), stock.sticks(plan)
        self._least = least_needs(stock.layout, floor)
        self._likely = likely_needs(stock.layout, floor, _SHARE)
        self._program = GoalProgram(stock, self._cost)
        self._program.add(plan)
        self._program.add(known)
        self._best: tuple[Fraction, Duals] | None = None

    def bound(self) -> int:
        """Return how many new sticks any plan of this cost opens at least."""
        least = 0
        for _ in range(min(_ROUNDS, self._stock.effort.pricings)):
            if self._stock.effort.stop():
                break
            solution = self._program.solve()
            duals = self._program.duals(solution)
            if duals is None:
                break
            new = self._round(duals)
            least = max(0, math.ceil(self._best[0])) if self._best else 0
            reach = min(self.sticks, math.ceil(solution.objective - _OFF))
            if least >= reach or not new:
                break
        return min(least, self.sticks)

    def _round(self, duals: Duals) -> int:
        """Better the bound; return how many patterns are new."""
        calm = _CALM if self._best else 0.0
        while True:
            mixed = duals.mixed(self._best[1], calm) if self._best else duals
            at = charges(self._stock, mixed)
            if at is None:
                return 0
            priced = self._priced(at)
            self._better(at, priced, mixed)
            new = self._program.add(priced.patterns(at.prices))
            if new or calm == 0.0:
                return new
            calm = calm / 2 if calm > _LEAST_CALM else 0.0

    def _priced(self, at: Charges) -> Priced:
        return Priced(at.master, self._least, at.prices, at.master.whole, self._grid)

    def _better(self, at: Charges, priced: Priced, duals: Duals) -> None:
        if at.stick:
            bound = (priced.bound() * at.whole - at.step * self._cost) / at.stick
            if self._best is None or bound > self._best[0]:
                self._best = (bound, duals)

    def with_so_few(self, sticks: int) -> tuple[Pattern, ...] | None:
        """Return a plan with so few new sticks, none where there is none, None if nobody knows."""
        at = charges(self._stock, self._best[1]) if self._best else None
        if at is None:
            return None
        priced, most = self._priced(at), at.most(self._cost, sticks)
        sets = priced.listed(most + SPARE, _MOST_LISTED) if chooses(self._stock) else None
        if sets is None:
            return None
        numbers = chosen(self._stock, at, sets, most, _NODES, _WORK)
        if not numbers:
            return None if numbers is None else ()
        found = tuple(sets.pattern(number) for number in numbers)
        return found if self._is_better(found) else None

    def dived(self, least: int) -> tuple[Pattern, ...]:
        """Return a plan with fewer new sticks, if a dive finds one: the fewest first, then any."""
        at = charges(self._stock, self._best[1]) if self._best else None
        if at is None or len(self._stock.layout.work.mid) > _MOST_DIVED:
            return ()
        numbers = at.master.numbers_of(filter(self._can_be_cut, self._program.patterns))
        for sticks in dict.fromkeys((least, self.sticks - 1)):
            found = dive(
                at.master,
                numbers,
                self._likely,
                self._least,
                at.master.solve(numbers, at.master.whole),
                at.most(self._cost, sticks),
                0,
                self._stock.effort.grid,
                Limit(_MASTERS, _LAST),
                random.Random(sticks),
            )
            if found is not None and self._is_better(found):
                return found
        return ()

    def _is_better(self, found: Sequence[Pattern]) -> bool:
        stock = self._stock
        return stock.cost(found) <= self._cost and stock.sticks(found) < self.sticks

    def _can_be_cut(self, pattern: Pattern) -> bool:
        layout = self._stock.layout
        room = layout.bars[pattern.bar].room
        return layout.fitting(pattern.counts, room)[0] == pattern.counts
