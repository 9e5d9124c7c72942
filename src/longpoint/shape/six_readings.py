"""Whether six tape readings close, in closed form: fast enough to try every slip."""

import math
from collections.abc import Mapping
from typing import Final

from longpoint.survey.readings import DIAGONALS, SIDES, Place

SIX: Final = (*SIDES, *DIAGONALS)

_STEP_MM: Final = 0.01


def top_by_the_others_mm(lengths_mm: Mapping[Place, float]) -> float | None:
    """Return what the top must be by the other five readings, None when they make no opening.

    Both top corners are set out from the bottom side by two lengths each.

    Args:
        lengths_mm: Sides and diagonals. > 0. [mm]

    Example:
        >>> five = (800.0, 600.0, 0.0, 600.0, 1000.0, 1000.0)
        >>> round(top_by_the_others_mm(dict(zip(SIX, five))), 9)
        800.0
    """
    bottom_mm = lengths_mm[Place.BOTTOM]
    if bottom_mm <= 0.0:
        return None
    left = _above(bottom_mm, lengths_mm[Place.LEFT], lengths_mm[Place.FALLING])
    right = _above(bottom_mm, lengths_mm[Place.RISING], lengths_mm[Place.RIGHT])
    if left is None or right is None:
        return None
    return math.hypot(right[0] - left[0], right[1] - left[1])


def normalised_misclosure(
    lengths_mm: Mapping[Place, float], u_mm: Mapping[Place, float]
) -> float | None:
    """Return by how many standard uncertainties six readings miss, None when they make no opening.

    Args:
        lengths_mm: Sides and diagonals. > 0. [mm]
        u_mm: Standard uncertainty of each. > 0. [mm]

    References:
        Top read less top predicted, over the propagated uncertainty of both. The same as the fit's
        own figure as far as the misclosure is small.
    """
    predicted_mm = top_by_the_others_mm(lengths_mm)
    if predicted_mm is None:
        return None
    variance = u_mm[Place.TOP] ** 2
    for place in SIX:
        if place is Place.TOP:
            continue
        moved_mm = top_by_the_others_mm({**lengths_mm, place: lengths_mm[place] + _STEP_MM})
        if moved_mm is None:
            return None
        variance += ((moved_mm - predicted_mm) / _STEP_MM * u_mm[place]) ** 2
    return abs(lengths_mm[Place.TOP] - predicted_mm) / math.sqrt(variance)


def _above(base_mm: float, first_mm: float, second_mm: float) -> tuple[float, float] | None:
    """Return the point above a base at these distances from its left and its right end."""
    along_mm = (base_mm**2 + first_mm**2 - second_mm**2) / (2.0 * base_mm)
    squared = first_mm**2 - along_mm**2
    return (along_mm, math.sqrt(squared)) if squared > 0.0 else None
