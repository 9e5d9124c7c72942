"""A plan by best fit, longest pieces first, improved by emptying sticks and filling them again.

Pure Python, always gives a plan, repeats for the same pieces whatever their order.
"""

import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.bars import Bar
from longpoint.sticks.laying import Place, Workload, gap, tip, used_length
from longpoint.sticks.plan import StickSource

_SEED: Final = 20

Score = tuple[int, int, int, int]
"""What is better is smaller: length unplaced, cost, sticks opened, less the offcuts squared."""


@dataclass(frozen=True, slots=True)
class Filled:
    """One opened stick.

    Attributes:
        bar: Number of its length in `Bars.bars`.
        places: Its pieces from left to right.
        used: Length used between the trims. [0.01 mm]
    """

    bar: int
    places: tuple[Place, ...]
    used: int


@dataclass(frozen=True, slots=True)
class Packing:
    """Opened sticks, and the pieces that no stick was left for."""

    sticks: tuple[Filled, ...]
    unplaced: tuple[int, ...] = ()


def cost_of(bars: Sequence[Bar], packing: Packing) -> int:
    """Return the cost of the sticks opened, in whole cost units."""
    return sum(bars[stick.bar].cost for stick in packing.sticks)


def score(work: Workload, bars: Sequence[Bar], packing: Packing) -> Score:
    """Return how good a packing is, by the goals in their order; smaller is better."""
    return (
        sum(work.mid[piece] for piece in packing.unplaced),
        cost_of(bars, packing),
        sum(bars[stick.bar].source is StickSource.STOCK for stick in packing.sticks),
        -sum((bars[stick.bar].room - stick.used) ** 2 for stick in packing.sticks),
    )


def filled(work: Workload, bar: int, places: Sequence[Place]) -> Filled:
    """Return an opened stick with its used length worked out."""
    return Filled(bar, tuple(places), used_length(work, places))


def put_in(work: Workload, stick: Filled, piece: int, room: int) -> Filled | None:
    """Return the stick with the piece where it costs least, None where it doesn't fit."""
    # A piece between two ends that lean apart may fill their triangle, but no more than its own.
    twist = abs(work.left_lean[piece] - work.right_lean[piece]) + 1
    if stick.used + work.mid[piece] - twist > room:
        return None
    best: tuple[int, int, bool] | None = None
    for turned in (False, True) if work.can_turn[piece] else (False,):
        left, right = work.ends(Place(piece, turned))
        for at, extra in enumerate(_extras(work, stick.places, left, right)):
            if best is None or extra < best[0]:
                best = (extra, at, turned)
    if best is None or stick.used + work.mid[piece] + best[0] > room:
        return None
    extra, at, turned = best
    places = (*stick.places[:at], Place(piece, turned), *stick.places[at:])
    return Filled(stick.bar, places, stick.used + work.mid[piece] + extra)


def _extras(
    work: Workload, places: Sequence[Place], left: tuple[int, int], right: tuple[int, int]
) -> Iterable[int]:
    """Yield what the ends of a piece cost before each place, and behind the last."""
    last: tuple[int, int] | None = None
    for place in places:
        here_left, here_right = work.ends(place)
        if last is None:
            yield tip(left[0]) + gap(right, here_left) - tip(here_left[0])
        else:
            yield gap(last, left) + gap(right, here_left) - gap(last, here_left)
        last = here_right
    if last is None:
        yield tip(left[0]) + tip(right[0])
    else:
        yield gap(last, left) + tip(right[0]) - tip(last[0])


def alone_fits(work: Workload, piece: int, bar: Bar) -> bool:
    """Tell whether a piece fits a stick by itself."""
    return used_length(work, [Place(piece, turned=False)]) <= bar.room


def fit(work: Workload, bars: Sequence[Bar], refills: int) -> Packing:
    """Return a packing of all pieces of a profile.

    Args:
        work: The pieces.
        bars: The lengths that can be opened.
        refills: Times that a few sticks are emptied and filled again.
    """
    pieces = sorted(range(len(work.mid)), key=lambda piece: (-work.mid[piece], piece))
    starts = [
        first_packing(work, bars, pieces, rule, first_fit=first_fit)
        for rule in _rules(bars)
        for first_fit in (False, True)
    ]
    best = min(starts, key=lambda packing: score(work, bars, packing))
    return _refilled(work, bars, best, refills)


