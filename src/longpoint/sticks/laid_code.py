"""Give a cut plan a short code: the same on paper and on a phone when both lay the same."""

import hashlib
import json
from collections.abc import Iterable
from typing import NamedTuple

from longpoint.sticks.plan import CutPlan, Laid
from longpoint.survey.house_file.readings_code import short_code


class Row(NamedTuple):
    """What lies on one stick.

    Attributes:
        profile: Name of its profile.
        length_mm: Its length as listed.
        laid: All its pieces from left to right, cut or not.
    """

    profile: str
    length_mm: float
    laid: tuple[Laid, ...]


def laid_code(rows: Iterable[Row]) -> str:
    """Return a short code of which piece lies on which stick, which way round, in cutting order.

    Names of sticks, and how far their cutting is, change nothing.

    Args:
        rows: Sticks in cutting order; one without pieces doesn't count.

    Returns:
        Six signs out of 23; empty where nothing is laid.

    Example:
        >>> head = Laid(piece="W1-head", start_mm=10.0, end_mm=1260.0)
        >>> code = laid_code([Row("OG57", 2700.0, (head,)), Row("OG57", 5400.0, ())])
        >>> len(code), code == laid_code([Row("OG57", 2700.0, (head,))]), laid_code([])
        (6, True, '')
    """
    sums = [
        [row.profile, f"{row.length_mm:.2f}", [[laid.piece, laid.turned] for laid in row.laid]]
        for row in rows
        if row.laid
    ]
    if not sums:
        return ""
    return short_code(hashlib.sha256(json.dumps(sums).encode()).digest())


def plan_code(plan: CutPlan) -> str:
    """Return the code of a plan of which nothing is cut yet."""
    return laid_code(Row(stick.profile, stick.length_mm, stick.laid) for stick in plan.sticks)
