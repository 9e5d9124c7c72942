"""The engine that is always there: judges the draws of a house in plain Python.

The errors of a draw are a point, a line is a direction, and the line is above 1 where the point is
far enough along it. Moved onto one sphere, points far along a direction are those near its tip, and
distances are what plain Python reckons fastest. Besides, a line is looked at only for draws long
enough for it to rule, the lines that rule most often come first, and a draw that doesn't fit is
left out of the lines that follow.

References:
    For |a| = 1 and |x| = R: |x - a|^2 = 1 + R^2 - 2 a . x. A point e of length at most R comes onto
    the sphere by one more coordinate, sqrt(R^2 - |e|^2), that no direction has.
"""

import math
from bisect import bisect_right
from collections.abc import Iterable, Sequence
from itertools import compress, islice, repeat
from operator import mul
from typing import Final, NamedTuple

from longpoint.forecast.lines import (
    PRIVATE_STREAM,
    SHARED_STREAM,
    Line,
    LineGroup,
    LineHouse,
    LineOpening,
    LineTally,
    OpeningTally,
)
from longpoint.forecast.stream import Spread, spread_out, uniforms

_Point = tuple[float, ...]

_NOUGHT: Final = 1e-12
"""What is this small beside the largest is rounding."""


class PlainLines:
    """Judges draws with nothing but Python; a few seconds for 25 openings and 2000 draws."""

    def tally(self, house: LineHouse) -> LineTally:
        """Return in how many draws each opening fits, and how many don't at once."""
        pool = _Pool(house.seed, SHARED_STREAM, house.draws, len(house.shared))
        shared = [pool.column(term, spread) for term, spread in enumerate(house.shared)]
        terms = max((len(opening.private) for opening in house.openings), default=0)
        pool = _Pool(house.seed, PRIVATE_STREAM, house.pool_rows, terms)
        misfits = [0] * house.draws
        tallies = []
        for number, opening in enumerate(house.openings):
            first = house.first_row(number)
            private = [
                _from_row(pool.column(term, spread), first, house.draws)
                for term, spread in enumerate(opening.private)
            ]
            points = list(zip(*shared, *private, strict=True)) or [()] * house.draws
            tallies.append(_judge(opening, points, misfits))
        counts = [0] * (len(house.openings) + 1)
        for count in misfits:
            counts[count] += 1
        return LineTally(openings=tuple(tallies), misfits=tuple(counts), draws=house.draws)


class _Pool:
    """The draws of one stream, spread out error by error when one is first asked for."""

    def __init__(self, seed: int, stream: int, rows: int, terms: int) -> None:
        self._chances = [uniforms(seed, stream, row, terms) for row in range(rows)]
        self._columns: dict[tuple[int, Spread], list[float]] = {}

    def column(self, term: int, spread: Spread) -> list[float]:
        if (term, spread) not in self._columns:
            self._columns[term, spread] = [spread_out(spread, row[term]) for row in self._chances]
        return self._columns[term, spread]


def _from_row(column: list[float], first: int, draws: int) -> list[float]:
    return (column[first:] + column[:first])[:draws]


def _judge(opening: LineOpening, points: list[_Point], misfits: list[int]) -> OpeningTally:
    """Return the tally of an opening, and add one to each draw in which it doesn't fit."""
    draws = len(points)
    lengths = _distances((0.0,) * len(points[0]), points)
    failing = [_failing(group, points, lengths) for group in opening.groups]
    anywhere = set[int]().union(*failing)
    for draw in anywhere:
        misfits[draw] += 1
    return OpeningTally(
        mark=opening.mark,
        fits=tuple(draws - len(found) for found in failing),
        together=draws - len(anywhere),
    )


def _failing(group: LineGroup, points: list[_Point], lengths: list[float]) -> set[int]:
    """Return the draws in which some line of a group is above 1."""
    if any(line.offset > 1.0 and not _size(line) for line in group.lines):
        return set(range(len(points)))
    lines = sorted(filter(_size, group.lines), key=_reach)
    directions, points = _on_axes([_direction(line) for line in lines], points, lengths)
    sphere = _Sphere.of(points)
    found: set[int] = set()
    lost = 0
    for done, (line, direction) in enumerate(zip(lines, directions, strict=True), start=1):
        near = sphere.beyond(direction, _reach(line)) - found
        lost += len(near)
        found |= near
        # Taking them out costs about as much as one line.
        if lost * (len(lines) - done) > len(sphere.draws):
            sphere, lost = sphere.without(found), 0
    return found


