"""Single readings, as the tape, level or gauge showed them."""

import math
from dataclasses import dataclass
from enum import StrEnum


class Place(StrEnum):
    """Where on an opening a tape reading is taken, seen from inside the room."""

    TOP = "top"
    BOTTOM = "bottom"
    LEFT = "left"
    RIGHT = "right"
    RISING = "rising"
    """Diagonal from bottom left to top right."""
    FALLING = "falling"
    """Diagonal from top left to bottom right."""
    WIDTH = "width"
    """One width for top and bottom."""
    HEIGHT = "height"
    """One height for left and right."""
    MIDDLE_WIDTH = "middle width"
    MIDDLE_HEIGHT = "middle height"


SIDES = (Place.BOTTOM, Place.RIGHT, Place.TOP, Place.LEFT)
"""The four sides anticlockwise from the bottom; side i runs from corner i to corner i + 1."""

DIAGONALS = (Place.RISING, Place.FALLING)


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading of one length.

    Attributes:
        place: What was read.
        value_mm: What the tape showed, after any known offset of the tape was taken off.
        written: As it stands in the house file.
    """

    place: Place
    value_mm: float
    written: str


class Gauge(StrEnum):
    """What an angle was read with, and where."""

    PLUMB_LEFT = "plumb left"
    PLUMB_RIGHT = "plumb right"
    LEVEL_HEAD = "level head"
    LEVEL_FLOOR = "level floor"
    BEVEL_BL = "bevel bl"
    BEVEL_BR = "bevel br"
    BEVEL_TR = "bevel tr"
    BEVEL_TL = "bevel tl"


BEVELS = (Gauge.BEVEL_BL, Gauge.BEVEL_BR, Gauge.BEVEL_TR, Gauge.BEVEL_TL)
"""Bevel gauge at the corners, in the order bottom left, bottom right, top right, top left."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AngleReading:
    """One angle reading.

    Attributes:
        gauge: Where and with what. Plumb and level are degrees off true, positive when the side
            leans or turns clockwise as seen; a bevel is the corner's own angle.
        value_deg: What it showed.
        u_deg: Its standard uncertainty. > 0.
    """

    gauge: Gauge
    value_deg: float
    u_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Plane:
    """Edge of the reveal against the wall's lining at the four corners; + proud, - shy. [mm]"""

    tl_mm: float = 0.0
    tr_mm: float = 0.0
    br_mm: float = 0.0
    bl_mm: float = 0.0

    def corners_mm(self) -> tuple[float, float, float, float]:
        """Return the four in the order bottom left, bottom right, top right, top left."""
        return (self.bl_mm, self.br_mm, self.tr_mm, self.tl_mm)


@dataclass(frozen=True, slots=True, kw_only=True)
class OpeningReadings:
    """All that was read of one face of one opening.

    Attributes:
        lengths: Tape readings in the order written; a place may stand more than once.
        left_out: Readings that were decided against by others of the same place.
        angles: Plumb, level and bevel readings.
        plane: Reveal against lining; None when it wasn't read.
        tape: Name of the tape that read the lengths.
        by: Who read it, as written; may be empty.
    """

    lengths: tuple[Reading, ...]
    left_out: tuple[Reading, ...] = ()
    angles: tuple[AngleReading, ...] = ()
    plane: Plane | None = None
    tape: str
    by: str = ""

    def at(self, place: Place) -> tuple[Reading, ...]:
        """Return every reading of one place."""
        return tuple(r for r in self.lengths if r.place is place)

    def written(self) -> tuple[Reading, ...]:
        """Return every tape reading as it was written, those left out behind the others."""
        return (*self.lengths, *self.left_out)

    def mean_mm(self, place: Place) -> float | None:
        """Return the mean of the readings of a place, None if it wasn't read."""
        found = self.at(place)
        return math.fsum(r.value_mm for r in found) / len(found) if found else None

    def side_mm(self, side: Place) -> float | None:
        """Return a side's mean reading; the one width or height where that was read instead."""
        own = self.mean_mm(side)
        if own is not None:
            return own
        if side in (Place.TOP, Place.BOTTOM):
            return self.mean_mm(Place.WIDTH)
        if side in (Place.LEFT, Place.RIGHT):
            return self.mean_mm(Place.HEIGHT)
        return None
