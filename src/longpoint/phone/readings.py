"""Readings of one line as they stand, and whether they agree."""

from collections.abc import Mapping, Sequence
from typing import Any

from longpoint.errors import QuantityError
from longpoint.quantities.length import Units, parse_signed_length
from longpoint.survey.odd_one import disagree


def texts_of(table: Mapping[str, Any], line: str) -> list[Any]:
    """Return the readings of a line as they stand in a table.

    Example:
        >>> texts_of({"plane": {"tl": -1}, "top": [1187, 1178]}, "plane.tl")
        [-1]
    """
    value: Any = table
    for part in line.split("."):
        value = value.get(part) if isinstance(value, Mapping) else None
    if value is None:
        return []
    return list(value) if isinstance(value, list) else [value]


def differ(texts: Sequence[Any], apart: float, units: Units | None) -> bool:
    """Tell whether readings disagree: there are but two, or no two of them agree.

    Args:
        texts: As they stand.
        apart: How far two may be apart. [mm or degrees]
        units: Of lengths; None for angles.

    Example:
        >>> differ([1187, 1178], 3.0, Units.MM), differ([1187, 1178, 1179], 3.0, Units.MM)
        (True, False)
    """
    return disagree(_values(texts, units), apart)


def _values(texts: Sequence[Any], units: Units | None) -> list[float]:
    """Return the figures; none where one can't be read: the reader of files refuses that."""
    try:
        if units is None:
            return [float(text) for text in texts]
        return [parse_signed_length(text, units) for text in texts]
    except (QuantityError, ValueError, TypeError):
        return []
