"""Write lengths and angles as they stand on a sheet.

Millimetres to the half, inches to the sixteenth, gaps finer; angles to the tenth of a degree.
"""

import math
from fractions import Fraction
from typing import Final

from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import figure, say

SIXTEENTHS: Final = 16
SIXTY_FOURTHS: Final = 64

NO_GAP_MM: Final = 0.005
"""What is less is no gap but the rounding of sums."""


def round_half_mm(length_mm: float) -> float:
    """Return the length to the nearest half millimetre, halves away from zero.

    Example:
        >>> round_half_mm(1255.25), round_half_mm(1255.74)
        (1255.5, 1255.5)
    """
    return math.copysign(math.floor(abs(length_mm) * 2 + 0.5 + 1e-9) / 2, length_mm)


def format_length(length_mm: float, units: Units = Units.MM) -> str:
    """Return a length as printed on a sheet, without the unit.

    Example:
        >>> format_length(1255.3), format_length(1197.0)
        ('1255.5', '1197')
        >>> format_length(1187.45, Units.INCH)
        '46 3/4'
    """
    match units:
        case Units.MM:
            return figure(_tenths(round_half_mm(length_mm)))
        case Units.INCH:
            return _inches(length_mm)


def format_tenth(length_mm: float, units: Units = Units.MM) -> str:
    """Return a length for the hand sum: tenths of a millimetre, thirty-seconds of an inch.

    Example:
        >>> format_tenth(1.3), format_tenth(57.0)
        ('1.3', '57')
    """
    if units is Units.INCH:
        return _inches(length_mm, parts=32)
    return figure(_tenths(length_mm))


def format_unit(units: Units) -> str:
    """Return the unit as printed behind a length."""
    return "mm" if units is Units.MM else say("in")


def format_with_unit(length_mm: float, units: Units = Units.MM) -> str:
    """Return a length with its unit.

    Example:
        >>> format_with_unit(1187.45, Units.INCH), format_with_unit(5.0)
        ('46 3/4 in', '5 mm')
    """
    return say("{length} {unit}", length=format_length(length_mm, units), unit=format_unit(units))


def running_length(length_mm: float, units: Units) -> str:
    """Return a running length as the merchant counts it: metres, or feet.

    Example:
        >>> running_length(16200.0, Units.MM)
        '16.2 m'
    """
    if units is Units.INCH:
        return say("{feet:.1f} ft", feet=length_mm / (12 * MM_PER_INCH))
    return say("{metres:.1f} m", metres=length_mm / 1000.0)


def format_gap(gap_mm: float, units: Units) -> str:
    """Return a gap: tenths of a millimetre; sixteenths of an inch, sixty-fourths below one.

    A gap too small for a sixty-fourth is said in words, so that only none at all reads 0.

    Example:
        >>> format_gap(0.52, Units.MM), format_gap(1.6, Units.INCH), format_gap(0.5, Units.INCH)
        ('0.5', '1/16', '1/64')
        >>> format_gap(0.1, Units.INCH)
        'under 1/64'
    """
    if units is Units.MM:
        return figure(_tenths(gap_mm))
    counted = _counted(abs(gap_mm), SIXTY_FOURTHS)
    if counted == 0:
        return figure("0") if abs(gap_mm) < NO_GAP_MM else say("under 1/64")
    if counted < SIXTY_FOURTHS // SIXTEENTHS:
        return _inches(gap_mm, parts=SIXTY_FOURTHS)
    return _inches(gap_mm)


def format_angle(angle_deg: float) -> str:
    """Return an angle in tenths of a degree, as set on a saw.

    Example:
        >>> format_angle(44.97), format_angle(-0.04)
        ('45.0', '0.0')
    """
    return figure(f"{round(angle_deg, 1) + 0.0:.1f}")


def _tenths(value: float) -> str:
    return f"{round(value, 1) + 0.0:.1f}".removesuffix(".0")


def _inches(length_mm: float, parts: int = SIXTEENTHS) -> str:
    sign = "-" if length_mm < 0 else ""
    counted = _counted(abs(length_mm), parts)
    whole, rest = divmod(counted, parts)
    if counted == 0:
        return "0"
    if rest == 0:
        return f"{sign}{whole}"
    fraction = Fraction(rest, parts)
    text = f"{fraction.numerator}/{fraction.denominator}"
    return f"{sign}{whole} {text}" if whole else f"{sign}{text}"


def _counted(length_mm: float, parts: int) -> int:
    return math.floor(length_mm / MM_PER_INCH * parts + 0.5 + 1e-9)
