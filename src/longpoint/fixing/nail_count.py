"""How many nails stand along a line, and how far apart."""

import math


def nails_along(length_mm: float, first_mm: float, spacing_mm: float) -> int:
    """Return how many nails a line takes: one near each end, no two further apart than told.

    Args:
        length_mm: Length of the line. >= 0. [mm]
        first_mm: First nail from each end. >= 0. [mm]
        spacing_mm: Furthest from nail to nail. > 0. [mm]

    Returns:
        At least 1; never fewer for a longer line.

    Example:
        >>> [nails_along(length, 50, 300) for length in (80, 700, 701, 1200)]
        [1, 3, 4, 5]

    References:
        Common practice, no source: both ends, then evenly, at most 300 to 400 mm apart.
    """
    between_mm = max(0.0, length_mm - 2.0 * first_mm)
    return math.ceil(between_mm / spacing_mm - 1e-9) + 1


def apart_mm(length_mm: float, first_mm: float, count: int) -> float:
    """Return how far apart the nails of a line stand; 0 where there is one alone. [mm]

    Example:
        >>> apart_mm(1200, 50, 5)
        275.0
    """
    return (length_mm - 2.0 * first_mm) / (count - 1) if count > 1 else 0.0
