"""The sum behind a hook reading, so that a carpenter can check it by hand."""

import math
from dataclasses import dataclass
from typing import NamedTuple

from longpoint.quantities.formatting import format_tenth
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import joined, say


class Term(NamedTuple):
    """What a joint adds to a piece (or takes off it, negative), so many times, and its name."""

    length_mm: float
    name: str
    times: int = 1


def hand_sum(
    side_mm: float,
    quirks_mm: tuple[float, ...],
    inner_mm: float,
    width_mm: float,
    mitre_deg: float | None,
    *,
    cover_mm: float = 0.0,
    terms: tuple[Term, ...] = (),
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
        terms: What else its joints add to the inner edge or take off it: legs that a head runs
            over, horns, blocks, a plinth.
        is_shared: True when the piece belongs to a true frame that shares the opening's error, so
            that its length differs from its own side's for that reason.
        units: Unit to print in.

    Returns:
        The sum, left side and right side.

    Example:
        >>> hand_sum(1178.0, (5.0, 5.0), 1188.0, 57.0, 45.0)
        '1178 + 2 x 5 + 57 + 1.3 slant = 1246.3'
        >>> hand_sum(2017.0, (5.0,), 1822.0, 90.0, 45.0, terms=(Term(-200.0, "plinth"),))
        '2017 + 5 - 200 plinth + 90 + 2.1 slant = 1914.1'
    """
    steps = _Steps(units)
    named = (Term(-cover_mm, say("floor cover")), *terms)
    parts, so_far = _built_up(steps, side_mm, quirks_mm, named)
    inner = steps.count(inner_mm)
    if inner != so_far:
        named_mm = math.fsum(term.length_mm * term.times for term in named)
        corner_mm = inner_mm - (side_mm + math.fsum(quirks_mm) + named_mm)
        why = say("frame shared") if is_shared else say("corners off square")
        reason = why if abs(corner_mm) >= steps.step_mm / 2.0 else say("rounding")
        parts.append(
            say(
                "{signed} {reason}",
                signed=steps.signed(inner - so_far),
                reason=reason,
            )
        )
    if mitre_deg is None:
        return say("{parts} = {inner}", parts=joined(" ", parts), inner=steps.text(inner))
    past_mm = width_mm * math.tan(math.radians(mitre_deg))
    total = steps.count(math.hypot(inner_mm + past_mm, width_mm))
    slant = max(0, total - inner - steps.count(past_mm))
    parts.append(say("+ {total}", total=steps.text(total - inner - slant)))
    if slant:
        parts.append(say("+ {slant} slant", slant=steps.text(slant)))
    return say("{parts} = {total}", parts=joined(" ", parts), total=steps.text(total))


@dataclass(frozen=True, slots=True)
class _Steps:
    """The whole steps in which a sum is printed: tenths of a millimetre, thirty-seconds."""

    units: Units

    @property
    def step_mm(self) -> float:
        return 0.1 if self.units is Units.MM else MM_PER_INCH / 32.0

    def count(self, value_mm: float) -> int:
        return math.floor(value_mm / self.step_mm + 0.5 + 1e-9)

    def text(self, steps: int) -> str:
        return format_tenth(steps * self.step_mm, self.units)

    def signed(self, steps: int, times: int = 1) -> str:
        many = say("{times} x ", times=times) if times > 1 else ""
        return say(
            "{value} {many}{steps}",
            value="+" if steps > 0 else "-",
            many=many,
            steps=self.text(abs(steps)),
        )


def _built_up(
    steps: _Steps, side_mm: float, quirks_mm: tuple[float, ...], terms: tuple[Term, ...]
) -> tuple[list[str], int]:
    """Return the parts of a sum up to its inner edge, and what they come to."""
    parts = [steps.text(steps.count(side_mm))]
    so_far = steps.count(side_mm)
    quirks = tuple(steps.count(q) for q in quirks_mm)
    so_far += sum(quirks)
    if len(quirks) == 2 and quirks_mm[0] == quirks_mm[1]:
        parts.append(say("+ 2 x {quirks}", quirks=steps.text(quirks[0])))
    else:
        parts.extend(say("+ {q}", q=steps.text(q)) for q in quirks)
    for term in terms:
        # Half a step counts the same taken off as added.
        size = steps.count(abs(term.length_mm))
        if size:
            signed = size if term.length_mm > 0 else -size
            parts.append(
                say(
                    "{signed} {term}",
                    signed=steps.signed(signed, term.times),
                    term=term.name,
                )
            )
            so_far += signed * term.times
    return parts, so_far
