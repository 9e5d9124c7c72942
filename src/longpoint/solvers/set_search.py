"""Chooses sets from a list: first how many sticks of which length, then which sets.

Where every length has its price, what a plan costs hangs on how many sticks of which length are
taken, and the least cost of parts of sticks is missed by far. So the search branches on counts of
sticks first, always where the least cost may still be. Where a solution in parts takes whole
numbers of sticks, a dive looks for the sets; it mostly finds them at once, at that very cost. Only
what such dives leave open is branched on pairs of pieces, last.
"""

import bisect
import heapq
import itertools
import math
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.least_lengths import may_be_cut
from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.set_cuts import broken_cuts, shared_parts
from longpoint.solvers.set_dive import Taken, dived, is_whole
from longpoint.solvers.set_program import Relaxed, SetProgram
from longpoint.sticks.search.sets_to_choose import ChosenSets, SetChoice

if TYPE_CHECKING:
    from numpy.typing import NDArray

_OFF: Final = 1e-4
"""In steps: more than all small errors of a linear solution come to."""
_ROUNDS: Final = 20
_ROUNDS_LATE: Final = 2
_LIFT: Final = 0.02
"""In steps: cuts that lift the cost by less are the last ones, to begin with."""
_MOST_CUTS: Final = 120
_DIVE: Final = 70


@dataclass(frozen=True, slots=True)
class _Node:
    """A part of all choices.

    Attributes:
        allowed: Which sets may be used.
        lows: Least number of sticks of each length, and of all together.
        highs: Most of them.
        floor: No choice in it costs less. [steps]
        depth: How often it was branched.
        late: Whether pairs are branched on; it waits until no other is left.
    """

    allowed: "NDArray[Any]"
    lows: tuple[int, ...]
    highs: tuple[float, ...]
    floor: int
    depth: int
    late: bool = False

    @property
    def rounds(self) -> int:
        """How often cuts are looked for: of no use while numbers of sticks are in parts."""
        if not self.depth:
            return _ROUNDS
        return _ROUNDS_LATE if self.late else 0


class _Queue:
    """Nodes that are still to be looked at, the one first that may hold the cheapest choice."""

    def __init__(self, first: _Node) -> None:
        self._numbers = itertools.count()
        self._entries: list[tuple[bool, int, int, int, _Node]] = []
        self.add(first)

    def add(self, node: _Node) -> None:
        """Take in a node."""
        entry = (node.late, node.floor, -node.depth, next(self._numbers), node)
        heapq.heappush(self._entries, entry)

    def next(self) -> _Node | None:
        """Return the next node, and forget it."""
        return heapq.heappop(self._entries)[-1] if self._entries else None

    def floors(self) -> list[int]:
        """Return the floors of all nodes."""
        return [floor for _, floor, *_ in self._entries]


def choose_sets(choice: SetChoice) -> ChosenSets:
    """Return the best choice found within the limits, and what any choice costs at least."""
    if not choice.able:
        return ChosenSets(0, ())
    kept = _that_may_be_cut(choice)
    return _Search(choice, kept).run() if kept.any() else ChosenSets(choice.able[-1] + 1, ())


def _that_may_be_cut(choice: SetChoice) -> "NDArray[Any]":
    if choice.layout is not None:
        return may_be_cut(choice.patterns, choice.layout)
    every: NDArray[Any] = numpy_in_one_thread().ones(len(choice.patterns), dtype=bool)
    return every


