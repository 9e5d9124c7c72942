"""Readings of one place that disagree with each other."""

import math
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.survey.digits import said, slips_of
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

ALARM_U: Final = 3.0
"""Two readings of one place may differ by so many standard uncertainties of a difference."""

STOP_MM: Final = 10.0
"""Beyond this, one of the two is a slip and not a hand that shook."""


def check_repeats(house: House) -> tuple[Finding, ...]:
    """Return a warning, or a stop, for every place whose repeated readings disagree."""
    return tuple(
        finding
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None
        for place in Place
        if len(readings.at(place)) > 1
        for finding in _disagree(house, opening, readings, place)
    )


def _disagree(
    house: House, opening: Opening, readings: OpeningReadings, place: Place
) -> tuple[Finding, ...]:
    found = readings.at(place)
    values = [r.value_mm for r in found]
    apart_mm = max(values) - min(values)
    allowed_mm = ALARM_U * math.sqrt(2.0) * house.tape(readings.tape).private_u_mm()
    if apart_mm <= allowed_mm:
        return ()
    units = house.units
    figures = " and ".join(format_length(v, units) for v in values)
    slip = next(
        (
            said(s, units)
            for r in found
            for s in slips_of(r, units)
            if all(abs(s.value_mm - o.value_mm) <= allowed_mm for o in found if o is not r)
        ),
        None,
    )
    again = f"Read the {place.value} a third time and leave the wrong figure out"
    return (
        Finding(
            code="repeats-disagree",
            severity=Severity.STOP if apart_mm > STOP_MM else Severity.WARNING,
            place=opening.mark,
            read=f"The {place.value} was read as {figures} {units.value}.",
            wrong=f"They are {format_with_unit(apart_mm, units)} apart, more than a careful hand "
            "leaves.",
            do=f"{again}; one may be {slip}." if slip else f"{again}.",
        ),
    )
