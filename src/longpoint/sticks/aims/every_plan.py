"""Every plan of a few pieces: the fewest new sticks of the least cost, and the longest offcut then.

A subset of the pieces is laid in every order once; then every way to share the pieces out is looked
at by subsets, and of those that take the same pieces only what no other betters goes on.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.lay.bars import Bar
from longpoint.sticks.lay.fit import Filled, Packing, cost_of
from longpoint.sticks.lay.laying import Place, Workload, gap, tip, used_length, workload
from longpoint.sticks.plan import StickSource

MOST_PIECES: Final = 7
MOST_COUNTED: Final = 3
"""Lengths of which there are only so many, up to which every plan is looked at."""

_End = tuple[int, int]


@dataclass(frozen=True, slots=True)
class EveryPlan:
    """The best of all plans.

    Attributes:
        packing: The pieces on their sticks.
        sticks: No plan of that cost opens fewer new sticks.
        longest: No plan of that cost and with so few new sticks leaves a longer offcut. [0.01 mm]
    """

    packing: Packing
    sticks: int
    longest: int


@dataclass(frozen=True, slots=True)
class _Layings:
    """Two layings of some pieces: that which uses least, and that which leaves most behind."""

    shortest: tuple[Place, ...]
    used: int
    roomiest: tuple[Place, ...]
    taken: int
    """Length used by `roomiest`, its last cut included."""


@dataclass(frozen=True, slots=True)
class _Share:
    """Some pieces on sticks: the last of them, and those before."""

    cost: int
    new: int
    counted: tuple[int, ...]
    stick: tuple[int, int] = (0, 0)
    """Its pieces as bits, and the number of its length."""
    before: "_Share | None" = None

    def betters(self, other: "_Share") -> bool:
        return (
            self.cost <= other.cost
            and self.new <= other.new
            and all(a <= b for a, b in zip(self.counted, other.counted, strict=True))
        )


def every_plan(work: Workload, bars: Sequence[Bar], packing: Packing) -> EveryPlan | None:
    """Return the best plan that costs no more than one that is known; None for many pieces.

    Args:
        work: The pieces.
        bars: The lengths.
        packing: A packing of all pieces.
    """
    counted = [number for number, bar in enumerate(bars) if bar.count is not None]
    if len(work.mid) > MOST_PIECES or len(counted) > MOST_COUNTED or packing.unplaced:
        return None
    layings = _layings(work, max(bar.room for bar in bars))
    search = _Search(bars, counted, layings, cost_of(bars, packing))
    shares = search.shares()
    every = (1 << len(work.mid)) - 1
    if not shares[every]:
        return None
    cost, new = min((share.cost, share.new) for share in shares[every])
    longest: tuple[int, int, int, _Share] | None = None
    for part, laying in layings.items():
        for number, bar in search.able(laying.taken):
            left = bar.room - laying.taken
            if longest is not None and left <= longest[0]:
                continue
            for rest in shares[every ^ part]:
                with_it = search.with_stick(rest, part, number)
                if with_it is not None and with_it.cost <= cost and with_it.new <= new:
                    longest = (left, part, number, rest)
                    break
    if longest is None:
        best = min(shares[every], key=lambda share: (share.cost, share.new))
        return EveryPlan(_packing(work, layings, best), new, 0)
    left, part, number, rest = longest
    places = layings[part].roomiest
    roomiest = Filled(number, places, used_length(work, places))
    found = _packing(work, layings, rest)
    return EveryPlan(Packing((*found.sticks, roomiest)), new, left)


def roomiest(work: Workload, pieces: Sequence[int], room: int) -> tuple[Place, ...] | None:
    """Return how pieces lie on a stick that most is left behind its last cut; None: they don't fit.

    Args:
        work: The pieces of the profile.
        pieces: Those on the stick, `MOST_PIECES` at most.
        room: What the stick has between the trims. [0.01 mm]
    """
    alone = workload([work.demands[piece] for piece in pieces])
    laying = _layings(alone, room).get((1 << len(pieces)) - 1)
    if laying is None:
        return None
    return tuple(Place(pieces[place.piece], place.turned) for place in laying.roomiest)


class _Search:
    """Ways to share pieces out, cost and counts of the lengths kept."""

    def __init__(
        self, bars: Sequence[Bar], counted: Sequence[int], layings: dict[int, _Layings], most: int
    ) -> None:
        self._bars, self._counted, self._most = bars, list(counted), most
        self._layings = layings
        self._pieces = max(layings).bit_length() if layings else 0

    def shares(self) -> list[list[_Share]]:
        """Return, for each subset as bits, the ways to put it on sticks that none betters."""
        found: list[list[_Share]] = [[_Share(0, 0, (0,) * len(self._counted))]]
        for pieces in range(1, 1 << self._pieces):
            kept: list[_Share] = []
            for part in _parts(pieces):
                laying = self._layings.get(part)
                if laying is None:
                    continue
                for number in self._worth(laying.used):
                    for rest in found[pieces ^ part]:
                        share = self.with_stick(rest, part, number)
                        if share is None or any(other.betters(share) for other in kept):
                            continue
                        kept = [other for other in kept if not share.betters(other)] + [share]
            found.append(kept)
        return found

    def able(self, used: int) -> list[tuple[int, Bar]]:
        """Return the lengths that hold so much."""
        return [(number, bar) for number, bar in enumerate(self._bars) if used <= bar.room]

    def with_stick(self, rest: _Share, part: int, number: int) -> _Share | None:
        """Return what a share is with one stick more; None where that costs or counts too much."""
        bar = self._bars[number]
        cost = rest.cost + bar.cost
        if cost > self._most:
            return None
        counted = rest.counted
        if bar.count is not None:
            place = self._counted.index(number)
            if counted[place] >= bar.count:
                return None
            counted = (*counted[:place], counted[place] + 1, *counted[place + 1 :])
        new = rest.new + (bar.source is StickSource.STOCK)
        return _Share(cost, new, counted, (part, number), rest)

    def _worth(self, used: int) -> list[int]:
        """The cheapest length there is any number of, and all the counted ones."""
        able = self.able(used)
        free = [(bar.cost, number) for number, bar in able if bar.count is None]
        cheapest = [min(free)[1]] if free else []
        return cheapest + [number for number, bar in able if bar.count is not None]


def _parts(pieces: int) -> Iterator[int]:
    """Yield the subsets that hold the first of the pieces."""
    first = pieces & -pieces
    others = part = pieces ^ first
    while True:
        yield part | first
        if not part:
            return
        part = (part - 1) & others


def _layings(work: Workload, most_room: int) -> dict[int, _Layings]:
    """The layings of each subset that fits on any stick, by its pieces as bits."""
    turns = [
        Place(piece, turned)
        for piece in range(len(work.mid))
        for turned in ((False, True) if work.can_turn[piece] else (False,))
    ]
    layer: dict[tuple[int, _End], tuple[int, tuple[Place, ...]]] = {}
    found: dict[int, _Layings] = {}
    for place in turns:
        left, right = work.ends(place)
        _keep(layer, (1 << place.piece, right), work.mid[place.piece] + tip(left[0]), (place,))
    while layer:
        following: dict[tuple[int, _End], tuple[int, tuple[Place, ...]]] = {}
        for (pieces, end), (used, places) in layer.items():
            _note(found, pieces, end, used, places, most_room)
            for place in turns:
                if pieces >> place.piece & 1:
                    continue
                left, right = work.ends(place)
                more = used + work.mid[place.piece] + gap(end, left)
                if more <= most_room:
                    key = (pieces | 1 << place.piece, right)
                    _keep(following, key, more, (*places, place))
        layer = following
    return found


def _keep(
    layer: dict[tuple[int, _End], tuple[int, tuple[Place, ...]]],
    key: tuple[int, _End],
    used: int,
    places: tuple[Place, ...],
) -> None:
    known = layer.get(key)
    if known is None or used < known[0]:
        layer[key] = (used, places)


def _note(
    found: dict[int, _Layings],
    pieces: int,
    end: _End,
    before: int,
    places: tuple[Place, ...],
    most_room: int,
) -> None:
    """Note how much of a stick the subset uses when it ends so."""
    used = before + tip(end[0])
    if used > most_room:
        return
    known = found.get(pieces)
    taken = used + end[1]
    if known is None:
        found[pieces] = _Layings(places, used, places, taken)
        return
    shortest = (places, used) if used < known.used else (known.shortest, known.used)
    roomiest = (places, taken) if taken < known.taken else (known.roomiest, known.taken)
    found[pieces] = _Layings(*shortest, *roomiest)


def _packing(work: Workload, layings: dict[int, _Layings], share: _Share) -> Packing:
    sticks = []
    at: _Share | None = share
    while at is not None and at.before is not None:
        part, number = at.stick
        sticks.append(Filled(number, layings[part].shortest, layings[part].used))
        at = at.before
    return Packing(tuple(reversed(sticks)))
