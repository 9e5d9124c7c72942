"""Openings made alike that begin to lean: the jig that frames them has moved."""

import math
from collections import defaultdict
from collections.abc import Sequence
from statistics import fmean
from typing import Final, NamedTuple

from longpoint.errors import Finding, Severity
from longpoint.speech.said import say
from longpoint.survey.checks.batches import batched
from longpoint.survey.checks.rows_swapped import swapped_marks
from longpoint.survey.checks.siblings import Siblings, told_siblings
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

FEWEST_UNITS: Final = 6
FEWEST_BEFORE: Final = 3
FEWEST_AFTER: Final = 2

LEAST_STEP_MM_PER_M: Final = 1.5

LEAST_SPREAD_MM_PER_M: Final = 0.6
"""Spread of a unit's lean is taken no smaller than this: a 1 mm tape can't show less."""


class Step(NamedTuple):
    """A step in a row of values: where it begins, how large, and how sure."""

    begins: int
    size: float
    t: float


def lean_mm_per_m(opening: Opening) -> float | None:
    """Return how far an opening leans to the right per metre of height, from its diagonals.

    References:
        Parallelogram: sin(out of square) = (falling squared - rising squared) / (4 W H); a corner
        bottom left over 90 degrees leans left.

    """
    at = opening.readings.mean_mm
    side = opening.readings.side_mm
    rising, falling = at(Place.RISING), at(Place.FALLING)
    widths = [w for p in (Place.TOP, Place.BOTTOM) if (w := side(p)) is not None]
    heights = [h for p in (Place.LEFT, Place.RIGHT) if (h := side(p)) is not None]
    if rising is None or falling is None or not widths or not heights:
        return None
    area_mm2 = fmean(widths) * fmean(heights)
    return 1000.0 * (rising**2 - falling**2) / (4.0 * area_mm2) if area_mm2 > 0 else None


def largest_step(values: Sequence[float], least_spread: float) -> Step | None:
    """Return the likeliest step in a row of values, None when there are too few.

    Args:
        values: In the order of making.
        least_spread: The spread round the two means is taken no smaller than this.

    Example:
        >>> step = largest_step([0.0, 0.2, -0.2, 0.0, 3.1, 2.9], 0.1)
        >>> step.begins, round(step.size, 1)
        (4, 3.0)
    """
    count = len(values)
    steps = []
    for k in range(FEWEST_BEFORE, count - FEWEST_AFTER + 1):
        before, after = values[:k], values[k:]
        first, then = fmean(before), fmean(after)
        rest = math.fsum((x - first) ** 2 for x in before) + math.fsum(
            (x - then) ** 2 for x in after
        )
        spread = max(least_spread, math.sqrt(rest / (count - 2)))
        t = abs(then - first) / (spread * math.sqrt(1.0 / k + 1.0 / (count - k)))
        steps.append(Step(begins=k, size=then - first, t=t))
    return max(steps, key=lambda step: step.t, default=None)


def alarm_t(count: int) -> float:
    """Return how sure a step must be among `count` units: about 1 in 100 by chance.

    References:
        The largest t over all splits of normal noise, drawn 8 000 times: 99 % stay under 5.7 for
        6 units, 4.5 for 12, 4.0 for 20, 3.7 for 40.
    """
    return 3.4 + 14.0 / count


def check_lean_step(house: House) -> tuple[Finding, ...]:
    """Return a warning where windows made alike begin to lean from one unit on and stay so.

    The windows of one room are one unit; without rooms the marks tell it, or each window is one.
    Doors are left out: their legs stand on the floor, which tells nothing of the jig.
    """
    swapped = swapped_marks(house)
    units: dict[str, list[float]] = defaultdict(list)
    for group in told_siblings(house):
        for mark, off in _leans(group, swapped):
            units[mark].append(off)
    names = _units_in_order(batched(house), units)
    means = [fmean(units[name]) for name in names]
    if len(means) < FEWEST_UNITS:
        return ()
    step = largest_step(means, LEAST_SPREAD_MM_PER_M)
    if step is None or step.t < alarm_t(len(means)) or abs(step.size) < LEAST_STEP_MM_PER_M:
        return ()
    return (_lean_step(house.name, names[step.begins], step, fmean(means[: step.begins])),)


def _leans(group: Siblings, swapped: frozenset[str]) -> list[tuple[str, float]]:
    return [
        (opening.room or opening.mark, lean)
        for opening in group.openings
        if not opening.stands_on_floor
        and opening.mark not in swapped
        and (lean := lean_mm_per_m(opening)) is not None
    ]


def _units_in_order(house: House, units: dict[str, list[float]]) -> list[str]:
    names = dict.fromkeys(opening.room or opening.mark for opening in house.openings)
    return [name for name in names if name in units]


def _lean_step(place: str, first: str, step: Step, before: float) -> Finding:
    way = say("right") if step.size > 0 else say("left")
    return Finding(
        code="lean-step",
        severity=Severity.WARNING,
        place=place,
        read=say(
            "From {first} on the windows lean about {before:.0f} mm in a metre to "
            "the {right}; before, {before_2:.0f} mm.",
            first=first,
            before=abs(before + step.size),
            right=say("right") if before + step.size > 0 else say("left"),
            before_2=abs(before),
        ),
        wrong=say(
            "The lean steps {size:.0f} mm in a metre to the {way} and stays: the "
            "jig that frames them has moved.",
            size=abs(step.size),
            way=way,
        ),
        do=say("Tell whoever sets the frames; the readings are taken as they are."),
    )