class _Search:
    def __init__(self, choice: SetChoice, kept: "NDArray[Any]") -> None:
        self._numpy = numpy_in_one_thread()
        self._choice = choice
        self._program = SetProgram(choice, kept)
        self._able = list(choice.able)
        self._best: tuple[int, ...] = ()
        self._unsure = math.inf
        """Least cost at which it isn't known whether there is a choice."""
        self._alive = self._numpy.ones(len(self._program.names), dtype=bool)
        self._seen: dict[int, bool | None] = {}

    def run(self) -> ChosenSets:
        choice = self._choice
        most = [math.inf if limit is None else limit for limit in choice.limits]
        lows = (0,) * (len(most) + 1)
        queue = _Queue(_Node(self._alive, lows, (*most, math.inf), self._able[0], 0))
        nodes = choice.nodes
        while self._able and nodes > 0 and self._program.work < choice.work and not choice.stop():
            node = queue.next()
            if node is None:
                break
            if node.floor <= self._able[-1]:
                nodes -= 1
                for child in self._branched(node):
                    queue.add(child)
        dearest = self._able[-1] if self._able else -1
        floors = [floor for floor in queue.floors() if floor <= dearest]
        found = self._cost(self._best) if self._best else choice.able[-1] + 1
        return ChosenSets(int(min(found, self._unsure, *floors)), self._best)

    def _branched(self, node: _Node) -> list[_Node]:
        """What is left to look at of a node."""
        found = self._solved_with_cuts(node)
        if found is None:
            return []
        allowed, relaxed, floor = found
        if not node.depth and 2 * int(allowed.sum()) < len(allowed):
            return self._branched(self._smaller(node, allowed))
        children = self._by_sticks(node, allowed, relaxed, floor)
        if children:
            return children
        if not node.late:
            whole = dived(self._program, partial(self._solved, node), allowed, relaxed, _DIVE)
            if whole is not None:
                self._takes(whole)
            if not self._able or floor > self._able[-1]:
                return []
        children = self._by_pair(node, allowed, relaxed, floor) if self._choice.pairs else []
        if not children:
            self._unsure = min(self._unsure, floor)
        return children

    def _solved_with_cuts(self, node: _Node) -> "tuple[NDArray[Any], Relaxed, int] | None":
        """Sets that may still be used, a solution in parts and its floor; None: nothing is left."""
        allowed, rounds, before = node.allowed, node.rounds, -math.inf
        while True:
            relaxed = self._solved(node, allowed, {})
            floor = None if relaxed is None else self._next_able(relaxed.cost - _OFF)
            if relaxed is None or floor is None:
                return None
            if is_whole(relaxed):
                if not self._takes(relaxed):
                    self._unsure = min(self._unsure, floor)
                return None
            allowed = allowed & self._alive
            allowed &= relaxed.reduced <= self._able[-1] - relaxed.cost + _OFF
            slow = not node.late and relaxed.cost < before + _LIFT
            cuts = list[tuple[int, ...]]()
            if rounds > 0 and not slow and len(self._program.cuts) < _MOST_CUTS:
                cuts = broken_cuts(self._program, relaxed)
            if not cuts:
                return allowed, relaxed, floor
            rounds, before = rounds - 1, relaxed.cost
            self._program.add_cuts(cuts)

    def _solved(self, node: _Node, allowed: "NDArray[Any]", taken: Taken) -> Relaxed | None:
        """A solution in parts, of sets that can be cut, or of which nobody knows."""
        program, most = self._program, self._able[-1] + _OFF
        while all(self._alive[number] for number in taken):
            relaxed = program.solve(allowed & self._alive, node.lows, node.highs, most, taken)
            if relaxed is None or not self._drops_what_cannot_be_cut(relaxed):
                return relaxed
        return None

    def _smaller(self, node: _Node, allowed: "NDArray[Any]") -> _Node:
        """The same node, where only the sets are left that may be used in it."""
        self._program.keep(allowed)
        self._alive = self._numpy.ones(int(allowed.sum()), dtype=bool)
        return replace(node, allowed=self._alive)

    def _next_able(self, cost: float) -> int | None:
        place = bisect.bisect_left(self._able, cost)
        return self._able[place] if place < len(self._able) else None

    def _drops_what_cannot_be_cut(self, relaxed: Relaxed) -> bool:
        """Look at the sets used, and give up for good those that no order of their pieces fits."""
        names = self._program.names
        wrong = [n for n in relaxed.numbers.tolist() if self._cuttable(int(names[n])) is False]
        self._alive[wrong] = False
        return bool(wrong)

    def _cuttable(self, number: int) -> bool | None:
        if number not in self._seen:
            self._seen[number] = self._choice.can_be_cut(number)
        return self._seen[number]

    def _takes(self, relaxed: Relaxed) -> bool:
        """Take a solution in whole sets, unless nobody knows whether one of them can be cut."""
        numbers = [
            int(self._program.names[number])
            for number, value in zip(relaxed.numbers.tolist(), relaxed.values, strict=True)
            for _ in range(round(float(value)))
        ]
        cost = self._cost(numbers)
        if any(self._cuttable(number) is None for number in numbers):
            return False
        self._best = tuple(numbers)
        self._able = self._able[: bisect.bisect_left(self._able, cost)]
        return True

    def _cost(self, numbers: "tuple[int, ...] | list[int]") -> int:
        return sum(self._choice.costs[self._choice.patterns.bars[number]] for number in numbers)

    def _by_sticks(
        self, node: _Node, allowed: "NDArray[Any]", relaxed: Relaxed, floor: int
    ) -> list[_Node]:
        """Fewer, or more, sticks of the length of which there are parts nearest to a half."""
        numpy, lengths = self._numpy, len(self._choice.costs)
        bars = self._program.bars[relaxed.numbers]
        sticks = numpy.bincount(bars, weights=relaxed.values, minlength=lengths)
        sticks = numpy.append(sticks, relaxed.values.sum())
        off = abs(sticks - sticks.round())
        place = int(off.round(6).argmax())
        if off[place] < 1e-3:
            return []
        count = math.floor(sticks[place])
        highs = (*node.highs[:place], float(count), *node.highs[place + 1 :])
        lows = (*node.lows[:place], count + 1, *node.lows[place + 1 :])
        fewer = _Node(allowed, node.lows, highs, floor, node.depth + 1, late=node.late)
        more = _Node(allowed, lows, node.highs, floor, node.depth + 1, late=node.late)
        return [fewer, more] if sticks[place] - count > 0.5 else [more, fewer]

    def _by_pair(
        self, node: _Node, allowed: "NDArray[Any]", relaxed: Relaxed, floor: int
    ) -> list[_Node]:
        """Two pieces apart, or in one set."""
        numpy, held = self._numpy, self._program.held
        shared = shared_parts(self._program, relaxed)
        single = self._program.pieces == 1
        off = numpy.where(single[:, None] & single[None, :], shared, 0.0)
        off = numpy.minimum(off, 1.0 - off).round(6)
        one, other = numpy.unravel_index(int(off.argmax()), off.shape)
        if off[one, other] < 1e-3:
            return []
        apart = allowed & ~((held[one] > 0) & (held[other] > 0))
        together = allowed & ((held[one] > 0) == (held[other] > 0))
        depth = node.depth + 1
        return [
            _Node(sets, node.lows, node.highs, floor, depth, late=True)
            for sets in (together, apart)
        ]
