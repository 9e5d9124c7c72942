"""Counts that nobody can have come to: taken in, every device would count on from them."""

from collections.abc import Iterable
from typing import Final

from longpoint.journal.entry import Entry

MOST_AHEAD: Final = 10_000_000
"""How far a new count may be ahead of all that are here. A crew of fifty that writes 200 entries a
day each comes so far in three years, a damaged or meddling phone in one entry. Our choice."""

WHY_REFUSED: Final = (
    "Its count is further ahead than a crew comes in years; taken in, everybody would have to "
    "count on from it."
)


def furthest_ahead(entries: Iterable[Entry], highest: int) -> Entry | None:
    """Return the entry whose count is too far ahead to be taken in, the furthest; or None.

    Whoever refuses one refuses all that came with it: taken without it, what its author wrote next
    would stand here alone.

    Args:
        entries: What came.
        highest: The highest count of any device that is here; 0 where there is none. >= 0.

    Example:
        >>> near, far = {"device": "p", "counter": 3}, {"device": "p", "counter": 10_000_003}
        >>> furthest_ahead([near, far], 2) == far, furthest_ahead([near, far], 3)
        (True, None)
    """
    furthest = max(entries, key=lambda entry: int(entry["counter"]), default=None)
    if furthest is None or furthest["counter"] <= highest + MOST_AHEAD:
        return None
    return furthest
