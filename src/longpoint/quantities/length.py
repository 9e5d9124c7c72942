"""Read lengths as a carpenter writes them."""

import math
import re
from enum import StrEnum
from fractions import Fraction
from typing import Final

from longpoint.errors import QuantityError
from longpoint.speech.said import joined, say

MM_PER_INCH: Final = 25.4
"""Exact by definition of the international inch."""

LONGEST_MM: Final = 100_000.0
"""A hundred metres: nothing in a small house is longer, so a larger figure is a slip of the pen."""

LONGEST_TEXT: Final = 40
"""No length needs more signs than this."""

INCH_PARTS: Final = (2, 4, 8, 16, 32, 64)
"""What the inch of a tape is divided into."""


class Units(StrEnum):
    """The unit in which a house was read."""

    MM = "mm"
    INCH = "in"


_NUMBER = r"\d+(?:\.\d+)?|\.\d+"
_MM = re.compile(rf"^(?P<value>{_NUMBER})\s*(?P<unit>mm|cm|m)?$")
_FEET = re.compile(r"^(?P<feet>\d+(?:\.\d+)?)\s*(?:'|(?:ft|foot|feet)\b\.?)\s*-?\s*(?P<rest>.*)$")
_INCHES = re.compile(
    rf"^(?:(?P<number>{_NUMBER})|(?:(?P<whole>\d+)(?:\s*-\s*|\s+))?"
    r"(?P<top>\d+)\s*/\s*(?P<bottom>\d+))\s*(?P<mark>\"|in(?:ch(?:es)?)?\b\.?)?$"
)

_MM_IN = {None: Fraction(1), "mm": Fraction(1), "cm": Fraction(10), "m": Fraction(1000)}
_MM_IN_INCH = Fraction(254, 10)

# What a phone's keyboard makes of the signs on a tape.
_SIGNS = str.maketrans(
    {
        "′": "'",
        "’": "'",  # noqa: RUF001
        "″": '"',
        "”": '"',
        "⁄": "/",  # noqa: RUF001
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
        "⅛": " 1/8",
        "⅜": " 3/8",
        "⅝": " 5/8",
        "⅞": " 7/8",
    }
)


def parse_length(written: object, units: Units) -> float:
    r"""Return the millimetres of a length as it stands in a notebook.

    Args:
        written: A number in `units`, or text: ``"1187"``, ``"1187.5"``, ``"1187 mm"``,
            ``"46 3/4"``, ``"3' 10 3/4\""``.
        units: What a bare number means. Text with a foot or inch mark is inches whatever the unit,
            text ending in ``mm``, ``cm`` or ``m`` is metric. In a house in mm a fraction is inches
            too, but a bare half is refused: it may be half a millimetre.

    Returns:
        Length in mm, 0 <= length <= 100 000.

    Raises:
        QuantityError: The text isn't a length, is negative, or is over a hundred metres.

    Example:
        >>> parse_length("3' 10 3/4\"", Units.MM)
        1187.45
        >>> parse_length("46 3/4", Units.INCH)
        1187.45
        >>> parse_length(1187.5, Units.MM)
        1187.5
    """
    if isinstance(written, bool) or not isinstance(written, int | float | str):
        raise _unreadable(written)
    if isinstance(written, str):
        length_mm = _parse_text(written, units)
    elif (isinstance(written, float) and not math.isfinite(written)) or written < 0:
        raise _unreadable(written)
    else:
        length_mm = Fraction(written) * (_MM_IN_INCH if units is Units.INCH else 1)
    if length_mm > LONGEST_MM:
        raise QuantityError(
            say("The length is written as {shown}.", shown=_shown(written)),
            say("That is over a hundred metres."),
            say("Write it in the house's unit, or with its unit behind it."),
        )
    return float(length_mm)


def parse_signed_length(written: object, units: Units) -> float:
    """Return the millimetres of a length that may carry a sign, such as a plane reading.

    Raises:
        QuantityError: As `parse_length`.

    Example:
        >>> parse_signed_length("-1/8", Units.INCH)
        -3.175
        >>> parse_signed_length(-3, Units.MM)
        -3.0
    """
    if isinstance(written, str):
        text = written.strip().replace("−", "-")
        if text[:1] in {"-", "+"}:
            sign = -1.0 if text[0] == "-" else 1.0
            return sign * parse_length(text[1:], units)
        return parse_length(text, units)
    if isinstance(written, int | float) and not isinstance(written, bool) and written < 0:
        return -parse_length(-written, units)
    return parse_length(written, units)


def _parse_text(written: str, units: Units) -> Fraction:
    if len(written) > LONGEST_TEXT:
        raise _unreadable(written)
    text = joined(" ", written.lower().translate(_SIGNS).replace("''", '"').split())
    if "," in text:
        raise QuantityError(
            say("The length is written as {shown}.", shown=_shown(written)),
            say("A comma may stand for a decimal point or part off the thousands."),
            say("Write it with a point and without a comma, like 1187.5."),
        )
    metric = _MM.match(text)
    if metric and (metric["unit"] or units is Units.MM):
        return Fraction(metric["value"]) * _MM_IN[metric["unit"]]
    feet = _FEET.match(text)
    if feet is None:
        return _parse_inches(text, written, is_bare_half_clear=units is Units.INCH) * _MM_IN_INCH
    if not feet["rest"]:
        return Fraction(feet["feet"]) * 12 * _MM_IN_INCH
    inches = _parse_inches(feet["rest"], written)
    if "." in feet["feet"] or inches >= 12:
        raise _unreadable(written)
    return (Fraction(feet["feet"]) * 12 + inches) * _MM_IN_INCH


def _parse_inches(text: str, written: str, *, is_bare_half_clear: bool = True) -> Fraction:
    found = _INCHES.match(text)
    if not found:
        raise _unreadable(written)
    if found["number"]:
        return Fraction(found["number"])
    top, bottom = int(found["top"]), int(found["bottom"])
    if bottom not in INCH_PARTS or top >= bottom:
        raise QuantityError(
            say("The length is written as {shown}.", shown=_shown(written)),
            say("No tape's inch has a mark at {top}/{bottom}.", top=top, bottom=bottom),
            say("Write it in halves, quarters, eighths, 16ths, 32nds or 64ths, like 46 3/4."),
        )
    if bottom == 2 and not found["mark"] and not is_bare_half_clear:
        raise QuantityError(
            say(
                "The length is written as {shown} in a house read in mm.",
                shown=_shown(written),
            ),
            say("It may be half an inch or half a millimetre."),
            say('Write 1187.5 for millimetres, or 46 1/2" for inches.'),
        )
    return int(found["whole"] or 0) + Fraction(top, bottom)


def _shown(written: object) -> str:
    if isinstance(written, int) and abs(written) >= 10**15:
        return say("a number of over 15 digits")
    text = repr(written)
    return text if len(text) <= 40 else text[:37] + "..."


def _unreadable(written: object) -> QuantityError:
    return QuantityError(
        say("The length is written as {shown}.", shown=_shown(written)),
        say("That is not a length of zero or more that can be read."),
        say("Write it like 1187, 1187.5, 46 3/4 or 3' 10 3/4\"."),
    )
