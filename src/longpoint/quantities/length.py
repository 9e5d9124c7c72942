"""Read lengths as a carpenter writes them."""

import math
import re
from enum import StrEnum
from fractions import Fraction
from typing import Final

from longpoint.errors import QuantityError

MM_PER_INCH: Final = 25.4
"""Exact by definition of the international inch."""

LONGEST_MM: Final = 100_000.0
"""A hundred metres: nothing in a small house is longer, so a larger figure is a slip of the pen."""


class Units(StrEnum):
    """The unit in which a house was read."""

    MM = "mm"
    INCH = "in"


_FEET = re.compile(r"^\s*(?P<feet>\d+(?:\.\d+)?)\s*(?:'|′|ft\b\.?)\s*-?\s*(?P<rest>.*)$")
_INCHES = re.compile(
    r"^\s*(?:(?P<whole>\d+(?:\.\d+)?|\.\d+)(?!\s*/))?"
    r"\s*-?\s*(?:(?P<top>\d+)\s*/\s*(?P<bottom>\d+))?\s*(?:\"|″|''|in\b\.?)?\s*$"
)
_MM = re.compile(r"^\s*(?P<value>\d+(?:\.\d+)?|\.\d+)\s*(?P<unit>mm|cm|m)?\s*$")


def parse_length(written: object, units: Units) -> float:
    r"""Return the millimetres of a length as it stands in a notebook.

    Args:
        written: A number in `units`, or text: ``"1187"``, ``"1187.5"``, ``"1187 mm"``,
            ``"46 3/4"``, ``"3' 10 3/4\""``.
        units: What a bare number means. Text with a foot or inch mark is inches whatever the unit,
            text ending in ``mm``, ``cm`` or ``m`` is metric.

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
    else:
        length_mm = float(written) * (MM_PER_INCH if units is Units.INCH else 1.0)
    if not math.isfinite(length_mm) or length_mm < 0:
        raise _unreadable(written)
    if length_mm > LONGEST_MM:
        raise QuantityError(
            f"The length is written as {_shown(written)}.",
            "That is over a hundred metres.",
            "Write it in the house's unit, or with its unit behind it.",
        )
    return length_mm


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


def _parse_text(written: str, units: Units) -> float:
    text = written.strip().lower()
    metric = _MM.match(text)
    if metric and (metric["unit"] or units is Units.MM):
        return float(metric["value"]) * {"cm": 10.0, "m": 1000.0}.get(metric["unit"] or "mm", 1.0)
    feet = _FEET.match(text)
    if feet:
        rest = feet["rest"]
        inches = _parse_inches(rest, written) if rest.strip() else Fraction(0)
        return float((Fraction(feet["feet"]) * 12 + inches) * Fraction("25.4"))
    has_inch_mark = any(mark in text for mark in ('"', "″", "''", "in", "/"))
    if units is Units.INCH or has_inch_mark:
        return float(_parse_inches(text, written) * Fraction("25.4"))
    raise _unreadable(written)


def _parse_inches(text: str, written: str) -> Fraction:
    found = _INCHES.match(text)
    if not found or not (found["whole"] or found["top"]):
        raise _unreadable(written)
    fraction = Fraction(0)
    if found["top"]:
        if int(found["bottom"]) == 0:
            raise _unreadable(written)
        fraction = Fraction(int(found["top"]), int(found["bottom"]))
        if fraction >= 1 or "." in (found["whole"] or ""):
            raise _unreadable(written)
    return Fraction(found["whole"] or 0) + fraction


def _shown(written: object) -> str:
    text = repr(written)
    return text if len(text) <= 40 else text[:37] + "..."


def _unreadable(written: object) -> QuantityError:
    return QuantityError(
        f"The length is written as {_shown(written)}.",
        "That is not a length of zero or more that can be read.",
        "Write it like 1187, 1187.5, 46 3/4 or 3' 10 3/4\".",
    )
