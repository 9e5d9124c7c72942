"""Diagonals written the wrong way round: closure is blind to it, a gauge is not."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.quantities.formatting import format_length
from longpoint.shape.fitted import Misclosure
from longpoint.shape.network import Sighting, fit_network
from longpoint.shape.sightings import (
    assumptions,
    first_guess,
    gauge_sightings,
    level_assumption,
    tape_sightings,
)
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.instruments import Tape
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

STOP_GAIN: Final = 6.0
"""Swapped twenty times likelier than as written, by the gauges: 2 ln 20.

A true opening with one honest gauge gets there at most 7 times in 1000: the gauge must be out by
2.45 of its standard uncertainties, and the lean of just the size that helps. Reading one diagonal
again costs a minute; swapped ones cost all four pieces.
"""

WARNING_GAIN: Final = 4.6
"""Ten times likelier: 2 ln 10."""

CLOSES: Final = 3.0


def check_diagonals(house: House, opening: Opening, readings: OpeningReadings) -> Iterator[Finding]:
    """Yield a finding when plumb, level or bevel readings fit the diagonals only if swapped.

    Without such a reading nothing can tell, and only a drawing shown to the eye settles it.
    """
    rising, falling = readings.mean_mm(Place.RISING), readings.mean_mm(Place.FALLING)
    if not readings.angles or rising is None or falling is None or rising == falling:
        return
    tape = house.tape(readings.tape)
    written, swapped = _misfit(readings, tape), _misfit(_swapped(readings), tape)
    if written is None or swapped is None or swapped.normalised > CLOSES:
        return
    gain = written.chi_squared - swapped.chi_squared
    if gain < WARNING_GAIN:
        return
    units = house.units
    gauges = joined(
        say(" and "),
        (
            say(
                "{gauge} {value_deg:g} degrees",
                gauge=a.gauge.value,
                value_deg=a.value_deg,
            )
            for a in readings.angles
        ),
    )
    now, then = ("left", "right") if rising < falling else ("right", "left")
    yield Finding(
        code="diagonals-swapped",
        severity=Severity.STOP if gain >= STOP_GAIN else Severity.WARNING,
        place=opening.mark,
        read=say(
            "Read: rising {rising}, falling {falling} {units}; {gauges}.",
            rising=format_length(rising, units),
            falling=format_length(falling, units),
            units=units.value,
            gauges=gauges,
        ),
        wrong=say(
            "The diagonals make it lean {now}, the gauge makes it lean {then}: "
            "the two diagonals look swapped, or the gauge was read from the "
            "other side.",
            now=now,
            then=then,
        ),
        do=say(
            "Does its head lean {now} or {then} as you face it? Read one diagonal "
            "again before any cut: swapped, every mitre would be on the wrong side "
            "of 45.",
            now=now,
            then=then,
        ),
    )


def _swapped(readings: OpeningReadings) -> OpeningReadings:
    other = {Place.RISING: Place.FALLING, Place.FALLING: Place.RISING}
    return replace(
        readings,
        lengths=tuple(replace(r, place=other.get(r.place, r.place)) for r in readings.lengths),
    )


def _misfit(readings: OpeningReadings, tape: Tape) -> Misclosure | None:
    """Return how well tape and every gauge fit together, none of them left out."""
    angles = readings.angles
    seen: tuple[Sighting, ...] = (
        *tape_sightings(readings, tape),
        *gauge_sightings(angles),
        *level_assumption(angles),
    )
    try:
        start = first_guess(readings)
        return fit_network(start, (*seen, *assumptions(start, seen))).misclosure()
    except ShapeError:
        return None
