"""From an opening's readings to sightings of its four corners, and what must be assumed."""

import math
from dataclasses import replace
from typing import Final

from longpoint.errors import ShapeError
from longpoint.shape.network import (
    Angle,
    Bearing,
    Difference,
    Distance,
    Sighting,
    freedom_left,
    is_determined,
)
from longpoint.shape.point import Point
from longpoint.speech.said import say
from longpoint.survey.instruments import Tape
from longpoint.survey.readings import (
    BEVELS,
    SIDES,
    AngleReading,
    Gauge,
    OpeningReadings,
    Place,
)

ASSUMED_TAPER_U_MM: Final = 1.0
"""What opposite sides may differ by where only one was read; assumed, no survey was found."""

ASSUMED_LEAN_U_MM: Final = 1.5
"""How far over its height an unchecked opening may lean; assumed, new timber frame."""

ASSUMED_LEVEL_U_DEG: Final = 0.5
"""How far a floor or sill may be off level where only the head or a jamb was read; assumed."""

SQUARE: Final = say("square (both diagonals the same)")

SHORTEST_MM: Final = 1.0
"""A side shorter than this is none: nothing can be set out from it."""

ENDS: Final = {
    Place.BOTTOM: (0, 1),
    Place.RIGHT: (1, 2),
    Place.TOP: (2, 3),
    Place.LEFT: (3, 0),
    Place.RISING: (0, 2),
    Place.FALLING: (3, 1),
}

_BEARINGS: Final = {
    Gauge.PLUMB_LEFT: (0, 3, 90.0),
    Gauge.PLUMB_RIGHT: (1, 2, 90.0),
    Gauge.LEVEL_HEAD: (3, 2, 0.0),
    Gauge.LEVEL_FLOOR: (0, 1, 0.0),
}


def tape_sightings(readings: OpeningReadings, tape: Tape) -> tuple[Distance, ...]:
    """Return one sighting for every place read with the tape, repeats joined in their mean.

    One width or height alone stands for the bottom or the left side; that the other is as long is
    left to `assumptions`.
    """
    found = []
    for place, (start, end) in ENDS.items():
        stands_for = place
        if not readings.at(place):
            if place is Place.BOTTOM and not readings.at(Place.TOP):
                stands_for = Place.WIDTH
            elif place is Place.LEFT and not readings.at(Place.RIGHT):
                stands_for = Place.HEIGHT
        value_mm = readings.mean_mm(stands_for)
        if value_mm is not None:
            found.append(
                Distance(
                    name=stands_for.value,
                    start=start,
                    end=end,
                    read=value_mm,
                    u=tape.private_u_mm(len(readings.at(stands_for))),
                )
            )
    return tuple(found)


def gauge_sightings(angles: tuple[AngleReading, ...]) -> tuple[Sighting, ...]:
    """Return sightings of plumb, level and bevel readings; clockwise lean is a smaller bearing."""
    found: list[Sighting] = []
    for angle in angles:
        if angle.gauge in _BEARINGS:
            start, end, true_deg = _BEARINGS[angle.gauge]
            found.append(
                Bearing(
                    name=angle.gauge.value,
                    start=start,
                    end=end,
                    read=true_deg - angle.value_deg,
                    u=angle.u_deg,
                )
            )
        else:
            corner = BEVELS.index(angle.gauge)
            found.append(
                Angle(
                    name=angle.gauge.value,
                    corner=corner,
                    back=(corner - 1) % 4,
                    onward=(corner + 1) % 4,
                    read=angle.value_deg,
                    u=angle.u_deg,
                )
            )
    return tuple(found)


def level_assumption(angles: tuple[AngleReading, ...]) -> tuple[Sighting, ...]:
    """Return the assumption that the bottom is about level, where only other sides were checked."""
    gauges = {a.gauge for a in angles}
    if not gauges & set(_BEARINGS) or Gauge.LEVEL_FLOOR in gauges:
        return ()
    bottom = Bearing(
        name="bottom about level",
        start=0,
        end=1,
        read=0.0,
        u=ASSUMED_LEVEL_U_DEG,
        is_assumed=True,
    )
    return (bottom,)


