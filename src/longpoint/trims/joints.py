"""Saw angles of single joints, and what goes wrong when they are not kept."""

import math
from typing import NamedTuple


class MitrePair(NamedTuple):
    """Saw angles of the two pieces of one mitre. [deg]"""

    first_deg: float
    second_deg: float


def mitre_pair(corner_deg: float, first_mm: float, second_mm: float) -> MitrePair:
    """Return the saw angles that let two widths meet point to point.

    Args:
        corner_deg: Angle inside the opening, 0 < corner < 180. [deg]
        first_mm: Face width of the first piece, > 0.
        second_mm: Face width of the second, > 0.

    Returns:
        Degrees off square; together always 180 less the corner.

    Example:
        >>> [round(a, 2) for a in mitre_pair(90.0, 57.0, 66.0)]
        [49.18, 40.82]
        >>> [round(a, 2) for a in mitre_pair(91.0, 57.0, 57.0)]
        [44.5, 44.5]

    References:
        Run-past e1 = (w2 + w1 cos corner) / sin corner, saw angle atan(e1 / w1).
    """
    corner = math.radians(corner_deg)
    first = (second_mm + first_mm * math.cos(corner)) / math.sin(corner)
    second = (first_mm + second_mm * math.cos(corner)) / math.sin(corner)
    return MitrePair(
        math.degrees(math.atan2(first, first_mm)), math.degrees(math.atan2(second, second_mm))
    )


def gap_of_plain_mitres_mm(width_mm: float, corner_deg: float) -> float:
    """Return how far two 45s stand open at a corner, the pieces held parallel to the reveal.

    Args:
        width_mm: Face width of both. > 0.
        corner_deg: The true corner. [deg]

    Returns:
        Widest opening of the wedge, at the heel or the toe. >= 0. [mm]

    Example:
        >>> round(gap_of_plain_mitres_mm(57.0, 90.5), 2)
        0.7

    References:
        Wedge over the length of the mitre: width x root 2 x angle in radians.
    """
    return width_mm * math.sqrt(2.0) * math.radians(abs(corner_deg - 90.0))


def slant_mm(along_mm: float, width_mm: float) -> float:
    """Return what a tape laid slantwise across the face reads too long.

    Example:
        >>> round(slant_mm(1256.0, 66.0), 2)
        1.73

    References:
        hypot(along, width) - along; about width squared over twice the length.
    """
    return math.hypot(along_mm, width_mm) - along_mm
