"""Chooses sets from a list: cuts, then branches on how many sticks of a length, then on pairs."""

import bisect
import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.set_cuts import broken_cuts, shared_parts
from longpoint.solvers.set_program import Relaxed, SetProgram
from longpoint.sticks.sets_to_choose import ChosenSets, SetChoice

if TYPE_CHECKING:
    from numpy.typing import NDArray

_OFF: Final = 1e-4
"""In steps: more than all small errors of a linear solution come to."""
_WHOLE: Final = 1e-5
_ROUNDS: Final = 20
_ROUNDS_BELOW: Final = 2
_MOST_CUTS: Final = 120


@dataclass(frozen=True, slots=True)
class _Node:
    """A part of all choices.

    Attributes:
        allowed: Which sets may be used.
        lows: Least number of sticks of each length, and of all together.
        highs: Most of them.
        floor: No choice in it costs less. [steps]
        depth: How often it was branched.
    """

    allowed: "NDArray[Any]"
    lows: tuple[int, ...]
    highs: tuple[float, ...]
    floor: int
    depth: int


def choose_sets(choice: SetChoice) -> ChosenSets:
    """Return the best choice found within the limits, and what any choice costs at least."""
    if not len(choice.patterns) or not choice.able:
        return ChosenSets(choice.able[-1] + 1 if choice.able else 0, ())
    return _Search(choice).run()


class _Search:
    def __init__(self, choice: SetChoice) -> None:
        self._numpy = numpy_in_one_thread()
        self._choice = choice
        self._program = SetProgram(choice)
        self._able = list(choice.able)
        self._best: tuple[int, ...] = ()
        self._unsure = math.inf
        """Least cost at which it isn't known whether there is a choice."""
        self._alive = self._numpy.ones(len(choice.patterns), dtype=bool)
        self._seen: dict[int, bool | None] = {}

    def run(self) -> ChosenSets:
        choice = self._choice
        most = [math.inf if limit is None else limit for limit in choice.limits]
        lows = (0,) * (len(most) + 1)
        first = _Node(self._alive, lows, (*most, math.inf), self._able[0], 0)
        stack, nodes = [first], choice.nodes
        while stack and self._able and nodes > 0 and self._program.work < choice.work:
            if choice.stop():
                break
            node = stack.pop()
            if node.floor > self._able[-1]:
                continue
            nodes -= 1
            stack += self._branched(node)
        dearest = self._able[-1] if self._able else -1
        floors = [node.floor for node in stack if node.floor <= dearest]
        found = self._cost(self._best) if self._best else choice.able[-1] + 1
        return ChosenSets(int(min(found, self._unsure, *floors)), self._best)

    def _branched(self, node: _Node) -> list[_Node]:
        """What is left to look at of a node, what is to be looked at first last."""
        rounds = _ROUNDS_BELOW if node.depth else _ROUNDS
        allowed = node.allowed
        while True:
            allowed = allowed & self._alive
            relaxed = self._program.solve(allowed, node.lows, node.highs, self._able[-1] + _OFF)
            if relaxed is None:
                return []
            floor = self._next_able(relaxed.cost - _OFF)
            if floor is None:
                return []
            if self._drops_what_cannot_be_cut(relaxed):
                continue
            if self._is_whole(relaxed):
                self._take(relaxed)
                return []
            allowed = allowed & (relaxed.reduced <= self._able[-1] - relaxed.cost + _OFF)
            if rounds <= 0 or len(self._program.cuts) >= _MOST_CUTS:
                break
            rounds -= 1
            cuts = broken_cuts(self._program, relaxed)
            if not cuts:
                break
            self._program.add_cuts(cuts)
        if not node.depth and 2 * int(allowed.sum()) < len(allowed):
            return self._branched(self._smaller(node, allowed))
        children = self._by_sticks(node, allowed, relaxed, floor)
        children = children or self._by_pair(node, allowed, relaxed, floor)
        if not children:
            self._unsure = min(self._unsure, floor)
        return children

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

    def _is_whole(self, relaxed: Relaxed) -> bool:
        return bool((abs(relaxed.values - relaxed.values.round()) < _WHOLE).all())

    def _take(self, relaxed: Relaxed) -> None:
        numbers = [
            int(self._program.names[number])
            for number, value in zip(relaxed.numbers.tolist(), relaxed.values, strict=True)
            for _ in range(round(float(value)))
        ]
        cost = self._cost(numbers)
        if any(self._cuttable(number) is None for number in numbers):
            self._unsure = min(self._unsure, cost)
            return
        self._best = tuple(numbers)
        self._able = self._able[: bisect.bisect_left(self._able, cost)]

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
        fewer = _Node(allowed, node.lows, highs, floor, node.depth + 1)
        more = _Node(allowed, lows, node.highs, floor, node.depth + 1)
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
        return [
            _Node(apart, node.lows, node.highs, floor, node.depth + 1),
            _Node(together, node.lows, node.highs, floor, node.depth + 1),
        ]
