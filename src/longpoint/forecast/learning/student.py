"""Student's t: how far a value may lie from a mean that only a few frames have told.

References:
    Abramowitz and Stegun (1964), 26.7.1 and 26.5.8: the chance as an incomplete beta function, and
    that as a continued fraction; clause numbers from memory, values held against scipy in tests.
"""

import math
from statistics import NormalDist
from typing import Final

from longpoint.errors import QuantityError
from longpoint.speech.said import say

_STEPS: Final = 10_000
_CLOSE: Final = 1e-15
_TINY: Final = 1e-300


def chance_beyond(t: float, dof: float) -> float:
    """Return how likely a Student t lies beyond `t`, on that side alone.

    Args:
        t: >= 0.
        dof: Degrees of freedom. > 0.

    Example:
        >>> round(chance_beyond(2.015, 5.0), 4)  # any table of t: 5 degrees, 95 %
        0.05
    """
    square = t * t
    if square <= dof:
        return 0.5 - 0.5 * _beta_share(square / (dof + square), 0.5, dof / 2.0)
    return 0.5 * _beta_share(dof / (dof + square), dof / 2.0, 0.5)


def t_quantile(chance: float, dof: float) -> float:
    """Return the value below which a Student t lies with a given chance.

    Args:
        chance: 0 < chance < 1.
        dof: Degrees of freedom, whole or not. > 0.

    Returns:
        The quantile, to about nine figures.

    Raises:
        QuantityError: A chance or degrees of freedom outside their range.

    Example:
        >>> round(t_quantile(0.95, 5.0), 3), round(t_quantile(0.05, 5.0), 3)
        (2.015, -2.015)
    """
    if not (0.0 < chance < 1.0 and 0.0 < dof < math.inf):
        raise QuantityError(
            say(
                "A chance of {chance:g} and {dof:g} degrees of freedom.",
                chance=chance,
                dof=dof,
            ),
            say("A chance lies between 0 and 1 and degrees of freedom above 0."),
            say("Give both within their range."),
        )
    if chance == 0.5:
        return 0.0
    beyond = min(chance, 1.0 - chance)
    size = _size(beyond, dof)
    return size if chance > 0.5 else -size


def _size(beyond: float, dof: float) -> float:
    """Return the t beyond which lies a share `beyond`, halving the range in which it must lie."""
    low, high = 0.0, -NormalDist().inv_cdf(beyond) + 1.0
    while chance_beyond(high, dof) > beyond:
        low, high = high, 2.0 * high
    while high - low > 1e-12 * high:
        middle = 0.5 * (low + high)
        if middle in (low, high):
            break
        if chance_beyond(middle, dof) > beyond:
            low = middle
        else:
            high = middle
    return 0.5 * (low + high)


def _beta_share(x: float, a: float, b: float) -> float:
    """Return the regularised incomplete beta function of x."""
    if x <= 0.0:
        return 0.0
    if x > (a + 1.0) / (a + b + 2.0):
        return 1.0 - _beta_share(1.0 - x, b, a)
    log_front = (
        math.lgamma(a + b)
        - math.lgamma(a)
        - math.lgamma(b)
        + a * math.log(x)
        + b * math.log1p(-x)
        - math.log(a)
    )
    return math.exp(log_front) / _fraction(x, a, b)


def _fraction(x: float, a: float, b: float) -> float:
    """Return 1 + d1/(1 + d2/(1 + ...)), from the front (Lentz)."""
    value, c, d = 1.0, 1.0, 0.0
    for step in range(1, _STEPS):
        m = step // 2
        if step % 2:
            term = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        else:
            term = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        d = 1.0 / _not_nought(1.0 + term * d)
        c = _not_nought(1.0 + term / c)
        value *= c * d
        if abs(c * d - 1.0) < _CLOSE:
            break
    return value


def _not_nought(value: float) -> float:
    return value if abs(value) > _TINY else _TINY
