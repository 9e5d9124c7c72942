"""What sticks cost at least, by lengths that are weighed: where sums of lengths say too little.

Let f never fall, and be worth no less on a sum than on its parts: f(x + y) >= f(x) + f(y). Pieces
that lie on one stick (`longpoint.sticks.lay.bound`) lie on it by their weights as well:

    sum of f(base) <= f(sum of base) <= f(room).

So the cheapest sticks whose weighed rooms hold the sum of the weighed bases are a bound for every
such f. Two families serve here, both known for plain packing into bins; which member says most
depends on the pieces, so several are tried.

References:
    S. P. Fekete, J. Schepers, "New classes of fast lower bounds for bin packing problems",
    Mathematical Programming 91 (2001) 11-31. J. Carlier, F. Clautiaux, A. Moukrim, "New reduction
    procedures and lower bounds for the two-dimensional bin packing problem with fixed orientation",
    Computers & Operations Research 34 (2007) 2223-2250.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from typing import Final

from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import Floor

_MOST_TRIED: Final = 100


def weighed_bound(floor: Floor, bars: Bars, enough: int) -> int:
    """Return a cost that no plan undercuts; no more is tried once that is `enough`."""
    if any(bar.cost == 0 and bar.count is None for bar in bars.bars):
        return 0
    longest, bases = max(floor.rooms, default=0), Counter(floor.bases)
    least = sorted({min(base, longest - base) for base in bases})
    shares = [length for length in least if length > 0]
    best = 0
    for share in shares[:: 1 + len(shares) // _MOST_TRIED]:
        for weight in (without_short(longest, share), counted_in(longest, share)):
            best = max(best, _by_weights(weight, bases, floor.rooms, bars))
            if best >= enough:
                return best
    return best


def without_short(longest: int, share: int) -> Callable[[int], int]:
    """Return the weight that drops what is shorter than a share, and rounds up what leaves less.

    Args:
        longest: The longest room. > 0.
        share: At most half of it. > 0.
    """

    def weight(length: int) -> int:
        if length < share:
            return 0
        return longest if length > longest - share else length

    return weight


def counted_in(longest: int, share: int) -> Callable[[int], int]:
    """Return the weight that counts whole shares: of what a long piece leaves, of a short one.

    Args:
        longest: The longest room. > 0.
        share: At most half of it. > 0.
    """
    whole = longest // share

    def weight(length: int) -> int:
        if 2 * length > longest:
            return 2 * (whole - (longest - length) // share)
        return whole if 2 * length == longest else 2 * (length // share)

    return weight


def _by_weights(
    weight: Callable[[int], int], bases: Counter[int], rooms: Sequence[int], bars: Bars
) -> int:
    needed = sum(weight(base) * count for base, count in bases.items())
    kinds = list[tuple[int, int]]()
    for bar, room in zip(bars.bars, rooms, strict=True):
        if bar.cost:
            kinds.append((bar.cost // bars.step, weight(room)))
        else:
            needed -= weight(room) * (bar.count or 0)
    return bars.step * _fewest_steps(needed, kinds)


def _fewest_steps(needed: int, kinds: Iterable[tuple[int, int]]) -> int:
    """The cost of parts of sticks that hold the weight needed, rounded up. [steps]"""
    able = (-(-needed * steps // weight) for steps, weight in kinds if weight > 0)
    return max(0, min(able, default=0))
