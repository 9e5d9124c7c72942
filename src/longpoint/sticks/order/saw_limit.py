"""How seldom the saw can be set anew at best, whatever the order of sticks.

A profile of few sticks is gone through in every order. Of others every stick has its least changes
alone; and from stick to stick the saw stays as it is where the last setting of one is the first of
the next: no oftener than two sums allow.

Matching: last ends are paired with first ends, each once, where one stick may follow the other.

Weighing: each setting s has a weight 0 <= w <= 1. There are no more such joints at s than last
ends, nor than first ends, so no more than w x last ends + (1 - w) x first ends. Summed over all
settings: no more than each stick's best of w(last) + 1 - w(first), less its changes above its
least. Any weights give a limit, good ones a low one; it is the dual of sharing out the settings of
first and last ends.
"""

import math
from collections.abc import Callable, Mapping, Sequence, Set
from typing import Final

from longpoint.sticks.order.matching import most_pairs
from longpoint.sticks.order.stick_ways import Cuttable, Setting, Ways, in_turn

_MOST_TO_MATCH: Final = 200
"""Sticks of a profile up to which joints are matched; the limit is weaker beyond."""
_MOST_STATES: Final = 400
"""Beginnings that cut the same sticks, up to which every order of a profile is gone through."""
_WEIGHTS: Final = (0.5, 0.0, 0.25, 0.75, 1.0)
_PASSES: Final = 3
_ROUNDING: Final = 1e-6

_Joint = Setting | None
"""Setting at which one profile goes over into the next without a change; None: with one."""
_Within = Callable[[_Joint, _Joint], int]
"""Least changes within a profile that is entered and left without a change at these settings."""


def fewest_changes(profiles: Sequence[Sequence[Cuttable]], about_mm: float) -> int:
    """Return how often the saw is set anew at least.

    Args:
        profiles: The sticks of each profile, biggest first, profiles in the order of sawing.
        about_mm: A stick may be cut before one whose biggest piece is longer by this. >= 0. [mm]
    """
    profiles = [sticks for sticks in profiles if sticks]
    firsts = [*(_ends(sticks, at_first=True) for sticks in profiles), ()]
    # The first setting of all is no change, so it is met without one.
    least: dict[_Joint, int] = {None: -1}
    for sticks, following in zip(profiles, firsts[1:], strict=True):
        within = _every_order(sticks, about_mm) or _summed(sticks, about_mm)
        shared = [each for each in _ends(sticks, at_first=False) if each in following]
        least = {
            after: min(
                changes + (before is None) + within(before, after)
                for before, changes in least.items()
            )
            for after in (None, *shared)
        }
    return max(0, min(least.values()))


def _every_order(sticks: Sequence[Cuttable], about_mm: float) -> _Within | None:
    """The least changes by going through every order; None where these are too many."""
    if not all(stick.ways.are_all for stick in sticks):
        return None
    layer: dict[tuple[int, _Joint, _Joint], int] = {(0, None, None): 0}
    for _ in sticks:
        following: dict[tuple[int, _Joint, _Joint], int] = {}
        for (cut, first, last), changes in layer.items():
            for n in in_turn(sticks, cut, about_mm):
                for way in sticks[n].ways.ways:
                    key = (cut | 1 << n, way.first if first is None else first, way.last)
                    found = changes + way.changes + (last is not None and last != way.first)
                    following[key] = min(found, following.get(key, found))
        if len(following) > _MOST_STATES:
            return None
        layer = following
    ends = {(first, last): changes for (_, first, last), changes in layer.items()}

    def within(before: _Joint, after: _Joint) -> int:
        able = (
            changes
            for (first, last), changes in ends.items()
            if before in (None, first) and after in (None, last)
        )
        # Where it can't be so at all, nothing is gained by it.
        return min(able, default=min(ends.values()) + 2)

    return within


def _summed(sticks: Sequence[Cuttable], about_mm: float) -> _Within:
    """The least changes by sums."""
    weights = _weights(sticks)
    whole = sum(_worth(stick, weights) for stick in sticks)
    cap = min(len(sticks) - 1, _most_matched(sticks, about_mm))
    alone = sum(stick.ways.least for stick in sticks) + len(sticks) - 1

    def within(before: _Joint, after: _Joint) -> int:
        # An end that serves the joint to another profile serves none within.
        joints = whole - (0.0 if before is None else 1.0 - weights[before])
        joints -= 0.0 if after is None else weights[after]
        return alone - min(cap, math.floor(joints + _ROUNDING))

    return within


