"""Readings in the middle of an opening: how far its two sides bow together."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import raised, say
from longpoint.survey.checks.opposite_sides import WINDOW_APART_MM, may_be_raked
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

NOTE_MM: Final = 2.0
"""From here on a bow is said; three tape readings by themselves leave about 0.6; our limit."""

WARNING_MM: Final = 4.0
"""From here on a bow eats most of a usual quirk; our limit."""

SLIP_MM: Final = 8.0
"""Beyond this a slip in the middle reading is as likely as a bow; assumed."""

_Pair = tuple[Place, Place]

_MIDDLES: Final[tuple[tuple[Place, _Pair], ...]] = (
    (Place.MIDDLE_WIDTH, (Place.TOP, Place.BOTTOM)),
    (Place.MIDDLE_HEIGHT, (Place.LEFT, Place.RIGHT)),
)


def check_bow(house: House) -> tuple[Finding, ...]:
    """Return what a width or height in the middle says of the sides between which it was read.

    Nothing is said where opposite sides are meant to differ, or differ so much that one of them is
    in doubt: then half-way between them says nothing of a bow.

    References:
        The middle less the mean of the two ends is the sum of both sides' bows, outward positive,
        for straight ends whatever the taper.
    """
    return tuple(
        finding
        for opening in house.openings
        if not opening.raked
        for readings in (opening.readings, opening.readings_b)
        if readings is not None and not may_be_raked(readings)
        for middle, ends in _MIDDLES
        for finding in _bow(house, opening, readings, middle, ends)
    )


def _bow(
    house: House, opening: Opening, readings: OpeningReadings, middle: Place, ends: _Pair
) -> tuple[Finding, ...]:
    middle_mm = readings.mean_mm(middle)
    one_mm, other_mm = (readings.side_mm(place) for place in ends)
    if middle_mm is None or one_mm is None or other_mm is None:
        return ()
    is_height = middle is Place.MIDDLE_HEIGHT
    if is_height and opening.arch is not None:
        return ()
    legs_on_floor = is_height and opening.stands_on_floor
    if not legs_on_floor and abs(one_mm - other_mm) > WINDOW_APART_MM:
        return ()
    bow_mm = middle_mm - (one_mm + other_mm) / 2.0
    if abs(bow_mm) < NOTE_MM:
        return ()
    units = house.units
    read = say(
        "Read: {middle} {middle_2}, {ends} {one}, {ends_2} {other} {units}.",
        middle=middle.value,
        middle_2=format_length(middle_mm, units),
        ends=ends[0].value,
        one=format_length(one_mm, units),
        ends_2=ends[1].value,
        other=format_length(other_mm, units),
        units=units.value,
    )
    return (
        Finding(
            code="bow",
            severity=Severity.WARNING if abs(bow_mm) >= WARNING_MM else Severity.NOTE,
            place=opening.mark,
            read=read,
            wrong=_what_it_does(house, bow_mm, _sides(opening, is_height=is_height)),
            do=_what_to_do(bow_mm),
        ),
    )


def _sides(opening: Opening, *, is_height: bool) -> str:
    if not is_height:
        return say("the left side, the right or both")
    return say(
        "the head, the {floor} or both",
        floor=say("floor") if opening.stands_on_floor else say("sill"),
    )


def _what_it_does(house: House, bow_mm: float, sides: str) -> str:
    bow, note, warning = (
        format_with_unit(mm, house.units) for mm in (abs(bow_mm), NOTE_MM, WARNING_MM)
    )
    way, less, quirk = ("out", "more", "eaten") if bow_mm > 0 else ("in", "less", "wider")
    return say(
        "The middle is {bow} {less} than half-way between them: {sides} bow {way} "
        "by that together, one reading can't tell which, and the quirk is {quirk} "
        "by it in the middle (a note from {note}, a warning from {warning}: our "
        "limits).",
        bow=bow,
        less=less,
        sides=sides,
        way=way,
        quirk=quirk,
        note=note,
        warning=warning,
    )


def _what_to_do(bow_mm: float) -> str:
    straight = (
        say("pull the reveal straight")
        if bow_mm > 0
        else say("pull the reveal straight or plane it")
    )
    see = say("lay a straight edge along both sides")
    if abs(bow_mm) > SLIP_MM:
        return say(
            "Read the middle again, it may be a slip; then {see} and {straight}.",
            see=see,
            straight=straight,
        )
    return say(
        "{see} and {straight} before the trim goes on.",
        see=raised(see),
        straight=straight,
    )
