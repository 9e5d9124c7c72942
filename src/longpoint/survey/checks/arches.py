"""Arched heads: the rise as read against the crown's height."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.digits import said, slips
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

RISE_APART_MM: Final = 4.0
"""Rise against crown less springing: three readings and two straight edges; assumed."""


def check_arches(house: House) -> tuple[Finding, ...]:
    """Return what is to be said of the readings of every arched opening."""
    return tuple(finding for opening in house.openings for finding in _rise(house, opening))


def _rise(house: House, opening: Opening) -> tuple[Finding, ...]:
    arch = opening.arch
    left_mm = opening.readings.side_mm(Place.LEFT)
    right_mm = opening.readings.side_mm(Place.RIGHT)
    if arch is None or arch.crown_mm is None or left_mm is None or right_mm is None:
        return ()
    by_crown_mm = arch.crown_mm - (left_mm + right_mm) / 2.0
    if abs(by_crown_mm - arch.rise_mm) <= RISE_APART_MM:
        return ()
    units = house.units
    rise, crown, other = (
        format_length(x, units) for x in (arch.rise_mm, arch.crown_mm, by_crown_mm)
    )
    slip = rise_slip(arch.rise_mm, by_crown_mm, units)
    return (
        Finding(
            code="arch-rise",
            severity=Severity.STOP,
            place=opening.mark,
            read=say(
                "Read: rise {rise}, crown {crown}, springing {left} and {right} {units}.",
                rise=rise,
                crown=crown,
                left=format_length(left_mm, units),
                right=format_length(right_mm, units),
                units=units.value,
            ),
            wrong=say(
                "Crown less springing makes the rise {other}, not {rise}.",
                other=other,
                rise=rise,
            ),
            do=say("Read the rise again: is it {slip}?", slip=slip)
            if slip
            else say("Read the rise and crown again."),
        ),
    )


def rise_slip(rise_mm: float, wanted_mm: float, units: Units) -> str | None:
    """Return the slip that mends a rise to about what is wanted, in words; None if none does."""
    near = [s for s in slips(rise_mm, units) if abs(s.value_mm - wanted_mm) <= RISE_APART_MM]
    return said(near[0], units) if near else None
