"""Whether one flat cut can join two runs of the same moulding, and where that cut lies.

Two runs meet when every line of the one moulding meets its own line of the other. They all do so in
one plane, or the runs can't be joined by a saw at all.
"""

import math
from collections.abc import Iterable
from typing import Final, NamedTuple

from longpoint.trims.joint_plane import BoardFrame, Vector, cross, dot, plus, times, unit

IN_LINE: Final = 1e-9
"""Sine of the angle under which two runs count as one straight line."""

CLOSED_MM: Final = 1e-6
"""Nearer than this, per millimetre of the moulding, is rounding of the arithmetic."""

SectionPoint = tuple[float, float]
"""A point of the section: across from the inner (bottom) edge, and off the back. [mm]"""


class Misfit(NamedTuple):
    """How far two runs that can't be joined stand apart. [mm]

    Attributes:
        least_mm: No cut at all brings the same points of the two nearer together than this.
        halved_mm: With the cut that halves the angle between the runs.
    """

    least_mm: float
    halved_mm: float


def joint_normal(one: BoardFrame, other: BoardFrame) -> Vector | None:
    """Return a normal of the plane in which two runs of a moulding meet; None where none does.

    Args:
        one: A run, outward towards the joint. The lines of both that lie at the back's inner
            (bottom) edge meet in a point.
        other: The other run, outward towards the joint too.

    Returns:
        The normal, of length 1, out of the first run.

    Example:
        Two flat boards of one width round a square corner:

        >>> one = BoardFrame(outward=(1, 0, 0), across=(0, 1, 0), face=(0, 0, 1))
        >>> other = BoardFrame(outward=(0, -1, 0), across=(1, 0, 0), face=(0, 0, 1))
        >>> [round(part, 4) for part in joint_normal(one, other)]
        [0.7071, -0.7071, 0.0]

    References:
        With c = d1 x d2, the lines u1 + l d1 and u2 + m d2 meet exactly when c . u1 = c . u2; the
        same for n. The plane then holds u1 + l d1 and n1 + k d1, where
        l = ((u2 - u1) x d2) . c / c^2.
    """
    if _least_mm(one, other, ((1.0, 0.0), (0.0, 1.0))) > CLOSED_MM:
        return None
    across = plus(one.across, times(one.outward, _reach(one, other, one.across, other.across)))
    face = plus(one.face, times(one.outward, _reach(one, other, one.face, other.face)))
    normal = unit(cross(across, face))
    return normal if dot(normal, one.outward) > 0 else times(normal, -1.0)


def halving_normal(one: BoardFrame, other: BoardFrame) -> Vector:
    """Return a normal of the plane that halves the angle between two runs, out of the first."""
    return unit(plus(one.outward, times(other.outward, -1.0)))


def misfit(
    one: BoardFrame,
    other: BoardFrame,
    section: Iterable[SectionPoint],
    normal: Vector | None = None,
) -> Misfit:
    """Return how far the two cut ends stand apart, point by point of the section.

    Args:
        one: A run, outward towards the joint.
        other: The other run.
        section: Corners of the section.
        normal: Normal of the cut in place of the one that halves the angle.

    Returns:
        Naught for the least of runs that can be joined; of what they stand apart with the cut that
        halves the angle, naught where that is the joint's own plane.

    Example:
        A straight joint between two boards, one rolled 2 degrees on its edge:

        >>> level = BoardFrame(outward=(1, 0, 0), across=(0, 1, 0), face=(0, 0, 1))
        >>> s, c = math.sin(math.radians(2)), math.cos(math.radians(2))
        >>> rolled = BoardFrame(outward=(-1, 0, 0), across=(0, c, s), face=(0, -s, c))
        >>> round(misfit(level, rolled, [(100, 0)]).halved_mm, 2)
        3.49

    References:
        The lines of one point of the section, p + l d1 and q + m d2, pass at |c . (p - q)| / |c|.
    """
    points = tuple(section)
    cut = normal or halving_normal(one, other)
    ends = ((_cut_point(one, at, cut), _cut_point(other, at, cut)) for at in points)
    return Misfit(
        least_mm=_least_mm(one, other, points), halved_mm=max(math.dist(*pair) for pair in ends)
    )


def rectangle(width_mm: float, thickness_mm: float) -> tuple[SectionPoint, ...]:
    """Return the corners of the board that a moulding is run from."""
    return ((0.0, 0.0), (width_mm, 0.0), (width_mm, thickness_mm), (0.0, thickness_mm))


def _least_mm(one: BoardFrame, other: BoardFrame, points: Iterable[SectionPoint]) -> float:
    gaps = (_minus(_at(one, point), _at(other, point)) for point in points)
    turn = cross(one.outward, other.outward)
    sine = math.sqrt(dot(turn, turn))
    if sine < IN_LINE:
        return max(math.hypot(*cross(gap, one.outward)) for gap in gaps)
    return max(abs(dot(turn, gap)) for gap in gaps) / sine


def _reach(one: BoardFrame, other: BoardFrame, mine: Vector, its: Vector) -> float:
    """Return how far along the first run its line meets the other's."""
    turn = cross(one.outward, other.outward)
    square = dot(turn, turn)
    if square < IN_LINE**2:
        return 0.0
    return dot(cross(_minus(its, mine), other.outward), turn) / square


def _at(frame: BoardFrame, point: SectionPoint) -> Vector:
    return plus(times(frame.across, point[0]), times(frame.face, point[1]))


def _cut_point(frame: BoardFrame, point: SectionPoint, normal: Vector) -> Vector:
    at = _at(frame, point)
    return plus(at, times(frame.outward, -dot(normal, at) / dot(normal, frame.outward)))


def _minus(one: Vector, other: Vector) -> Vector:
    return plus(one, times(other, -1.0))