def _size(line: Line) -> float:
    return math.hypot(*line.shared, *line.private)


def _reach(line: Line) -> float:
    """Return how many standard uncertainties a line stays below 1: small for one that rules."""
    return (1.0 - line.offset) / _size(line)


def _direction(line: Line) -> _Point:
    size = _size(line)
    return tuple(part / size for part in (*line.shared, *line.private))


def _distances(centre: _Point, points: Iterable[_Point]) -> list[float]:
    return list(map(math.dist, repeat(centre), points))


class _Sphere(NamedTuple):
    """Draws moved onto a sphere, those with the largest errors first.

    Attributes:
        radius: Length of the longest.
        draws: Their numbers.
        shortness: Minus the length of their errors, rising.
        tips: Where they lie; one coordinate more than the errors.
    """

    radius: float
    draws: list[int]
    shortness: list[float]
    tips: list[_Point]

    @classmethod
    def of(cls, points: list[_Point]) -> "_Sphere":
        lengths = _distances((0.0,) * len(points[0]), points)
        order = sorted(range(len(points)), key=lengths.__getitem__, reverse=True)
        radius = lengths[order[0]]
        return cls(
            radius,
            order,
            [-lengths[draw] for draw in order],
            [
                (*points[draw], math.sqrt(radius * radius - lengths[draw] * lengths[draw]))
                for draw in order
            ],
        )

    def beyond(self, direction: _Point, reach: float) -> set[int]:
        """Return the draws that lie further along a direction than `reach`."""
        long_enough = bisect_right(self.shortness, -reach * (1.0 - _NOUGHT))
        distances = _distances((*direction, 0.0), islice(self.tips, long_enough))
        square = 1.0 + self.radius * self.radius - 2.0 * reach
        limit = math.sqrt(max(0.0, square))
        if min(distances, default=limit) >= limit:
            return set()
        return {
            draw for draw, distance in zip(self.draws, distances, strict=False) if distance < limit
        }

    def without(self, found: set[int]) -> "_Sphere":
        stays = [draw not in found for draw in self.draws]
        return _Sphere(
            self.radius,
            list(compress(self.draws, stays)),
            list(compress(self.shortness, stays)),
            list(compress(self.tips, stays)),
        )


def _on_axes(
    directions: list[_Point], points: list[_Point], lengths: list[float]
) -> tuple[list[_Point], list[_Point]]:
    """Return directions and points along as few axes as the directions need.

    Errors that come in the same combinations in all lines are so combined once, for all lines.
    """
    parts, axes = _axes(directions)
    if len(axes) == len(points[0]):
        return directions, points
    along = [
        [
            (1.0 + length * length - distance * distance) / 2.0
            for length, distance in zip(lengths, _distances(axis, points), strict=True)
        ]
        for axis in axes
    ]
    return parts, list(zip(*along, strict=True)) if along else [() for _ in points]


def _axes(directions: Sequence[_Point]) -> tuple[list[_Point], list[_Point]]:
    """Return each direction by its parts along a few axes, and these axes.

    References:
        Gram-Schmidt, the longest rest first.
    """
    rest = list(directions)
    sizes = [1.0] * len(rest)
    parts: list[list[float]] = []
    axes: list[_Point] = []
    while rest and max(sizes) > _NOUGHT:
        longest = sizes.index(max(sizes))
        axis = tuple([part / sizes[longest] for part in rest[longest]])
        along = [sum(map(mul, row, axis)) for row in rest]
        rest = [
            tuple([value - part * unit for value, unit in zip(row, axis, strict=True)])
            for row, part in zip(rest, along, strict=True)
        ]
        sizes = [math.hypot(*row) for row in rest]
        sizes[longest] = 0.0
        axes.append(axis)
        parts.append(along)
    return list(zip(*parts, strict=True)), axes
