"""Labels for offcuts: short enough for a pencil, and a slip in one is caught.

A label is three signs and a fourth that checks them. The signs are those of the readings' code, 23
of them, and 23 is a prime: with a weight of its own for each place, the weighted sum of a label is
a multiple of 23, and neither another sign at one place nor two places changed with each other
leaves it one.

References:
    The weighted sum over a prime is that of ISBN-10 (ISO 2108:1992, from memory), there with 11.
"""

from collections.abc import Iterable
from typing import Final

from longpoint.survey.house_file.readings_code import CODE_SIGNS

LABEL_SIGNS: Final = CODE_SIGNS
BASE: Final = len(LABEL_SIGNS)
BODY: Final = 3
"""Signs in front of the check sign."""
MOST_LABELS: Final = BASE**BODY

_STRIDE: Final = 4567
"""Prime to 23, so that every label comes up once, and labels given on one day look unlike."""


def label(number: int) -> str:
    """Return the label of a number.

    Args:
        number: 0 to 12 166, each of which has a label of its own.

    Raises:
        ValueError: There are no more labels.

    Example:
        >>> label(0), label(1), label(2)
        ('EMKR', 'QC7R', '6WPK')
    """
    if not 0 <= number < MOST_LABELS:
        raise ValueError(f"there is no label of number {number}")
    rest = (number + 1) * _STRIDE % MOST_LABELS
    places = []
    for _ in range(BODY):
        rest, place = divmod(rest, BASE)
        places.append(place)
    places.reverse()
    places.append(_check(places))
    return "".join(LABEL_SIGNS[place] for place in places)


def as_written(text: str) -> str:
    """Return a label in capitals without blanks and hyphens, however it was written.

    Example:
        >>> as_written(" em-kr ")
        'EMKR'
    """
    return "".join(sign for sign in text.upper() if not sign.isspace() and sign != "-")


def is_label(text: str) -> bool:
    """Tell whether a text is a label, its check sign included.

    Example:
        >>> is_label("EMKR"), is_label("EMKP"), is_label("MEKR")
        (True, False, False)
    """
    if len(text) != BODY + 1 or any(sign not in LABEL_SIGNS for sign in text):
        return False
    *places, check = (LABEL_SIGNS.index(sign) for sign in text)
    return check == _check(places)


def one_slip_away(text: str, known: Iterable[str]) -> tuple[str, ...]:
    """Return the known labels that become the text by one wrong sign or one swap of neighbours.

    Example:
        >>> one_slip_away("EMKP", ["EMKR", "QC7R"])
        ('EMKR',)
    """
    return tuple(each for each in known if len(each) == len(text) and _is_slip(text, each))


def _is_slip(text: str, other: str) -> bool:
    apart = [place for place, (a, b) in enumerate(zip(text, other, strict=True)) if a != b]
    if len(apart) == 1:
        return True
    if len(apart) != 2 or apart[1] != apart[0] + 1:
        return False
    first, second = apart
    return (text[first], text[second]) == (other[second], other[first])


def _check(places: Iterable[int]) -> int:
    """Weights 2, 3, 4; the check sign itself weighs -1, which is 22."""
    return sum(weight * place for weight, place in enumerate(places, start=2)) % BASE
