"""Which of repeated readings stand: where a third has decided, the odd one is left out."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.survey.instruments import Tape

ALARM_U: Final = 3.0
"""Two readings of one thing may differ by so many standard uncertainties of a difference."""

APART_DEG: Final = 2.0
"""Two readings of one angle further apart are looked at again: our choice, no source."""

SLIP_MM: Final = 10.0
"""Further apart than this, one of two lengths is a slip and not a hand that shook: our limit."""


def apart_mm(tape: Tape) -> float:
    """Return how far two readings of one length by a tape may be apart. [mm]"""
    return ALARM_U * math.sqrt(2.0) * tape.private_u_mm()


def apart_along_wall_mm(tape: Tape) -> float:
    """Return how far two readings of one length between plastered corners may be apart. [mm]"""
    return ALARM_U * math.sqrt(2.0) * tape.wall_u_mm()


def standing(values: Sequence[float], apart: float) -> tuple[bool, ...]:
    """Tell of each reading whether it is reckoned with.

    All are, unless there are three or more, they disagree, and at least two of them agree: then
    those stand that agree with the one that most agree with.

    Args:
        values: What was read of one thing. [mm or degrees]
        apart: How far two may be apart, in the same unit. >= 0.

    Example:
        >>> standing([1178, 1187, 1179], 3.0), standing([1178, 1187], 3.0)
        ((True, False, True), (True, True))
    """
    agreeing = _agreeing(values, apart)
    if len(values) < 3 or max(agreeing) == 1:
        return (True,) * len(values)
    best = values[agreeing.index(max(agreeing))]
    return tuple(abs(value - best) <= apart for value in values)


def disagree(values: Sequence[float], apart: float) -> bool:
    """Tell whether readings contradict each other and no third has decided.

    Example:
        >>> disagree([1187, 1178], 3.0), disagree([1187, 1178, 1179], 3.0)
        (True, False)
    """
    return len(values) > 1 and max(_agreeing(values, apart)) == 1


def contradict(values_mm: Sequence[float], apart: float) -> bool:
    """Tell whether lengths disagree by so much that one of them must be a slip.

    Example:
        >>> contradict([2034, 2090], 3.0), contradict([1187, 1181], 3.0)
        (True, False)
    """
    return disagree(values_mm, apart) and max(values_mm) - min(values_mm) > SLIP_MM


def _agreeing(values: Sequence[float], apart: float) -> list[int]:
    """Count for each reading how many agree with it, itself among them."""
    return [sum(abs(one - other) <= apart for other in values) for one in values]
