"""The sum behind a hook reading, so that a carpenter can check it by hand."""

import math

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
    is_shared: bool = False,
    units: Units = Units.MM,
) -> str:
    """Return the sum from the fitted side to the hook reading.

    Every part is a whole number of tenths (inches: thirty-seconds) as it is printed, and what
    rounding leaves over is said or goes to the last parts, so that the sum as printed is right to
    the last figure.

    Args:
        side_mm: The opening's side, as fitted.
        quirks_mm: Quirks added to it at its ends: two, or one for a leg on the floor.
        inner_mm: Inner edge of the piece.
        width_mm: Face width of the piece.
        mitre_deg: Saw angle of the end that is hooked; None when there is no hook reading.
        cover_mm: Floor cover taken off.
        is_shared: True when the piece belongs to a true frame that shares the opening's error, so
            that its length differs from its own side's for that reason.
        units: Unit to print in.

    Returns:
        The sum, left side and right side.

    Example:
        >>> hand_sum(1178.0, (5.0, 5.0), 1188.0, 57.0, 45.0)
        '1178 + 2 x 5 + 57 + 1.3 slant = 1246.3'
    """
    step_mm = 0.1 if units is Units.MM else MM_PER_INCH / 32.0

    def count(value_mm: float) -> int:
        return math.floor(value_mm / step_mm + 0.5 + 1e-9)

    def text(steps: int) -> str:
        return format_tenth(steps * step_mm, units)

    parts = [text(count(side_mm))]
    so_far = count(side_mm)
    quirks = tuple(count(q) for q in quirks_mm)
    so_far += sum(quirks)
    if len(quirks) == 2 and quirks_mm[0] == quirks_mm[1]:
        parts.append(f"+ 2 x {text(quirks[0])}")
    else:
        parts.extend(f"+ {text(q)}" for q in quirks)
    if cover_mm:
        parts.append(f"- {text(count(cover_mm))} floor cover")
        so_far -= count(cover_mm)
    rest = count(inner_mm) - so_far
    if rest:
        corner_mm = inner_mm - (side_mm + math.fsum(quirks_mm) - cover_mm)
        why = "frame shared" if is_shared else "corners off square"
        reason = why if abs(corner_mm) >= step_mm / 2.0 else "rounding"
        parts.append(f"{'+' if rest > 0 else '-'} {text(abs(rest))} {reason}")
    if mitre_deg is None:
        return f"{' '.join(parts)} = {text(count(inner_mm))}"
    past_mm = width_mm * math.tan(math.radians(mitre_deg))
    total = count(math.hypot(inner_mm + past_mm, width_mm))
    slant = max(0, total - count(inner_mm) - count(past_mm))
    parts.append(f"+ {text(total - count(inner_mm) - slant)}")
    if slant:
        parts.append(f"+ {text(slant)} slant")
    return f"{' '.join(parts)} = {text(total)}"
