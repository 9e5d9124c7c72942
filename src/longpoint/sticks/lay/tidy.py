"""The same sticks, the pieces moved about so that what is left over lies together.

One long offcut is worth more than many short ones, so single pieces are moved from stick to stick
while that makes the sum of the squares of what is left larger. Nothing is bought for it.
"""

from collections.abc import Sequence
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.fit import Filled, Packing, downsized, put_in, score
from longpoint.sticks.lay.laying import Workload, used_length
from longpoint.sticks.lay.ordering import best_order

_MOST_PASSES: Final = 4


def tidied(work: Workload, bars: Sequence[Bar], packing: Packing) -> Packing:
    """Return a packing that is no worse, and leaves longer offcuts where it can."""
    sticks = list(packing.sticks)
    for _ in range(_MOST_PASSES):
        if not _one_pass(work, bars, sticks):
            break
    kept = tuple(stick for stick in sticks if stick.places)
    found = downsized(work, bars, Packing(kept, packing.unplaced))
    return min(packing, found, key=lambda choice: score(work, bars, choice))


def _one_pass(work: Workload, bars: Sequence[Bar], sticks: list[Filled]) -> bool:
    moved = False
    free = [bars[stick.bar].room - stick.used if stick.places else -1 for stick in sticks]
    smallest = min((_least_room(work, p.piece) for s in sticks for p in s.places), default=0)
    able = [index for index, spare in enumerate(free) if spare >= smallest]
    for source in sorted(range(len(sticks)), key=lambda index: sticks[index].used):
        for place in sticks[source].places:
            target = _target(work, bars, sticks, free, able, source, place.piece)
            if target is not None:
                index, filled, emptied = target
                sticks[index], sticks[source] = filled, emptied
                for changed in (index, source):
                    stick = sticks[changed]
                    free[changed] = bars[stick.bar].room - stick.used if stick.places else -1
                able = [index for index, spare in enumerate(free) if spare >= smallest]
                moved = True
    return moved


def _least_room(work: Workload, piece: int) -> int:
    """What a stick must have left for it to be worth giving it the piece."""
    return max(work.mid[piece] // 2, work.least_more[piece])


def _target(
    work: Workload,
    bars: Sequence[Bar],
    sticks: Sequence[Filled],
    free: Sequence[int],
    able: Sequence[int],
    source: int,
    piece: int,
) -> tuple[int, Filled, Filled] | None:
    """The stick that gains most by taking the piece, if any does.

    `free` is what is left on each stick, -1 where no piece lies any more; `able` are the sticks
    that have room for some piece.
    """
    giver = sticks[source]
    left = bars[giver.bar].room - giver.used
    emptied: Filled | None = None
    best: tuple[int, int, Filled, Filled] | None = None
    # Worth it only where the stick that takes has less left than the one that gives will have.
    least, most = _least_room(work, piece), left + work.mid[piece]
    for index in [n for n in able if least <= free[n] < most]:
        if index == source:
            continue
        stick, room = sticks[index], bars[sticks[index].bar].room
        filled = put_in(work, stick, piece, room)
        if filled is None:
            continue
        emptied = emptied or _without(work, giver, piece)
        gain = (
            (bars[giver.bar].room - emptied.used) ** 2
            + (room - filled.used) ** 2
            - left**2
            - (room - stick.used) ** 2
        )
        if gain > 0 and (best is None or gain > best[0]):
            best = (gain, index, filled, emptied)
    return None if best is None else best[1:]


def _without(work: Workload, stick: Filled, piece: int) -> Filled:
    rest = [place.piece for place in stick.places if place.piece != piece]
    places = best_order(work, rest)
    return Filled(stick.bar, places, used_length(work, places))
