"""The least length that each of many sets of pieces uses on a stick, all of them at once.

It is what `longpoint.sticks.lay.ordering` finds for one set: the best of all orders and turns. Of
the sets that fill a stick best, which a search uses first, many are too long by some tenths once
they are laid out; one by one a hundred thousand of them took minutes.

References:
    Shortest ways through all sub-sets: Held and Karp (1962), Journal of SIAM 10(1).
"""

from dataclasses import dataclass
from itertools import product
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.sticks.lay.laying import Place, Workload, tip
from longpoint.sticks.search.patterns import Layout, PatternList

if TYPE_CHECKING:
    from numpy.typing import NDArray

MOST_PIECES: Final = 7
"""Of a longer set all orders take too long."""
_AT_ONCE: Final = 8192
_BARRED: Final = 1 << 26
"""Longer than any stick, and some of them together still a small number. [0.01 mm]"""


@dataclass(frozen=True, slots=True)
class _Ends:
    """Ends of pieces, as not turned and turned, left and right. [0.01 mm]

    Attributes:
        leans: Leans, shape (turns, 2, ...).
        kerfs: Cuts along the stick, likewise.
        tips: What they take at the end of a stick, likewise.
        barred: Much for pieces that must not be turned, shape (turns, ...).
    """

    leans: "NDArray[Any]"
    kerfs: "NDArray[Any]"
    tips: "NDArray[Any]"
    barred: "NDArray[Any]"

    def of(self, pieces: "NDArray[Any]") -> "_Ends":
        """Return those of some pieces."""
        return _Ends(
            *(part[..., pieces] for part in (self.leans, self.kerfs, self.tips, self.barred))
        )


def may_be_cut(patterns: PatternList, layout: Layout) -> "NDArray[Any]":
    """Tell of each pattern whether its pieces fit its stick in some order; of too many pieces: yes.

    Args:
        patterns: The patterns.
        layout: Their pieces and lengths.
    """
    numpy = numpy_in_one_thread()
    firsts = numpy.array([group[0] for group in layout.groups], dtype=numpy.int32)
    pieces = firsts[numpy.array(patterns.sets.numbers, dtype=numpy.int64)]
    starts = numpy.array(patterns.sets.starts, dtype=numpy.int64)
    rooms = numpy.array([bar.room for bar in layout.bars])[numpy.array(patterns.bars)]
    sizes = numpy.diff(starts)
    may: NDArray[Any] = numpy.ones(len(patterns), dtype=bool)
    for size in range(1, MOST_PIECES + 1):
        places = numpy.nonzero(sizes == size)[0]
        sets = pieces[starts[places][:, None] + numpy.arange(size)]
        may[places] = least_lengths(layout.work, sets) <= rooms[places]
    return may


def least_lengths(work: Workload, sets: "NDArray[Any]") -> "NDArray[Any]":
    """Return the least length of each set, from its first point to its last. [0.01 mm]

    Args:
        work: The pieces.
        sets: Numbers of the pieces, shape (sets, pieces of each), 1 to `MOST_PIECES` of each.
    """
    numpy, ends = numpy_in_one_thread(), _ends(work)
    mid = numpy.array(work.mid, dtype=numpy.int32)
    found: NDArray[Any] = numpy.empty(len(sets), dtype=numpy.int32)
    for first in range(0, len(sets), _AT_ONCE):
        pieces = sets[first : first + _AT_ONCE].T
        found[first : first + _AT_ONCE] = mid[pieces].sum(axis=0) + _least_lost(ends.of(pieces))
    return found


def _least_lost(ends: _Ends) -> "NDArray[Any]":
    """What joints and points take at least, of sets whose pieces are the rows."""
    numpy = numpy_in_one_thread()
    turns, size = ends.barred.shape[:2]
    stops = [*product(range(turns), range(size))]
    joints = {
        (one, other): _joint(ends, one, other)
        for one, other in product(stops, stops)
        if one[1] != other[1]
    }
    ways = {
        (1 << place, (turn, place)): ends.tips[turn, 0, place] + ends.barred[turn, place]
        for turn, place in stops
    }
    for _ in range(1, size):
        longer: dict[tuple[int, tuple[int, int]], NDArray[Any]] = {}
        for (taken, last), lost in ways.items():
            for stop in stops:
                if taken >> stop[1] & 1:
                    continue
                now, here = (taken | 1 << stop[1], stop), lost + joints[last, stop]
                known = longer.get(now)
                longer[now] = here if known is None else numpy.minimum(known, here, out=known)
        ways = longer
    whole = [lost + ends.tips[turn, 1, place] for (_, (turn, place)), lost in ways.items()]
    least: NDArray[Any] = numpy.min(whole, axis=0)
    return least


def _joint(ends: _Ends, one: tuple[int, int], other: tuple[int, int]) -> "NDArray[Any]":
    """What lies between a piece and the one behind it; see `longpoint.sticks.lay.laying.gap`."""
    numpy = numpy_in_one_thread()
    (turn, place), (other_turn, other_place) = one, other
    cut = numpy.maximum(ends.kerfs[turn, 1, place], ends.kerfs[other_turn, 0, other_place])
    apart = abs(ends.leans[turn, 1, place] - ends.leans[other_turn, 0, other_place])
    joint: NDArray[Any] = cut + apart + ends.barred[other_turn, other_place]
    return joint


def _ends(work: Workload) -> _Ends:
    numpy, pieces = numpy_in_one_thread(), range(len(work.mid))
    turns = (False, True) if any(work.can_turn) else (False,)
    lying = [[work.ends(Place(piece, turned)) for piece in pieces] for turned in turns]
    # From (turns, pieces, sides, lean and kerf).
    leans, kerfs = numpy.array(lying, dtype=numpy.int32).transpose(3, 0, 2, 1)
    tips = numpy.array([tip(lean) for lean in leans.flat], dtype=numpy.int32)
    may = numpy.array(work.can_turn, dtype=bool)
    barred = [numpy.where(may | (not turned), 0, _BARRED) for turned in turns]
    return _Ends(leans, kerfs, tips.reshape(leans.shape), numpy.array(barred, dtype=numpy.int32))
