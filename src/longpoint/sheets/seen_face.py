"""The readings of one face of an opening, as they stand when you look at that face."""

from dataclasses import replace
from typing import Final

from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings, Place

_MIRROR: Final = {
    Place.LEFT: Place.RIGHT,
    Place.RIGHT: Place.LEFT,
    Place.RISING: Place.FALLING,
    Place.FALLING: Place.RISING,
}


def seen_readings(opening: Opening, face: str) -> OpeningReadings:
    """Return what was read of a face; face "b" without readings of its own mirrors face "a"."""
    if face != "b":
        return opening.readings
    if opening.readings_b is not None:
        return opening.readings_b
    lengths, left_out = (
        tuple(replace(reading, place=_MIRROR.get(reading.place, reading.place)) for reading in read)
        for read in (opening.readings.lengths, opening.readings.left_out)
    )
    return replace(opening.readings, lengths=lengths, left_out=left_out, plane=None)
