"""Sticks cut after a pattern, from pieces that are about as long as it says.

With thousands of pieces hardly two are alike, and hardly a pattern can be cut twice to the letter.
So each is taken as a hint: for every length the nearest piece that is left, then one piece changed
for a little longer or shorter one, while that makes the stick worth more. What pieces are worth
comes with the pattern: a stick that is worth what it costs takes nothing from the rest of the plan.
"""

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Final

from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Part
from longpoint.sticks.lay.fit import Filled
from longpoint.sticks.lay.laying import Place, Workload, used_length

_TRIED: Final = 12
"""Pieces tried in the place of one: so many shorter, and so many longer ones."""
_CHANGES: Final = 4

_Kind = tuple[int, int, bool]
"""Classes of the two ends, and whether it may be turned."""


class NearLengths:
    """Pieces that are left, by their lengths.

    Args:
        work: The pieces.
        many: What they ask, by group.
        prices: What they are worth, by group. [steps]
        groups: The pieces of each group.
    """

    def __init__(
        self,
        work: Workload,
        many: ManyPieces,
        prices: Sequence[float],
        groups: Sequence[Sequence[int]],
    ) -> None:
        self._work, self._many, self._groups = work, many, groups
        self._price = {piece: prices[n] for n, group in enumerate(groups) for piece in group}
        self._kind: dict[int, _Kind] = {
            piece: self._kind_of(n) for n, group in enumerate(groups) for piece in group
        }
        self._left: dict[_Kind, list[tuple[int, int]]] = {}
        for piece, kind in self._kind.items():
            self._left.setdefault(kind, []).append((work.mid[piece], piece))
        for pieces in self._left.values():
            pieces.sort()

    def cut(self, part: Part, room: int, worth: float, full: float) -> Filled | None:
        """Return a stick with about these pieces and take them away, None where none is worth it.

        Args:
            part: The pattern.
            room: What the stick holds. [0.01 mm]
            worth: What its pieces must be worth at least. [steps]
            full: From what they are worth on no better ones are looked for. [steps]
        """
        places = self._nearest(part)
        for _ in range(_CHANGES):
            if self._worth(places) >= full and used_length(self._work, places) <= room:
                break
            better = self._changed(places, room)
            if better is None:
                break
            places = better
        used = used_length(self._work, places)
        if len(places) < len(part.pieces) or used > room or self._worth(places) < worth:
            for place in places:
                self._put_back(place.piece)
            return None
        return Filled(part.bar, places, used)

    def _kind_of(self, group: int) -> _Kind:
        many = self._many
        return many.lefts[group], many.rights[group], many.can_turn[group]

    def _nearest(self, part: Part) -> tuple[Place, ...]:
        """The nearest pieces; fewer where there are too few of a kind."""
        found = list[Place]()
        for group, turned in part.pieces:
            near = self._near(self._kind_of(group), self._work.mid[self._groups[group][0]])
            if near:
                self._take(near[0])
                found.append(Place(near[0], turned))
        return tuple(found)

    def _changed(self, places: tuple[Place, ...], room: int) -> tuple[Place, ...] | None:
        """The stick with a piece or two changed, so that it is worth more, or less too long."""
        used = used_length(self._work, places)
        worth, best = self._worth(places), None
        rank = (max(0, used - room), -worth)
        for tried in self._others(places, room - used):
            tried_worth = self._worth(tried)
            if rank[0] == 0 and -tried_worth >= rank[1]:
                continue
            tried_rank = (max(0, used_length(self._work, tried) - room), -tried_worth)
            if tried_rank < rank:
                best, rank = tried, tried_rank
        if best is None:
            return None
        for old, new in zip(places, best, strict=True):
            if old.piece != new.piece:
                self._take(new.piece)
                self._put_back(old.piece)
        return best

    def _others(self, places: tuple[Place, ...], free: int) -> Iterator[tuple[Place, ...]]:
        """Yield the stick with a piece changed for one that fills it, and with two changed."""
        mid = self._work.mid
        for at, (piece, turned) in enumerate(places):
            for one in self._near(self._kind[piece], mid[piece] + free):
                yield (*places[:at], Place(one, turned), *places[at + 1 :])
        for at, behind in combinations(range(len(places)), 2):
            (piece, turned), (second, its_turn) = places[at], places[behind]
            for one in self._near(self._kind[piece], mid[piece]):
                other = self._below(self._kind[second], mid[second] + free + mid[piece] - mid[one])
                if other is not None and other != one:
                    changed = list(places)
                    changed[at], changed[behind] = Place(one, turned), Place(other, its_turn)
                    yield tuple(changed)

    def _worth(self, places: Sequence[Place]) -> float:
        return sum(self._price[place.piece] for place in places)

    def _near(self, kind: _Kind, length: int) -> list[int]:
        """Pieces that are about as long, the nearest first."""
        left = self._left.get(kind, [])
        at = bisect_left(left, (length, -1))
        near = left[max(0, at - _TRIED) : at + _TRIED]
        return [piece for _, piece in sorted(near, key=lambda pair: abs(pair[0] - length))]

    def _below(self, kind: _Kind, length: int) -> int | None:
        """The longest piece that is no longer."""
        left = self._left.get(kind, [])
        at = bisect_left(left, (length + 1, -1))
        return left[at - 1][1] if at else None

    def _take(self, piece: int) -> None:
        left = self._left[self._kind[piece]]
        del left[bisect_left(left, (self._work.mid[piece], piece))]

    def _put_back(self, piece: int) -> None:
        left, entry = self._left[self._kind[piece]], (self._work.mid[piece], piece)
        left.insert(bisect_left(left, entry), entry)
