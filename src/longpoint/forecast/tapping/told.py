"""Sizes of what shows on the wall, with their doubt, and when they are called an error."""

from dataclasses import dataclass
from typing import Final

FELT_MM: Final = 0.1
"""An open joint smaller than this is not worth a name: two leaves of the feeler; assumed."""
LENGTH_FELT_MM: Final = 1.0
"""A length error smaller than this is lost in the quirks; assumed."""
SURE: Final = 2.5
"""Standard uncertainties that a value must clear before it is called anything."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AngleTold:
    """How far the cuts are past the corners they are to fill.

    Attributes:
        joint: Index of the joint in an open set; None: all joints of a closed set together.
        over_deg: Sum of the errors; positive: past the angle, heels open. Negative: toes open.
        u_deg: Its standard uncertainty.
        left_mm: What it leaves open whatever is tapped: in a closed set shared evenly by all
            joints, in an open one with the pieces held to the reveal.
        u_left_mm: Standard uncertainty of that.
    """

    joint: int | None
    over_deg: float
    u_deg: float
    left_mm: float
    u_left_mm: float

    @property
    def is_told(self) -> bool:
        """Tell whether the readings can show an error that matters."""
        felt_mm = FELT_MM if self.joint is None else 2.0 * FELT_MM
        return self.u_left_mm <= felt_mm or self.is_wrong

    @property
    def is_wrong(self) -> bool:
        """Tell whether there is one, beyond doubt."""
        return self.left_mm > max(FELT_MM, SURE * self.u_left_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class LengthTold:
    """What shows of the lengths of one or two pieces.

    Attributes:
        pieces: Indices of the two that differ, or of those that are too long or short together.
        is_difference: Whether it is the first less the second; else the mean of all.
        over_mm: The difference, or how much too long.
        u_mm: Its standard uncertainty.
    """

    pieces: tuple[int, ...]
    is_difference: bool
    over_mm: float
    u_mm: float

    @property
    def is_told(self) -> bool:
        """Tell whether the readings can show an error that matters."""
        return self.u_mm <= LENGTH_FELT_MM or self.is_wrong

    @property
    def is_wrong(self) -> bool:
        """Tell whether there is one, beyond doubt."""
        return abs(self.over_mm) > max(LENGTH_FELT_MM, SURE * self.u_mm)
