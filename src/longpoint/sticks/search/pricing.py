"""Patterns that are worth more than their stick, and a true bound, from one knapsack.

The bound. Let pi be prices of the pieces (>= 0) and mu of the counted sticks (<= 0). The knapsack
over needs rounded down (`longpoint.sticks.lay.bound`), with what joints cost at least in each lean
state (`longpoint.sticks.search.knapsack`), is worth at least as much as any pattern that can be cut
from stick j; call it v_j. Scale pi by theta <= 1 so that theta v_j <= cost_j for every uncounted
stick, and give every counted one mu_j = min(0, cost_j - theta v_j). Then theta pi and mu keep all
conditions of the dual of the linear master over all patterns, so that

    theta sum(pi) + sum(mu_j count_j)

is a bound, for any prices. It is rounded up to the step of the costs, and worked in whole numbers.
"""

import math
from array import array
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from longpoint.sticks.search.knapsack import state_lengths, whole_values
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Pattern, PatternList
from longpoint.sticks.search.stick_numbers import Condition
from longpoint.sticks.search.table_sets import (
    Item,
    Lengths,
    Tables,
    Ways,
    copy_of_next,
    in_order_of_links,
    listed_sets,
)

WORTHWHILE: Final = 1e-6
NEARLY: Final = 1e-4
"""In steps of cost: what a linear master's cost may be off by, over all its sticks."""
_MOST_NEW: Final = 160


