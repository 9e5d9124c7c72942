"""How often the reading that is furthest off the fit is the one that is wrong."""

import random
from functools import lru_cache
from typing import Final

from longpoint.shape.network import Distance, fit_network
from longpoint.shape.point import Point
from longpoint.shape.sightings import ENDS

DRAWN_OPENINGS: Final = 1000
SLIP_MM: Final = 10.0
"""What one tape of each drawn opening is out by, either way."""

_SEED: Final = 1
_TAPE_SD_MM: Final = 1.0
_CORNER_SD_MM: Final = 4.0


@lru_cache(maxsize=16)
def share_of_long_residuals(
    width_mm: float, height_mm: float, drawn: int = DRAWN_OPENINGS
) -> float:
    """Return the share of openings where the longest residual names the tape that slipped.

    Openings of about a size are drawn, their corners some 4 mm off a rectangle; each is read by six
    tapes, four sides and two diagonals, to 1 mm, of which one, any of them, is 10 mm out. The seed
    is fixed, so the count repeats. Model output: it is a count of drawn openings, not of houses.

    Args:
        width_mm: About how wide they are, > 0.
        height_mm: About how high, > 0.
        drawn: How many, >= 1.

    Returns:
        A share, 0 to 1.

    References:
        Six readings of a shape with five unknowns leave one to spare, so every slip leaves the same
        pattern of residuals, and in it a diagonal stands out: right when that diagonal slipped.
    """
    draw = random.Random(_SEED)
    return sum(_names_the_slip(width_mm, height_mm, draw) for _ in range(drawn)) / drawn


def _names_the_slip(width_mm: float, height_mm: float, draw: random.Random) -> bool:
    off = [draw.gauss(0.0, _CORNER_SD_MM) for _ in range(5)]
    corners = (
        Point(0.0, 0.0),
        Point(width_mm + off[0], 0.0),
        Point(width_mm + off[1], height_mm + off[2]),
        Point(off[3], height_mm + off[4]),
    )
    wrong = draw.randrange(len(ENDS))
    slip_mm = draw.choice((-SLIP_MM, SLIP_MM))
    readings = tuple(
        Distance(
            name=place.value,
            start=start,
            end=end,
            read=corners[start].distance_mm(corners[end])
            + draw.gauss(0.0, _TAPE_SD_MM)
            + (slip_mm if index == wrong else 0.0),
            u=_TAPE_SD_MM,
        )
        for index, (place, (start, end)) in enumerate(ENDS.items())
    )
    residuals = fit_network(corners, readings).residuals()
    longest = max(range(len(residuals)), key=lambda index: abs(residuals[index].residual))
    return longest == wrong
