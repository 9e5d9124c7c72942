"""All sequences at some prices: a bound, and the best one with a given piece.

Lengths are rounded down to a grid, so the bound is a true one; it is made in whole numbers as
`sticks/search/pricing` says.
"""

import math
from fractions import Fraction
from types import ModuleType
from typing import TYPE_CHECKING, Any

from longpoint.solvers.items_on_grid import Items
from longpoint.solvers.sequence_tables import MOST_VALUE, SequenceTables
from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Turned

if TYPE_CHECKING:
    from numpy.typing import NDArray


class PricedSequences:
    """What stands best before and behind each piece, for every length.

    Args:
        numpy: The library.
        many: The pieces, what is lost between them, the sticks.
        items: The same on a grid.
        prices: What a piece of each group is worth. >= 0. [steps]

    Attributes:
        bound: No plan costs less. [steps]
    """

    def __init__(
        self, numpy: ModuleType, many: ManyPieces, items: Items, prices: "NDArray[Any]"
    ) -> None:
        self._many, self._items = many, items
        worth, longest = prices[items.groups], max(items.rooms)
        # However dear a missing piece has become: no sequence is worth more than the tables hold.
        most = float((worth / items.needs).max()) * longest
        self._scale = max(1, int(MOST_VALUE / max(most, 1.0)))
        values = numpy.floor(worth * self._scale).astype(numpy.int32)
        # Of items that need the same between the same ends only the dearest can matter.
        self._dearest = some = items.dearest(numpy, values)
        needs, ends, tips = items.needs[some], (items.lefts[some], items.rights[some]), items.tips
        self._left = SequenceTables(needs, ends, values[some], items.gaps, tips, longest)
        self._right = SequenceTables(
            needs, ends[::-1], values[some], items.gaps.T, tips[::-1], longest
        )
        # Those that may be turned stand in it twice, the first time as they are.
        whole = values[: len(many.needs)]
        self.bound = self._bound(whole, [self._left.value(room) for room in items.rooms])

    def best_with(self, item: int, charges: "NDArray[Any]") -> tuple[int, tuple[Turned, ...]]:
        """Return the length and the sequence that gain most with an item.

        Args:
            item: Its number among all items.
            charges: What a stick of each length is worth beside its cost. <= 0. [steps]
        """
        items, best = self._items, (-math.inf, 0, 0)
        length = int(items.needs[item])
        before = self._left.before[items.lefts[item]]
        behind = self._right.before[items.rights[item]]
        for bar, room in enumerate(items.rooms):
            rest = room - length
            if rest < 0:
                continue
            worth = before[: rest + 1] + behind[rest::-1]
            at = int(worth.argmax())
            gain = int(worth[at]) - (self._many.costs[bar] - float(charges[bar])) * self._scale
            if gain > best[0]:
                best = (gain, bar, at)
        _, bar, at = best
        left = self._left.sequence(int(items.lefts[item]), at)
        right = self._right.sequence(int(items.rights[item]), items.rooms[bar] - length - at)
        numbers = (*self._dearest[list(left)], item, *self._dearest[list(reversed(right))])
        return bar, tuple(
            Turned(int(items.groups[number]), bool(items.turned[number])) for number in numbers
        )

    def _bound(self, values: "NDArray[Any]", most: list[int]) -> Fraction:
        many, scale, theta = self._many, self._scale, Fraction(1)
        for cost, limit, value in zip(many.costs, many.limits, most, strict=True):
            if limit is None and value > cost * scale:
                theta = min(theta, Fraction(cost * scale, value))
        total: Fraction = theta * sum(
            value * copies for value, copies in zip(values.tolist(), many.copies, strict=True)
        )
        for cost, limit, value in zip(many.costs, many.limits, most, strict=True):
            if limit is not None:
                total += limit * min(Fraction(0), cost * scale - theta * value)
        return max(Fraction(0), total / scale)
