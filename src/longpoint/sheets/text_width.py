"""How wide a text comes out, near enough to keep two texts apart."""

from typing import Final

_NARROW: Final = frozenset("iljtfrI.,:;'|!()[]/\\ -")
_WIDE: Final = frozenset("mwMWQGO@%—")


def text_width_mm(text: str, size_mm: float) -> float:
    """Return about how wide a text stands on a drawing, on the safe side. [mm]

    Example:
        >>> text_width_mm("ab", 10.0)
        12.0
    """
    return size_mm * sum(
        0.36 if sign in _NARROW else 0.92 if sign in _WIDE else 0.6 for sign in text
    )
