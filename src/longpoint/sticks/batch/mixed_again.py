"""The sticks of a batch that lose most, planned again among sticks that lose little.

The last sticks of a plan are made of what is left, and what is left of thousands of pieces goes ill
together. Among pieces of good sticks it finds better company. So a few of the worst sticks and as
many others as make a hundred pieces are planned again as those of a house, and again with others,
while that makes the plan cheaper. What a stick loses is its cost less the worth of its pieces.
"""

import random
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from longpoint.sticks.effort import never
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.fit import Filled, Packing, cost_of
from longpoint.sticks.lay.laying import Place, Workload, workload
from longpoint.sticks.search.patterns import groups_of

_PIECES: Final = 100
"""So many pieces are planned again at once."""
_WORST: Final = 15
_OF_WORST: Final = 4
"""Sticks that lose most: so many are taken, every other time drawn from so many times as many."""
_TIMES: Final = 30
_IN_VAIN: Final = 3
"""Times at most, and times in a row without a cheaper plan."""
_SEED: Final = 7

Planner = Callable[[Workload, Bars], Packing]
"""Plans some pieces on the lengths that are left for them."""


def mixed_again(
    work: Workload,
    bars: Bars,
    packing: Packing,
    worths: Sequence[float],
    again: Planner,
    stop: Callable[[], bool] = never,
) -> Packing:
    """Return a packing of the same pieces that costs no more.

    Args:
        work: The pieces.
        bars: The lengths.
        packing: A packing; where pieces are unplaced it is returned as it is.
        worths: What a piece of each group is worth, in whole cost units.
        again: Plans a hundred pieces.
        stop: Asked between two times; once it says yes, the best packing so far is returned.
    """
    sticks, draw, in_vain = list(packing.sticks), random.Random(_SEED), 0
    worth = {
        piece: worths[number] for number, group in enumerate(groups_of(work)) for piece in group
    }
    for turn in range(_TIMES):
        if packing.unplaced or in_vain == _IN_VAIN or stop():
            break
        sticks.sort(key=lambda stick: _loss(bars, worth, stick), reverse=True)
        chosen = _chosen(sticks, draw, drawn=turn % 2 == 1)
        some = [sticks[number] for number in chosen]
        others = [stick for number, stick in enumerate(sticks) if number not in chosen]
        pieces = sorted(place.piece for stick in some for place in stick.places)
        found = again(some_of(work, pieces), bars_without(bars, others))
        before, after = cost_of(bars.bars, Packing(tuple(some))), cost_of(bars.bars, found)
        if not found.unplaced and after <= before:
            sticks = [*others, *(named(stick, pieces) for stick in found.sticks)]
            in_vain = 0 if after < before else in_vain + 1
        else:
            in_vain += 1
    return replace(packing, sticks=tuple(sticks))


def some_of(work: Workload, pieces: Sequence[int]) -> Workload:
    """Return some of the pieces, numbered anew in the order given."""
    return workload([work.demands[piece] for piece in pieces])


def named(stick: Filled, pieces: Sequence[int]) -> Filled:
    """Return the stick with its pieces numbered as they were.

    Args:
        stick: A stick of some of the pieces.
        pieces: Which ones they were.
    """
    places = tuple(Place(pieces[place.piece], place.turned) for place in stick.places)
    return Filled(stick.bar, places, stick.used)


def bars_without(bars: Bars, sticks: Sequence[Filled]) -> Bars:
    """Return the lengths that are left beside these sticks, under the same numbers."""
    taken = [0] * len(bars.bars)
    for stick in sticks:
        taken[stick.bar] += 1
    return replace(
        bars,
        bars=tuple(
            bar if bar.count is None else replace(bar, count=bar.count - gone)
            for bar, gone in zip(bars.bars, taken, strict=True)
        ),
    )


def _chosen(sticks: Sequence[Filled], draw: random.Random, *, drawn: bool) -> set[int]:
    """Numbers of some of the first sticks, and of others drawn from all."""
    first = range(min(len(sticks), _OF_WORST * _WORST if drawn else _WORST))
    worst = draw.sample(first, min(len(first), _WORST))
    chosen, count = set(worst), sum(len(sticks[number].places) for number in worst)
    for number in draw.sample(range(len(sticks)), len(sticks)):
        if number in chosen:
            continue
        count += len(sticks[number].places)
        if count > _PIECES:
            break
        chosen.add(number)
    return chosen


def _loss(bars: Bars, worth: dict[int, float], stick: Filled) -> float:
    """What a stick costs more than its pieces are worth, in whole cost units."""
    return bars.bars[stick.bar].cost - sum(worth[place.piece] for place in stick.places)
