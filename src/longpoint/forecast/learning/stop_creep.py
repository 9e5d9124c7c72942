"""A saw's stop that creeps: checked lengths in the order of cutting, on a tabular CUSUM.

Unlike `drift`, which knows neither level nor spread of a line, here both are known: each piece has
the length it was to have, and a stop and a tape have a spread of their own.

References:
    Tabular CUSUM with reference value K and decision interval H, as in Montgomery and Runger,
    "Applied Statistics and Probability for Engineers", 16-10: K is half the shift that is to be
    found, H = 4 or 5 standard deviations; the new mean is K + C/N (its equation 16-32).
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

REFERENCE: Final = 0.5
"""K in standard deviations: a shift of one standard deviation is looked for."""
DECISION: Final = 5.0
"""H in standard deviations."""
FALSE_EVERY: Final = 465
"""Pieces between false alarms, on average, where nothing creeps."""
SEEN_AFTER: Final = 10.4
"""Pieces from a shift of one standard deviation until it is told, on average."""


@dataclass(frozen=True, slots=True)
class Creep:
    """A stop that isn't where it was set.

    Attributes:
        begins: First piece of the run that gave the alarm, counted from 0; the likely beginning.
        told: Piece at which it was told, counted from 0.
        by_mm: Mean of what these pieces are too long; negative: too short.
    """

    begins: int
    told: int
    by_mm: float

    @property
    def is_one_piece(self) -> bool:
        """Say whether a single piece gave the alarm: it may be a slip of the tape."""
        return self.begins == self.told


def stop_creep(
    offs_mm: Iterable[float],
    spread_mm: float,
    reference: float = REFERENCE,
    decision: float = DECISION,
) -> Creep | None:
    """Return the first creep that is told while the pieces come in one after the other.

    Args:
        offs_mm: What each piece is longer than it was to be, in the order of cutting.
        spread_mm: Standard deviation of one check where the stop stands still. > 0.
        reference: K in standard deviations. >= 0
        decision: H in standard deviations. > 0

    Raises:
        ValueError: The spread isn't above 0.

    Example:
        >>> stop_creep([0.1, -0.1, 0.0, 0.5, 0.5, 0.5], 0.2)
        Creep(begins=3, told=5, by_mm=0.5)
    """
    if not spread_mm > 0:
        raise ValueError(f"a spread is above 0, not {spread_mm}")
    k_mm, h_mm = reference * spread_mm, decision * spread_mm
    long_mm = short_mm = 0.0
    long_run = short_run = 0
    for at, off_mm in enumerate(offs_mm):
        long_mm = max(0.0, long_mm + off_mm - k_mm)
        short_mm = max(0.0, short_mm - off_mm - k_mm)
        long_run = long_run + 1 if long_mm > 0 else 0
        short_run = short_run + 1 if short_mm > 0 else 0
        if long_mm > h_mm:
            return Creep(at - long_run + 1, at, k_mm + long_mm / long_run)
        if short_mm > h_mm:
            return Creep(at - short_run + 1, at, -k_mm - short_mm / short_run)
    return None
