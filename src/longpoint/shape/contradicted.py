"""What was read twice, far apart: what the other readings say of the two figures.

Their mean is nothing that was read, so what is reckoned with it misleads. Each figure is tried by
itself instead: those of an opening's sides, and those of a room's walls.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import product
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.odd_one import apart_mm, contradict
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place, Reading
from longpoint.survey.repeated import REPEATS_DISAGREE
from longpoint.survey.rooms import Room

MOST_WAYS: Final = 8
"""More ways to choose among the figures aren't tried; what is said then stays as it is."""

Findings = tuple[Finding, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """A house in which one figure is taken of each contradicted place of an opening or a room.

    Attributes:
        house: The house.
        figures_mm: Those figures.
    """

    house: House
    figures_mm: tuple[float, ...]


def by_each_figure(
    house: House, said: Findings, found: Findings, check: Callable[[House], Findings]
) -> Findings:
    """Return what was found in a house, of contradicted places by each of their figures.

    Of an opening or a room that is held for such places, stops and warnings stay that come
    whichever figure is right; where the other readings go with one figure alone, that is said.

    Args:
        house: The house as read.
        said: What its reader said.
        found: What is wrong with it by the means of such places.
        check: Says what is wrong with a house.
    """
    for opening in house.openings:
        ways = _ways_of_opening(house, opening)
        if REPEATS_DISAGREE not in opening.accept:
            said, found = _decided(house, {opening.mark}, ways, (said, found), check)
    for room in house.rooms:
        ways = _ways_of_room(house, room)
        places = {room.name, *(f"{room.name} {wall.mark}" for wall in room.walls)}
        if REPEATS_DISAGREE not in room.accept:
            said, found = _decided(house, places, ways, (said, found), check)
    return (*said, *found)


def _decided(
    house: House,
    places: set[str],
    ways: list[_Way],
    so_far: tuple[Findings, Findings],
    check: Callable[[House], Findings],
) -> tuple[Findings, Findings]:
    if not 1 < len(ways) <= MOST_WAYS:
        return so_far
    said, found = so_far
    doubts = [_doubts(check(way.house), places) for way in ways]
    always = [
        doubt
        for doubt in doubts[0]
        if all(any(each.code == doubt.code for each in others) for others in doubts[1:])
    ]
    of_means = set(_doubts(found, places))
    found = (*(finding for finding in found if finding not in of_means), *always)
    sound = [
        way.figures_mm
        for way, seen in zip(ways, doubts, strict=True)
        if all(doubt.severity is not Severity.STOP for doubt in seen)
    ]
    if len(sound) == 1 and len(sound[0]) == 1:
        figure = format_with_unit(sound[0][0], house.units)
        return _going_with(figure, said, places), _going_with(figure, found, places)
    return said, found


def _going_with(figure: str, findings: Findings, places: set[str]) -> Findings:
    return tuple(
        replace(
            finding,
            wrong=say(
                "{wrong} The other readings go with {figure} alone.",
                wrong=finding.wrong,
                figure=figure,
            ),
        )
        if finding.code == REPEATS_DISAGREE
        and finding.severity is Severity.STOP
        and finding.place in places
        else finding
        for finding in findings
    )


def _doubts(found: Findings, places: set[str]) -> Findings:
    """Return what is doubted of places besides that their readings disagree."""
    return tuple(
        finding
        for finding in found
        if finding.place in places
        and finding.severity is not Severity.NOTE
        and finding.code != REPEATS_DISAGREE
    )


def _ways_of_room(house: House, room: Room) -> list[_Way]:
    walls = [wall for wall in room.walls if wall.contradicted_mm]
    if not walls:
        return []
    ways = []
    for figures_mm in product(*(wall.contradicted_mm for wall in walls)):
        chosen = dict(zip((wall.mark for wall in walls), figures_mm, strict=True))
        as_chosen = tuple(
            replace(wall, length_mm=chosen.get(wall.mark, wall.length_mm)) for wall in room.walls
        )
        other = replace(house, rooms=(replace(room, walls=as_chosen),), runs=(), trims=())
        ways.append(_Way(house=other, figures_mm=figures_mm))
    return ways


def _ways_of_opening(house: House, opening: Opening) -> list[_Way]:
    choices = [
        [(face, reading) for reading in readings.at(place)]
        for face, readings in _faces(opening)
        for place in Place
        if _is_contradicted(house, readings, place)
    ]
    if not choices:
        return []
    ways = []
    for way in product(*choices):
        other = _chosen(opening, way)
        openings = tuple(other if each is opening else each for each in house.openings)
        alone = replace(house, openings=openings, rooms=(), runs=(), trims=())
        ways.append(_Way(house=alone, figures_mm=tuple(reading.value_mm for _, reading in way)))
    return ways


def _faces(opening: Opening) -> Iterator[tuple[str, OpeningReadings]]:
    yield "readings", opening.readings
    if opening.readings_b is not None:
        yield "readings_b", opening.readings_b


def _is_contradicted(house: House, readings: OpeningReadings, place: Place) -> bool:
    values = [reading.value_mm for reading in readings.at(place)]
    return contradict(values, apart_mm(house.tape(readings.tape)))


def _chosen(opening: Opening, way: tuple[tuple[str, Reading], ...]) -> Opening:
    for face, reading in way:
        readings = getattr(opening, face)
        lengths = tuple(
            each for each in readings.lengths if each.place is not reading.place or each is reading
        )
        opening = replace(opening, **{face: replace(readings, lengths=lengths)})
    return opening
