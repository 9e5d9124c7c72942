"""How long a thing takes: the least, what is likely, and the most."""

import math
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Final

from longpoint.errors import PricingError
from longpoint.speech.said import say

LESS: Final = Decimal("0.8")
MORE: Final = Decimal("1.5")
"""One figure alone is taken as likely, with 20 percent less to 50 percent more; ours, no source.
Work runs late further than it runs early; published rates for one thing differ far more."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hours:
    """Hours of one person for one thing, on the average of a job.

    Attributes:
        least: No job took less. >= 0. [h]
        likely: What most jobs take. [h]
        most: No job took more. [h]

    Raises:
        PricingError: They don't stand in that order, or are under nought.
    """

    least: Decimal
    likely: Decimal
    most: Decimal

    def __post_init__(self) -> None:
        """Check the order."""
        if not 0 <= self.least <= self.likely <= self.most:
            raise PricingError(
                say(
                    "Hours are written as {least}, {likely} and {most}.",
                    least=self.least,
                    likely=self.likely,
                    most=self.most,
                ),
                say("They are the least, the likely and the most, none under nought."),
                say("Write them in that order, such as [0.4, 0.5, 0.8]."),
            )

    @property
    def mean(self) -> Fraction:
        """Return the mean of the triangle that the three figures span. [h]

        Example:
            >>> Hours(least=Decimal(1), likely=Decimal(2), most=Decimal(6)).mean
            Fraction(3, 1)

        References:
            Mean of the triangular distribution: a third of the sum of its three figures.
        """
        return (Fraction(self.least) + Fraction(self.likely) + Fraction(self.most)) / 3

    def drawn(self, chance: float) -> float:
        """Return the hours that are not exceeded with a chance. [h]

        Args:
            chance: 0 to 1.

        Example:
            >>> Hours(least=Decimal(0), likely=Decimal(1), most=Decimal(2)).drawn(0.5)
            1.0

        References:
            The area under the triangle, solved for its right-hand end.
        """
        least, likely, most = float(self.least), float(self.likely), float(self.most)
        width = most - least
        if width <= 0.0:
            return likely
        if chance * width < likely - least:
            return least + math.sqrt(chance * width * (likely - least))
        return most - math.sqrt((1.0 - chance) * width * (most - likely))


def spread_of(likely: Decimal) -> Hours:
    """Return what one figure alone is taken as.

    Example:
        >>> spread_of(Decimal("0.5")).most
        Decimal('0.75')
    """
    return Hours(least=likely * LESS, likely=likely, most=likely * MORE)
