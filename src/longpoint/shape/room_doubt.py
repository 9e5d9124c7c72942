"""Which reading of a room that doesn't close is wrong, as far as the others can tell.

References:
    Test of each standardised residual ("data snooping"), as in any text on the adjustment of
    observations. With one spare reading all of them are of one size, so nothing is located.
"""

import math
from dataclasses import dataclass
from statistics import NormalDist
from typing import Final

from longpoint.shape.least_squares import as_normal
from longpoint.shape.network import Angle, Distance, Network

LOOK_AT: Final = 3.0
"""From so many standard uncertainties on, a room is said not to close: once in 370 by chance."""

HOLD_AT: Final = 4.0
"""From so many on its runs are held: once in 16 000 by chance."""

STANDS_OUT: Final = 9.2
"""A reading is named when the others are a hundred times less likely: 2 ln 100."""

_FAR_TAIL: Final = 1e-15


@dataclass(frozen=True, slots=True, kw_only=True)
class Suspect:
    """A reading that may be the wrong one.

    Attributes:
        sighting: The reading.
        over_u: Its standardised residual.
        mended: What it would be if all other readings are right, mm or degrees.
        mended_u: Standard uncertainty of that.
    """

    sighting: Distance | Angle
    over_u: float
    mended: float
    mended_u: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A room that doesn't close.

    Attributes:
        strength: By how many standard uncertainties, of a normal error as unlikely.
        suspects: Readings that would explain it, likeliest first, none a hundred times less
            likely than the first.
        stands_out: True when there is one suspect, and the rest closes without it.
    """

    strength: float
    suspects: tuple[Suspect, ...]
    stands_out: bool


def doubt_of(network: Network) -> Doubt | None:
    """Return what is in doubt about a fitted room, None when its readings close."""
    misclosure = network.misclosure()
    if misclosure is None:
        return None
    ranked = sorted(_suspects(network), key=lambda s: abs(s.over_u), reverse=True)
    if not ranked:
        return None
    worst = abs(ranked[0].over_u)
    strength = max(misclosure.normalised, _worst_of_many(worst, len(ranked)))
    if strength < LOOK_AT:
        return None
    suspects = tuple(s for s in ranked if worst**2 - s.over_u**2 < STANDS_OUT)
    rest = misclosure.chi_squared - worst**2
    closes_without = misclosure.spare > 1 and (
        as_normal(max(rest, 0.0), misclosure.spare - 1) < LOOK_AT
    )
    return Doubt(
        strength=strength, suspects=suspects, stands_out=len(suspects) == 1 and closes_without
    )


def _suspects(network: Network) -> list[Suspect]:
    fit = network.adjustment
    return [
        Suspect(
            sighting=sighting,
            over_u=residual / (sighting.u * math.sqrt(share)),
            mended=sighting.read - residual / share,
            mended_u=sighting.u * math.sqrt(1.0 / share - 1.0),
        )
        for sighting, residual, share in zip(
            network.sightings, fit.residuals, fit.redundancy, strict=True
        )
        if share > 1e-6 and isinstance(sighting, Distance | Angle)
    ]


def _worst_of_many(over_u: float, count: int) -> float:
    """Return how unlikely the worst of several residuals is, as one normal error."""
    tail = count * math.erfc(over_u / math.sqrt(2.0))
    if tail >= 1.0:
        return 0.0
    if tail < _FAR_TAIL:
        return math.sqrt(max(0.0, over_u**2 - 2.0 * math.log(count)))
    return NormalDist().inv_cdf(1.0 - tail / 2.0)
