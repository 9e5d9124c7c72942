"""How likely a joint opens too far, from what isn't known of its boards, its air and its glue.

Sums over evenly spaced values instead of draws, so that the same joint always gets the same figure.
All spreads are assumed: the result ranks joints and remedies, it is no promise.
"""

import math
from bisect import bisect_right
from collections.abc import Callable
from functools import lru_cache
from statistics import NormalDist
from typing import Final

from longpoint.forecast.season.emc import MAX_HUMIDITY_PERCENT, equilibrium_moisture_percent

HUMIDITY_U_PERCENT: Final = 5.0
"""Standard uncertainty of the humidity of a season; assumed."""

FITTED_U_PERCENT: Final = 1.0
"""Standard uncertainty of the moisture at fitting, board to board; assumed."""

CONDITIONED_U_PERCENT: Final = 0.7
"""The same of timber that lay in the house and was metered; assumed."""

REACHED_SHARES: Final = (0.6, 1.0)
"""How much of the swing a board goes along with before the season turns; assumed."""

_GRAINS: Final = 16
_SHARES: Final = 12
_NORMALS: Final = 32


def chance_over(
    limit_mm: float,
    gap_per_percent: Callable[[float], float],
    held_shares: tuple[float, float],
    lost_percents: tuple[float, ...],
) -> float:
    """Return how likely a joint stands open by more than a limit, at either end.

    Args:
        limit_mm: Widest gap accepted. >= 0. [mm]
        gap_per_percent: Free gap for each percent of moisture, of a flat share from 0 (quarter-sawn
            boards) to 1 (flat-sawn); see `Species.per_percent`. [mm]
        held_shares: Least and most share of the movement that the joint holds.
        lost_percents: Equally likely swings of moisture; see `lost_percents`.

    Returns:
        0 to 1. Rings stand at any angle in the boards, all angles alike; shares reached and held
        lie evenly within their limits.
    """
    sizes = sorted(abs(lost) for lost in lost_percents)
    shares = _open_shares(held_shares)
    over = 0
    for turn in _middles(_GRAINS):
        gap_mm = gap_per_percent(math.sin(turn * math.pi / 2.0) ** 2)
        for share in shares:
            needed = limit_mm / (gap_mm * share) if gap_mm * share > 0.0 else math.inf
            over += len(sizes) - bisect_right(sizes, needed)
    return over / (len(sizes) * len(shares) * _GRAINS)


@lru_cache(maxsize=64)
def lost_percents(
    temperature_c: float, humidity_percent: float, fitted_percent: float, fitted_u_percent: float
) -> tuple[float, ...]:
    """Return equally likely swings from the moisture at fitting to that of a season.

    Args:
        temperature_c: Temperature of the season. [degC]
        humidity_percent: Its humidity, +/- `HUMIDITY_U_PERCENT`. [%]
        fitted_percent: Moisture at fitting. [%]
        fitted_u_percent: Its standard uncertainty; 0: known. [%]

    Returns:
        Percent lost of each, negative where it is gained, both spreads normal.
    """
    normals = [NormalDist().inv_cdf(middle) for middle in _middles(_NORMALS)]
    humidities = (humidity_percent + HUMIDITY_U_PERCENT * z for z in normals)
    seasons = [
        equilibrium_moisture_percent(temperature_c, min(max(h, 0.0), MAX_HUMIDITY_PERCENT))
        for h in humidities
    ]
    fitted = [fitted_percent + fitted_u_percent * z for z in normals]
    return tuple(then - season for then in fitted for season in seasons)


@lru_cache(maxsize=16)
def _open_shares(held_shares: tuple[float, float]) -> tuple[float, ...]:
    """Return equally likely shares of a full swing that show as a gap."""
    (least, most), (held, held_most) = REACHED_SHARES, held_shares
    middles = _middles(_SHARES)
    products = sorted(
        (least + (most - least) * one) * (1.0 - held - (held_most - held) * other)
        for one in middles
        for other in middles
    )
    # Means of neighbours: a sixth of the work, and the same chances to a thousandth.
    return tuple(math.fsum(products[i : i + 6]) / 6.0 for i in range(0, len(products), 6))


def _middles(count: int) -> list[float]:
    return [(index + 0.5) / count for index in range(count)]
