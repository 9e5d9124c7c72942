"""From a nail's gauge to its diameter.

A box gives a gauge, and three old wire gauges read it differently. Which of them a collated nail
follows is fixed by no source that was read, so a gauge stands for a range.

References:
    Wire-gauge comparison tables (three agree, one a university's dictionary of units), read.
"""

from typing import Final

from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.survey.fixing import Nail

GAUGES_INCH: Final = {
    14: (0.0800, 0.080, 0.083),
    15: (0.0720, 0.072, 0.072),
    16: (0.0625, 0.064, 0.065),
    17: (0.0540, 0.056, 0.058),
    18: (0.0475, 0.048, 0.049),
    21: (0.0317, 0.032, 0.032),
    23: (0.0258, 0.024, 0.025),
}
"""Diameter in inches by US steel wire gauge, standard wire gauge and Birmingham gauge."""

USUAL_LENGTHS_MM: Final = {
    15: (32.0, 38.0, 45.0, 50.0, 57.0, 64.0),
    16: (25.0, 32.0, 38.0, 45.0, 50.0, 57.0, 64.0),
    18: (15.0, 20.0, 25.0, 30.0, 32.0, 35.0, 40.0, 45.0, 50.0),
}
USUAL_LENGTHS_INCH: Final = {
    15: (1.25, 1.5, 1.75, 2.0, 2.25, 2.5),
    16: (1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5),
    18: (0.625, 0.75, 1.0, 1.25, 1.5, 1.75, 2.0),
}
"""Lengths that collated nails of a gauge are usually sold in. Common practice, no source."""

PIN_GAUGE: Final = 21
"""From this gauge on a nail is a pin: it holds a piece while the glue sets, and no more."""


def usual_lengths_mm(gauge: int, units: Units) -> tuple[float, ...]:
    """Return the lengths that nails of a gauge are usually sold in, as the house is measured.

    Example:
        >>> usual_lengths_mm(18, Units.INCH)[3]
        31.75
    """
    if units is Units.INCH:
        return tuple(length * MM_PER_INCH for length in USUAL_LENGTHS_INCH[gauge])
    return USUAL_LENGTHS_MM[gauge]


def diameters_mm(gauge: int) -> tuple[float, float] | None:
    """Return the least and the largest diameter that a gauge may stand for; None: not held.

    Args:
        gauge: As on the box.

    Example:
        >>> [round(d, 3) for d in diameters_mm(16)]
        [1.587, 1.651]
    """
    known = GAUGES_INCH.get(gauge)
    if known is None:
        return None
    return (min(known) * MM_PER_INCH, max(known) * MM_PER_INCH)


def thickest_mm(nail: Nail) -> float:
    """Return a nail's diameter, or the largest that its gauge may stand for.

    A gauge that isn't held counts as thick as the thickest that is. [mm]

    Example:
        >>> round(thickest_mm(Nail(gauge=18, length_mm=32)), 3)
        1.245
    """
    if nail.diameter_mm is not None:
        return nail.diameter_mm
    known = diameters_mm(nail.gauge)
    return known[1] if known else max(GAUGES_INCH[14]) * MM_PER_INCH


def thinnest_mm(nail: Nail) -> float:
    """Return a nail's diameter, or the least that its gauge may stand for. [mm]

    A gauge that isn't held counts as thin as the thinnest that is.
    """
    if nail.diameter_mm is not None:
        return nail.diameter_mm
    known = diameters_mm(nail.gauge)
    return known[0] if known else min(GAUGES_INCH[23]) * MM_PER_INCH


def is_off_gauge(nail: Nail) -> bool:
    """Tell whether the diameter on the box lies outside what the three gauges give.

    Half a tenth of a millimetre is allowed for the rounding on the box.

    Example:
        >>> is_off_gauge(Nail(gauge=16, length_mm=50, diameter_mm=1.6))
        False
        >>> is_off_gauge(Nail(gauge=16, length_mm=50, diameter_mm=1.4))
        True
    """
    known = diameters_mm(nail.gauge)
    if known is None or nail.diameter_mm is None:
        return False
    return not known[0] - 0.05 <= nail.diameter_mm <= known[1] + 0.05
