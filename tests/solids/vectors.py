"""Vectors in space: what the solids' tests reckon directions with."""

import math

Vector = tuple[float, float, float]


def dot(one: Vector, other: Vector) -> float:
    """Return the scalar product."""
    return sum(a * b for a, b in zip(one, other, strict=True))


def cross(one: Vector, other: Vector) -> Vector:
    """Return the vector product."""
    (a, b, c), (x, y, z) = one, other
    return (b * z - c * y, c * x - a * z, a * y - b * x)


def unit(vector: Vector) -> Vector:
    """Return the direction of a vector."""
    x, y, z = vector
    length = math.hypot(x, y, z)
    return (x / length, y / length, z / length)


def turned(vector: Vector, axis: Vector, by_deg: float) -> Vector:
    """Return a vector turned about an axis, anticlockwise looked at against it (Rodrigues)."""
    c, s = math.cos(math.radians(by_deg)), math.sin(math.radians(by_deg))
    side, along = cross(axis, vector), dot(axis, vector) * (1.0 - c)
    x, y, z = (v * c + w * s + a * along for v, w, a in zip(vector, side, axis, strict=True))
    return (x, y, z)


def scaled(vector: Vector, by: float) -> Vector:
    x, y, z = vector
    return (x * by, y * by, z * by)
