"""Which numbers of sticks of each length a plan may have, told by what sticks hold at some prices.

At any prices no stick of a length holds pieces that are worth more than the knapsack's best set. So
whatever a plan looks like, its sticks together can hold what all pieces are worth:

    sum over lengths of (most that one holds x how many) >= worth of all pieces.

Each knapsack gives one such condition, and they hold side by side. Where every length has a price
of its own, only a handful of numbers of sticks come to a cost that lies between the bound and the
best plan and keep all conditions; they can be listed, cheapest first.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

_NEARLY: Final = 1e-6
_WEIGHED: Final = 6
"""So many conditions, the last ones, are looked at while numbers are listed; the others after."""

Numbers = tuple[int, ...]
"""How many sticks of each length."""


@dataclass(frozen=True, slots=True)
class Condition:
    """What sticks hold at some prices, and what they must hold; in whole numbers.

    Attributes:
        sticks: What pieces on a stick of each length are worth at most.
        pieces: What all pieces are worth.
    """

    sticks: tuple[int, ...]
    pieces: int

    def spare(self, numbers: Numbers) -> int:
        """Return by how much so many sticks hold more than all pieces are worth; < 0: too few."""
        held = sum(most * number for most, number in zip(self.sticks, numbers, strict=True))
        return held - self.pieces

    def keeps(self, numbers: Numbers) -> bool:
        """Tell whether so many sticks may hold all pieces."""
        return self.spare(numbers) >= 0


def possible_numbers(
    steps: Sequence[int],
    counts: Sequence[int | None],
    conditions: Sequence[Condition],
    low: int,
    high: int,
    most: int,
) -> list[Numbers] | None:
    """Return the numbers of sticks that plans may have which cost from `low` to below `high`.

    Sticks that cost nothing are all there, whether a plan uses them or not.

    Args:
        steps: Cost of a stick of each length, in steps.
        counts: How many there are of each length; None: as many as needed.
        conditions: Conditions that all plans keep; at least one.
        low: Least cost of interest, in steps.
        high: Cost of a plan that is known, in steps.
        most: Most numbers that are looked at.

    Returns:
        The cheapest first, and of equal costs those with more to spare by the last condition. None
        where they are too many, or sticks are free without end.
    """
    if any(step == 0 and count is None for step, count in zip(steps, counts, strict=True)):
        return None
    listing = _Listing(steps, counts, conditions[-_WEIGHED:], low, high, most)
    found = [
        numbers
        for numbers in listing.all()
        if all(condition.keeps(numbers) for condition in conditions)
    ]
    if listing.left < 0:
        return None
    return sorted(found, key=lambda numbers: _rank(steps, conditions[-1], numbers))


def cost_of_numbers(steps: Sequence[int], numbers: Numbers) -> int:
    """Return what so many sticks cost, in steps."""
    return sum(step * number for step, number in zip(steps, numbers, strict=True))


def _rank(
    steps: Sequence[int], condition: Condition, numbers: Numbers
) -> tuple[int, int, tuple[int, ...]]:
    return cost_of_numbers(steps, numbers), -condition.spare(numbers), numbers


class _Listing:
    """Lengths one after the other, the one that holds least for its cost first.

    Attributes:
        left: How many numbers may still be looked at; below nought: too many.
    """

    def __init__(
        self,
        steps: Sequence[int],
        counts: Sequence[int | None],
        conditions: Sequence[Condition],
        low: int,
        high: int,
        most: int,
    ) -> None:
        self._steps, self._counts = steps, counts
        self._low, self._high, self.left = low, high, most
        self._held = [condition.sticks for condition in conditions]
        pairs = zip(steps, counts, strict=True)
        self._free = [0 if step else (count or 0) for step, count in pairs]
        self._missing = [-condition.spare(tuple(self._free)) for condition in conditions]
        last = self._held[-1]
        self._bars = sorted(
            (bar for bar, step in enumerate(steps) if step),
            key=lambda bar: (-steps[bar] / max(1, last[bar]), bar),
        )
        # What the lengths from here on take at least, by each condition, for what is missing.
        self._rates = [
            [min(steps[b] / max(1, held[b]) for b in self._bars[place:]) for held in self._held]
            for place in range(len(self._bars))
        ]

    def all(self) -> Iterator[Numbers]:
        """Yield the numbers that keep the conditions which are weighed."""
        if self._bars:
            yield from self._from(0, 0, self._missing, list(self._free))

    def _from(
        self, place: int, cost: int, missing: Sequence[int], numbers: list[int]
    ) -> Iterator[Numbers]:
        bar = self._bars[place]
        step, count = self._steps[bar], self._counts[bar]
        is_last = place == len(self._bars) - 1
        number = self._least(bar, cost, missing) if is_last else 0
        while (
            cost + number * step < self._high
            and (count is None or number <= count)
            and self.left >= 0
        ):
            self.left -= 1
            numbers[bar] = number
            spent = cost + number * step
            if is_last:
                yield tuple(numbers)
            else:
                short = [
                    need - number * held[bar]
                    for need, held in zip(missing, self._held, strict=True)
                ]
                rates = self._rates[place + 1]
                more = max(need * rate for need, rate in zip(short, rates, strict=True))
                if spent + max(0.0, more) < self._high + _NEARLY:
                    yield from self._from(place + 1, spent, short, numbers)
            number += 1
        numbers[bar] = 0

    def _least(self, bar: int, cost: int, missing: Sequence[int]) -> int:
        """How many of the last length are needed at least, for all conditions and the cost."""
        least = -(-max(0, self._low - cost) // self._steps[bar])
        for need, held in zip(missing, self._held, strict=True):
            if need > 0:
                if not held[bar]:
                    return self._high
                least = max(least, -(-need // held[bar]))
        return least