def first_packing(
    work: Workload,
    bars: Sequence[Bar],
    pieces: Iterable[int],
    rule: Callable[[Bar, int], tuple[float, ...]],
    sticks: Iterable[Filled] = (),
    *,
    first_fit: bool = False,
) -> Packing:
    """Return a packing made piece by piece.

    Args:
        work: The pieces.
        bars: The lengths that can be opened.
        pieces: The pieces in the order in which they are placed.
        rule: Ranks the lengths to open, by (length, midline of the piece); smaller is better.
        sticks: Sticks already opened.
        first_fit: True: a piece goes on the first stick that holds it; False: on the one it
            leaves least of.
    """
    opened = list(sticks)
    taken = [0] * len(bars)
    for stick in opened:
        taken[stick.bar] += 1
    unplaced: list[int] = []
    for piece in pieces:
        choice: tuple[int, int, Filled] | None = None
        for index, stick in enumerate(opened):
            tried = put_in(work, stick, piece, bars[stick.bar].room)
            if tried is not None:
                left = bars[stick.bar].room - tried.used
                if choice is None or left < choice[0]:
                    choice = (left, index, tried)
                if first_fit:
                    break
        if choice is not None:
            opened[choice[1]] = choice[2]
            continue
        able = [
            number
            for number, bar in enumerate(bars)
            if (bar.count is None or taken[number] < bar.count) and alone_fits(work, piece, bar)
        ]
        if not able:
            unplaced.append(piece)
            continue
        number = min(able, key=lambda candidate: rule(bars[candidate], work.mid[piece]))
        taken[number] += 1
        opened.append(filled(work, number, [Place(piece, turned=False)]))
    return downsized(work, bars, Packing(tuple(opened), tuple(unplaced)))


def downsized(work: Workload, bars: Sequence[Bar], packing: Packing) -> Packing:
    """Return the packing with every stick changed for the cheapest length that holds its pieces."""
    taken = [0] * len(bars)
    for stick in packing.sticks:
        taken[stick.bar] += 1
    sticks = []
    for stick in packing.sticks:
        taken[stick.bar] -= 1
        able = (
            number
            for number, bar in enumerate(bars)
            if stick.used <= bar.room and (bar.count is None or taken[number] < bar.count)
        )
        number = min(able, key=lambda candidate: (bars[candidate].cost, bars[candidate].room))
        taken[number] += 1
        sticks.append(Filled(number, stick.places, stick.used))
    return Packing(tuple(sticks), packing.unplaced)


def _rules(bars: Sequence[Bar]) -> list[Callable[[Bar, int], tuple[float, ...]]]:
    """Offcuts first always; then the best rate, the shortest that will do, or one length only."""

    def best_rate(bar: Bar, _: int) -> tuple[float, ...]:
        return (bar.cost / bar.room, -bar.room) if bar.cost else (0.0, bar.room)

    def shortest(bar: Bar, _: int) -> tuple[float, ...]:
        return (bool(bar.cost), bar.room)

    def nearest(bar: Bar, wanted: int) -> tuple[float, ...]:
        return (bool(bar.cost), (bar.room % wanted) / bar.room)

    def one_length(number: int) -> Callable[[Bar, int], tuple[float, ...]]:
        room = bars[number].room
        return lambda bar, _: (bool(bar.cost), abs(bar.room - room))

    lengths = [one_length(number) for number, bar in enumerate(bars) if bar.cost]
    return [best_rate, shortest, nearest, *lengths]


def _refilled(work: Workload, bars: Sequence[Bar], packing: Packing, refills: int) -> Packing:
    """Empty a few sticks, the worst filled first, and fill again; keep what isn't worse."""
    draw = random.Random(_SEED)
    rules = _rules(bars)
    best, worth = packing, score(work, bars, packing)
    for _ in range(refills):
        if not best.sticks:
            break
        waste = [bars[stick.bar].room - stick.used + 1 for stick in best.sticks]
        emptied: set[int] = set()
        wanted = min(len(best.sticks), draw.randint(1, 4))
        while len(emptied) < wanted:
            emptied.update(draw.choices(range(len(best.sticks)), weights=waste))
        kept = [stick for index, stick in enumerate(best.sticks) if index not in emptied]
        loose = [place.piece for index in sorted(emptied) for place in best.sticks[index].places]
        loose += best.unplaced
        mixed = draw.uniform(0.0, 0.3)
        ranked = sorted(loose, key=lambda piece: -work.mid[piece] * (1.0 - mixed * draw.random()))
        tried = first_packing(work, bars, ranked, draw.choice(rules), kept)
        tried_worth = score(work, bars, tried)
        if tried_worth <= worth:
            best, worth = tried, tried_worth
    return best
