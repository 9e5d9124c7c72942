"""Which rows rule the fit-up of four-sided frames and of three-sided ones, learned beforehand."""

from collections.abc import Sequence
from functools import cache
from typing import Final

from longpoint.forecast.fitup.frame import Frame, FrameRow
from longpoint.forecast.fitup.mirrored_sets import RowSet, images, tightness, turned
from longpoint.forecast.fitup.respect import Respect
from longpoint.forecast.fitup.set_letters import LEARNED, Learned

_LETTERS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789"
"""One for each row, in order."""

_KNOWN_KINDS: Final = ((4, 4), (3, 2))
"""(sides, joints)."""


def known_sets(frame: Frame, rows: Sequence[FrameRow], respect: Respect) -> tuple[RowSet, ...]:
    """Return the sets of rows that may rule a frame.

    Args:
        frame: The frame.
        rows: Its rows in one respect.
        respect: Which.

    Returns:
        Sets with their mirror images; none for a frame that is neither a closed one of four sides
        nor an open one of three.
    """
    if (len(frame.sides), len(frame.joints)) not in _KNOWN_KINDS:
        return ()
    tight = tightness(rows)
    fitting = (
        learned
        for learned in LEARNED
        if learned.is_closed == frame.is_closed
        and learned.respect == respect.value
        and learned.least <= tight
    )
    chosen = max(fitting, key=lambda learned: learned.least, default=None)
    return _unpacked(chosen, is_tall=_is_tall(frame)) if chosen else ()


def letters_of(chosen: RowSet) -> str:
    """Return a set of rows in letters.

    Example:
        >>> letters_of((0, 3, 33))
        'ADh'
    """
    return "".join(_LETTERS[i] for i in chosen)


def _is_tall(frame: Frame) -> bool:
    """Tell whether a closed frame is looked up lying down: the lists are of wide ones."""
    bottom, right = frame.sides[:2]
    return frame.is_closed and (
        bottom.start.distance_mm(bottom.end) < right.start.distance_mm(right.end)
    )


@cache
def _unpacked(learned: Learned, *, is_tall: bool) -> tuple[RowSet, ...]:
    respect = Respect(learned.respect)
    found: dict[RowSet, None] = {}
    for word in learned.letters.split():
        chosen = tuple(_LETTERS.index(letter) for letter in word)
        alike = images(chosen, is_closed=learned.is_closed, respect=respect)
        if is_tall:
            alike = tuple(turned(image, respect) for image in alike)
        found |= dict.fromkeys(alike)
    return tuple(found)
