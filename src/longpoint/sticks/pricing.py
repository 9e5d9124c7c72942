"""Patterns that are worth more than their stick, and a true bound, from one knapsack.

The bound. Let pi be prices of the pieces (>= 0) and mu of the counted sticks (<= 0). The knapsack
over needs rounded down (`longpoint.sticks.bound`), with what joints cost at least in each lean
state (`longpoint.sticks.knapsack`), is worth at least as much as any pattern that can be cut from
stick j; call it v_j. Scale pi by theta <= 1 so that theta v_j <= cost_j for every uncounted stick,
and give every counted one mu_j = min(0, cost_j - theta v_j). Then theta pi and mu keep all
conditions of the dual of the linear master over all patterns, so that

    theta sum(pi) + sum(mu_j count_j)

is a bound, for any prices. It is rounded up to the step of the costs, and worked in whole numbers.
"""

import math
from array import array
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from longpoint.sticks.bound import Floor
from longpoint.sticks.knapsack import state_lengths, whole_values
from longpoint.sticks.lean_states import Gaps, Lean, State, gaps_of, state_of
from longpoint.sticks.master import Master, Prices, Remaining
from longpoint.sticks.patterns import Layout, Pattern, PatternList
from longpoint.sticks.table_sets import Item, Lengths, listed_sets

WORTHWHILE: Final = 1e-6
NEARLY: Final = 1e-4
"""In steps of cost: what a linear master's cost may be off by, over all its sticks."""
_MOST_NEW: Final = 160


@dataclass(frozen=True, slots=True)
class Needs:
    """What the groups need and the sticks hold, as one knapsack sees it. [0.01 mm]

    Attributes:
        pieces: What a piece of each group needs.
        leans: How a piece of each group changes the lean state of its set.
        rooms: What a stick of each length holds.
        states: What joints cost in each lean state, by its number.
        up: True: needs are rounded up to the grid and patterns are laid out to see that they can
            be cut. False: rounded down, for a bound.
    """

    pieces: tuple[int, ...]
    leans: tuple[Lean, ...]
    rooms: tuple[int, ...]
    states: tuple[int, ...]
    up: bool


