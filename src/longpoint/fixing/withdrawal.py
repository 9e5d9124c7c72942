"""How much better one nail holds than another; a comparison, never a capacity.

The published formula was found for bright common nails driven into side grain. Finish and brad
nails were not tested, their heads pull through trim long before, and timber moves: so no force is
ever given here, only how many times a reference nail another one is worth.

References:
    USDA FPL-093 (1965) and Technical Note 236 (1958): withdrawal is 6900 G^2.5 D in pounds for each
    inch of penetration, D in inches; read. Densities G: NDS table 12.3.3A as copied into an
    open-source structural library; read. Pre-boring: NDS as summarised on a handbook page; read.
"""

import math
from typing import Final

from longpoint.quantities.length import MM_PER_INCH

FORMULA_LBF_PER_INCH: Final = 6900.0
FRAME_WOODS_G: Final = {
    "Douglas fir-larch": 0.50,
    "southern pine": 0.55,
    "spruce-pine-fir": 0.42,
    "hem-fir": 0.43,
    "red oak": 0.67,
    "red maple": 0.58,
    "eastern white pine": 0.36,
    "western cedars": 0.36,
    "redwood": 0.37,
    "mixed oak": 0.68,
}
"""Density of the stud's timber against water's, oven-dry, by its name."""
ASSUMED_WOOD: Final = "spruce-pine-fir"

REFERENCE_DIAMETER_MM: Final = 0.0625 * MM_PER_INCH
REFERENCE_DEPTH_MM: Final = 25.0
"""The reference nail: 16 gauge, 25 mm deep in spruce-pine-fir. Ours, to compare by."""

DENSE_G: Final = 0.6


def withdrawal_lbf_per_inch(density_g: float, diameter_inch: float) -> float:
    """Return what the published formula gives for a tested kind of nail. [lbf/in]

    It is here so that the formula can be checked against its source; sheets print ratios only.

    Args:
        density_g: Density against water's. 0.3 to 0.7.
        diameter_inch: Diameter. > 0. [in]

    Example:
        >>> withdrawal_lbf_per_inch(0.50, 0.0625)
        76.235
    """
    return FORMULA_LBF_PER_INCH * math.pow(density_g, 2.5) * diameter_inch


def reference_nails(diameter_mm: float, depth_mm: float, wood: str = ASSUMED_WOOD) -> float:
    """Return how many reference nails a nail is worth, by the published formula.

    Args:
        diameter_mm: Its diameter. [mm]
        depth_mm: How deep it is in the timber that holds. >= 0. [mm]
        wood: That timber, one of `FRAME_WOODS_G`.

    Example:
        >>> reference_nails(REFERENCE_DIAMETER_MM, 50.0)
        2.0
    """
    density = math.pow(FRAME_WOODS_G[wood] / FRAME_WOODS_G[ASSUMED_WOOD], 2.5)
    return density * (diameter_mm / REFERENCE_DIAMETER_MM) * (depth_mm / REFERENCE_DEPTH_MM)


def pre_bore_share(density_g: float) -> float:
    """Return the largest hole bored first, as a share of the nail's diameter.

    Example:
        >>> pre_bore_share(0.42), pre_bore_share(0.67)
        (0.75, 0.9)
    """
    return 0.90 if density_g > DENSE_G else 0.75
