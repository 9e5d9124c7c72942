"""The last few sticks: every pattern that can still matter, and all ways to fit them together.

Let the linear master over what remains cost z, with prices of the pieces. A pattern's loss is the
cost of its stick less the worth of its pieces. Whatever whole plan is made for the pieces, its
losses add up to its cost less z: so for a plan of at most `goal` no pattern may lose more than
goal - z, nor all together. With few pieces left, the patterns that lose so little can be listed,
and the ways to share the pieces out among them searched through.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Final

from longpoint.sticks.lay.lean_states import Lean, LeanBits
from longpoint.sticks.search.master import Master, Prices, Remaining
from longpoint.sticks.search.needs import Needs
from longpoint.sticks.search.patterns import Counts, Pattern
from longpoint.sticks.search.pricing import WORTHWHILE

_ROUNDING: Final = 1e-12


@dataclass(frozen=True, slots=True)
class LastEffort:
    """How hard the last sticks are tried.

    Attributes:
        listed: Most choices that are listed; where there are more nothing is tried.
        tried: Most choices that are tried.
        pieces: Of so many pieces at most they are the last sticks.
    """

    listed: int
    tried: int
    pieces: int = 26


THOROUGH_LAST: Final = LastEffort(listed=60_000, tried=200_000)
SOON_LAST: Final = LastEffort(listed=12_000, tried=10_000)
QUICK_LAST: Final = LastEffort(listed=2_000, tried=5_000, pieces=34)


@dataclass(frozen=True, slots=True)
class _Choice:
    """A set of pieces, as bits, on the cheapest stick that should hold it."""

    loss: float
    bits: int
    bar: int


@dataclass(frozen=True, slots=True)
class _Loose:
    """One piece that remains."""

    group: int
    need: int
    worth: float
    lean: Lean


def last_sticks(
    master: Master,
    least: Needs,
    prices: Prices,
    remaining: Remaining,
    budget: float,
    spend: float = math.inf,
    effort: LastEffort = THOROUGH_LAST,
) -> tuple[Pattern, ...] | None:
    """Return patterns that cut exactly what remains and lose no more than the budget, or None.

    Args:
        master: Costs, and the layout in which patterns are tried.
        least: Needs that no pattern undercuts.
        prices: Prices of a linear master over what remains.
        remaining: The pieces, a few dozen at most, and the sticks.
        budget: Most that may be lost in all, in steps of cost.
        spend: Most that the sticks may cost, in steps: where a counted stick that has a price is
            left over, losses alone don't tell.
        effort: How hard it is tried.
    """
    pieces = sorted(
        (
            _Loose(group, least.pieces[group], prices.pieces[group], least.leans[group])
            for group, count in enumerate(remaining.pieces)
            for _ in range(count)
        ),
        key=lambda piece: (-piece.need, piece.group),
    )
    return _Search(master, least, prices, remaining, pieces, effort).run(budget + WORTHWHILE, spend)


class _Search:
    def __init__(
        self,
        master: Master,
        least: Needs,
        prices: Prices,
        remaining: Remaining,
        pieces: Sequence[_Loose],
        effort: LastEffort,
    ) -> None:
        self._master, self._least, self._remaining = master, least, remaining
        self._pieces = pieces
        self._bars = sorted(
            (
                (least.rooms[bar], master.weights[bar] - prices.sticks[bar], bar)
                for bar, left in enumerate(remaining.sticks)
                if left is None or left > 0
            ),
            key=lambda entry: (entry[1], entry[0]),
        )
        self._longest = max((room for room, _, _ in self._bars), default=0)
        # What a piece from here on is worth at most for its length.
        self._rates = [*accumulate((p.worth / p.need for p in reversed(pieces)), max)][::-1]
        self._has_states = any(least.states)
        self._leans = LeanBits([piece.lean for piece in pieces])
        self._most_listed, self._tries = effort.listed, effort.tried
        self._patterns: dict[tuple[int, int], Pattern | None] = {}
        self._in_vain: dict[Remaining, list[tuple[float, float]]] = {}

    def run(self, budget: float, spend: float) -> tuple[Pattern, ...] | None:
        choices: list[list[_Choice]] = []
        left = self._most_listed
        for first in range(len(self._pieces)):
            found = self._listed(first, budget, left)
            left -= len(found)
            if left < 0:
                return None
            found.sort(key=lambda choice: (choice.loss, choice.bits))
            choices.append(found)
        whole = (1 << len(self._pieces)) - 1
        return self._covered(choices, whole, budget, spend, self._remaining)

    def _listed(self, first: int, budget: float, most: int) -> list[_Choice]:
        """Every choice whose longest piece is this one, and that loses no more than the budget.

        Of more than `most` only one more than that. This is where most of the time goes, so that
        nothing is called that needn't be.
        """
        needs = [piece.need for piece in self._pieces]
        worths = [piece.worth for piece in self._pieces]
        stack = [(first, 1 << first, needs[first], worths[first])]
        rates, longest, count = self._rates, self._longest, len(needs)
        charged = [(room, cost - budget) for room, cost, _ in self._bars]
        found = list[_Choice]()
        while stack and len(found) <= most:
            last, bits, need, worth = stack.pop()
            # What more pieces must be worth for their length, that it isn't too much that is lost.
            wanted, may_do = math.inf, False
            for room, charge in charged:
                missing = charge - worth
                if room > need and missing < wanted * (room - need):
                    wanted = missing / (room - need)
                if missing <= 0.0 and room >= need:
                    may_do = True
            choice = self._choice(bits, need, worth) if may_do else None
            if choice is not None and choice.loss <= budget:
                found.append(choice)
            wanted -= _ROUNDING
            for following in range(last + 1, count):
                if rates[following] < wanted:
                    break
                longer = need + needs[following]
                if longer <= longest:
                    stack.append(
                        (following, bits | 1 << following, longer, worth + worths[following])
                    )
        return found

    def _choice(self, bits: int, need: int, worth: float) -> _Choice | None:
        for room, cost, bar in self._bars:
            if need <= room and (
                not self._has_states or need + self._least.states[self._leans.state(bits)] <= room
            ):
                return _Choice(cost - worth, bits, bar)
        return None

    def _covered(
        self,
        choices: Sequence[Sequence[_Choice]],
        uncovered: int,
        budget: float,
        spend: float,
        remaining: Remaining,
    ) -> tuple[Pattern, ...] | None:
        if uncovered == 0:
            return ()
        # Pieces of one group are alike: what failed for some of them fails for as many others.
        in_vain = self._in_vain.setdefault(remaining, [])
        if any(budget <= lost and spend <= spent for lost, spent in in_vain):
            return None
        for choice in choices[_first(uncovered)]:
            if choice.loss > budget:
                break
            if self._tries <= 0:
                return None
            self._tries -= 1
            cost = self._master.steps[choice.bar]
            if choice.bits & ~uncovered or cost > spend:
                continue
            left = uncovered & ~choice.bits
            if left and not _starts(choices[_first(left)], budget - choice.loss):
                continue
            pattern = self._pattern(choice)
            if pattern is None or not remaining.holds(pattern):
                continue
            rest = self._covered(
                choices,
                left,
                budget - choice.loss,
                spend - cost,
                remaining.less(pattern),
            )
            if rest is not None:
                return (pattern, *rest)
        if self._tries > 0:
            in_vain.append((budget, spend))
        return None

    def _pattern(self, choice: _Choice) -> Pattern | None:
        """The pattern of a choice; None where no order of its pieces fits the stick."""
        key = (choice.bar, choice.bits)
        if key not in self._patterns:
            pattern = Pattern(choice.bar, self._counts(choice.bits))
            self._patterns[key] = pattern if self._can_be_cut(pattern) else None
        return self._patterns[key]

    def _counts(self, bits: int) -> Counts:
        return self._master.layout.counts(
            piece.group for index, piece in enumerate(self._pieces) if bits >> index & 1
        )

    def _can_be_cut(self, pattern: Pattern) -> bool:
        layout = self._master.layout
        room = layout.bars[pattern.bar].room
        return layout.fitting(pattern.counts, room)[0] == pattern.counts


def _first(bits: int) -> int:
    """Which piece the lowest bit stands for."""
    return (bits & -bits).bit_length() - 1


def _starts(choices: Sequence[_Choice], budget: float) -> bool:
    """Tell whether the least of these, which come in order, loses no more than the budget."""
    return bool(choices) and choices[0].loss <= budget
