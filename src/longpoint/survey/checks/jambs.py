"""A jamb that was pulled back by its screws."""

from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place, Plane

PULLED_APART_MM: Final = 4.0
PULLED_SHY_MM: Final = 2.0
"""Sides this far apart and a corner this far shy belong together; common practice, no source."""


def jamb_pulled(house: House, opening: Opening, readings: OpeningReadings) -> Finding | None:
    """Return the warning for a shorter side whose reveal sits shy, else None.

    The readings are right and the opening is not: cheaper to mend now than after the trim is cut.
    """
    left_mm, right_mm = readings.mean_mm(Place.LEFT), readings.mean_mm(Place.RIGHT)
    if left_mm is None or right_mm is None or readings.plane is None:
        return None
    apart_mm = abs(left_mm - right_mm)
    side, where, shy_mm = _most_pulled(readings.plane)
    if apart_mm <= PULLED_APART_MM or shy_mm > -PULLED_SHY_MM:
        return None
    units = house.units
    return Finding(
        code="jamb-pulled",
        severity=Severity.WARNING,
        place=opening.mark,
        read=say(
            "Read: left {left}, right {right} {units}; {side} reveal {shy} shy at the {where}.",
            left=format_length(left_mm, units),
            right=format_length(right_mm, units),
            units=units.value,
            side=side.value,
            shy=format_with_unit(-shy_mm, units),
            where=where,
        ),
        wrong=say(
            "The sides differ by {apart} and the {side} reveal looks pulled back by its screws.",
            apart=format_with_unit(apart_mm, units),
            side=side.value,
        ),
        do=say(
            "Ease the fixing, pack and read again; if it is left as it is, cut the "
            "two legs to their own lengths and the mitres to their own angles."
        ),
    )


def _most_pulled(plane: Plane) -> tuple[Place, str, float]:
    """Return the corner that sits furthest behind the one across, and how shy it is."""
    corners = (
        (Place.LEFT, "top", plane.tl_mm, plane.tr_mm),
        (Place.LEFT, "bottom", plane.bl_mm, plane.br_mm),
        (Place.RIGHT, "top", plane.tr_mm, plane.tl_mm),
        (Place.RIGHT, "bottom", plane.br_mm, plane.bl_mm),
    )
    side, where, own_mm, across_mm = min(corners, key=lambda c: c[2] - c[3])
    # A reveal as shy across the opening was set so, not pulled.
    is_pulled = across_mm - own_mm >= PULLED_SHY_MM
    return side, where, own_mm if is_pulled else 0.0
