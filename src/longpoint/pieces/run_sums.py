"""Sums along a wall, printed so that a carpenter can check them by hand."""

import math
from collections.abc import Sequence

from longpoint.quantities.formatting import format_tenth
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import joined, say


def run_sum(
    start: str, terms_mm: Sequence[float], units: Units = Units.MM, *, plus: str = "+"
) -> str:
    """Return a sum with its result.

    Args:
        start: What the first term is: "wall", "as read", "face".
        terms_mm: The first term, then what is added (> 0) or taken off (< 0); naughts are left
            out. [mm]
        units: Unit to print in: tenths of a millimetre, thirty-seconds of an inch.
        plus: What stands before a term that is added.

    Returns:
        The sum; the last term takes what rounding left over, so that it adds up as printed.

    Example:
        >>> run_sum("wall", [4606.0, -640.0, -819.0, -5.0, -57.0])
        'wall 4606 - 640 - 819 - 5 - 57 = 3085'
        >>> run_sum("as read", [2284.0])
        'as read 2284'
    """
    step_mm = 0.1 if units is Units.MM else MM_PER_INCH / 32.0
    kept = [terms_mm[0], *(term for term in terms_mm[1:] if abs(term) >= step_mm / 2)]
    whole = [round(term / step_mm) for term in kept]
    total = round(math.fsum(kept) / step_mm)
    if len(whole) > 1:
        whole[-1] += total - sum(whole)
    parts = [
        say(
            "{start} {whole}",
            start=start,
            whole=format_tenth(whole[0] * step_mm, units),
        )
    ]
    parts += [
        say(
            "{value} {term}",
            value=plus if term > 0 else "-",
            term=format_tenth(abs(term) * step_mm, units),
        )
        for term in whole[1:]
    ]
    if len(whole) > 1:
        parts.append(say("= {total}", total=format_tenth(total * step_mm, units)))
    return joined(" ", parts)