def assumptions(
    start: tuple[Point, ...], sightings: tuple[Sighting, ...]
) -> tuple[Difference, ...]:
    """Return what is assumed: equal opposite sides, then equal diagonals.

    As few as fix the shape; and besides, that a side which wasn't read is about as long as the one
    opposite: diagonals alone would leave it to the small difference of large readings.

    Raises:
        ShapeError: Even with all of them the shape stays open: a width or a height is missing.
    """
    width_mm, height_mm = abs(start[1].x_mm), abs(start[3].y_mm)
    lean_u_mm = 2.0 * width_mm * ASSUMED_LEAN_U_MM / math.hypot(width_mm, height_mm)
    offered = (
        _equal(say("top as long as bottom"), (2, 3), (0, 1), ASSUMED_TAPER_U_MM),
        _equal(say("right as long as left"), (1, 2), (3, 0), ASSUMED_TAPER_U_MM),
        _equal(SQUARE, (0, 2), (3, 1), lean_u_mm),
    )
    taken: tuple[Difference, ...] = ()
    for offer in offered:
        if is_determined(start, (*sightings, *taken)):
            break
        now = freedom_left(start, (*sightings, *taken))
        if freedom_left(start, (*sightings, *taken, offer)) < now:
            taken = (*taken, offer)
    if not is_determined(start, (*sightings, *taken)):
        raise ShapeError(
            say("The readings of this opening were put together."),
            say("A width, a height or a side is missing, so its size stays open."),
            say("Read the missing sides."),
        )
    read = {(s.start, s.end) for s in sightings if isinstance(s, Distance)}
    unread = tuple(
        replace(offer, is_needed=False)
        for offer in offered
        if offer not in taken and offer.name != SQUARE and not {offer.first, offer.second} <= read
    )
    return (*taken, *unread)


def first_guess(readings: OpeningReadings) -> tuple[Point, Point, Point, Point]:
    """Return corners near the readings, good enough to start the fit from.

    Raises:
        ShapeError: No width or no height was read.
    """
    bottom, right, top, left = _sides_mm(readings)
    rising = readings.mean_mm(Place.RISING)
    falling = readings.mean_mm(Place.FALLING)
    bl, br = Point(0.0, 0.0), Point(bottom, 0.0)
    tl = Point(0.0, left)
    tr = Point(top, right)
    if falling is not None:
        tl = _above(bl, left, br, falling)
    if rising is not None:
        tr = _above(bl, rising, br, right)
    if falling is not None and rising is None:
        tr = _above(tl, top, br, right)
    if rising is not None and falling is None:
        tl = _above(bl, left, tr, top)
    return (bl, br, tr, tl)


def _sides_mm(readings: OpeningReadings) -> tuple[float, float, float, float]:
    opposite = {
        Place.BOTTOM: Place.TOP,
        Place.TOP: Place.BOTTOM,
        Place.LEFT: Place.RIGHT,
        Place.RIGHT: Place.LEFT,
    }
    found = []
    for side in SIDES:
        value_mm = readings.side_mm(side)
        if value_mm is None:
            value_mm = readings.side_mm(opposite[side])
        if value_mm is None or value_mm < SHORTEST_MM:
            raise ShapeError(
                say("The readings of this opening were put together."),
                say("A width or a height is missing or zero."),
                say("Read the missing sides."),
            )
        found.append(value_mm)
    bottom, right, top, left = found
    return bottom, right, top, left


def _above(first: Point, first_mm: float, second: Point, second_mm: float) -> Point:
    """Return the point at two distances from two points, on the left of first to second."""
    apart_mm = first.distance_mm(second) or 1e-9
    along_mm = (apart_mm**2 + first_mm**2 - second_mm**2) / (2.0 * apart_mm)
    across_mm = math.sqrt(max(first_mm**2 - along_mm**2, (0.05 * first_mm) ** 2))
    ux = (second.x_mm - first.x_mm) / apart_mm
    uy = (second.y_mm - first.y_mm) / apart_mm
    return first.moved(along_mm * ux - across_mm * uy, along_mm * uy + across_mm * ux)


def _equal(name: str, first: tuple[int, int], second: tuple[int, int], u_mm: float) -> Difference:
    return Difference(name=name, first=first, second=second, read=0.0, u=u_mm)
