"""Shapes that no set of trim goes round, each refused by the corner or side that makes it so."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import ShapeError
from longpoint.shape.point import Point, interior_angles_deg
from longpoint.speech.said import say, say_many
from longpoint.survey.outlines import OutlineReadings

FLATTEST_DEG: Final = 175.0
"""A corner flatter than this, or sharper than what is left of 180, is no corner."""

SHORTEST_MM: Final = 1.0
"""A side shorter than this is none: nothing can be set out from it."""


def refuse_short(points: Sequence[Point]) -> None:
    """Refuse two neighbouring corners in one spot.

    Raises:
        ShapeError: There are some.
    """
    for i, point in enumerate(points):
        after = (i + 1) % len(points)
        if point.distance_mm(points[after]) < SHORTEST_MM:
            raise ShapeError(
                say(
                    "Corners {i} and {after} of this opening fall together.",
                    i=i + 1,
                    after=after + 1,
                ),
                say("A side without a length has no direction."),
                say("Take one of them out, or read it again."),
            )


def refuse_no_shape(corners: tuple[Point, ...], written: tuple[int, ...]) -> None:
    """Refuse a shape that crosses itself, turns a corner in, or has one that is none.

    Args:
        corners: Anticlockwise. [mm]
        written: Number of each corner as it was written.

    Raises:
        ShapeError: It does.
    """
    crossing = _crossing(corners)
    if crossing is not None:
        one, other = (_side_words(written, side) for side in crossing)
        raise ShapeError(
            say(
                "The side {one} of this opening crosses the side {other}.",
                one=one,
                other=other,
            ),
            say("So its corners don't go round it."),
            say(
                "Write them in order round the opening, and look for a corner with its "
                "two figures swapped."
            ),
        )
    for number, angle_deg in zip(written, interior_angles_deg(corners), strict=True):
        if angle_deg >= 180.0:
            raise turned_in(number, angle_deg)
        if not 180.0 - FLATTEST_DEG < angle_deg < FLATTEST_DEG:
            what = "flat" if angle_deg > 90.0 else say("closed up")
            raise ShapeError(
                say(
                    "Corner {number} of this opening comes out at {angle_deg:.1f} degrees.",
                    number=number,
                    angle_deg=angle_deg,
                ),
                say("It is {what}, which is no corner that trim is mitred round.", what=what),
                say(
                    "Leave corner {number} out if the side runs straight on there; "
                    "else read it again.",
                    number=number,
                ),
            )


def turned_in(number: int, angle_deg: float) -> ShapeError:
    """Return the error of a corner that points into the opening."""
    return ShapeError(
        say(
            "Corner {number} of this opening is {angle_deg:.1f} degrees.",
            number=number,
            angle_deg=angle_deg,
        ),
        say(
            "It points into the opening; only shapes whose corners all point outwards are planned."
        ),
        say(
            "Read corner {number} again, inside the opening; trim round a shape that "
            "turns in is set out by hand.",
            number=number,
        ),
    )


def left_open(outline: OutlineReadings, free: int) -> ShapeError:
    """Return the error of readings that leave a shape open, with how many more it takes."""
    count = len(outline.sides_mm)
    angles, across = len(outline.angles_deg), len(outline.across)
    return ShapeError(
        say(
            "Of this opening {count} sides, {corners} and {lengths} across were read.",
            count=count,
            corners=say_many("{count} corner", "{count} corners", count=angles),
            lengths=say_many("{count} length", "{count} lengths", count=across),
        ),
        say_many(
            "That leaves its shape open: {count} more reading is needed.",
            "That leaves its shape open: {count} more readings are needed.",
            count=free,
        ),
        say(
            "Read corners with a gauge, or lengths across from corner to corner "
            "(across), for example from 1 to 3; one more than needed checks the rest."
        ),
    )


def _side_words(written: Sequence[int], side: int) -> str:
    return say(
        "from corner {written} to corner {written_2}",
        written=written[side],
        written_2=written[(side + 1) % len(written)],
    )


def _crossing(corners: Sequence[Point]) -> tuple[int, int] | None:
    """Return two sides that cross, if any do."""
    count = len(corners)
    for i in range(count):
        for j in range(i + 2, count):
            if (j + 1) % count == i:
                continue
            a, b, c, d = corners[i], corners[i + 1], corners[j], corners[(j + 1) % count]
            if _turn(a, b, c) * _turn(a, b, d) < 0.0 and _turn(c, d, a) * _turn(c, d, b) < 0.0:
                return i, j
    return None


def _turn(a: Point, b: Point, p: Point) -> float:
    return (b.x_mm - a.x_mm) * (p.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (p.x_mm - a.x_mm)
