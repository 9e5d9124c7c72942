"""Arched heads: their readings are kept and checked, their pieces are not planned yet."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.survey.digits import said, slips
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

RISE_APART_MM: Final = 4.0
"""Rise against crown less springing: three readings and two straight edges; assumed."""


def check_arches(house: House) -> tuple[Finding, ...]:
    """Return what is to be said of every arched opening; each is held, for no step plans it."""
    findings: list[Finding] = []
    for opening in house.openings:
        if opening.arch is not None:
            findings.extend(_rise(house, opening))
            findings.append(_not_planned(house, opening, opening.arch.rise_mm))
    return tuple(findings)


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
    slip = _mending(arch.rise_mm, by_crown_mm, units)
    return (
        Finding(
            code="arch-rise",
            severity=Severity.STOP,
            place=opening.mark,
            read=f"Read: rise {rise}, crown {crown}, springing {format_length(left_mm, units)} "
            f"and {format_length(right_mm, units)} {units.value}.",
            wrong=f"Crown less springing makes the rise {other}, not {rise}.",
            do=f"Read the rise again: is it {slip}?" if slip else "Read the rise and crown again.",
        ),
    )


def _mending(rise_mm: float, by_crown_mm: float, units: Units) -> str | None:
    near = [s for s in slips(rise_mm, units) if abs(s.value_mm - by_crown_mm) <= RISE_APART_MM]
    return said(near[0], units) if near else None


def _not_planned(house: House, opening: Opening, rise_mm: float) -> Finding:
    return Finding(
        code="shape-not-planned",
        severity=Severity.STOP,
        place=opening.mark,
        read=f"The head is an arch with a rise of {format_with_unit(rise_mm, house.units)}.",
        wrong="Arched heads are not planned yet.",
        do="Its readings are kept; set this one out by hand.",
    )