def _weights(sticks: Sequence[Cuttable]) -> dict[Setting, float]:
    """Weights of the settings under which the sum is low: each in turn the best of a few."""
    having: dict[Setting, list[Cuttable]] = {}
    for stick in sticks:
        for setting in stick.ways.ends:
            having.setdefault(setting, []).append(stick)
    weights = dict.fromkeys(having, _WEIGHTS[0])
    # Those of most sticks first; of others as they come, which is the same every time.
    in_turn = sorted(having, key=lambda setting: -len(having[setting]))
    for _ in range(_PASSES):
        for setting in in_turn:
            sums = []
            for weight in _WEIGHTS:
                weights[setting] = weight
                sums.append(sum(_worth(stick, weights) for stick in having[setting]))
            weights[setting] = _WEIGHTS[sums.index(min(sums))]
    return weights


def _worth(stick: Cuttable, weights: Mapping[Setting, float]) -> float:
    """What a stick adds at most to the joints without a change, less its changes more."""
    ways = stick.ways
    if not ways.are_all:
        ends = [weights[setting] for setting in ways.ends]
        return max(ends) + 1.0 - min(ends)
    return max(
        weights[way.last] + 1.0 - weights[way.first] - (way.changes - ways.least)
        for way in ways.ways
    )


def _most_matched(sticks: Sequence[Cuttable], about_mm: float) -> int:
    """At most so many joints without a change, less the changes more that they cost their sticks.

    A stick with a change more than its least gains two joints by it at most, so half a change may
    be charged to each. A joint then counts two halves less one for each side whose setting no best
    way of its stick has; and joints of two halves and of one are no more than the most pairs with
    both, and the most pairs with one or both, half of each.
    """
    if len(sticks) > _MOST_TO_MATCH:
        return len(sticks) - 1
    follows = _may_follow(sticks, about_mm)
    first = [_settings(stick, at_first=True) for stick in sticks]
    last = [_settings(stick, at_first=False) for stick in sticks]
    best = [[m for m in after if last[n][0] & first[m][0]] for n, after in enumerate(follows)]
    fair = [
        [m for m in after if last[n][0] & first[m][1] or last[n][1] & first[m][0]]
        for n, after in enumerate(follows)
    ]
    return (most_pairs(best) + most_pairs(fair)) // 2


def _settings(stick: Cuttable, *, at_first: bool) -> tuple[Set[Setting], Set[Setting]]:
    """The settings that a stick's best ways have at one end, and those of all its ways."""
    ways = stick.ways
    every = frozenset(_all_ends(ways, at_first=at_first))
    if not ways.are_all:
        return every, every
    best = [way for way in ways.ways if way.changes == ways.least]
    return frozenset(way.first if at_first else way.last for way in best), every


def _ends(sticks: Sequence[Cuttable], *, at_first: bool) -> tuple[Setting, ...]:
    """All settings that any stick may have at one end, in the order in which they come."""
    return tuple(
        dict.fromkeys(
            setting for stick in sticks for setting in (_all_ends(stick.ways, at_first=at_first))
        )
    )


def _all_ends(ways: Ways, *, at_first: bool) -> tuple[Setting, ...]:
    if not ways.are_all:
        return ways.ends
    return tuple(way.first if at_first else way.last for way in ways.ways)


def _may_follow(sticks: Sequence[Cuttable], about_mm: float) -> list[list[int]]:
    """For each stick those that may be the next; the sticks stand biggest first.

    A bigger one may not be too much bigger. Before a smaller one all must be cut that are too much
    bigger than that, and of these the ones much smaller than the first can't be cut yet.
    """
    sizes_mm = [stick.biggest_mm for stick in sticks]
    found = []
    for n, size_mm in enumerate(sizes_mm):
        much_smaller = [mm for mm in sizes_mm if mm < size_mm - about_mm]
        between_mm = max(much_smaller, default=-math.inf)
        found.append(
            [
                m
                for m, other_mm in enumerate(sizes_mm)
                if m != n and other_mm <= size_mm + about_mm and between_mm <= other_mm + about_mm
            ]
        )
    return found
