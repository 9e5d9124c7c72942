"""Readings outside all sense: our own limits, wide on purpose, and said to be ours."""

from collections.abc import Iterator
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import BEVELS, DIAGONALS, OpeningReadings, Place

SHORTEST_SIDE_MM: Final = 100.0
LONGEST_SIDE_MM: Final = 6000.0
LOWEST_DOOR_MM: Final = 1200.0
NARROWEST_DOOR_MM: Final = 300.0
FARTHEST_PLANE_MM: Final = 30.0
FARTHEST_ANGLE_DEG: Final = 45.0
WIDEST_QUIRK_MM: Final = 30.0
WIDEST_FACE_MM: Final = 250.0
LONGEST_RUN_MM: Final = 20_000.0
MOST_NAMED: Final = 8

_HEIGHTS = (Place.LEFT, Place.RIGHT, Place.HEIGHT, Place.MIDDLE_HEIGHT)


def check_outside_sense(house: House) -> tuple[Finding, ...]:
    """Return a stop for every reading that is too small, too large or too far off to be one.

    A setting or a run outside sense is a warning: it may be meant, and the pieces show it.
    """
    return (*_readings(house), *_quirks(house), *_faces(house), *_runs(house))


def _readings(house: House) -> Iterator[Finding]:
    yield from (
        Finding(
            code="outside-sense",
            severity=Severity.STOP,
            place=opening.mark,
            read=read,
            wrong=say("{limit}; that limit is ours.", limit=limit),
            do=say("Read it again; if it is right, accept it."),
        )
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None
        for read, limit in (
            *_lengths(house, opening, readings),
            *_plane(house, readings),
            *_angles(readings),
        )
    )


def _quirks(house: House) -> Iterator[Finding]:
    """Yield each quirk too wide: at its opening, or at the house where several share it."""
    marks: dict[float, list[str]] = {}
    for opening in house.openings:
        widest_mm = max(opening.quirk_mm.anticlockwise())
        if widest_mm > WIDEST_QUIRK_MM:
            marks.setdefault(widest_mm, []).append(opening.mark)
    for quirk_mm, where in marks.items():
        named = joined(", ", where[:MOST_NAMED]) + (" ..." if len(where) > MOST_NAMED else "")
        yield _set(
            where[0] if len(where) == 1 else house.name,
            say(
                "The quirk is set to {quirk} at {named}.",
                quirk=format_with_unit(quirk_mm, house.units),
                named=named,
            ),
            say(
                "That is more than {widest_quirk}",
                widest_quirk=format_with_unit(WIDEST_QUIRK_MM, house.units),
            ),
        )


def _faces(house: House) -> Iterator[Finding]:
    for profile in house.profiles:
        if profile.width_mm > WIDEST_FACE_MM:
            yield _set(
                house.name,
                say(
                    "The face of {profile} is {width} wide.",
                    profile=profile.name,
                    width=format_with_unit(profile.width_mm, house.units),
                ),
                say(
                    "That is more than {widest_face}",
                    widest_face=format_with_unit(WIDEST_FACE_MM, house.units),
                ),
            )


def _runs(house: House) -> Iterator[Finding]:
    for run in house.runs:
        if run.length_mm > LONGEST_RUN_MM:
            yield _set(
                run.mark,
                say(
                    "The run is read as {length}.",
                    length=format_with_unit(run.length_mm, house.units),
                ),
                say(
                    "That is more than {longest_run}",
                    longest_run=format_with_unit(LONGEST_RUN_MM, house.units),
                ),
            )


def _set(place: str, read: str, limit: str) -> Finding:
    return Finding(
        code="outside-sense",
        severity=Severity.WARNING,
        place=place,
        read=read,
        wrong=say("{limit}; that limit is ours.", limit=limit),
        do=say("Look whether it is a slip before anything is cut."),
    )


def _lengths(
    house: House, opening: Opening, readings: OpeningReadings
) -> Iterator[tuple[str, str]]:
    units = house.units
    for reading in readings.lengths:
        least_mm, most_mm = SHORTEST_SIDE_MM, LONGEST_SIDE_MM
        if reading.place in DIAGONALS:
            most_mm = 1.5 * LONGEST_SIDE_MM
        elif opening.stands_on_floor:
            least_mm = LOWEST_DOOR_MM if reading.place in _HEIGHTS else NARROWEST_DOOR_MM
        if least_mm <= reading.value_mm <= most_mm:
            continue
        shown = format_with_unit(reading.value_mm, units)
        limit_mm = least_mm if reading.value_mm < least_mm else most_mm
        word = say("less") if reading.value_mm < least_mm else say("more")
        yield (
            say("The {place} is read as {shown}.", place=reading.place.value, shown=shown),
            say(
                "That is {word} than {limit}",
                word=word,
                limit=format_with_unit(limit_mm, units),
            ),
        )


def _plane(house: House, readings: OpeningReadings) -> Iterator[tuple[str, str]]:
    if readings.plane is None:
        return
    names = (say("bottom left"), say("bottom right"), say("top right"), say("top left"))
    for name, value_mm in zip(names, readings.plane.corners_mm(), strict=True):
        if abs(value_mm) > FARTHEST_PLANE_MM:
            shown = format_with_unit(value_mm, house.units)
            limit = format_with_unit(FARTHEST_PLANE_MM, house.units)
            yield (
                say(
                    "The reveal is read {shown} off the lining at the {name}.",
                    shown=shown,
                    name=name,
                ),
                say("That is more than {limit}", limit=limit),
            )


def _angles(readings: OpeningReadings) -> Iterator[tuple[str, str]]:
    for angle in readings.angles:
        off_deg = angle.value_deg - 90.0 if angle.gauge in BEVELS else angle.value_deg
        if abs(off_deg) > FARTHEST_ANGLE_DEG:
            yield (
                say(
                    "The {gauge} is read as {value_deg:g} degrees.",
                    gauge=angle.gauge.value,
                    value_deg=angle.value_deg,
                ),
                say(
                    "That is more than {farthest_angle_deg:g} degrees off",
                    farthest_angle_deg=FARTHEST_ANGLE_DEG,
                ),
            )
