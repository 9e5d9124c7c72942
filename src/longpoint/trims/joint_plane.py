"""The one pair of lines behind every compound cut: a joint's plane, seen from the board."""

import math
from dataclasses import dataclass
from typing import NamedTuple

Vector = tuple[float, float, float]


class SawAngles(NamedTuple):
    """A cut for a board lying on its back, face up. [deg]

    Attributes:
        mitre_deg: Off square across the face, positive when the outer edge is the longer.
        bevel_deg: Off square through the thickness, negative when the face is longer than the back.
    """

    mitre_deg: float
    bevel_deg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardFrame:
    """How a board lies in the room; three directions square to each other, each of length 1.

    Attributes:
        outward: Along the board, towards the end that is cut.
        across: Across the face, from the inner (bottom) edge to the outer (top) edge.
        face: Out of the face.
    """

    outward: Vector
    across: Vector
    face: Vector


def saw_angles(frame: BoardFrame, normal: Vector) -> SawAngles:
    """Return the saw angles that cut the end of a board along a joint's plane.

    Args:
        frame: How the board lies.
        normal: A normal of the plane, either way round, of any length. The board must run through
            the plane.

    Returns:
        Mitre and bevel; at a square end both are 0.

    Example:
        A board runs in x, its face up; a plane that turns 45 towards its outer edge:

        >>> flat = BoardFrame(outward=(1, 0, 0), across=(0, 1, 0), face=(0, 0, 1))
        >>> [round(angle, 6) for angle in saw_angles(flat, (1, -1, 0))]
        [45.0, 0.0]

        and one that makes the face longer than the back:

        >>> [round(angle, 6) for angle in saw_angles(flat, (-1, 0, 1))]
        [0.0, -45.0]

    References:
        Where the plane m . x = c meets the face, along = c - across (m . u) / (m . d): the outer
        edge is the longer when m . u < 0. The blade tilts off the face's normal by asin(m . n), and
        the face is the longer when m . n < 0.
    """
    m = unit(normal)
    if dot(m, frame.outward) < 0:
        m = times(m, -1.0)
    return SawAngles(
        math.degrees(math.atan2(-dot(m, frame.across), dot(m, frame.outward))),
        math.degrees(math.asin(max(-1.0, min(1.0, dot(m, frame.face))))),
    )


def dot(one: Vector, other: Vector) -> float:
    """Return the scalar product."""
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def cross(one: Vector, other: Vector) -> Vector:
    """Return the vector product."""
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def plus(one: Vector, other: Vector) -> Vector:
    """Return the sum."""
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


def times(vector: Vector, factor: float) -> Vector:
    """Return a vector made longer by a factor; a negative one turns it round."""
    return (vector[0] * factor, vector[1] * factor, vector[2] * factor)


def unit(vector: Vector) -> Vector:
    """Return the direction of a vector.

    Raises:
        ZeroDivisionError: It has no length.
    """
    return times(vector, 1.0 / math.sqrt(dot(vector, vector)))