class Priced:
    """One knapsack at some prices: patterns worth more than their stick, and a bound.

    Args:
        master: Costs, and the layout in which patterns are tried.
        needs: What the pieces need; with `up` False the patterns may be too long to be cut.
        prices: The prices.
        remaining: What is still to be cut.
        grid: Step of the lengths. [0.01 mm]
    """

    def __init__(
        self, master: Master, needs: Needs, prices: Prices, remaining: Remaining, grid: int
    ) -> None:
        self._master, self._needs, self._prices = master, needs, prices
        self._remaining, self._grid = remaining, grid
        maker = master.tables
        self._values, self._scale = whole_values(prices.pieces, remaining.pieces, maker.most_value)
        self._able = [bar for bar, left in enumerate(remaining.sticks) if left is None or left > 0]
        rooms = [needs.rooms[bar] // grid for bar in self._able]
        self._ends = list(state_lengths(rooms, _state_costs(needs, grid)))
        self._longest = max(rooms, default=0)
        self._items = _items(needs, self._values, remaining.pieces, self._longest, grid)
        self._tables = maker.make(self._items, self._longest)

    def patterns(self, master_prices: Prices) -> list[Pattern]:
        """Return new patterns, the best for each piece, that gain at the master's own prices."""
        master = self._master
        charges = [
            weight - sticks
            for weight, sticks in zip(master.weights, self._prices.sticks, strict=True)
        ]
        return self.gaining(
            charges,
            lambda pattern: master.gain(pattern, master_prices),
            master.sharpness.worthwhile,
        )

    def gaining(
        self, charges: Sequence[float], gain: Callable[[Pattern], float], least: float
    ) -> list[Pattern]:
        """Return patterns, the best for each piece, that are worth more than a charge.

        Args:
            charges: What a pattern must be worth on each length, at the prices.
            gain: What a pattern gains, at others.
            least: Those that gain no more are left out.
        """
        dear = [math.ceil(charges[bar] * self._scale) for bar in self._able]
        ends = [
            (place, state, length)
            for place, state, length in self._ends
            if self._tables.value(state, length) > dear[place]
        ]
        found = self._tables.endings(
            [(state, length) for _, state, length in ends], [dear[place] for place, _, _ in ends]
        )
        ranked = sorted(
            (ending for ending in found if ending.gain > 0), key=lambda ending: -ending.gain
        )
        patterns: dict[Pattern, None] = {}
        for ending in ranked[: 2 * _MOST_NEW]:
            bar = self._able[ends[ending.end][0]]
            numbers = self._tables.ending_set(ending)
            pattern = Pattern(bar, self._master.layout.counts(numbers))
            if self._needs.up:
                pattern = _that_can_be_cut(self._master, pattern, self._prices, self._able)
            if gain(pattern) > least:
                patterns[pattern] = None
            if len(patterns) >= _MOST_NEW:
                break
        return list(patterns)

    def condition(self) -> Condition:
        """Return what sticks hold at these prices, and all pieces are worth; in whole values.

        Only with needs rounded down, and for all pieces.
        """
        pieces = self._remaining.pieces
        total = sum(value * copy for value, copy in zip(self._values, pieces, strict=True))
        return Condition(tuple(self._most()), total)

    def losing(self, spare: int, most: int) -> PatternList | None:
        """Return every pattern worth less by `spare` at most than the best on its stick.

        Only with needs rounded down.

        Args:
            spare: What it may lose, in whole values.
            most: Most patterns; None is returned where there are more.
        """
        best = self._most()
        return self._listed(self._tables, [best[bar] - spare for bar in self._able], most)

    def _most(self) -> list[int]:
        """What pieces on a stick of each length are worth at most; 0 where there is no stick."""
        most = [0] * len(self._master.steps)
        for place, state, length in self._ends:
            bar = self._able[place]
            most[bar] = max(most[bar], self._tables.value(state, length))
        return most

    def bound(self) -> Fraction:
        """Return a cost, in steps, that no plan undercuts; see the top of this file.

        Only with needs rounded down, and for all pieces and sticks.
        """
        total = self._dual()[2]
        return max(Fraction(0), total / self._scale)

    def losing_least(self, goal: int, most: int) -> list[Pattern] | None:
        """Return every pattern that a plan for `goal` steps may hold, None if more than `most`.

        Only with needs rounded down, and for all that remains.
        """
        found = self.listed(goal, most)
        return None if found is None else _patterns_of(found)

    def listed(self, goal: int, most: int, part: int = 1) -> PatternList | None:
        """Return the same as a list that can be long.

        Args:
            goal: Cost of a plan, in steps.
            most: Most patterns; None is returned where there are more.
            part: Only those that lose no more than this part of what a plan may lose in all.
        """
        charges = self._charges(goal, part)
        if charges is None:
            return PatternList(array("q"), listed_sets(()))
        return self._listed(self._tables, charges, most)

    def ways(self, goal: int, most: int) -> Ways | None:
        """Return how many such patterns there are at most, in all and with each group.

        None where more than `most` steps would have to be looked at.
        """
        charges = self._charges(goal)
        if charges is None:
            return Ways(0, dict.fromkeys(range(len(self._values)), 0))
        ends = [(state, length) for _, state, length in self._ends]
        return self._tables.ways(ends, [charges[place] for place, _, _ in self._ends], most)

    def holding(self, groups: Collection[int], goal: int, most: int) -> list[Pattern] | None:
        """Return every such pattern that holds one of some groups, None if more than `most`.

        One copy of each of these groups, the first that a set takes, is made dearer by all that
        any set is worth above its charge and a little more. Then a set without one of them isn't
        worth its charge, made dearer as much. One with two of them may be, though it wasn't before;
        so what is found is held to its worth again.
        """
        charges = self._charges(goal)
        if charges is None:
            return []
        dearer = 1 + max(
            self._tables.value(state, length) - charges[place]
            for place, state, length in self._ends
        )
        if dearer <= 0:
            return []
        items = in_order_of_links(self._items, self._longest)
        raised = [
            replace(item, value=item.value + dearer)
            if item.number in groups and not copy_of_next(items, index)
            else item
            for index, item in enumerate(items)
        ]
        if sum(item.value for item in raised) > self._master.tables.most_value:
            return None
        tables = self._master.tables.make(raised, self._longest)
        found = self._listed(tables, [charge + dearer for charge in charges], most)
        if found is None:
            return None
        charge_of = dict(zip(self._able, charges, strict=True))
        return [p for p in _patterns_of(found) if self._value_of(p) >= charge_of[p.bar]]

    def _value_of(self, pattern: Pattern) -> int:
        return sum(self._values[group] * count for group, count in pattern.counts)

    def _charges(self, goal: int, part: int = 1) -> list[int] | None:
        """What a set must be worth, on each able length, in a plan for `goal`; None: no plan is."""
        theta, sticks, total = self._dual()
        budget = goal * self._scale - total
        if budget < 0:
            return None
        return [self._charge(bar, theta, sticks, budget / part) for bar in self._able]

    def _charge(
        self, bar: int, theta: Fraction, sticks: Sequence[Fraction], budget: Fraction
    ) -> int:
        """What pieces on a stick must be worth, that it loses no more than a budget."""
        missing = self._master.steps[bar] * self._scale - sticks[bar] - budget
        if theta:
            return math.ceil(missing / theta)
        # A stick that costs nothing makes all pieces worthless: it is met by any, or by none.
        return 0 if missing <= 0 else self._master.tables.most_value + 1

    def _listed(self, tables: Tables, charges: Sequence[int], most: int) -> PatternList | None:
        needs, bars = self._needs, [self._able[place] for place, _, _ in self._ends]
        rooms = [
            needs.rooms[bar] - needs.states[state]
            for bar, (_, state, _) in zip(bars, self._ends, strict=True)
        ]
        found = tables.sets_worth(
            [(state, length) for _, state, length in self._ends],
            [charges[place] for place, _, _ in self._ends],
            most,
            Lengths(needs.pieces, rooms),
        )
        if found is None:
            return None
        return PatternList(array("q", (bars[end] for end in found.ends)), found)

    def _dual(self) -> tuple[Fraction, list[Fraction], Fraction]:
        """What the prices are scaled with, prices of the sticks, and the bound; in whole values."""
        steps, counts = self._master.steps, self._remaining.sticks
        most = self._most()
        theta = Fraction(1)
        for bar, step in enumerate(steps):
            if counts[bar] is None and most[bar] > step * self._scale:
                theta = min(theta, Fraction(step * self._scale, most[bar]))
        total = theta * sum(
            value * copy for value, copy in zip(self._values, self._remaining.pieces, strict=True)
        )
        sticks = [Fraction(0)] * len(steps)
        for bar, step in enumerate(steps):
            count = counts[bar]
            if count is not None:
                sticks[bar] = min(Fraction(0), step * self._scale - theta * most[bar])
                total += count * sticks[bar]
        return theta, sticks, total


def _patterns_of(found: PatternList) -> list[Pattern]:
    return [found.pattern(number) for number in range(len(found))]


def _that_can_be_cut(
    master: Master, pattern: Pattern, prices: Prices, able: Sequence[int]
) -> Pattern:
    """The pattern, less a piece or two if need be, on the stick that is cheapest for it."""
    bars = master.bars.bars
    counts, used = master.layout.fitting(pattern.counts, bars[pattern.bar].room)
    cheapest = min(
        (bar for bar in able if used <= bars[bar].room),
        key=lambda bar: master.weights[bar] - prices.sticks[bar],
    )
    return Pattern(cheapest, counts)


def whole_steps(bound: Fraction | float) -> int:
    """Return a bound rounded up to the step of the costs."""
    return math.ceil(bound)


def _items(
    needs: Needs, values: Sequence[int], copies: Sequence[int], longest: int, grid: int
) -> list[Item]:
    items = []
    for group, copy in enumerate(copies):
        need = needs.pieces[group]
        need = max(1, -(-need // grid) if needs.up else need // grid)
        item = Item(group, need, values[group], needs.leans[group])
        items += [item] * min(copy, longest // need)
    return items


def _state_costs(needs: Needs, grid: int) -> list[int]:
    return [-(-cost // grid) if needs.up else cost // grid for cost in needs.states]
