"""The quick forecast by formula, without a draw, and how far it can be believed.

Uncertainties are added up as in the GUM and the sum is taken for normal. Where one source that
isn't normal outweighs the rest (a worn hook, known only to lie between limits) that is too wide or
too narrow; `validated` holds the formula against draws and says so.

References:
    JCGM 100:2008 (GUM): 5.1.2 and 5.2.2 (combining), 6.2 (expanding), G.4 (degrees of freedom).
    JCGM 101:2008: 7.7 (coverage interval of draws), 7.9.2 (tolerance), 8 (validation). Clause
    numbers are from memory; what is computed is checked in `tests`.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.stream import normal_quantile

_STEPS: Final = 200
_SMALLEST: Final = 1e-300


def share_within(limit: float, mean: float, u: float) -> float:
    """Return the chance that something stays within +/- its limit, if it is normal.

    Args:
        limit: What is allowed either way. > 0
        mean: What it is out by on the whole.
        u: Its standard uncertainty. >= 0

    Example:
        >>> round(share_within(2.0, 0.0, 1.0), 4)
        0.9545
        >>> round(share_within(2.0, 2.0, 1.0), 4)
        0.5

    References:
        P = Phi((limit - mean) / u) - Phi((-limit - mean) / u).
    """
    if u == 0.0:
        return 1.0 if abs(mean) <= limit else 0.0
    root = math.sqrt(2.0) * u
    # From the tail each lies in, so that small chances of failing keep their digits.
    outside = math.erfc((limit - mean) / root) + math.erfc((limit + mean) / root)
    return 1.0 - outside / 2.0


def combined_u(
    sensitivities: Sequence[float],
    us: Sequence[float],
    correlations: Iterable[tuple[int, int, float]] = (),
) -> float:
    """Return the standard uncertainty of a sum of errors, some of which go together.

    Args:
        sensitivities: What the result changes by per unit of each error, (n,).
        us: Standard uncertainty of each error, (n,).
        correlations: (i, j, r) for each pair that is correlated, once. -1 <= r <= 1

    Example:
        >>> combined_u([1.0, 1.0], [3.0, 4.0])
        5.0
        >>> combined_u([1.0, 1.0], [3.0, 4.0], [(0, 1, 1.0)])
        7.0
        >>> combined_u([1.0, -1.0], [3.0, 4.0], [(0, 1, 1.0)])
        1.0

    References:
        GUM 5.2.2, equation 16.
    """
    terms = [c * u for c, u in zip(sensitivities, us, strict=True)]
    together = [2.0 * terms[i] * terms[j] * r for i, j, r in correlations]
    # With correlations near +/-1 rounding may leave a little below nought.
    return math.sqrt(max(0.0, math.fsum([*(term * term for term in terms), *together])))


def effective_dof(terms: Iterable[tuple[float, float]]) -> float:
    """Return how many degrees of freedom the sum of independent errors has.

    Args:
        terms: For each error its part of the uncertainty of the sum, and its degrees of freedom
            (infinite where its uncertainty is taken for known).

    Example:
        >>> effective_dof([(1.0, 4.0), (1.0, 4.0)])
        8.0

    References:
        Welch-Satterthwaite, GUM G.4.1: u_c^4 / sum(u_i^4 / nu_i).
    """
    known = list(terms)
    total = math.fsum(u * u for u, _ in known)
    doubt = math.fsum(u**4 / dof for u, dof in known)
    return total * total / doubt if doubt else math.inf


def coverage_factor(coverage: float, dof: float = math.inf) -> float:
    """Return how many standard uncertainties either way hold a share of all cases.

    Args:
        coverage: That share. 0 < coverage < 1
        dof: Degrees of freedom of the standard uncertainty. > 0

    Example:
        >>> round(coverage_factor(0.95), 2)
        1.96

    References:
        Quantiles of the normal and, with finite degrees of freedom, of Student's distribution.
    """
    if math.isinf(dof):
        return normal_quantile((1.0 + coverage) / 2.0)
    low, high = 0.0, 1.0
    while _student_within(high, dof) < coverage:
        low, high = high, 2.0 * high
    while (middle := (low + high) / 2.0) not in (low, high):
        if _student_within(middle, dof) < coverage:
            low = middle
        else:
            high = middle
    return high


def _student_within(t: float, dof: float) -> float:
    """Return the chance that Student's t lies within +/- t.

    References:
        1 - I_x(dof / 2, 1 / 2) for x = dof / (dof + t^2).
    """
    return 1.0 - _beta_share(dof / (dof + t * t), dof / 2.0, 0.5) if t else 0.0


def _beta_share(x: float, a: float, b: float) -> float:
    """Return the regularised incomplete beta function I_x(a, b).

    References:
        Its continued fraction (DLMF 8.17.22) from the side on which it is quick, by Lentz's method.
    """
    if x > (a + 1.0) / (a + b + 2.0):
        return 1.0 - _beta_share(1.0 - x, b, a)
    front = math.exp(
        a * math.log(x)
        + b * math.log1p(-x)
        + math.lgamma(a + b)
        - math.lgamma(a)
        - math.lgamma(b)
        - math.log(a)
    )
    above, below, value = 1.0, 0.0, 1.0
    for step in range(_STEPS):
        m = step // 2
        if step == 0:
            part = 1.0
        elif step % 2:
            part = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        else:
            part = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        below = 1.0 / ((1.0 + part * below) or _SMALLEST)
        above = (1.0 + part / above) or _SMALLEST
        value *= above * below
        if step and abs(1.0 - above * below) < 1e-15:
            break
    return front * (value - 1.0)


def expanded_u(u: float, coverage: float = 0.95, dof: float = math.inf) -> float:
    """Return how far either way a share of all cases lies.

    Example:
        >>> round(expanded_u(0.5), 2)
        0.98

    References:
        GUM 6.2.1: U = k u.
    """
    return coverage_factor(coverage, dof) * u


def numerical_tolerance(u: float, digits: int = 2) -> float:
    """Return what a figure may be out by and still be right in the digits that are stated.

    Args:
        u: The standard uncertainty. > 0
        digits: Of it, that are stated; usually 2, sometimes 1.

    Example:
        >>> numerical_tolerance(0.827), numerical_tolerance(1.36), numerical_tolerance(0.997)
        (0.005, 0.05, 0.05)

    References:
        JCGM 101, 7.9.2: u = c x 10^l with c of that many digits; half of 10^l.
    """
    place = int(f"{u:.{digits - 1}e}".partition("e")[2]) - (digits - 1)
    return 0.5 * 10.0**place


def coverage_interval(ordered: Sequence[float], coverage: float = 0.95) -> tuple[float, float]:
    """Return between which values a share of all draws lies, as many left out above as below.

    Args:
        ordered: The draws, rising, (n,).
        coverage: That share. 0 < coverage < 1

    Example:
        >>> coverage_interval([float(n) for n in range(1, 101)], 0.9)
        (5.0, 95.0)

    References:
        JCGM 101, 7.7.2.
    """
    draws = len(ordered)
    inside = min(draws - 1, int(coverage * draws + 0.5))
    first = max(1, (draws - inside + 1) // 2)
    return float(ordered[first - 1]), float(ordered[first + inside - 1])


@dataclass(frozen=True, slots=True, kw_only=True)
class Validation:
    """The interval by formula beside that by draws.

    Attributes:
        first_order: Ends of the interval by formula.
        drawn: Ends of the interval by draws.
        tolerance: What an end may differ by.
    """

    first_order: tuple[float, float]
    drawn: tuple[float, float]
    tolerance: float

    @property
    def apart(self) -> tuple[float, float]:
        """How far the ends lie apart."""
        (low, high), (drawn_low, drawn_high) = self.first_order, self.drawn
        return abs(low - drawn_low), abs(high - drawn_high)

    @property
    def valid(self) -> bool:
        """Whether the formula may stand for the draws."""
        return max(self.apart) <= self.tolerance


def validated(
    mean: float, u: float, drawn: tuple[float, float], *, coverage: float = 0.95, digits: int = 2
) -> Validation:
    """Return whether the first-order interval agrees with a drawn one in the digits stated.

    Args:
        mean: Result by formula.
        u: Its standard uncertainty by formula. > 0
        drawn: Coverage interval by draws; its own scatter should be well below the tolerance.
        coverage: Of both intervals.
        digits: Of the standard uncertainty that are stated.

    Example:
        >>> validated(0.0, 0.5, (-0.982, 0.979)).valid, validated(0.0, 0.5, (-0.9, 0.9)).valid
        (True, False)

    References:
        JCGM 101, clause 8: both ends within the numerical tolerance.
    """
    reach = expanded_u(u, coverage)
    return Validation(
        first_order=(mean - reach, mean + reach),
        drawn=drawn,
        tolerance=numerical_tolerance(u, digits),
    )
