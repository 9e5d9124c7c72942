"""A plan stick by stick, each as full as the pieces left allow.

Every stick takes the longest piece left, and beside it what fills it best; of sets that fill it
alike, one of longer pieces, as short ones still fit when little is left. All sums that some pieces
can make are the bits of one whole number, so that a piece is a shift: a whole plan takes a
thousandth of a second or a few.

Only where it makes no difference in which order pieces lie, and only one length can be opened.
"""

import random
from collections.abc import Sequence
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.fit import Filled, Packing, score
from longpoint.sticks.lay.laying import Place, Workload

_MOST_PIECES: Final = 2000
_PLANS: Final = 2
_SEED: Final = 7
_SHAKEN: Final = 0.3


def full_sticks(work: Workload, bars: Sequence[Bar], enough: int) -> Packing | None:
    """Return the best of a few plans of full sticks, None where none can be made like this.

    Args:
        work: The pieces.
        bars: The lengths that can be opened.
        enough: A cost that no plan undercuts; no more plans are made once one costs no more.
    """
    kerf = work.plain_kerf
    if kerf is None or not work.mid or len(bars) != 1 or bars[0].count is not None:
        return None
    room = bars[0].room + kerf
    if len(work.mid) > _MOST_PIECES or max(work.mid) + kerf > room:
        return None
    draw, best = random.Random(_SEED), None
    for number in range(_PLANS):
        found = _plan(work, room, kerf, draw if number else None)
        if best is None or score(work, bars, found) < score(work, bars, best):
            best = found
        if len(best.sticks) * bars[0].cost <= enough:
            break
    return best


def _plan(work: Workload, room: int, kerf: int, draw: random.Random | None) -> Packing:
    unused: dict[int, list[int]] = {}
    for piece in sorted(range(len(work.mid)), key=lambda piece: (-work.mid[piece], -piece)):
        unused.setdefault(work.mid[piece] + kerf, []).append(piece)
    sticks, left = list[Filled](), list(unused)
    while left:
        first = left[0]
        able = [need for need in left if need <= room - first]
        if draw is not None:
            shaken = {need: need * (1.0 + _SHAKEN * draw.random()) for need in able}
            able.sort(key=shaken.__getitem__, reverse=True)
        copies = [(need, len(unused[need]) - (need == first)) for need in able]
        chosen = [first, *_fullest(copies, room - first)]
        places = tuple(Place(unused[need].pop(), turned=False) for need in chosen)
        sticks.append(Filled(0, places, sum(chosen) - kerf))
        left = [need for need in left if unused[need]]
    return Packing(tuple(sticks))


def _fullest(copies: Sequence[tuple[int, int]], room: int) -> list[int]:
    """Return needs with the largest sum that keeps within the room, the first ones preferred."""
    within = (1 << (room + 1)) - 1
    sums, taken = 1, list[tuple[int, int]]()
    for need, count in copies:
        for _ in range(min(count, room // need)):
            more = sums | sums << need & within
            if more == sums:
                break
            taken.append((need, sums))
            sums = more
        if sums >> room:
            break
    chosen, total = list[int](), sums.bit_length() - 1
    for need, before in reversed(taken):
        if not before >> total & 1:
            chosen.append(need)
            total -= need
    return chosen
