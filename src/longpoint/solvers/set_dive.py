"""From sets in parts to whole sets: what is wanted most is taken, and the rest solved again."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from longpoint.solvers.one_thread import numpy_in_one_thread
from longpoint.solvers.set_program import Relaxed, SetProgram

if TYPE_CHECKING:
    from numpy.typing import NDArray

WHOLE: Final = 1e-5
_LIKELY: Final = 0.7
"""Sets wanted so much are taken together with the one that is wanted most."""

Taken = Mapping[int, int]
"""Sets that are used at least so often."""
Solve = Callable[["NDArray[Any]", Taken], Relaxed | None]
"""Solves with some sets only, of which some are taken at least so often."""


@dataclass(frozen=True, slots=True)
class _Way:
    """Sets that may still be used, and those that are taken."""

    allowed: "NDArray[Any]"
    taken: Taken


def is_whole(relaxed: Relaxed) -> bool:
    """Tell whether no set is used in part."""
    return bool((abs(relaxed.values - relaxed.values.round()) < WHOLE).all())


def dived(
    program: SetProgram, solve: Solve, allowed: "NDArray[Any]", relaxed: Relaxed, tries: int
) -> Relaxed | None:
    """Return a solution in whole sets, or None where none was found.

    Args:
        program: Knows what the sets hold.
        solve: Solves it; None where there is no solution.
        allowed: Which sets may be used.
        relaxed: A solution with these.
        tries: How often it may be solved. Where a way leads nowhere, the set that was taken last
            is barred, and so on back; after half of the tries the one that was taken first.
    """
    ways = list[_Way]()
    found: Relaxed | None = relaxed
    way = _Way(allowed, {})
    for tried in range(tries + 1):
        if found is not None and is_whole(found):
            return found
        if found is not None:
            ways += _ways_on(program, way, found)
        if not ways or tried == tries:
            break
        if tried == tries // 2:
            # Enough of the last choices: go another way from the first one on.
            del ways[1:]
        way = ways.pop()
        found = solve(way.allowed, way.taken)
    return None


def _ways_on(program: SetProgram, way: _Way, found: Relaxed) -> list[_Way]:
    """Without the set that is wanted most, where it is wanted once; and with it."""
    wanted = _wanted_most(program, found, way.taken)
    most = next(iter(wanted))
    ways = list[_Way]()
    if wanted[most] == 1:
        without = way.allowed.copy()
        without[most] = False
        ways.append(_Way(without, way.taken))
    taken = {**way.taken, **wanted}
    ways.append(_Way(_that_fit_beside(program, way.allowed, taken), taken))
    return ways


def _wanted_most(program: SetProgram, relaxed: Relaxed, taken: Taken) -> dict[int, int]:
    """The set used in the largest part, and others that are all but whole, with how often."""
    numpy = numpy_in_one_thread()
    whole = numpy.floor(relaxed.values + WHOLE)
    parts = (relaxed.values - whole).round(6)
    left = _left(program, taken)
    wanted = dict[int, int]()
    for place in numpy.argsort(-parts, kind="stable").tolist():
        if wanted and parts[place] < _LIKELY:
            break
        number = int(relaxed.numbers[place])
        count = int(whole[place]) + 1
        needed = program.held[:, number].astype(int) * (count - taken.get(number, 0))
        if not wanted or (needed <= left).all():
            wanted[number] = count
            left = left - needed
    return wanted


def _that_fit_beside(program: SetProgram, allowed: "NDArray[Any]", taken: Taken) -> "NDArray[Any]":
    """Those of the sets that can be cut of what is left beside some that are taken; and these."""
    numpy, left = numpy_in_one_thread(), _left(program, taken)
    fewer = left < program.pieces
    able = numpy.nonzero(allowed)[0]
    able = able[(program.held[numpy.ix_(fewer, able)] <= left[fewer][:, None]).all(axis=0)]
    fitting: NDArray[Any] = numpy.zeros_like(allowed)
    fitting[able] = True
    fitting[list(taken)] = True
    return fitting


def _left(program: SetProgram, taken: Taken) -> "NDArray[Any]":
    """How many pieces of each group are in none of the sets that are taken."""
    left: NDArray[Any] = program.pieces.copy()
    for number, count in taken.items():
        left -= program.held[:, number].astype(int) * count
    return left
