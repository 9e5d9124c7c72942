"""What one dive after another asks for, and how much it may do."""

import bisect
from collections.abc import Sequence
from typing import Final

from longpoint.sticks.search.dive import Limit, quick_limit
from longpoint.sticks.search.last_sticks import SOON_LAST

_LONG: Final = 3
_LONG_DIVES: Final = 2
_SOON_LISTED: Final = 80
"""Of no more pieces numbers of sticks or sets are listed soon, so that the first dive is short."""
_SHARES: Final = (0.9, 0.7, 1.0, 0.5)
"""How far above the least cost that may exist a dive's goal lies; 1: just below the best plan."""


def limit_of(turn: int, masters: int, pieces: int | None, *, has_many: bool) -> Limit:
    """Return how much a dive may do; of many pieces the last sticks are tried less.

    Args:
        turn: Number of the dive, from 0.
        masters: Masters that a dive may solve; a few times as many where it is a long one.
        pieces: How many pieces there are; None: nothing is listed after the first dive.
        has_many: Whether they are many.
    """
    is_short = pieces is not None and pieces <= _SOON_LISTED and not turn
    most = masters * (_LONG if turn < _LONG_DIVES and not is_short else 1)
    if has_many:
        return quick_limit(most)
    return Limit(most, SOON_LAST) if is_short else Limit(most)


def goal_of(turn: int, costs: Sequence[int], least: int) -> int:
    """Return what a dive asks for: the first one for all there may be, the second for any plan.

    Args:
        turn: Number of the dive, from 0.
        costs: Costs of plans better than the best that is known, ascending, in steps. Not empty.
        least: The least cost that the patterns known could give, in steps.
    """
    if turn == 1:
        return costs[-1]
    able = costs[bisect.bisect_left(costs, least) :] or costs[-1:]
    share = _SHARES[turn % len(_SHARES)] if turn else 0.0
    return able[int(share * (len(able) - 1))]
