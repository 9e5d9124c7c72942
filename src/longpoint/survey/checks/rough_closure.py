"""Whether six readings of an opening belong together, roughly and without any geometry."""

import math
from collections.abc import Mapping

from longpoint.survey.readings import DIAGONALS, SIDES, OpeningReadings, Place


def six_lengths_mm(readings: OpeningReadings) -> dict[Place, float | None]:
    """Return what was read of each side and diagonal."""
    return {place: readings.side_mm(place) for place in (*SIDES, *DIAGONALS)}


def rough_misclosure_mm(lengths_mm: Mapping[Place, float | None]) -> float | None:
    """Return by how much a diagonal misses what the sides and the other diagonal ask for.

    Args:
        lengths_mm: Sides and diagonals. [mm]

    Returns:
        Diagonal too short by, within hundredths where opposite sides are alike; None when one of
        the six wasn't read. [mm]

    Example:
        >>> sides = {Place.BOTTOM: 800.0, Place.TOP: 800.0, Place.LEFT: 600.0, Place.RIGHT: 600.0}
        >>> rough_misclosure_mm({**sides, Place.RISING: 1000.0, Place.FALLING: 1000.0})
        0.0

    References:
        Euler: the squares of four sides exceed those of both diagonals by four times the squared
        distance between the diagonals' middles, which is next to nothing in an opening.
    """
    sides = [mm for p in SIDES if (mm := lengths_mm[p]) is not None]
    diagonals = [mm for p in DIAGONALS if (mm := lengths_mm[p]) is not None]
    if len(sides) < len(SIDES) or len(diagonals) < len(DIAGONALS):
        return None
    excess = math.fsum(mm * mm for mm in sides) - math.fsum(mm * mm for mm in diagonals)
    return excess / math.fsum(diagonals)
