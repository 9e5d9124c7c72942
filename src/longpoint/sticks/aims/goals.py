"""How far a plan gets with each of its goals, and what no other plan could better.

The goals stand in an order, and each is judged among the plans that hold those before it: cost no
more, open no more sticks, and so on. The limits come from sums: what the pieces need at least along
one line of the stick (`longpoint.sticks.lay.bound`), and what sticks of that cost and number can
hold.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from longpoint.sticks.aims.most_room import Length, RoomForMoney
from longpoint.sticks.lay.bars import Bars
from longpoint.sticks.lay.bound import Floor
from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.fit import Packing, cost_of
from longpoint.sticks.lay.laying import Workload, left_over
from longpoint.sticks.lay.together import spread
from longpoint.sticks.order.saw_order import (
    ABOUT_AS_LONG_MM,
    SawStep,
    setting_changes,
    settings_used,
)
from longpoint.sticks.plan import CutStick, Goal, Reached, StickSource


@dataclass(frozen=True, slots=True)
class Limits:
    """What no plan can better that costs no more.

    Attributes:
        sticks: None opens fewer new sticks.
        longest: None that opens no more sticks than the plan leaves a longer offcut. [0.01 mm]
    """

    sticks: int
    longest: int


def packing_goals(
    profile: str,
    work: Workload,
    bars: Bars,
    floor: Floor,
    packing: Packing,
    known: Limits | None = None,
) -> tuple[Reached, ...]:
    """Return how many new sticks a packing opens, and how long an offcut it leaves.

    Args:
        profile: Name of the profile.
        work: The pieces.
        bars: The lengths.
        floor: Least needs of the pieces, most room of the sticks.
        packing: All pieces on their sticks.
        known: Limits that are known; None: by sums.
    """
    if not packing.sticks or packing.unplaced:
        return ()
    sticks, left = new_sticks(bars, packing), longest_left(work, bars, packing)
    limits = limits_by_sums(work, bars, floor, packing) if known is None else known
    return (
        Reached(
            goal=Goal.FEW_STICKS, profile=profile, value=sticks, limit=min(sticks, limits.sticks)
        ),
        Reached(
            goal=Goal.LONG_OFFCUT,
            profile=profile,
            value=left / PER_MM,
            limit=max(left, limits.longest) / PER_MM,
        ),
    )


def new_sticks(bars: Bars, packing: Packing) -> int:
    """Return how many new sticks a packing opens."""
    return sum(bars.bars[stick.bar].source is StickSource.STOCK for stick in packing.sticks)


def longest_left(work: Workload, bars: Bars, packing: Packing) -> int:
    """Return the longest offcut that a packing leaves. [0.01 mm]"""
    return max(left_over(work, s.places, bars.bars[s.bar].room) for s in packing.sticks)


def limits_by_sums(work: Workload, bars: Bars, floor: Floor, packing: Packing) -> Limits:
    """Return what sticks of a packing's cost and number can hold and leave at best.

    Args:
        work: The pieces.
        bars: The lengths.
        floor: Least needs of the pieces, most room of the sticks.
        packing: All pieces on their sticks.
    """
    free, lengths = 0, list[Length]()
    for bar, room in zip(bars.bars, floor.rooms, strict=True):
        if bar.source is StickSource.OFFCUT:
            free += room * (bar.count or 0)
        else:
            lengths.append(Length(bar.cost, room, bar.count))
    offered = RoomForMoney(lengths, cost_of(bars.bars, packing))
    needed = sum(floor.bases) - free
    sticks = new_sticks(bars, packing)
    # Behind the last piece of a stick one more cut is lost.
    most = min(offered.most(sticks) - needed, _longest_rest(bars, floor)) - min(
        work.left_kerf + work.right_kerf
    )
    return Limits(offered.fewest(needed, sticks), most)


def together_goal(profile: str, floor: Floor, openings: Sequence[str], packing: Packing) -> Reached:
    """Return how many openings have their pieces from more than one stick.

    Args:
        profile: Name of the profile.
        floor: Least needs of the pieces, most room of the sticks.
        openings: The opening or run of each piece.
        packing: All pieces on their sticks.
    """
    return Reached(
        goal=Goal.TOGETHER,
        profile=profile,
        value=spread(openings, packing.sticks)[0],
        limit=sum(
            sum(base for base, place in zip(floor.bases, openings, strict=True) if place == opening)
            > max(floor.rooms)
            for opening in set(openings)
        ),
    )


def order_goals(
    sticks: Sequence[CutStick], steps: Sequence[SawStep], fewest_changes: int = 0
) -> tuple[Reached, ...]:
    """Return how the order at the saw keeps big pieces first, and how often the saw is set anew.

    Args:
        sticks: The sticks in cutting order, those of a profile together.
        steps: The cuts in their order.
        fewest_changes: No order of these sticks, and of the pieces on them, needs fewer.
    """
    if not steps:
        return ()
    changes = setting_changes(steps)
    return (
        Reached(goal=Goal.BIG_FIRST, value=_before_bigger(sticks), limit=0),
        Reached(
            goal=Goal.FEW_SETTINGS,
            value=changes,
            limit=min(changes, max(fewest_changes, len(settings_used(steps)) - 1)),
        ),
    )


def _longest_rest(bars: Bars, floor: Floor) -> int:
    """What the longest stick leaves when it gives the smallest piece alone. [0.01 mm]"""
    return max(floor.rooms) - min(floor.bases)


def _before_bigger(sticks: Iterable[CutStick]) -> int:
    """How many sticks are cut before one of their profile with a much bigger piece."""
    by_profile: dict[str, list[float]] = {}
    for stick in sticks:
        biggest_mm = max((laid.end_mm - laid.start_mm for laid in stick.laid), default=0.0)
        by_profile.setdefault(stick.profile, []).append(biggest_mm)
    return sum(
        max(later, default=0.0) > biggest_mm + ABOUT_AS_LONG_MM
        for biggest in by_profile.values()
        for biggest_mm, later in ((mm, biggest[n + 1 :]) for n, mm in enumerate(biggest))
    )
