"""How far a timber moves, and how well that is known."""

from dataclasses import dataclass
from enum import StrEnum


class Standing(StrEnum):
    """How a figure is known."""

    READ = "read"
    """Read in a copy of the source that is named."""
    MEMORY = "from memory"
    """Remembered, not read: to be confirmed before it is quoted."""
    DERIVED = "derived"
    """Worked out from another figure by a stated formula."""
    ASSUMED = "assumed"
    """Taken by us, with no published figure behind it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coefficient:
    """Change of a size for each percent of moisture, between 6 and 14 %.

    Attributes:
        per_percent: Share of the size, > 0; 0.0025 is a quarter of a percent per percent.
        standing: How it is known.
        source: Where it comes from.
    """

    per_percent: float
    standing: Standing
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Species:
    """One timber or board.

    Attributes:
        name: Its full name.
        aliases: What else carpenters write, in lower case.
        radial: Square to the rings: across a quarter-sawn board. The least movement.
        tangential: Along the rings: across a flat-sawn board. The most.
    """

    name: str
    aliases: tuple[str, ...]
    radial: Coefficient
    tangential: Coefficient

    @property
    def is_read(self) -> bool:
        """Tell whether both figures were read in a source."""
        return self.radial.standing is self.tangential.standing is Standing.READ

    def per_percent(self, flat_share: float) -> float:
        """Return the movement of a board between quarter-sawn and flat-sawn.

        Args:
            flat_share: 0 quarter-sawn to 1 flat-sawn: the squared sine of the angle between the
                rings and the thickness of the board.
        """
        least, most = self.radial.per_percent, self.tangential.per_percent
        return least + flat_share * (most - least)


def coefficient_from_shrinkage(shrinkage_percent: float) -> float:
    """Return the coefficient that a shrinkage from green to oven-dry stands for.

    Args:
        shrinkage_percent: Share of the green size. 0 to 30. [%]

    Returns:
        Share per percent of moisture, at 10 %.

    Example:
        >>> round(coefficient_from_shrinkage(9.9), 5)
        0.00353

    References:
        Straight-line shrinkage that starts at 30 % moisture, taken on the size at 10 %:
        (S / 3000) / (1 - S / 150). Our derivation. It meets the published pairs of several timbers
        to five decimals; those of western redcedar and redwood it doesn't.
    """
    return shrinkage_percent / 3000.0 / (1.0 - shrinkage_percent / 150.0)
