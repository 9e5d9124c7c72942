"""Openings of which a place was read twice, far apart: what the other readings say of the two.

Their mean is nothing that was read, so what is reckoned with it misleads. Each figure is tried by
itself instead.
"""

from collections.abc import Callable, Iterator
from dataclasses import replace
from itertools import product
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.odd_one import SLIP_MM, apart_mm, disagree
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place, Reading
from longpoint.survey.repeated import REPEATS_DISAGREE

MOST_WAYS: Final = 8
"""More ways to choose among the figures aren't tried; what is said then stays as it is."""


def by_each_figure(
    house: House, found: tuple[Finding, ...], check: Callable[[House], tuple[Finding, ...]]
) -> tuple[Finding, ...]:
    """Return what was found in a house, of contradicted places by each of their figures.

    Of an opening that is held for such a place, stops and warnings stay that come whichever figure
    is right; where the other readings go with one figure alone, that is said.

    Args:
        house: The house as read.
        found: What is wrong with it by the means of such places.
        check: Says what is wrong with a house.
    """
    for opening in house.openings:
        if REPEATS_DISAGREE not in opening.accept and (ways := _ways(house, opening)):
            found = _decided(house, opening, ways, found, check)
    return found


def _decided(
    house: House,
    opening: Opening,
    ways: list[tuple[Opening, tuple[Reading, ...]]],
    found: tuple[Finding, ...],
    check: Callable[[House], tuple[Finding, ...]],
) -> tuple[Finding, ...]:
    doubts = [_doubts(check(_with(house, opening, way)), opening) for way, _ in ways]
    always = [
        doubt
        for doubt in doubts[0]
        if all(any(each.code == doubt.code for each in others) for others in doubts[1:])
    ]
    sound = [
        figures
        for (_, figures), said in zip(ways, doubts, strict=True)
        if all(doubt.severity is not Severity.STOP for doubt in said)
    ]
    of_mean = set(_doubts(found, opening))
    kept = [finding for finding in found if finding not in of_mean]
    if len(sound) == 1 and len(sound[0]) == 1:
        figure = format_with_unit(sound[0][0].value_mm, house.units)
        kept = [_going_with(figure, f) if _is_stop_of(f, opening) else f for f in kept]
    return (*kept, *always)


def _is_stop_of(finding: Finding, opening: Opening) -> bool:
    return (finding.place, finding.code) == (opening.mark, REPEATS_DISAGREE) and (
        finding.severity is Severity.STOP
    )


def _going_with(figure: str, finding: Finding) -> Finding:
    return replace(
        finding,
        wrong=say(
            "{wrong} The other readings go with {figure} alone.",
            wrong=finding.wrong,
            figure=figure,
        ),
    )


def _doubts(found: tuple[Finding, ...], opening: Opening) -> tuple[Finding, ...]:
    """Return what is doubted of an opening besides that its readings disagree."""
    return tuple(
        finding
        for finding in found
        if finding.place == opening.mark
        and finding.severity is not Severity.NOTE
        and finding.code != REPEATS_DISAGREE
    )


def _with(house: House, opening: Opening, other: Opening) -> House:
    openings = tuple(other if each is opening else each for each in house.openings)
    return replace(house, openings=openings, rooms=(), runs=(), trims=())


def _ways(house: House, opening: Opening) -> list[tuple[Opening, tuple[Reading, ...]]]:
    """Return the opening with one figure at each contradicted place, and which those are."""
    choices = [
        [(face, reading) for reading in readings.at(place)]
        for face, readings in _faces(opening)
        for place in Place
        if _is_contradicted(house, readings, place)
    ]
    ways = list(product(*choices)) if choices else []
    if len(ways) > MOST_WAYS:
        return []
    return [(_chosen(opening, way), tuple(reading for _, reading in way)) for way in ways]


def _faces(opening: Opening) -> Iterator[tuple[str, OpeningReadings]]:
    yield "readings", opening.readings
    if opening.readings_b is not None:
        yield "readings_b", opening.readings_b


def _is_contradicted(house: House, readings: OpeningReadings, place: Place) -> bool:
    values = [reading.value_mm for reading in readings.at(place)]
    return disagree(values, apart_mm(house.tape(readings.tape))) and (
        max(values) - min(values) > SLIP_MM
    )


def _chosen(opening: Opening, way: tuple[tuple[str, Reading], ...]) -> Opening:
    for face, reading in way:
        readings = getattr(opening, face)
        lengths = tuple(
            each for each in readings.lengths if each.place is not reading.place or each is reading
        )
        opening = replace(opening, **{face: replace(readings, lengths=lengths)})
    return opening
