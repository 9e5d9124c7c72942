"""How many pieces of each profile will have to be cut again.

Two things spoil a piece. A set that doesn't fit costs one piece, whichever it is: how many sets
don't fit is counted in the forecast's imagined houses, where the saw and the tape are drawn once
for all, so that a batch goes wrong as a batch. And a slip, at the saw or on the wall, costs a piece
whatever the readings; slips are taken to happen piece by piece, each by itself.
"""

import itertools
import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.forecast.records import HouseForecast
from longpoint.pieces.piece import Piece
from longpoint.survey.crew import Crew

NINE_IN_TEN: Final = 0.9
NEXT_TO_NOTHING: Final = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class RecutCount:
    """How many pieces of one profile will have to be cut again.

    Attributes:
        profile: Name of the profile.
        pieces: How many pieces there are of it.
        sets: How many sets of it are forecast; 0: none is, or there is no forecast.
        misfits_p90: Nine times out of ten no more sets than this don't fit.
        p90: Nine times out of ten no more pieces than this are cut again, slips included.
    """

    profile: str
    pieces: int
    sets: int
    misfits_p90: int
    p90: int


def recut_counts(
    pieces: Iterable[Piece], crew: Crew, forecast: HouseForecast | None
) -> tuple[RecutCount, ...]:
    """Return for each profile how many of its pieces will have to be cut again.

    Args:
        pieces: The pieces that are cut.
        crew: Says how many pieces in a hundred are spoiled by slips.
        forecast: Of the house; None: slips alone are counted.
    """
    misfits = {each.profile: each.chances for each in forecast.by_profile} if forecast else {}
    counts = []
    for profile, count in Counter(piece.profile for piece in pieces).items():
        sets = misfits.get(profile, (1.0,))
        both = convolved(sets, slip_chances(count, crew.slips_counted / 100.0))
        counts.append(
            RecutCount(
                profile=profile,
                pieces=count,
                sets=len(sets) - 1,
                misfits_p90=nine_in_ten(sets),
                p90=min(count, nine_in_ten(both)),
            )
        )
    return tuple(counts)


def slip_chances(pieces: int, chance: float) -> tuple[float, ...]:
    """Return the chances of exactly 0, 1, ... slips, each piece by itself.

    Counts beyond which there is next to nothing are left out.

    Example:
        >>> [round(one, 4) for one in slip_chances(2, 0.1)]
        [0.81, 0.18, 0.01]

    References:
        The binomial distribution.
    """
    if chance <= 0.0:
        return (1.0,)
    found: list[float] = []
    ways = math.lgamma(pieces + 1)
    for k in range(pieces + 1):
        log_ways = ways - math.lgamma(k + 1) - math.lgamma(pieces - k + 1)
        log_chance = k * math.log(chance) + (pieces - k) * math.log1p(-chance)
        found.append(math.exp(log_ways + log_chance))
        if k > pieces * chance and found[-1] < NEXT_TO_NOTHING:
            break
    return tuple(found)


def convolved(*counts: Sequence[float]) -> tuple[float, ...]:
    """Return the chances of the sum of counts that don't depend on each other.

    Example:
        >>> convolved((0.5, 0.5), (0.9, 0.1))
        (0.45, 0.5, 0.05)
    """
    total = [1.0]
    for chances in counts:
        longer = [0.0] * (len(total) + len(chances) - 1)
        for (i, one), (j, other) in itertools.product(enumerate(total), enumerate(chances)):
            longer[i + j] += one * other
        total = longer
    return tuple(total)


def nine_in_ten(chances: Sequence[float]) -> int:
    """Return the least count that isn't exceeded nine times out of ten.

    Example:
        >>> nine_in_ten((0.7, 0.2, 0.1)), nine_in_ten((0.7, 0.15, 0.15))
        (1, 2)
    """
    reached = 0.0
    for count, chance in enumerate(chances):
        reached += chance
        if reached >= NINE_IN_TEN - 1e-9:
            return count
    return len(chances) - 1
