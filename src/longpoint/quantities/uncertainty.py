"""From limits to standard uncertainties, and how they add.

References:
    JCGM 100:2008 (GUM), 4.3.7 (rectangular limits), F.2.2.1 (resolution), 5.1.2 (combining); the
    clause numbers are from memory, the arithmetic is checked in `tests/published`.
"""

import math
from collections.abc import Iterable


def u_from_limit(limit: float) -> float:
    """Return the standard uncertainty of a value known to lie within +/- `limit`, evenly.

    Example:
        >>> round(u_from_limit(0.9), 4)
        0.5196
    """
    return limit / math.sqrt(3.0)


def u_from_resolution(step: float) -> float:
    """Return the standard uncertainty that rounding to a graduation adds.

    Example:
        >>> round(u_from_resolution(1.0), 4)
        0.2887
    """
    return step / math.sqrt(12.0)


def combine(terms: Iterable[float]) -> float:
    """Return the combined standard uncertainty of independent terms.

    Example:
        >>> combine([3.0, 4.0])
        5.0
    """
    return math.sqrt(math.fsum(term * term for term in terms))
