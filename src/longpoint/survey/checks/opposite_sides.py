"""Opposite sides that are too far apart, and the slips that would mend them."""

from collections.abc import Iterator
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.checks.jambs import jamb_pulled
from longpoint.survey.checks.rough_closure import rough_misclosure_mm, six_lengths_mm
from longpoint.survey.digits import COMMONNESS, Slip, said, slips_of
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place, Reading

WINDOW_APART_MM: Final = 5.0
"""Four standard uncertainties of a taper of 1 mm (assumed) read twice with a 1 mm tape."""

DOOR_WIDTH_APART_MM: Final = 6.0
"""Linings of doors are set before the floor and spread a little more; assumed."""

MENDED_MM: Final = 2.0
"""A slip mends a pair when it brings the two sides this close."""

RAKED_MM: Final = 60.0
"""Beyond this a difference may be meant (a head under a roof): the diagonals decide."""

STEEPEST_FLOOR: Final = 0.020
"""Rise over width beyond which a floor isn't believed; assumed. New floors keep within 1:200."""

FLOOR_NOTE_MM: Final = 3.0
"""Legs that differ by more than this are said to, so that nobody makes them alike."""


def check_opposite_sides(house: House) -> tuple[Finding, ...]:
    """Return what is to be said of opposite sides that differ.

    Where a slip of the pen in one of them would mend the difference, and the diagonals agree with
    the slip no less than with the figure as written, the opening is held and the slip is proposed;
    otherwise the difference may be real, and is a warning. Legs of a door differ by the floor: that
    is silent or a note until no floor slopes so much.
    """
    return tuple(
        finding
        for opening in house.openings
        if not opening.raked
        for readings in (opening.readings, opening.readings_b)
        if readings is not None
        for finding in (
            *_widths(house, opening, readings),
            *_heights(house, opening, readings),
        )
    )


def may_be_raked(readings: OpeningReadings) -> bool:
    """Tell whether opposite sides differ so much that a raked head is likelier than a taper."""
    return any(
        abs(one_mm - other_mm) > RAKED_MM
        for one, other in ((Place.TOP, Place.BOTTOM), (Place.LEFT, Place.RIGHT))
        if (one_mm := readings.mean_mm(one)) is not None
        and (other_mm := readings.mean_mm(other)) is not None
    )


def _widths(house: House, opening: Opening, readings: OpeningReadings) -> Iterator[Finding]:
    limit_mm = DOOR_WIDTH_APART_MM if opening.stands_on_floor else WINDOW_APART_MM
    yield from _pair(house, opening, readings, (Place.TOP, Place.BOTTOM), limit_mm)


def _heights(house: House, opening: Opening, readings: OpeningReadings) -> Iterator[Finding]:
    if opening.stands_on_floor:
        yield from _floor(house, opening, readings)
        return
    pulled = jamb_pulled(house, opening, readings)
    if pulled is not None:
        yield pulled
        return
    yield from _pair(house, opening, readings, (Place.LEFT, Place.RIGHT), WINDOW_APART_MM)


def _pair(
    house: House,
    opening: Opening,
    readings: OpeningReadings,
    pair: tuple[Place, Place],
    limit_mm: float,
) -> Iterator[Finding]:
    one_mm, other_mm = (readings.mean_mm(place) for place in pair)
    if one_mm is None or other_mm is None or abs(one_mm - other_mm) <= limit_mm:
        return
    if may_be_raked(readings) and _has_both_diagonals(readings):
        return
    units = house.units
    proposals = mending(house, readings, pair, MENDED_MM)
    one, other = (place.value for place in pair)
    yield Finding(
        code="sides-apart",
        severity=Severity.STOP if proposals else Severity.WARNING,
        place=opening.mark,
        read=say(
            "Read: {one} {one_2}, {other} {other_2} {units}.",
            one=one,
            one_2=format_length(one_mm, units),
            other=other,
            other_2=format_length(other_mm, units),
            units=units.value,
        ),
        wrong=say(
            "Opposite sides differ by {one}; ",
            one=format_with_unit(abs(one_mm - other_mm), units),
        )
        + (say("one of them looks like a slip.") if proposals else say("that is a lot of taper.")),
        do=say("Read both again: is it {or_}?", or_=_or(house, proposals))
        if proposals
        else say(
            "Read both again before cutting; if they are right, each piece keeps its own length."
        ),
    )


