"""What the sticks of a profile cost at least, whoever plans them.

Along any one line of the stick (its outer edge, its midline, its inner edge) the pieces and the
cuts between them must fit. A joint costs at least half a kerf for each of its two ends there, so a
piece needs its length on that line and half the kerf of each end; a stick of n pieces has n - 1
joints, which gives back two half kerfs. So

    sum of base <= room + one kerf,   base = length on the line + (left kerf + right kerf) / 2.

A turned piece shows its other edge to the line, so where pieces may be turned only the midline
serves. Where none may, the outer edge is the best line for mitres whose outer edge is the longer:
there every piece takes its long length, and rectangles are exact.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.lay.bars import Bar, Bars
from longpoint.sticks.lay.demand import Demand
from longpoint.sticks.lay.laying import Workload

ROUNDED_UP: Final = 5
"""More than the rounding up of one piece and its ends, or of one stick, can come to. [0.01 mm]"""

_MOST_COST_STEPS: Final = 100_000


@dataclass(frozen=True, slots=True)
class Floor:
    """Least needs of the pieces, and most room of the sticks, along one line. [0.01 mm]

    Attributes:
        bases: What each piece needs at least.
        rooms: What a stick of each length can hold at most.
    """

    bases: tuple[int, ...]
    rooms: tuple[int, ...]


def floor_of(work: Workload, bars: Sequence[Bar]) -> Floor:
    """Return the least needs along the line on which the pieces need most."""
    kerf = max((*work.left_kerf, *work.right_kerf), default=0)
    return Floor(
        bases=_bases(work, best_line(work)),
        rooms=tuple(bar.room + (kerf + ROUNDED_UP if kerf or bar.trim else 0) for bar in bars),
    )


def best_line(work: Workload) -> int:
    """Return the line on which the pieces need most: 1 upper edge, 0 midline, -1 lower edge."""
    lines = (0,) if any(work.can_turn) else (0, 1, -1)
    return max(lines, key=lambda line: sum(_bases(work, line)))


def _bases(work: Workload, line: int) -> tuple[int, ...]:
    leans = (right - left for left, right in zip(work.left_lean, work.right_lean, strict=True))
    kerfs = (left + right for left, right in zip(work.left_kerf, work.right_kerf, strict=True))
    return tuple(
        demand.low + line * lean + kerf // 2 - (0 if _is_plain(demand) else ROUNDED_UP)
        for demand, lean, kerf in zip(work.demands, leans, kerfs, strict=True)
    )


def _is_plain(demand: Demand) -> bool:
    """Tell whether nothing of a piece's need was rounded up beside its length."""
    left, right = demand.left, demand.right
    return not (left.lean_mm or left.kerf or right.lean_mm or right.kerf)


def simple_bound(floor: Floor, bars: Bars) -> int:
    """Return a cost that no plan undercuts, from sums only.

    The better of two: the cheapest sticks whose rooms together hold the sum of all bases; and the
    sum of the cheapest sticks for the pieces longer than half the longest room, of which no two
    share a stick.
    """
    if not floor.bases:
        return 0
    return max(_sum_bound(floor, bars), _long_pieces_bound(floor, bars))


def _sum_bound(floor: Floor, bars: Bars) -> int:
    needed = sum(floor.bases)
    kinds = []
    for bar, room in zip(bars.bars, floor.rooms, strict=True):
        if bar.cost == 0 and bar.count is None:
            return 0
        if bar.cost == 0:
            needed -= room * (bar.count or 0)
        else:
            kinds.append((bar.cost // bars.step, room))
    if needed <= 0 or not kinds:
        return 0
    rate = min(cost / room for cost, room in kinds)
    fewest_steps = math.ceil(needed * rate - 1e-6)
    if fewest_steps > _MOST_COST_STEPS:
        return fewest_steps * bars.step
    most_room = [0]
    while most_room[-1] < needed:
        spent = len(most_room)
        held = (most_room[spent - cost] + room for cost, room in kinds if cost <= spent)
        most_room.append(max(most_room[-1], max(held, default=0)))
    return (len(most_room) - 1) * bars.step


def possible_costs(floor: Floor, bars: Bars, low: int, high: int) -> Sequence[int]:
    """Return the costs from `low` to below `high` that sticks which hold all can add up to.

    Every plan costs a sum of prices, and its sticks have room for the sum of all bases; so a cost
    that is no such sum is not worth looking for, and the least one is a bound by itself.

    Args:
        floor: Least needs of the pieces.
        bars: The lengths; that some are counted is left out, which only leaves more costs.
        low: Least cost of interest, in steps of price.
        high: Cost of a plan that is known, in steps of price.
    """
    needed = sum(floor.bases)
    kinds = []
    for bar, room in zip(bars.bars, floor.rooms, strict=True):
        if bar.cost == 0 and bar.count is None:
            return range(low, high)
        if bar.cost == 0:
            needed -= room * (bar.count or 0)
        else:
            kinds.append((bar.cost // bars.step, room))
    if high > _MOST_COST_STEPS:
        return range(low, high)
    most_room = [0]
    for spent in range(1, high):
        most = -1
        for cost, room in kinds:
            if cost <= spent and (held := most_room[spent - cost]) >= 0:
                most = max(most, held + room)
        most_room.append(most)
    return tuple(spent for spent in range(low, high) if most_room[spent] >= max(0, needed))


def _long_pieces_bound(floor: Floor, bars: Bars) -> int:
    longest = max(floor.rooms)
    free = sum(bar.count or 0 for bar in bars.bars if bar.cost == 0)
    costs = []
    for base in floor.bases:
        if 2 * base <= longest:
            continue
        able = [
            bar.cost
            for bar, room in zip(bars.bars, floor.rooms, strict=True)
            if bar.cost and base <= room
        ]
        costs.append(min(able, default=0))
    costs.sort()
    return sum(costs[: max(0, len(costs) - free)])
