"""From a packing to a better one, with a bound: column generation and dives through the port."""

import bisect
import math
import random
from collections.abc import Sequence

from longpoint.linear.port import LinearSolver
from longpoint.sticks.effort import Effort
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import Floor, possible_costs
from longpoint.sticks.lay.fit import Packing, cost_of
from longpoint.sticks.lay.laying import Workload
from longpoint.sticks.search.best_packing import BestPacking, Improved
from longpoint.sticks.search.by_lists import from_lists
from longpoint.sticks.search.by_numbers import Asked, ByNumbers
from longpoint.sticks.search.choosing import from_choice
from longpoint.sticks.search.dive import Limit, Spare, dive, quick_limit
from longpoint.sticks.search.dive_turns import goal_of, limit_of
from longpoint.sticks.search.every_pattern import Outcome, from_every_pattern, from_known_patterns
from longpoint.sticks.search.generation import Bound, bound_on_grids, first_bound, generate
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.needs import Needs, least_needs, likely_needs, needs_by_cuts
from longpoint.sticks.search.patterns import Layout, groups_of
from longpoint.sticks.search.pricing import NEARLY
from longpoint.sticks.search.sets_to_choose import SetChooser
from longpoint.sticks.search.sharp import TIGHT, from_sharp_prices
from longpoint.sticks.search.sharp_prices import SharpAsked

_SHARE = 0.4
_FINER = 3
_FINEST = 5
_SHORT = 20_000
"""Sticks no longer than this are priced to the hundredth. [0.01 mm]"""
_LAST_LOOK = 10
"""Long lists wait for this dive, or the last one: another dive is cheaper than they are."""
_SHORT_LIST = 1000
_AGAIN = 2
_FEWER = 5
"""This part of the pricings makes patterns that can be cut; bound and dives make the others."""
_COARSE = 60
"""Where the dearest stick costs more steps than this, the plans that may exist differ by little."""
_FEW_PIECES, _FEW_BY_LENGTH = 40, 60
"""Of more, patterns and bound take longest; so few need none but the first dive, mostly."""
_MOST_COSTS = 1_000_000
"""The solver's search of sets is asked for plans of so many costs at most, the least of all."""
_ROOM = 0.3
"""In steps: so far below the bound patterns are looked for, as whole sticks lose something."""
_REACHES = (1.0, 0.5, 0.2, 0.0)
"""Goals for which all patterns are listed, likewise; the dearest proves most, and lists most."""


def improve(
    work: Workload,
    bars: Bars,
    start: Packing,
    floor: Floor,
    simple_bound: int,
    solver: LinearSolver,
    effort: Effort,
) -> Improved:
    """Return a packing that costs no more than the start, and a bound.

    Args:
        work: The pieces.
        bars: The lengths; there must be enough of them for all pieces.
        start: A packing of all pieces.
        floor: Least needs along the line of the bound.
        simple_bound: A bound already known, in whole cost units.
        solver: Solves the masters.
        effort: Limits.
    """
    cost = cost_of(bars.bars, start)
    if cost <= simple_bound or cost == 0:
        return Improved(start, simple_bound, "")
    search = _Search(work, bars, start, floor, simple_bound, solver, effort)
    search.run()
    return Improved(
        search.best.packing,
        search.bound.steps * bars.step,
        search.master.solved_by,
        tuple(search.master.patterns[number] for number in search.numbers),
        search.bound.prices,
    )


