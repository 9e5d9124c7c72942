"""A plan by best fit, longest pieces first, improved by emptying sticks and filling them again.

Pure Python, always gives a plan, repeats for the same pieces whatever their order.
"""

import random
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.laying import Place, Workload, gap, tip, used_length
from longpoint.sticks.plan import StickSource

_SEED: Final = 20
_MOST_DRAWS: Final = 100
"""Draws in which a few sticks are chosen to be emptied; hardly ever more than ten are needed."""

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
    kinds = [(bar.cost, bar.source is StickSource.STOCK, bar.room) for bar in bars]
    cost = new = squares = 0
    for stick in packing.sticks:
        bar_cost, is_new, room = kinds[stick.bar]
        cost += bar_cost
        new += is_new
        squares += (room - stick.used) ** 2
    return sum(work.mid[piece] for piece in packing.unplaced), cost, new, -squares


def filled(work: Workload, bar: int, places: Sequence[Place]) -> Filled:
    """Return an opened stick with its used length worked out."""
    return Filled(bar, tuple(places), used_length(work, places))


def put_in(work: Workload, stick: Filled, piece: int, room: int) -> Filled | None:
    """Return the stick with the piece where it costs least, None where it doesn't fit."""
    if stick.used + work.least_more[piece] > room:
        return None
    if work.plain_kerf is not None:
        used = stick.used + work.mid[piece] + (work.plain_kerf if stick.places else 0)
        first = Place(piece, turned=False)
        return Filled(stick.bar, (first, *stick.places), used) if used <= room else None
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


def fit(work: Workload, bars: Sequence[Bar], refills: int, enough: int = -1) -> Packing:
    """Return a packing of all pieces of a profile.

    Args:
        work: The pieces.
        bars: The lengths that can be opened.
        refills: Times that a few sticks are emptied and filled again.
        enough: A cost at which no stick is emptied any more.
    """
    pieces = sorted(range(len(work.mid)), key=lambda piece: (-work.mid[piece], piece))
    # Where there is but one length to open, every rule opens that.
    rules = _rules(bars) if len(bars) > 1 else _rules(bars)[:1]
    starts = [
        first_packing(work, bars, pieces, rule, first_fit=first_fit)
        for rule in rules
        for first_fit in (False, True)
    ]
    best = min(starts, key=lambda packing: score(work, bars, packing))
    return _refilled(work, bars, best, refills, enough)


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
    pieces, opened = list(pieces), list(sticks)
    taken = [0] * len(bars)
    for stick in opened:
        taken[stick.bar] += 1
    shelf = _Shelf(work, bars, opened, pieces)
    limits = [(bar.room, bar.count) for bar in bars]
    unplaced: list[int] = []
    for piece in pieces:
        choice = shelf.first(piece) if first_fit else shelf.closest(piece)
        if choice is not None:
            shelf.put(*choice)
            continue
        alone = work.alone[piece]
        able = [
            number
            for number, (room, count) in enumerate(limits)
            if alone <= room and (count is None or taken[number] < count)
        ]
        if not able:
            unplaced.append(piece)
            continue
        number = min(able, key=lambda candidate: rule(bars[candidate], work.mid[piece]))
        taken[number] += 1
        shelf.put(len(opened), filled(work, number, [Place(piece, turned=False)]))
    return downsized(work, bars, Packing(tuple(opened), tuple(unplaced)))


class _Shelf:
    """Opened sticks, and those of them that may still take one of the pieces."""

    def __init__(
        self, work: Workload, bars: Sequence[Bar], opened: list[Filled], pieces: Sequence[int]
    ) -> None:
        self._work, self._opened = work, opened
        self._rooms = [bar.room for bar in bars]
        self._free = [self._rooms[stick.bar] - stick.used for stick in opened]
        self._least = min((work.least_more[piece] for piece in pieces), default=0)
        self._live = [index for index, free in enumerate(self._free) if free >= self._least]

    def first(self, piece: int) -> tuple[int, Filled] | None:
        """Return the first stick that holds the piece, with it."""
        found = ((index, self._tried(index, piece)) for index in self._able(piece))
        return next(((index, tried) for index, tried in found if tried is not None), None)

    def closest(self, piece: int) -> tuple[int, Filled] | None:
        """Return the stick of which the piece leaves least, with it; of such the first."""
        best: tuple[int, int, Filled] | None = None
        mid = self._work.mid[piece]
        for index in sorted(self._able(piece), key=self._free.__getitem__):
            if best is not None and self._free[index] - mid - self._work.most_lost > best[0]:
                break
            tried = self._tried(index, piece)
            if tried is not None:
                left = self._rooms[tried.bar] - tried.used
                if best is None or (left, index) < best[:2]:
                    best = (left, index, tried)
        return None if best is None else best[1:]

    def put(self, index: int, stick: Filled) -> None:
        """Put a stick with one piece more in its place, or a new one at the end."""
        free = self._rooms[stick.bar] - stick.used
        if index == len(self._opened):
            self._opened.append(stick)
            self._free.append(free)
            if free >= self._least:
                self._live.append(index)
            return
        self._opened[index], self._free[index] = stick, free
        if free < self._least:
            self._live.remove(index)

    def _able(self, piece: int) -> list[int]:
        least, free = self._work.least_more[piece], self._free
        return [index for index in self._live if free[index] >= least]

    def _tried(self, index: int, piece: int) -> Filled | None:
        return put_in(self._work, self._opened[index], piece, self._rooms[self._opened[index].bar])


def downsized(work: Workload, bars: Sequence[Bar], packing: Packing) -> Packing:
    """Return the packing with every stick changed for the cheapest length that holds its pieces."""
    if len(bars) == 1:
        return packing
    taken = [0] * len(bars)
    for stick in packing.sticks:
        taken[stick.bar] += 1
    able = ((bar.cost, bar.room, number) for number, bar in enumerate(bars))
    cheapest = [(room, number, bars[number].count) for _, room, number in sorted(able)]
    sticks = []
    for stick in packing.sticks:
        taken[stick.bar] -= 1
        number = stick.bar
        for room, able_number, count in cheapest:
            if stick.used <= room and (count is None or taken[able_number] < count):
                number = able_number
                break
        taken[number] += 1
        sticks.append(stick if number == stick.bar else Filled(number, stick.places, stick.used))
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


def _refilled(
    work: Workload, bars: Sequence[Bar], packing: Packing, refills: int, enough: int
) -> Packing:
    """Empty a few sticks, the worst filled first, and fill again; keep what isn't worse."""
    draw = random.Random(_SEED)
    rules, rooms = _rules(bars), [bar.room for bar in bars]
    best, worth = packing, score(work, bars, packing)
    for _ in range(refills):
        if not best.sticks or (worth[1] <= enough and not best.unplaced):
            break
        waste = [rooms[stick.bar] - stick.used + 1 for stick in best.sticks]
        emptied: set[int] = set()
        wanted = min(len(best.sticks), draw.randint(1, 4))
        for _ in range(_MOST_DRAWS):
            if len(emptied) >= wanted:
                break
            emptied.update(draw.choices(range(len(best.sticks)), weights=waste))
        else:
            # Beside sticks that are full to the hundredth the same few are drawn for ever.
            roomy = sorted(range(len(waste)), key=lambda index: -waste[index])
            emptied.update(roomy[:wanted])
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
