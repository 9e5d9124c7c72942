"""The sum behind a hook reading, so that a carpenter can check it by hand."""

import math
from collections.abc import Callable

from longpoint.quantities.formatting import format_tenth
from longpoint.quantities.length import MM_PER_INCH, Units


def hand_sum(
    side_mm: float,
    quirks_mm: tuple[float, ...],
    inner_mm: float,
    width_mm: float,
    mitre_deg: float | None,
    *,
    cover_mm: float = 0.0,
    units: Units = Units.MM,
) -> str:
    """Return the sum from the fitted side to the hook reading.

    The parts are rounded to tenths (inches: thirty-seconds) and the last one takes what rounding
    left over, so that the sum as printed is right to the last figure.

    Args:
        side_mm: The opening's side, as fitted.
        quirks_mm: Quirks added to it at its ends: two, or one for a leg on the floor.
        inner_mm: Inner edge of the piece.
        width_mm: Face width of the piece.
        mitre_deg: Saw angle of the end that is hooked; None when there is no hook reading.
        cover_mm: Floor cover taken off.
        units: Unit to print in.

    Returns:
        The sum, left side and right side.

    Example:
        >>> hand_sum(1178.0, (5.0, 5.0), 1188.0, 57.0, 45.0)
        '1178 + 2 x 5 + 57 + 1.3 slant = 1246.3'
    """
    step_mm = 0.1 if units is Units.MM else MM_PER_INCH / 32.0

    def whole(value_mm: float) -> float:
        return round(value_mm / step_mm) * step_mm

    def text(value_mm: float) -> str:
        return format_tenth(value_mm, units)

    parts = [text(side_mm)]
    running_mm = whole(side_mm)
    for quirk_text, quirk_mm in _quirk_parts(quirks_mm, text):
        parts.append(quirk_text)
        running_mm += whole(quirk_mm)
    if cover_mm:
        parts.append(f"- {text(cover_mm)} floor cover")
        running_mm -= whole(cover_mm)
    corner_mm = whole(inner_mm) - running_mm
    if abs(corner_mm) > step_mm / 2:
        parts.append(f"{'+' if corner_mm > 0 else '-'} {text(abs(corner_mm))} corners off square")
    if mitre_deg is None:
        return f"{' '.join(parts)} = {text(whole(inner_mm))}"
    past_mm = width_mm * math.tan(math.radians(mitre_deg))
    total_mm = math.hypot(inner_mm + past_mm, width_mm)
    parts.append(f"+ {text(whole(past_mm))}")
    slant_mm = whole(total_mm) - whole(inner_mm) - whole(past_mm)
    parts.append(f"+ {text(slant_mm)} slant")
    return f"{' '.join(parts)} = {text(whole(total_mm))}"


def _quirk_parts(
    quirks_mm: tuple[float, ...], text: Callable[[float], str]
) -> list[tuple[str, float]]:
    if len(quirks_mm) == 2 and quirks_mm[0] == quirks_mm[1]:
        return [(f"+ 2 x {text(quirks_mm[0])}", 2.0 * quirks_mm[0])]
    return [(f"+ {text(q)}", q) for q in quirks_mm]
