"""A knapsack at charges that knows what a stick loses on which something is to be left.

Let a plan leave R behind the last cut of some stick. That stick is charged in full, while its
pieces and that cut come from R less of it. What it loses, the charge less the worth of its pieces,
is the least for one length or another, and no more than what the whole plan may lose: what its cost
and sticks are charged at most, less the bound (`longpoint.sticks.search.pricing`). Else R is too
long. What the other sticks may lose is what is left of that.
"""

from array import array
from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from longpoint.sticks.lay.lean_states import State
from longpoint.sticks.search.patterns import Pattern, PatternList, pattern_list
from longpoint.sticks.search.pricing import Priced
from longpoint.sticks.search.table_sets import Lengths

_EVERY: Final = 25

_End = tuple[int, State, int]


class PricedRests(Priced):
    """One knapsack at some charges, with needs rounded down, and for all pieces and sticks."""

    def longest(self, most: int, kerf: int) -> int:
        """Return what no plan that is charged `most` leaves more of on a stick. [0.01 mm]

        Args:
            most: What the plan is charged at most. [steps of charge]
            kerf: What the last cut of a stick takes at least. [0.01 mm]

        Returns:
            -1 where no plan is charged so little.
        """
        theta, sticks, total = self._dual()
        budget = most * self._scale - total
        longest = -1
        for end in self._ends if budget >= 0 else ():
            place, state, _ = end
            bar = self._able[place]
            shortest = self._shortest_worth(end, self._charge(bar, theta, sticks, budget))
            if shortest is not None:
                room = self._needs.rooms[bar] - kerf - self._needs.states[state]
                longest = max(longest, room - shortest * self._grid)
        return longest

    def _shortest_worth(self, end: _End, charge: int) -> int | None:
        """The shortest length on which pieces are worth so much; values never fall with length."""
        _, state, high = end
        if self._tables.value(state, high) < charge:
            return None
        low = 0
        while low < high:
            middle = (low + high) // 2
            if self._tables.value(state, middle) >= charge:
                high = middle
            else:
                low = middle + 1
        return low

    def leaving(self, unit: float) -> list[Pattern]:
        """Return a pattern for each length that is worth most together with what it leaves.

        Args:
            unit: What a hundredth of a millimetre left over is worth, in steps of charge.
        """
        found, scale = [], float(self._scale)
        for place, state, longest in self._ends:
            worth = [
                (value / scale + (longest - length) * self._grid * unit, length)
                for length in range(longest, 0, -_EVERY)
                if (value := self._tables.value(state, length)) > 0
            ]
            if worth:
                numbers = self._tables.best_set(state, max(worth)[1])
                found.append(Pattern(self._able[place], self._master.layout.counts(numbers)))
        return found

    def sets_leaving(
        self, most: int, rest: int, kerf: int, most_listed: int
    ) -> tuple[PatternList, PatternList] | None:
        """Return all sets of a plan that leaves so much on a stick.

        Args:
            most: What the plan is charged at most. [steps of charge]
            rest: What one of its sticks leaves at least. [0.01 mm]
            kerf: What the last cut of a stick takes at least. [0.01 mm]
            most_listed: Most sets of either kind.

        Returns:
            The sets of the other sticks, and those of the stick that leaves it; None where they are
            too many.
        """
        theta, sticks, total = self._dual()
        budget = most * self._scale - total
        needs, ends, rooms = self._needs, list[_End](), list[int]()
        losses = list[Fraction]()
        for place, state, _ in self._ends:
            bar, grid = self._able[place], self._grid
            room = needs.rooms[bar] - kerf - rest
            length = room // grid - needs.states[state] // grid
            value = self._tables.value(state, length) if length > 0 else 0
            loss = self._master.steps[bar] * self._scale - sticks[bar] - theta * value
            if value > 0 and loss <= budget:
                ends.append((place, state, length))
                rooms.append(room - needs.states[state])
                losses.append(loss)
        if not ends:
            return pattern_list(()), pattern_list(())
        leaving = self._worth(ends, rooms, theta, sticks, budget, most_listed)
        left = budget - max(Fraction(0), min(losses))
        whole = [
            needs.rooms[self._able[place]] - needs.states[state] for place, state, _ in self._ends
        ]
        others = self._worth(self._ends, whole, theta, sticks, left, most_listed)
        return None if leaving is None or others is None else (others, leaving)

    def _worth(
        self,
        ends: Sequence[_End],
        rooms: Sequence[int],
        theta: Fraction,
        sticks: Sequence[Fraction],
        budget: Fraction,
        most_listed: int,
    ) -> PatternList | None:
        bars = [self._able[place] for place, _, _ in ends]
        found = self._tables.sets_worth(
            [(state, length) for _, state, length in ends],
            [self._charge(bar, theta, sticks, budget) for bar in bars],
            most_listed,
            Lengths(self._needs.pieces, rooms),
        )
        if found is None:
            return None
        return PatternList(array("q", (bars[end] for end in found.ends)), found)
