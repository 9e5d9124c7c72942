"""The order of sticks, and of their pieces, in which the saw is set anew least often.

The sticks of a profile stay together, and none waits for one whose biggest piece is much shorter.
The search goes stick by stick and keeps the best of those beginnings that have cut the same sticks
and stand at the same setting: a shortest path, exact while no beginning has to be dropped. What no
order can better comes from `longpoint.sticks.order.saw_limit`.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.sticks.order.saw_limit import fewest_changes
from longpoint.sticks.order.stick_ways import Cuttable, Setting, Way, in_turn

KEPT: Final = 24
"""Beginnings that are kept from one stick to the next; fewer where there are very many sticks."""
_MOST_LOOKED_AT: Final = 40
"""Sticks, biggest first, of which the next one is chosen."""
_MOST_TO_DO: Final = 4800
"""Beginnings kept, times sticks: a builder's batch isn't to wait for its order."""


@dataclass(frozen=True, slots=True)
class SawSequence:
    """An order for all sticks of a house.

    Attributes:
        profiles: For each profile the number of each stick and its way, in the order of sawing.
        changes: How often the saw is set anew.
        limit: What no order of these sticks, and of the pieces on them, can better.
    """

    profiles: tuple[tuple[tuple[int, Way], ...], ...]
    changes: int
    limit: int


@dataclass(frozen=True, slots=True)
class _Beginning:
    changes: int
    before: "_Beginning | None" = None
    stick: int = -1
    way: Way | None = None


def saw_sequence(
    profiles: Sequence[Sequence[Cuttable]], about_mm: float, kept: int = KEPT
) -> SawSequence:
    """Return the best order found for the sticks of all profiles, and what none can better.

    Args:
        profiles: The sticks of each profile, profiles in the order in which they are sawn.
        about_mm: A stick may be cut before one whose biggest piece is longer by this. >= 0. [mm]
        kept: Beginnings kept from stick to stick. > 0.
    """
    profiles = [
        sorted(sticks, key=lambda each: (-each.biggest_mm, each.number)) for sticks in profiles
    ]
    states: dict[Setting | None, _Beginning] = {None: _Beginning(0)}
    for sticks in profiles:
        states = _through(sticks, about_mm, states, kept)
    best = min(states.values(), key=lambda beginning: beginning.changes)
    return SawSequence(
        _told(best, profiles), best.changes, min(best.changes, fewest_changes(profiles, about_mm))
    )


def _through(
    sticks: Sequence[Cuttable],
    about_mm: float,
    states: dict[Setting | None, _Beginning],
    kept: int,
) -> dict[Setting | None, _Beginning]:
    """Go through the sticks of a profile."""
    kept = max(1, min(kept, _MOST_TO_DO // max(1, len(sticks))))
    layer = {(0, last): beginning for last, beginning in states.items()}
    for _ in sticks:
        following: dict[tuple[int, Setting | None], _Beginning] = {}
        for (cut, last), beginning in layer.items():
            for n in in_turn(sticks, cut, about_mm, _MOST_LOOKED_AT):
                for way in sticks[n].ways.ways:
                    anew = last is not None and last != way.first
                    changes = beginning.changes + way.changes + anew
                    key = (cut | 1 << n, way.last)
                    known = following.get(key)
                    if known is None or changes < known.changes:
                        following[key] = _Beginning(changes, beginning, n, way)
        if len(following) > kept:
            ranked = sorted(following.items(), key=lambda item: item[1].changes)
            following = dict(ranked[:kept])
        layer = following
    return {last: beginning for (_, last), beginning in layer.items()}


def _told(
    last: _Beginning, profiles: Sequence[Sequence[Cuttable]]
) -> tuple[tuple[tuple[int, Way], ...], ...]:
    steps: list[tuple[int, Way]] = []
    beginning: _Beginning | None = last
    while beginning is not None and beginning.way is not None:
        steps.append((beginning.stick, beginning.way))
        beginning = beginning.before
    steps.reverse()
    told = []
    for sticks in profiles:
        told.append(tuple((sticks[n].number, way) for n, way in steps[: len(sticks)]))
        del steps[: len(sticks)]
    return tuple(told)
