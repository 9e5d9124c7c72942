"""How wide a text comes out, near enough to keep two texts apart."""

import re
from typing import Final

LONG_WORD: Final = 16
"""A longer word could run out of a narrow column."""

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


def word_parts(word: str) -> tuple[str, ...]:
    """Return a word in the parts between which a line may end; only a very long one has several.

    It is parted behind a hyphen where it has one.

    Example:
        >>> word_parts("W1-head"), len(word_parts("x" * 40))
        (('W1-head',), 3)
    """
    parts = [""]
    for piece in re.findall(r"[^-]*-|[^-]+$", word) if len(word) > LONG_WORD else [word]:
        if parts[-1] and len(parts[-1]) + len(piece) > LONG_WORD:
            parts.append("")
        parts[-1] += piece
    return tuple(
        part[at : at + LONG_WORD] for part in parts for at in range(0, len(part), LONG_WORD)
    ) or ("",)
