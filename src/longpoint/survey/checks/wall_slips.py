"""Which slip of tape or pencil turns one length into another along a wall."""

from typing import Final

from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.digits import Slip, SlipKind, said, slips

NEAR_SLIP_MM: Final = 3.0
"""How near a misfit must come to a slip before the slip is named: our choice, no source."""

_CASE_MM: Final = (60.0, 80.0)
"""Length of a tape's case, forgotten on an inside reading; common practice, no source."""

_WALL_SLIPS: Final = (
    (200.0, SlipKind.STARTED_FURTHER_ON, say("a stick or the tape's body of 200 not taken off")),
    (1000.0, SlipKind.MARK_MISCOUNTED, say("a metre too many")),
    (-1000.0, SlipKind.MARK_MISCOUNTED, say("a metre lost")),
)
"""What only a long reading can be over by, and how; common practice, no source."""


def guess_slip(
    read_mm: float, wanted_mm: float, units: Units, *, near_mm: float = NEAR_SLIP_MM
) -> Slip | None:
    """Return the slip that best explains why `read_mm` stands where `wanted_mm` fits.

    Args:
        read_mm: What was written. [mm]
        wanted_mm: What the other readings ask for. [mm]
        units: Unit of the house.
        near_mm: How near a slip must bring the reading to what is wanted. [mm]

    Returns:
        The slip; None when no known slip comes near.

    Example:
        >>> guess_slip(2315.0, 2215.0, Units.MM).words
        'tape started at the 100 mark'
        >>> guess_slip(3389.0, 3190.0, Units.MM).words
        "a stick or the tape's body of 200 not taken off"
        >>> guess_slip(1012.0, 1030.0, Units.MM) is None
        True
    """
    found = (
        *slips(read_mm, units),
        *(Slip(value_mm=read_mm - by_mm, kind=k, words=words) for by_mm, k, words in _WALL_SLIPS),
    )
    nearest = min(found, key=lambda slip: abs(slip.value_mm - wanted_mm))
    if abs(nearest.value_mm - wanted_mm) <= near_mm:
        return nearest
    if _CASE_MM[0] <= wanted_mm - read_mm <= _CASE_MM[1]:
        return Slip(
            value_mm=wanted_mm,
            kind=SlipKind.STARTED_FURTHER_ON,
            words=say("the tape's case not added"),
        )
    return None


def slip_words(slip: Slip, units: Units) -> str:
    """Return a slip as part of a sentence; a swap of digits names the figure that it mends to.

    Example:
        >>> slip_words(guess_slip(1102.0, 1012.0, Units.MM), Units.MM)
        '1012 mm (digits swapped)'
        >>> slip_words(guess_slip(2315.0, 2215.0, Units.MM), Units.MM)
        'tape started at the 100 mark'
    """
    return said(slip, units) if is_of_digits(slip) else slip.words


def is_of_digits(slip: Slip) -> bool:
    """Tell whether the pencil or the eye slipped, not the tape."""
    return slip.kind in (SlipKind.DIGITS_SWAPPED, SlipKind.UPSIDE_DOWN)
