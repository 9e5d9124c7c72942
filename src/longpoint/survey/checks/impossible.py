"""Readings that no opening can have."""

import math
from collections.abc import Iterator

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length
from longpoint.speech.said import joined, say
from longpoint.survey.digits import said, slips_of
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place, Reading

TRIANGLES = (
    (Place.RISING, Place.BOTTOM, Place.RIGHT),
    (Place.RISING, Place.TOP, Place.LEFT),
    (Place.FALLING, Place.LEFT, Place.BOTTOM),
    (Place.FALLING, Place.TOP, Place.RIGHT),
)
"""Each diagonal with the two sides that it closes to a triangle."""

NEAR_SQUARE = 0.01
"""A proposal must bring the diagonal this close to that of a square opening, as a share of it."""


def check_impossible(house: House) -> tuple[Finding, ...]:
    """Return a stop for each opening with a diagonal that its sides can't span."""
    return tuple(
        finding
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None
        for finding in _first(_broken(house, opening, readings))
    )


def _first(found: Iterator[Finding]) -> tuple[Finding, ...]:
    return tuple(f for f in (next(found, None),) if f is not None)


def _broken(house: House, opening: Opening, readings: OpeningReadings) -> Iterator[Finding]:
    units = house.units
    for triangle in TRIANGLES:
        lengths = tuple(readings.side_mm(place) for place in triangle)
        diagonal, one, other = lengths
        if diagonal is None or one is None or other is None or _closes(diagonal, one, other):
            continue
        names = [place.value for place in triangle]
        figures = [format_length(x, units) for x in (diagonal, one, other)]
        too_long = diagonal >= one + other
        yield Finding(
            code="impossible-opening",
            severity=Severity.STOP,
            place=opening.mark,
            read=say(
                "Read: {names} {figures}, {names_2} {figures_2}, {names_3} {figures_3} {units}.",
                names=names[0],
                figures=figures[0],
                names_2=names[1],
                figures_2=figures[1],
                names_3=names[2],
                figures_3=figures[2],
                units=units.value,
            ),
            wrong=say(
                "No opening has these: the {names} diagonal is longer than the two sides together.",
                names=names[0],
            )
            if too_long
            else say(
                "No opening has these: with the {names} diagonal so short the two "
                "sides can't meet.",
                names=names[0],
            ),
            do=_advice(house, readings, triangle),
        )


def _closes(diagonal: float, one: float, other: float) -> bool:
    longest, *rest = sorted((diagonal, one, other), reverse=True)
    return longest < sum(rest)


def _advice(house: House, readings: OpeningReadings, triangle: tuple[Place, ...]) -> str:
    proposals = [
        say("{place} {said}", place=place.value, said=said(slip, house.units))
        for place in triangle
        for reading in readings.at(place)
        for slip in slips_of(reading, house.units)
        if _nearly_square(readings, triangle, reading, slip.value_mm)
    ]
    again = joined(say(" and "), (say("the {place}", place=place.value) for place in triangle))
    if not proposals:
        return say("Read {again} again.", again=again)
    return say(
        "Read {again} again; it may be {proposals}.",
        again=again,
        proposals=joined(say(", or "), proposals[:3]),
    )


def _nearly_square(
    readings: OpeningReadings, triangle: tuple[Place, ...], changed: Reading, value_mm: float
) -> bool:
    diagonal, one, other = (
        value_mm if place is changed.place else readings.side_mm(place) or 0.0 for place in triangle
    )
    return abs(math.hypot(one, other) - diagonal) < NEAR_SQUARE * diagonal
