"""Readings of one place that disagree with each other."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.digits import said, slips_of
from longpoint.survey.house import House
from longpoint.survey.odd_one import apart_mm, disagree
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

STOP_MM: Final = 10.0
"""Beyond this, one of the two is a slip and not a hand that shook."""


def check_repeats(house: House) -> tuple[Finding, ...]:
    """Return a warning, or a stop, for every place whose repeated readings disagree.

    Where a third reading has decided, a note says which was left out.
    """
    return tuple(
        finding
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None
        for place in Place
        if len(readings.at(place)) > 1
        for finding in (
            *_disagree(house, opening, readings, place),
            *_decided(house, opening, readings, place),
        )
    )


def _decided(
    house: House, opening: Opening, readings: OpeningReadings, place: Place
) -> tuple[Finding, ...]:
    out = [r.value_mm for r in readings.left_out if r.place is place]
    if not out:
        return ()
    units = house.units
    stay = joined(say(" and "), (format_length(r.value_mm, units) for r in readings.at(place)))
    left = joined(say(" and "), (format_length(value, units) for value in out))
    return (
        Finding(
            code="reading-left-out",
            severity=Severity.NOTE,
            place=opening.mark,
            read=say(
                "The {place} was read as {stay}, and as {left} {units}.",
                place=place.value,
                stay=stay,
                left=left,
                units=units.value,
            ),
            wrong=say("{stay} agree, so {left} is left out.", stay=stay, left=left),
            do=say("Nothing, if it was a slip; else read it once more."),
        ),
    )


def _disagree(
    house: House, opening: Opening, readings: OpeningReadings, place: Place
) -> tuple[Finding, ...]:
    found = readings.at(place)
    values = [r.value_mm for r in found]
    allowed_mm = apart_mm(house.tape(readings.tape))
    if not disagree(values, allowed_mm):
        return ()
    most_mm = max(values) - min(values)
    units = house.units
    figures = joined(say(" and "), (format_length(v, units) for v in values))
    slip = next(
        (
            said(s, units)
            for r in found
            for s in slips_of(r, units)
            if all(abs(s.value_mm - o.value_mm) <= allowed_mm for o in found if o is not r)
        ),
        None,
    )
    again = say(
        "Read the {place} a third time and leave the wrong figure out",
        place=place.value,
    )
    return (
        Finding(
            code="repeats-disagree",
            severity=Severity.STOP if most_mm > STOP_MM else Severity.WARNING,
            place=opening.mark,
            read=say(
                "The {place} was read as {figures} {units}.",
                place=place.value,
                figures=figures,
                units=units.value,
            ),
            wrong=say(
                "They are {most} apart, more than a careful hand leaves.",
                most=format_with_unit(most_mm, units),
            ),
            do=say("{again}; one may be {slip}.", again=again, slip=slip)
            if slip
            else say("{again}.", again=again),
        ),
    )
