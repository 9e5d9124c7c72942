"""Tell a decimal comma from a comma that parts off the thousands, or say that it can't be told."""

import re
from collections.abc import Iterable
from enum import StrEnum
from typing import Final

from longpoint.speech.said import joined, say


class DecimalSign(StrEnum):
    """What stands before the decimals."""

    POINT = "point"
    COMMA = "comma"


_FIGURE: Final = re.compile(r"^[+\-−]?\s*[0-9][0-9.,' \u00a0\u202f]*(?:\s*(?:mm|cm|m))?$")
_GROUPED: Final = re.compile(r"^[+\-]?[1-9]\d{0,2}[,.]\d{3}$")
SPACES: Final = " \u00a0\u202f'"
"""What parts off thousands besides point and comma."""


def decimal_sign(texts: Iterable[str]) -> tuple[DecimalSign | None, bool]:
    """Return the decimal sign that the figures of one file show, and whether they show both.

    A comma or point with three digits behind it and up to three before may be either; it is no
    evidence.

    Args:
        texts: The figures as written; what is no figure is passed over.

    Example:
        >>> decimal_sign(["1187,5", "462"])
        (<DecimalSign.COMMA: 'comma'>, False)
        >>> decimal_sign(["1,187", "462"])
        (None, False)
        >>> decimal_sign(["1187,5", "462.5"])
        (None, True)
    """
    shown = {sign for text in texts if (sign := _shown_by(text))}
    if len(shown) == 2:
        return None, True
    return (shown.pop() if shown else None), False


def with_point(text: str, sign: DecimalSign | None) -> str | None:
    """Return a figure with a decimal point and without thousands; None where it can't be told.

    Text that is no plain figure, such as `46 3/4`, is returned as it is.

    Example:
        >>> with_point("1.187,5", DecimalSign.COMMA), with_point("1,187", DecimalSign.POINT)
        ('1187.5', '1187')
        >>> with_point("1,187", None) is None
        True
        >>> with_point("46 3/4", DecimalSign.COMMA)
        '46 3/4'
    """
    if not _FIGURE.match(text):
        return text
    bare = text.replace("−", "-")
    figure = bare.rstrip("mc").rstrip(SPACES)
    unit = bare[len(figure) :].strip(SPACES)
    for space in SPACES:
        figure = re.sub(rf"(?<=\d){space}(?=\d{{3}}(?!\d))", "", figure)
    if any(space in figure.strip() for space in SPACES):
        return text
    if _GROUPED.match(figure) and sign is None:
        return None
    if sign is None:
        sign = _shown_by(figure) or DecimalSign.POINT
    mark, thousands = (",", ".") if sign is DecimalSign.COMMA else (".", ",")
    whole, point, decimals = figure.partition(mark)
    parts = whole.split(thousands)
    if any(len(part) != 3 for part in parts[1:]) or mark in decimals or thousands in decimals:
        return None
    return say(
        "{parts}{value}{decimals}{unit}",
        parts=joined("", parts),
        value="." if point else "",
        decimals=decimals,
        unit=say(" {unit}", unit=unit) if unit else "",
    )


def _shown_by(text: str) -> DecimalSign | None:
    if not _FIGURE.match(text):
        return None
    figure = text.replace("−", "-").rstrip("mc").strip(SPACES)
    if _GROUPED.match(figure) or not ({",", "."} & set(figure)):
        return None
    last = max(figure.rfind(","), figure.rfind("."))
    sign = figure[last]
    other = "." if sign == "," else ","
    if figure.count(sign) > 1:
        # Several of one sign part off thousands, so the other one is the decimal sign.
        return None if figure.count(other) else _SIGNS[other]
    return _SIGNS[sign]


_SIGNS: Final = {",": DecimalSign.COMMA, ".": DecimalSign.POINT}
