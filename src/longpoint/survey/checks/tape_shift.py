"""All readings of one room over, or under, those of the openings made like them: the tape."""

import math
from collections import defaultdict
from statistics import fmean, median
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.checks.batches import batched
from longpoint.survey.checks.rows_swapped import swapped_marks
from longpoint.survey.checks.siblings import PLACES, Siblings, told_siblings
from longpoint.survey.house import House
from longpoint.survey.openings import Opening

FEWEST_OPENINGS: Final = 3
"""In the room, and siblings of each elsewhere."""

LEAST_SHIFT_MM: Final = 1.5

ALARM_U: Final = 4.0
"""The mean of a room must be off by so many of its standard uncertainties."""

LEAST_SPREAD_MM: Final = 0.5
"""Spread of openings made alike is taken no smaller than this."""


def check_tape_shift(house: House) -> tuple[Finding, ...]:
    """Return a warning for every room whose readings are all shifted the same way."""
    groups = {o.mark: group for group in told_siblings(house) for o in group.openings}
    swapped = swapped_marks(house)
    rooms: dict[str, list[Opening]] = defaultdict(list)
    for opening in batched(house).openings:
        if opening.room and opening.mark in groups and opening.mark not in swapped:
            rooms[opening.room].append(opening)
    spread_mm = _spread_mm(rooms, groups, swapped)
    findings = []
    for room, openings in rooms.items():
        here = frozenset(o.mark for o in openings) | swapped
        offs = [offs for o in openings if (offs := _offs_mm(groups[o.mark], o, here))]
        if _is_the_tape([fmean(each) for each in offs], spread_mm):
            shift_mm = _mean_without_ends(sorted(off for each in offs for off in each))
            findings.append(_tape_shift(house, room, shift_mm, len(offs)))
    return tuple(findings)


def _spread_mm(
    rooms: dict[str, list[Opening]], groups: dict[str, Siblings], swapped: frozenset[str]
) -> float:
    """Return how much openings made alike spread, each as the median of its readings."""
    shifts = [
        median(offs)
        for openings in rooms.values()
        for o in openings
        if (offs := _offs_mm(groups[o.mark], o, swapped | {o.mark}))
    ]
    if not shifts:
        return LEAST_SPREAD_MM
    return max(LEAST_SPREAD_MM, 1.4826 * median(abs(x - median(shifts)) for x in shifts))


def _offs_mm(group: Siblings, opening: Opening, here: frozenset[str]) -> list[float]:
    """Return by how much each reading is over those of its siblings in other rooms."""
    if sum(o.mark not in here for o in group.openings) < FEWEST_OPENINGS:
        return []
    return [
        own_mm - usual_mm
        for place in PLACES
        if (own_mm := opening.readings.mean_mm(place)) is not None
        and (usual_mm := group.median_mm(place, without=here)) is not None
    ]


def _mean_without_ends(values: list[float]) -> float:
    """Return the mean of sorted values less a tenth at both ends, where slips would stand."""
    cut = len(values) // 10
    return fmean(values[cut : len(values) - cut])


def _is_the_tape(shifts: list[float], spread_mm: float) -> bool:
    if len(shifts) < FEWEST_OPENINGS:
        return False
    # The median: one opening that is wrong by itself is not the tape.
    shift_mm = abs(median(shifts))
    one_way = sum(x * median(shifts) > 0 for x in shifts)
    return (
        shift_mm >= LEAST_SHIFT_MM
        and one_way >= len(shifts) - 1
        and shift_mm * math.sqrt(len(shifts)) >= ALARM_U * spread_mm
    )


def _tape_shift(house: House, room: str, shift_mm: float, count: int) -> Finding:
    # Siblings spread too much for halves: a stick of known length gives the figure.
    shift = say("about {shift}", shift=format_with_unit(round(abs(shift_mm)), house.units))
    way = say("over") if shift_mm > 0 else say("under")
    return Finding(
        code="tape-shift",
        severity=Severity.WARNING,
        place=room,
        read=say(
            "Every reading of {count} openings in {room} is {shift} {way} those "
            "of the openings made like them in other rooms.",
            count=count,
            room=room,
            shift=shift,
            way=way,
        ),
        wrong=say("That is the tape, or how it was held, and not the openings."),
        do=say(
            "Check the tape on a stick of known length and take off what it shows, "
            "or read one opening with another tape."
        ),
    )