def _floor(house: House, opening: Opening, readings: OpeningReadings) -> Iterator[Finding]:
    left_mm, right_mm = readings.mean_mm(Place.LEFT), readings.mean_mm(Place.RIGHT)
    width_mm = readings.side_mm(Place.BOTTOM) or readings.side_mm(Place.TOP)
    if left_mm is None or right_mm is None or not width_mm:
        return
    if may_be_raked(readings) and _has_both_diagonals(readings):
        return
    units = house.units
    apart_mm = abs(left_mm - right_mm)
    apart = format_with_unit(apart_mm, units)
    read = say(
        "Read: left {left}, right {right} {units}.",
        left=format_length(left_mm, units),
        right=format_length(right_mm, units),
        units=units.value,
    )
    limit_mm = STEEPEST_FLOOR * width_mm
    if apart_mm > limit_mm:
        proposals = mending(house, readings, (Place.LEFT, Place.RIGHT), limit_mm)
        yield Finding(
            code="floor-slope",
            severity=Severity.STOP,
            place=opening.mark,
            read=read,
            wrong=say(
                "The floor would rise {apart} over a width of {width}, which is hard to believe.",
                apart=apart,
                width=format_length(width_mm, units),
            ),
            do=say("Read both again: is it {or_}?", or_=_or(house, proposals))
            if proposals
            else say("Read both again, and hold a level on the floor."),
        )
    elif apart_mm > FLOOR_NOTE_MM:
        way = say("left to right") if left_mm > right_mm else say("right to left")
        yield Finding(
            code="floor-falls",
            severity=Severity.NOTE,
            place=opening.mark,
            read=read,
            wrong=say(
                "The legs differ by {apart}: the floor rises that much {way}, or the head falls.",
                apart=apart,
                way=way,
            ),
            do=say("Each leg keeps its own length and its own foot; don't swap them."),
        )


def mending(
    house: House, readings: OpeningReadings, pair: tuple[Place, Place], within_mm: float
) -> tuple[tuple[Reading, Slip], ...]:
    """Return the slips of one of two opposite sides that bring them together, likeliest first."""
    found = [
        (reading, slip, abs(slip.value_mm - other_mm))
        for place, other in (pair, pair[::-1])
        if (other_mm := readings.mean_mm(other)) is not None and len(readings.at(place)) == 1
        for reading in readings.at(place)
        for slip in slips_of(reading, house.units)
        if abs(slip.value_mm - other_mm) <= within_mm
        and _closes_no_worse(readings, place, slip.value_mm)
    ]
    found.sort(key=lambda f: (-COMMONNESS[f[1].kind], f[2]))
    return tuple((reading, slip) for reading, slip, _ in found)


def _closes_no_worse(readings: OpeningReadings, place: Place, value_mm: float) -> bool:
    """Tell whether the loop closes no worse with one side changed; true when nothing checks it."""
    written = six_lengths_mm(readings)
    as_read = rough_misclosure_mm(written)
    changed = rough_misclosure_mm({**written, place: value_mm})
    return as_read is None or changed is None or abs(changed) <= abs(as_read)


def _has_both_diagonals(readings: OpeningReadings) -> bool:
    return bool(readings.at(Place.RISING) and readings.at(Place.FALLING))


def _or(house: House, proposals: tuple[tuple[Reading, Slip], ...]) -> str:
    return joined(
        say(", or "),
        (
            say("{place} {said}", place=reading.place.value, said=said(slip, house.units))
            for reading, slip in proposals[:3]
        ),
    )