class _Search:
    """One search: the master, the patterns that can be cut, the bound, the best packing."""

    def __init__(
        self,
        work: Workload,
        bars: Bars,
        start: Packing,
        floor: Floor,
        simple_bound: int,
        solver: LinearSolver,
        effort: Effort,
    ) -> None:
        self.work, self.bars, self.floor, self.effort = work, bars, floor, effort
        self.solver = solver
        self.layout = Layout(work, bars.bars, groups_of(work))
        self.master = Master(self.layout, bars, solver, effort.seconds, stop=effort.stop)
        self.least = least_needs(self.layout, floor)
        self.likely = likely_needs(self.layout, floor, _SHARE)
        self.best = BestPacking(work, bars, self.layout, start)
        self._listed: set[tuple[int, float, int | None]] = set()
        self._most_listed: int | None = _SHORT_LIST
        self._chosen: set[tuple[Sequence[int], float]] = set()
        self._chooser: SetChooser | None = getattr(solver, "choose_sets", None)
        self._counts_sticks = self._chooser is not None and len(set(self.master.steps) - {0}) > 1
        self._is_fine = self._counts_sticks and max(self.master.steps) > _COARSE
        self._has_lists = self._counts_sticks and effort.closely
        few = _FEW_PIECES if self._is_fine else _FEW_BY_LENGTH
        self._has_many = self._counts_sticks and len(work.mid) > few
        self._grid = effort.grid if bars.longest_room > _SHORT else 1
        self._fine = max(1, self._grid // (_FINER if any(work.can_turn) else _FINEST))
        self.numbers = self.master.numbers_of(self.best.patterns())
        self._reach = math.inf
        self.bound: Bound = first_bound(self.master, self.least, self._grid)
        self.bound.steps = max(self.bound.steps, simple_bound // bars.step)
        self._costs = possible_costs(floor, bars, self.bound.steps, self.best.steps)

    def run(self) -> None:
        """Patterns and a bound first; then the way that suits the costs."""
        rounds = self.effort.pricings
        share = _FEWER if self._has_many and self._is_fine else 2
        for grid in (self._grid,) if self._has_many else (self._grid, self._fine):
            self._generate(rounds // share, grid)
        if self._is_fine or self._has_many:
            self._better_bound()
        if not self._is_fine or not self._by_numbers():
            self._by_dives()

    def _by_numbers(self) -> bool:
        """Look for plans by numbers of sticks, where few may do; tell whether that was all.

        A dive for any better plan goes before: fewer numbers are left.
        """
        costs, chooser = self._possible(), self._chooser
        if not costs or chooser is None or self.effort.stop():
            return True
        master, prices = self.master, self.bound.prices
        asked = Asked(master, self.least, self.solver, chooser, prices, self._fine)
        search = ByNumbers(asked, (master.patterns[number] for number in self.numbers))
        if not search.are_few(costs[0], costs[0] + 1):
            return False
        if self._is_fine:
            self._dive(costs[-1], 1, quick_limit(self.effort.masters))
        if not self._has_many:
            self._choose()
        if costs := self._possible():
            self._learn(search.best(costs[0], self.best.steps, is_long=self._is_fine))
        for turn in range(2, 2 + _AGAIN if self._is_fine else 0):
            if costs := self._possible():
                self._dive(costs[-1], turn, quick_limit(self.effort.masters))
        return self._is_fine or not self._possible()

    def _by_dives(self) -> None:
        """Dives, the bound and all patterns by turns until they meet or limits are.

        Later dives ask for a plan that lies between the best plan and the bound.
        """
        last_look = min(_LAST_LOOK, self.effort.dives - 1)
        for turn in range(self.effort.dives):
            costs = self._possible()
            if not costs or self.effort.stop():
                break
            goal = goal_of(turn, costs, self._goal())
            self._dive(goal, turn, self._limit(turn))
            if turn == 0 and math.isinf(self._reach):
                self._better_bound()
            if not turn and self._counts_sticks:
                if not self._has_many:
                    self._choose()
                if self._by_numbers():
                    break
            if self._has_lists:
                self._after_dive(turn)
            elif turn in (1, last_look):
                is_last = turn == last_look and self.effort.closely
                self._most_listed = None if is_last else _SHORT_LIST
                self._look_closely()
            elif turn:
                self._from_every_pattern()

    def _after_dive(self, turn: int) -> None:
        """Lists for the least cost, after the second dive; then dives for any better plan.

        Where there is one dive only, these take less time than the lists.
        """
        if turn == 1:
            self._from_lists()
        if turn != min(1, self.effort.dives - 1):
            return
        for again in range(_AGAIN):
            costs = self._possible()
            # Of the least cost alone lists have said what there is to say.
            if len(costs) > turn:
                self._dive(costs[-1], _AGAIN + again, self._limit(turn=1))

    def _limit(self, turn: int) -> Limit:
        pieces = len(self.work.mid) if self._counts_sticks else None
        return limit_of(turn, self.effort.masters, pieces, has_many=self._has_many)

    def _look_closely(self) -> None:
        """Where dives didn't reach the bound: the sharpest proof, then the patterns known."""
        if self.effort.closely:
            self._from_sharp_prices()
        is_last = self._most_listed is None
        if is_last:
            self._choose()
        self._from_every_pattern()
        if is_last and self._possible() and not self.effort.stop():
            self.best.take(
                from_known_patterns(self.master, self.numbers, self.bound.prices, self.bound.steps)
            )

    def _possible(self) -> Sequence[int]:
        """Costs of plans better than the best that may exist; the least of them is a bound."""
        low, high = self.bound.steps, self.best.steps
        first, last = (bisect.bisect_left(self._costs, cost) for cost in (low, high))
        self._costs = costs = self._costs[first:last]
        self.bound.steps = costs[0] if costs else high
        return costs

    def _goal(self) -> int:
        """The least cost, in steps, that the patterns known now could give."""
        solution = self.master.solve(self.numbers, self.master.whole)
        least = self.master.pure_cost(self.numbers, solution) if solution.values else 0.0
        return max(self.bound.steps, math.ceil(least - NEARLY))

    def _generate(self, rounds: int, grid: int) -> None:
        room = _ROOM if self._counts_sticks and not self._is_fine else 0.0
        generate(self.master, self.numbers, self.likely, self.bound, rounds, grid, room)

    def _better_bound(self) -> None:
        """Better the bound, by and by with a finer grid, the finest if little is missing."""
        numbers, goal, rounds = list(self.numbers), self.best.steps, self.effort.pricings
        known, fine = len(numbers), self._fine
        grids = (self._grid if self._has_many else fine, fine, max(1, fine // _FINER))
        self._reach = bound_on_grids(
            self.master, numbers, self.least, self.bound, goal, rounds, grids, fine
        )
        self.numbers.extend(filter(self._can_be_cut, numbers[known:]))

    def _choose(self) -> None:
        """Better the plan or the bound, or prove them, by the solver's search of sets."""
        costs = self._possible()[:_MOST_COSTS]
        state = (costs, self.bound.exact)
        if not costs or self._chooser is None or state in self._chosen or self.effort.stop():
            return
        self._chosen.add(state)
        found = from_choice(
            self._chooser, self.master, self.least, self.bound.prices, costs, self._fine
        )
        self._learn(found)

    def _from_every_pattern(self) -> None:
        """Prove the best plan, or better it or the bound, where few enough patterns matter."""
        costs = self._possible()
        for share in _REACHES:
            if not costs or self.effort.stop():
                break
            goal = costs[int(share * (len(costs) - 1))]
            state = (goal, self.bound.exact, self._most_listed)
            if state in self._listed:
                continue
            self._listed.add(state)
            found = from_every_pattern(
                self.master,
                self.least,
                self.bound.prices,
                goal,
                self.bound.steps,
                self._fine,
                self._most_listed,
            )
            self._learn(found)
            costs = self._possible()

    def _from_sharp_prices(self) -> None:
        """The same for the cheapest plan that may exist, where the bound all but reaches it."""
        costs = self._possible()
        if costs and self._reach > costs[0] - TIGHT and not self.effort.stop():
            asked = self._asked_sharply(costs[0], self.least, max(1, self._fine // _FINER))
            self._learn(from_sharp_prices(asked, self._most_listed))

    def _from_lists(self) -> None:
        """The same, however far the bound is, by the solver's search of sets."""
        costs = self._possible()
        if costs and self._chooser is not None and not self.effort.stop():
            needs = needs_by_cuts(self.layout, self.least)
            asked = self._asked_sharply(costs[0], needs, self._fine)
            self._learn(from_lists(asked, self._chooser))

    def _asked_sharply(self, goal: int, least: Needs, grid: int) -> SharpAsked:
        return SharpAsked(
            coarse=self.master,
            numbers=self.numbers,
            least=least,
            near=self.bound,
            goal=goal,
            rounds=self.effort.pricings,
            grid=grid,
        )

    def _learn(self, found: Outcome | None) -> None:
        if found is not None:
            self.bound.steps = max(self.bound.steps, found.floor)
            self.best.take(found.patterns)

    def _can_be_cut(self, number: int) -> bool:
        pattern = self.master.patterns[number]
        room = self.bars.bars[pattern.bar].room
        return self.layout.fitting(pattern.counts, room)[0] == pattern.counts

    def _dive(self, goal: int, turn: int, limit: Limit) -> None:
        """Look for a plan of this cost; one way the first time, another way the next."""
        first = self.master.solve(self.numbers, self.master.whole)
        if not first.values:
            return
        spare = Spare(self.best.steps) if self._counts_sticks else None
        found = dive(
            self.master,
            self.numbers,
            self.likely,
            self.least,
            first,
            goal,
            self.bound.steps,
            self._grid,
            limit,
            random.Random(turn) if turn else None,
            spare,
        )
        if found is not None:
            self.best.take(found)
        elif spare is not None:
            self.best.take(spare.patterns)