def least_needs(layout: Layout, floor: Floor) -> Needs:
    """Return needs that no pattern undercuts.

    A stick gives back half a kerf at each of its two ends. Where pieces may be turned, a set that
    lies square at both ends gives back square kerfs; one that leans there has paid for it with a
    joint more than its state asks for, which is more than the kerf's difference, or its state asks
    for that joint anyway.
    """
    pieces = tuple(floor.bases[group[0]] for group in layout.groups)
    gaps = _gaps(layout)
    leans = tuple(gaps.lean(*_leans(layout, group)) for group in layout.groups)
    square, widest = _kerfs(layout, gaps)
    odd = {State.PLAIN: 0, State.PLUS: 1, State.MINUS: 1}
    spare = widest - square if any(layout.work.can_turn) else 0
    states = tuple(gaps.cost(state) - spare * odd.get(state, 2) // 2 for state in State)
    rooms = tuple(room - spare for room in floor.rooms)
    return Needs(pieces, leans, rooms, tuple(max(0, cost) for cost in states), up=False)


def likely_needs(layout: Layout, floor: Floor, share: float) -> Needs:
    """Return needs with which most patterns are not too long.

    Args:
        layout: The pieces.
        floor: Least needs along the line of the bound.
        share: How much of what may be lost is counted: at 1 every joint takes the widest kerf, and
            every leaning end goes to the middle of its side; then hardly a pattern is too long. At
            0 nothing is lost beside what a bound counts.
    """
    work, gaps = layout.work, _gaps(layout)
    _, widest = _kerfs(layout, gaps)
    middles = _middles(layout, gaps)
    pieces, leans = [], []
    for group in layout.groups:
        first = group[0]
        own = (work.left_kerf[first] + work.right_kerf[first]) // 2
        off = sum(min(abs(lean - middle) for middle in middles) for lean in _leans(layout, group))
        lost = widest - own + (off if any(work.can_turn) else 0)
        pieces.append(floor.bases[first] + round(share * lost))
        leans.append(gaps.lean(*_leans(layout, group)))
    wide = Gaps(
        (0, max(middles)) if gaps.plus else None, (0, -min(middles)) if gaps.minus else None
    )
    states = tuple(wide.cost(state) for state in State)
    rooms = tuple(bar.room + widest for bar in layout.bars)
    return Needs(tuple(pieces), tuple(leans), rooms, states, up=True)


def _gaps(layout: Layout) -> Gaps:
    if not any(layout.work.can_turn):
        return Gaps(None, None)
    return gaps_of([lean for group in layout.groups for lean in _leans(layout, group)])


def _leans(layout: Layout, group: Sequence[int]) -> tuple[int, int]:
    return layout.work.left_lean[group[0]], layout.work.right_lean[group[0]]


def _kerfs(layout: Layout, gaps: Gaps) -> tuple[int, int]:
    """The widest cut of an end that is square, or nearly so, and of any end."""
    work = layout.work
    ends = [
        *zip(work.left_lean, work.left_kerf, strict=True),
        *zip(work.right_lean, work.right_kerf, strict=True),
    ]
    square = max((kerf for lean, kerf in ends if gaps.side(lean) == 0), default=0)
    widest = max(kerf for _, kerf in ends)
    return square or widest, widest


def _middles(layout: Layout, gaps: Gaps) -> tuple[int, ...]:
    """The median lean on the - side, square, and the median lean on the + side."""
    leans = sorted(lean for group in layout.groups for lean in _leans(layout, group))
    sides: dict[int, list[int]] = {-1: [], 0: [], 1: []}
    for lean in leans:
        sides[gaps.side(lean)].append(lean)
    medians = (side[len(side) // 2] for side in (sides[-1], sides[1]) if side)
    return (0, *medians)


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
        longest = max(rooms, default=0)
        self._tables = maker.make(
            _items(needs, self._values, remaining.pieces, longest, grid), longest
        )

    def patterns(self, master_prices: Prices) -> list[Pattern]:
        """Return new patterns, the best for each piece, that gain at the master's own prices."""
        charges = [
            math.ceil((self._master.weights[bar] - self._prices.sticks[bar]) * self._scale)
            for bar in self._able
        ]
        ends = [
            (place, state, length)
            for place, state, length in self._ends
            if self._tables.value(state, length) > charges[place]
        ]
        found = self._tables.endings(
            [(state, length) for _, state, length in ends], [charges[place] for place, _, _ in ends]
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
            if self._master.gain(pattern, master_prices) > self._master.sharpness.worthwhile:
                patterns[pattern] = None
            if len(patterns) >= _MOST_NEW:
                break
        return list(patterns)

    def bound(self) -> Fraction:
        """Return a cost, in steps, that no plan undercuts; see the top of this file.

        Only with needs rounded down, and for all pieces and sticks.
        """
        total = self._dual()[2]
        return max(Fraction(0), total / self._scale)

    def losing_least(self, goal: int, most: int) -> list[Pattern] | None:
        """Return every pattern that a plan for `goal` steps may hold, None if more than `most`.

        Only with needs rounded down, and for all pieces and sticks.
        """
        found = self.listed(goal, most)
        if found is None:
            return None
        return [found.pattern(number) for number in range(len(found))]

    def listed(self, goal: int, most: int) -> PatternList | None:
        """Return the same as a list that can be long."""
        theta, sticks, total = self._dual()
        budget = goal * self._scale - total
        if budget < 0:
            return PatternList(array("q"), listed_sets(()))
        charges = [
            math.ceil((self._master.steps[bar] * self._scale - sticks[bar] - budget) / theta)
            for bar in self._able
        ]
        needs, bars = self._needs, [self._able[place] for place, _, _ in self._ends]
        rooms = [
            needs.rooms[bar] - needs.states[state]
            for bar, (_, state, _) in zip(bars, self._ends, strict=True)
        ]
        found = self._tables.sets_worth(
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
        most = [0] * len(steps)
        for place, state, length in self._ends:
            bar = self._able[place]
            most[bar] = max(most[bar], self._tables.value(state, length))
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


def fits(needs: Needs, pattern: Pattern) -> bool:
    """Tell whether a pattern keeps within its stick, by needs not rounded to any grid."""
    state = state_of(needs.leans[group] for group, count in pattern.counts for _ in range(count))
    needed = sum(needs.pieces[group] * count for group, count in pattern.counts)
    return needed + needs.states[state] <= needs.rooms[pattern.bar]


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
