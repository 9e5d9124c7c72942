"""How far a board shrinks or swells across its grain.

Along the grain timber hardly moves, and that is left out. What a long run of MDF grows by in damp
air is not known well enough to print, and is left out as well.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import QuantityError
from longpoint.forecast.season.coefficients import Standing
from longpoint.forecast.season.emc import check_range
from longpoint.speech.said import say

COEFFICIENT_FROM_PERCENT: Final = 6.0
COEFFICIENT_TO_PERCENT: Final = 14.0
GREEN_PERCENT: Final = 30.0
"""Moisture below which timber begins to shrink; taken the same for all."""


class MovementForm(StrEnum):
    """Which of the two published forms a figure comes from."""

    COEFFICIENT = "coefficient, 6 to 14 %"
    GREEN = "shrinkage from green"

    @property
    def standing(self) -> Standing:
        """How the form is known."""
        match self:
            case MovementForm.COEFFICIENT:
                return Standing.READ
            case MovementForm.GREEN:
                return Standing.MEMORY


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """Change of one size.

    Attributes:
        change_mm: Positive where it swells.
        form: The form that gave it.
    """

    change_mm: float
    form: MovementForm


def movement(
    size_mm: float, from_percent: float, to_percent: float, per_percent: float
) -> Movement:
    """Return how far a width or thickness changes with its moisture.

    Args:
        size_mm: Size at the first moisture. > 0. [mm]
        from_percent: First moisture content, 0 to 30. [%]
        to_percent: Second, 0 to 30. [%]
        per_percent: Its coefficient, share per percent.

    Returns:
        The change and its form: by coefficient while both moistures lie between 6 and 14 %, by
        shrinkage from green beyond.

    Raises:
        QuantityError: A moisture outside 0 to 30 %.

    Example:
        >>> round(movement(232.0, 8.0, 11.0, 0.00245).change_mm, 1)
        1.7
        >>> movement(232.0, 8.0, 15.0, 0.00245).form.standing.value
        'from memory'

    References:
        Wood Handbook, FPL-GTR-190 (2010), eq. 13-2 (read) and eq. 13-3 (its symbols and limits
        read, the formula from memory).
    """
    return Movement(
        change_mm=-size_mm * shrink_share(from_percent, to_percent, per_percent),
        form=form_of(from_percent, to_percent),
    )


def shrink_share(from_percent: float, to_percent: float, per_percent: float) -> float:
    """Return the share of its size that a board loses; negative where it swells.

    Args:
        from_percent: First moisture content, 0 to 30. [%]
        to_percent: Second, 0 to 30. [%]
        per_percent: Its coefficient, share per percent.

    Raises:
        QuantityError: A moisture outside 0 to 30 %.

    References:
        From green: 1 / (30 x 100 / S - 30 + M) per percent, where 30 x 100 / S is 1 / C + 20 (see
        `coefficient_from_shrinkage`), so that both forms agree on a board at 10 %.
    """
    for percent in (from_percent, to_percent):
        check_range(say("A moisture content"), percent, 0.0, GREEN_PERCENT, "%")
    lost_percent = from_percent - to_percent
    match form_of(from_percent, to_percent):
        case MovementForm.COEFFICIENT:
            return per_percent * lost_percent
        case MovementForm.GREEN:
            return lost_percent / (1.0 / per_percent + 20.0 - GREEN_PERCENT + from_percent)


def moisture_change_percent(size_mm: float, change_mm: float, per_percent: float) -> float:
    """Return how much a board's moisture changed, from the change that was measured.

    Args:
        size_mm: Size before. > 0. [mm]
        change_mm: Change measured, positive where it swelled. [mm]
        per_percent: Its coefficient, share per percent. > 0.

    Returns:
        Percent of moisture, positive where it got damper; between 6 and 14 %.

    Raises:
        QuantityError: No size, or no coefficient.

    Example:
        >>> round(moisture_change_percent(232.0, 1.7, 0.00245), 1)
        3.0

    References:
        Wood Handbook, FPL-GTR-190 (2010), eq. 13-2 solved for the moisture.
    """
    if size_mm <= 0.0 or per_percent <= 0.0:
        raise QuantityError(
            say(
                "A size of {size_mm:g} mm and a coefficient of {per_percent:g} were given.",
                size_mm=size_mm,
                per_percent=per_percent,
            ),
            say(
                "A moisture change can only be worked out from sizes and coefficients above nought."
            ),
            say("Give the width before the change and the coefficient of the timber."),
        )
    return change_mm / (size_mm * per_percent)


def form_of(from_percent: float, to_percent: float) -> MovementForm:
    """Return which form covers a change from one moisture to another. [%]"""
    low, high = sorted((from_percent, to_percent))
    if low >= COEFFICIENT_FROM_PERCENT and high <= COEFFICIENT_TO_PERCENT:
        return MovementForm.COEFFICIENT
    return MovementForm.GREEN
