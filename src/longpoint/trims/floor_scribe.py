"""What comes off a board's lower edge where the floor under it is not straight or not level.

A board stands with its lower edge over a straight line through the floor's low places; where the
floor stands above that line, so much is scribed off. The line is level where the board's top is to
be, or lies as the floor does.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.survey.rooms import FloorPoint

MOST_SCRIBED_MM: Final = 10.0
"""More taken off a board shows as a taper; common practice, no source."""

LEAST_SCRIBED_MM: Final = 1.0
"""Less is not worth a line: our limit, no source."""

NEARLY_ALIKE_MM: Final = 1.0
"""Two lines whose deepest take-offs differ by less are alike; the one that takes off less in all is
preferred."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scribe:
    """What comes off a board's lower edge.

    Attributes:
        marks: Places from the board's left end, and how much comes off there, from end to end;
            straight between them. [mm]
        rise_mm: How much higher the board's right end stands than its left.
    """

    marks: tuple[tuple[float, float], ...]
    rise_mm: float = 0.0

    @property
    def deepest_mm(self) -> float:
        """The most that comes off."""
        return max(off_mm for _, off_mm in self.marks)

    @property
    def deepest_at_mm(self) -> float:
        """Where that is, from the left end."""
        return max(self.marks, key=lambda mark: mark[1])[0]

    @property
    def length_mm(self) -> float:
        """Length of the board."""
        return self.marks[-1][0]

    @property
    def left_mm(self) -> float:
        """What comes off at the left end."""
        return self.marks[0][1]

    @property
    def right_mm(self) -> float:
        """What comes off at the right end."""
        return self.marks[-1][1]

    def part(self, start_mm: float, end_mm: float) -> "Scribe":
        """Return what comes off a part of the board, places counted from the part's left end.

        Example:
            >>> Scribe(marks=((0, 0), (1900, 6), (3800, 0))).part(950, 2850).marks
            ((0.0, 3.0), (950, 6), (1900, 3.0))
        """
        inside = [(x - start_mm, off) for x, off in self.marks if start_mm < x < end_mm]
        ends = ((x - start_mm, height_at(self.marks, x)) for x in (start_mm, end_mm))
        left, right = ends
        rise_mm = self.rise_mm * (end_mm - start_mm) / self.length_mm
        return Scribe(marks=((0.0, left[1]), *inside, right), rise_mm=rise_mm)


def level_scribe(
    floor: Sequence[FloorPoint], length_mm: float, datum_mm: float | None = None
) -> Scribe:
    """Return what comes off a board whose top is to be level.

    Args:
        floor: The floor along it, from left to right; one point or more.
        length_mm: Its length. > 0. [mm]
        datum_mm: Height of the lowest floor that boards of the same level stand on; None: the
            lowest under this board.

    Returns:
        At every point the floor's height over that lowest place.

    Example:
        A floor that falls 9 from left to right:

        >>> level_scribe([(0, 9), (4188, 0)], 4188).marks
        ((0.0, 9.0), (4188.0, 0.0))

    References:
        With its top level at lowest floor + gap + height, what is left of the height over the floor
        at x is height - (floor(x) - lowest floor).
    """
    along = floor_under(floor, 0.0, length_mm)
    low_mm = min(height for _, height in along) if datum_mm is None else datum_mm
    return Scribe(marks=tuple((x, height - low_mm) for x, height in along))


def following_scribe(floor: Sequence[FloorPoint], length_mm: float) -> Scribe:
    """Return what comes off a board that lies as the floor does.

    Args:
        floor: The floor along it, from left to right; one point or more.
        length_mm: Its length. > 0. [mm]

    Returns:
        The scribe of the straight line under the floor that takes off least: parallel to the line
        from end to end, or over two of the floor's low places.

    Example:
        Nothing comes off over an even fall, 6 over a hump of 6:

        >>> following_scribe([(0, 9), (4188, 0)], 4188).deepest_mm
        0.0
        >>> following_scribe([(0, 0), (1900, 6), (3640, 0)], 3640).marks
        ((0.0, 0.0), (1900.0, 6.0), (3640.0, 0.0))
    """
    along = floor_under(floor, 0.0, length_mm)
    scribes = [_over_line(along, length_mm, slope) for slope in _slopes(along)]
    least_mm = min(scribe.deepest_mm for scribe in scribes)
    alike = [each for each in scribes if each.deepest_mm <= least_mm + NEARLY_ALIKE_MM]
    return min(alike, key=_area_mm2)


def floor_under(
    floor: Sequence[FloorPoint], start_mm: float, end_mm: float
) -> tuple[FloorPoint, ...]:
    """Return the floor from one place along a wall to another, counted from the first.

    Beyond its first and last points the floor is taken to go on level.

    Example:
        >>> floor_under([(0, 9), (4000, 0)], 1000, 3000)
        ((0.0, 6.75), (2000, 2.25))
    """
    inside = [(x - start_mm, height) for x, height in floor if start_mm < x < end_mm]
    left, right = height_at(floor, start_mm), height_at(floor, end_mm)
    return ((0.0, left), *inside, (end_mm - start_mm, right))


def height_at(points: Sequence[tuple[float, float]], at_mm: float) -> float:
    """Return the height over a place, straight between points and level beyond them."""
    if at_mm <= points[0][0]:
        return float(points[0][1])
    for (x, low), (after, high) in pairwise(points):
        if at_mm <= after:
            return low + (high - low) * (at_mm - x) / (after - x)
    return float(points[-1][1])


def _over_line(along: Sequence[FloorPoint], length_mm: float, slope: float) -> Scribe:
    """Return the scribe of a board that stands over the floor's low place at a slope."""
    above = [(x, height - slope * x) for x, height in along]
    low_mm = min(height for _, height in above)
    marks = tuple((x, height - low_mm) for x, height in above)
    return Scribe(marks=marks, rise_mm=slope * length_mm)


def _slopes(along: Sequence[FloorPoint]) -> list[float]:
    """Return the slope from end to end and those of the floor's lower hull."""
    hull: list[FloorPoint] = []
    for point in along:
        while len(hull) > 1 and _slope(hull[-2], hull[-1]) >= _slope(hull[-1], point):
            hull.pop()
        hull.append(point)
    return [_slope(along[0], along[-1]), *(_slope(a, b) for a, b in pairwise(hull))]


def _slope(one: FloorPoint, other: FloorPoint) -> float:
    return (other[1] - one[1]) / (other[0] - one[0])


def _area_mm2(scribe: Scribe) -> float:
    return sum((b[0] - a[0]) * (a[1] + b[1]) / 2.0 for a, b in pairwise(scribe.marks))
