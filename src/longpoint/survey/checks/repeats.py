"""Readings of one place of an opening that disagree with each other."""

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.digits import slips_of
from longpoint.survey.house import House
from longpoint.survey.odd_one import apart_mm, contradict, disagree
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place
from longpoint.survey.repeated import (
    agreeing_slip,
    disagree_finding,
    left_out_finding,
    length_figures,
)


def check_repeats(house: House) -> tuple[Finding, ...]:
    """Return a warning, or a stop, for every place whose repeated readings disagree.

    Where a third reading has decided, a note says which was left out. Of rooms, runs and other
    trim the reader of the house file says the same.
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
    stay = length_figures([r.value_mm for r in readings.at(place)], units)
    left = length_figures(out, units)
    read = say(
        "The {place} was read as {stay}, and as {left} {units}.",
        place=place.value,
        stay=stay,
        left=left,
        units=units.value,
    )
    return (left_out_finding(opening.mark, read, stay, left),)


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
    slip = agreeing_slip(values, [slips_of(r, units) for r in found], allowed_mm)
    return (
        disagree_finding(
            opening.mark,
            say(
                "The {place} was read as {figures} {units}.",
                place=place.value,
                figures=length_figures(values, units),
                units=units.value,
            ),
            format_with_unit(most_mm, units),
            Severity.STOP if contradict(values, allowed_mm) else Severity.WARNING,
            say(
                "Read the {place} a third time and leave the wrong figure out",
                place=place.value,
            ),
            slip,
        ),
    )
