"""How plausible an opening would be with one of its readings changed."""

import math
from dataclasses import dataclass
from statistics import fmean, median
from typing import Final

from longpoint.survey.checks.opposite_sides import (
    DOOR_WIDTH_APART_MM,
    STEEPEST_FLOOR,
    WINDOW_APART_MM,
    may_be_raked,
)
from longpoint.survey.checks.siblings import Siblings
from longpoint.survey.digits import COMMONNESS, Slip
from longpoint.survey.openings import Opening
from longpoint.survey.readings import DIAGONALS, OpeningReadings, Place

TAPER_U_MM: Final = 2.0
FLOOR_U_MM: Final = 4.0
LEAN_U_MM: Final = 4.0
MIDDLE_U_MM: Final = 2.0
TOLD_SIBLINGS_U_MM: Final = 3.0
FOUND_SIBLINGS_U_MM: Final = 6.0
"""Spreads that only rank proposals: an old house's, and wide; assumed."""

MOST_PENALTY: Final = 16.0
"""No single comparison counts for more: it may itself rest on a slip."""

Pair = tuple[Place, Place]

WIDTHS: Final[Pair] = (Place.TOP, Place.BOTTOM)
HEIGHTS: Final[Pair] = (Place.LEFT, Place.RIGHT)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plausible:
    """What speaks for or against a changed reading of one opening.

    Attributes:
        opening: The opening.
        looks_raked: True when opposite sides are far apart as written.
        siblings: Openings like it, if there are any.
    """

    opening: Opening
    looks_raked: bool
    siblings: Siblings | None = None

    def allows(self, readings: OpeningReadings, place: Place) -> bool:
        """Tell whether the opening is believable with the reading of `place` changed."""
        if self.opening.raked:
            return True
        if may_be_raked(readings):
            return self.looks_raked
        if place in DIAGONALS:
            return self._lean_mm(readings) <= STEEPEST_FLOOR * max(_size_mm(readings))
        pair = WIDTHS if place in WIDTHS else HEIGHTS
        return _apart_mm(readings, pair) <= self._most_apart_mm(readings, pair)

    def penalty(self, readings: OpeningReadings, place: Place, slip: Slip) -> float:
        """Return how unlikely the opening is with a change; twice the log of how many times."""
        terms = [-2.0 * math.log(COMMONNESS[slip.kind])]
        if not self.opening.raked:
            heights_u_mm = FLOOR_U_MM if self.opening.stands_on_floor else TAPER_U_MM
            terms.append(_squared(_apart_mm(readings, WIDTHS), TAPER_U_MM))
            terms.append(_squared(_apart_mm(readings, HEIGHTS), heights_u_mm))
            terms.append(_squared(self._lean_mm(readings), LEAN_U_MM))
        terms.append(_squared(self._off_siblings_mm(place, slip.value_mm), self._siblings_u_mm()))
        terms.append(_squared(_off_middle_mm(readings, place), MIDDLE_U_MM))
        return math.fsum(terms)

    def _most_apart_mm(self, readings: OpeningReadings, pair: Pair) -> float:
        if not self.opening.stands_on_floor:
            return WINDOW_APART_MM
        if pair == HEIGHTS:
            return STEEPEST_FLOOR * _size_mm(readings)[0]
        return DOOR_WIDTH_APART_MM

    def _lean_mm(self, readings: OpeningReadings) -> float:
        """Return how far the opening leans over its height, doors less what their floor does."""
        rising, falling = (readings.mean_mm(place) for place in DIAGONALS)
        if rising is None or falling is None:
            return 0.0
        width_mm, height_mm = _size_mm(readings)
        lean_mm = (rising**2 - falling**2) / (4.0 * width_mm)
        if self.opening.stands_on_floor:
            left_mm, right_mm = (readings.side_mm(place) for place in HEIGHTS)
            if left_mm is not None and right_mm is not None:
                lean_mm -= (left_mm - right_mm) * height_mm / width_mm / 2.0
        return abs(lean_mm)

    def _off_siblings_mm(self, place: Place, value_mm: float) -> float:
        others = self.siblings.others_mm(self.opening.mark, place) if self.siblings else ()
        return value_mm - median(others) if others else 0.0

    def _siblings_u_mm(self) -> float:
        is_told = self.siblings is not None and self.siblings.is_told
        return TOLD_SIBLINGS_U_MM if is_told else FOUND_SIBLINGS_U_MM


def _apart_mm(readings: OpeningReadings, pair: Pair) -> float:
    one_mm, other_mm = (readings.mean_mm(place) for place in pair)
    return 0.0 if one_mm is None or other_mm is None else abs(one_mm - other_mm)


def _squared(off_mm: float, u_mm: float) -> float:
    return min(MOST_PENALTY, (off_mm / u_mm) ** 2)


def _size_mm(readings: OpeningReadings) -> tuple[float, float]:
    widths = [w for p in WIDTHS if (w := readings.side_mm(p)) is not None]
    heights = [h for p in HEIGHTS if (h := readings.side_mm(p)) is not None]
    return (max(1.0, fmean(widths)) if widths else 1.0, fmean(heights) if heights else 1.0)


def _off_middle_mm(readings: OpeningReadings, place: Place) -> float:
    middle = {
        Place.TOP: Place.MIDDLE_WIDTH,
        Place.BOTTOM: Place.MIDDLE_WIDTH,
        Place.LEFT: Place.MIDDLE_HEIGHT,
        Place.RIGHT: Place.MIDDLE_HEIGHT,
    }.get(place)
    own_mm = readings.mean_mm(place)
    middle_mm = readings.mean_mm(middle) if middle is not None else None
    return 0.0 if middle_mm is None or own_mm is None else own_mm - middle_mm
