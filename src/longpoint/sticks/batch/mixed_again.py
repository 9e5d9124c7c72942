"""The sticks of a batch that lose most, planned again among sticks that lose little.

The last sticks of a plan are made of what is left, and what is left of thousands of pieces goes ill
together. Among pieces of good sticks it finds better company. So some of the worst sticks and about
as many others are planned again as those of a house, and again with others, while that makes the
plan cheaper. What a stick loses is its cost less the worth of its pieces.

The more pieces, the more sets of them fill a stick all but to the end; but the longer it takes, the
more so the more pieces a stick holds. So where it holds few, more are planned again at once.
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

_LEAST: Final = 100
_MOST: Final = 250
_AT_ONCE: Final = 1_000
"""So many pieces are planned again at once, at least and at most; between, so many by the square of
the number of pieces that a stick holds."""
_SHARE: Final = 0.5
"""Part of them that the sticks hold which lose most, about."""
_OF_WORST: Final = 4
"""Every other time those sticks are drawn from so many times as many that lose most."""
_TIMES: Final = 40
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
        again: Plans a hundred pieces or two.
        stop: Asked between two times; once it says yes, the best packing so far is returned.
    """
    sticks, draw, in_vain = list(packing.sticks), random.Random(_SEED), 0
    held = _held(work, bars)
    worth = {
        piece: worths[number] for number, group in enumerate(groups_of(work)) for piece in group
    }
    for turn in range(_TIMES):
        if packing.unplaced or in_vain == _IN_VAIN or stop():
            break
        sticks.sort(key=lambda stick: _loss(bars, worth, stick), reverse=True)
        chosen = _chosen(sticks, draw, held, drawn=turn % 2 == 1)
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


def _held(work: Workload, bars: Bars) -> float:
    """About how many pieces the longest stick holds. >= 1."""
    return max(1.0, bars.longest_room * len(work.mid) / max(1, sum(work.mid)))


def _chosen(sticks: Sequence[Filled], draw: random.Random, held: float, *, drawn: bool) -> set[int]:
    """Numbers of some of the first sticks, and of others drawn from all."""
    pieces = min(_MOST, max(_LEAST, _AT_ONCE / held**2))
    wanted = max(1, round(_SHARE * pieces / held))
    first = range(min(len(sticks), _OF_WORST * wanted if drawn else wanted))
    worst = draw.sample(first, min(len(first), wanted))
    chosen, count = set(worst), sum(len(sticks[number].places) for number in worst)
    for number in draw.sample(range(len(sticks)), len(sticks)):
        if number in chosen:
            continue
        count += len(sticks[number].places)
        if count > pieces:
            break
        chosen.add(number)
    return chosen


def _loss(bars: Bars, worth: dict[int, float], stick: Filled) -> float:
    """What a stick costs more than its pieces are worth, in whole cost units."""
    return bars.bars[stick.bar].cost - sum(worth[place.piece] for place in stick.places)
