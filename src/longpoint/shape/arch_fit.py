"""The circle of an arched head: its rise, by all that was read of it."""

import math
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity, ShapeError
from longpoint.quantities.formatting import format_tenth, format_with_unit
from longpoint.shape.fitted import FittedOpening
from longpoint.shape.least_squares import Row, adjust
from longpoint.speech.said import say
from longpoint.survey.checks.arches import RISE_APART_MM, rise_slip
from longpoint.survey.house import House
from longpoint.survey.openings import Arch, Opening

NOT_A_CIRCLE: Final = "arch-not-a-circle"
ARCH_OFFSETS: Final = "arch-offsets"

CIRCLE_MM: Final = 3.0
"""A curve that leaves its best circle by more than this is none: our limit."""

RISE_U_MM: Final = 1.0
CROWN_U_MM: Final = 1.2
"""A rise off a straight edge, and a crown less the legs: assumed, no source."""
OFFSET_U_MM: Final = 1.5
"""A point of the curve, read across and up: assumed, no source."""

FEWEST_POINTS: Final = 5
"""A circle takes three points; fewer than two more tell nothing of whether it is one."""

_STEP_MM: Final = 1e-3


def fit_arch(
    house: House, opening: Opening, fitted: FittedOpening
) -> tuple[FittedOpening, tuple[Finding, ...]]:
    """Return an opening with the rise of its arch by rise, crown and offsets together.

    Args:
        house: Gives the units.
        opening: The opening; without an arch nothing is done.
        fitted: Its shape below the springing line.

    Returns:
        The shape with its rise, and what is to be said: `arch-not-a-circle` where the offsets lie
        on no circle, `arch-offsets` where they lie on another one. The rise is then as read.
    """
    arch = opening.arch
    if arch is None:
        return fitted, ()
    as_read = replace(fitted, rise_mm=arch.rise_mm)
    said = _offsets_wrong(house, opening.mark, arch)
    if said is not None:
        return as_read, (said,)
    legs_mm = (fitted.side_mm.second + fitted.side_mm.fourth) / 2.0
    crown_mm = arch.crown_mm
    if crown_mm is not None and abs(crown_mm - legs_mm - arch.rise_mm) > RISE_APART_MM:
        # Said already; where the crew accepts it, the rise is the figure it believes.
        arch = replace(arch, crown_mm=None)
    try:
        rise_mm = best_rise_mm(arch, fitted.side_mm.third, legs_mm)
    except ShapeError:
        return as_read, ()
    return replace(fitted, rise_mm=rise_mm), ()


def best_rise_mm(arch: Arch, span_mm: float, legs_mm: float) -> float:
    """Return the rise that fits all readings of an arch best, its span taken as known.

    Args:
        arch: Its readings.
        span_mm: Between the springings.
        legs_mm: Mean height of the springings, to take off the crown.

    Raises:
        ShapeError: Nothing fits them.

    Example:
        >>> round(best_rise_mm(Arch(rise_mm=285.0, crown_mm=1299.0), 914.0, 1012.5), 2)
        285.61
    """
    points = arch.offsets
    if arch.crown_mm is None and not points:
        return arch.rise_mm

    def model(unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
        (rise_mm,) = unknowns
        here = _shown(rise_mm, span_mm, points)
        there = _shown(rise_mm + _STEP_MM, span_mm, points)
        slopes = tuple(((b - a) / _STEP_MM,) for a, b in zip(here, there, strict=True))
        crown = arch.crown_mm is not None
        return (
            (rise_mm, *((rise_mm,) if crown else ()), *here),
            ((1.0,), *(((1.0,),) if crown else ()), *slopes),
        )

    read: list[float] = [arch.rise_mm]
    u = [RISE_U_MM]
    if arch.crown_mm is not None:
        read.append(arch.crown_mm - legs_mm)
        u.append(CROWN_U_MM)
    read += [0.0] * len(points)
    u += [OFFSET_U_MM] * len(points)
    return adjust(model, (arch.rise_mm,), tuple(read), tuple(u)).unknowns[0]


def best_circle(points: tuple[tuple[float, float], ...]) -> tuple[float, float, float, float]:
    """Return the circle nearest to some points, and how far the worst of them lies off it.

    Args:
        points: Across and up, five or more. [mm]

    Returns:
        Centre across and up, radius, worst distance. [mm]

    Raises:
        ShapeError: They lie on a straight line, or on nothing like a circle.

    Example:
        >>> round(best_circle(((0, 0), (20, 40), (50, 50), (80, 40), (100, 0)))[2], 6)
        50.0
    """
    left, right = min(points), max(points)
    top = max(points, key=lambda p: p[1])
    span_mm = right[0] - left[0]
    rise_mm = max(top[1] - (left[1] + right[1]) / 2.0, 1e-3)
    radius_mm = (span_mm**2 / 4.0 + rise_mm**2) / (2.0 * rise_mm)
    start = ((left[0] + right[0]) / 2.0, top[1] - radius_mm, radius_mm)

    def model(unknowns: Row) -> tuple[Row, tuple[Row, ...]]:
        x, y, radius = unknowns
        off, rows = [], []
        for px, py in points:
            away = math.hypot(px - x, py - y) or 1e-9
            off.append(away - radius)
            rows.append(((x - px) / away, (y - py) / away, -1.0))
        return tuple(off), tuple(rows)

    nought = (0.0,) * len(points)
    found = adjust(model, start, nought, (1.0,) * len(points))
    x, y, radius_mm = found.unknowns
    return x, y, radius_mm, max(abs(off) for off in found.residuals)


def _shown(rise_mm: float, span_mm: float, points: tuple[tuple[float, float], ...]) -> Row:
    """Return how far each point lies outside the arch of a rise; 0 for one on it."""
    radius_mm = (span_mm**2 / 4.0 + rise_mm**2) / (2.0 * rise_mm)
    x_mm, y_mm = span_mm / 2.0, rise_mm - radius_mm
    return tuple(math.hypot(x - x_mm, y - y_mm) - radius_mm for x, y in points)


def _offsets_wrong(house: House, mark: str, arch: Arch) -> Finding | None:
    if len(arch.offsets) < FEWEST_POINTS:
        return None
    try:
        _, y_mm, radius_mm, worst_mm = best_circle(arch.offsets)
    except ShapeError:
        return _no_circle(house, mark, arch, None)
    if worst_mm > CIRCLE_MM:
        return _no_circle(house, mark, arch, worst_mm)
    by_offsets_mm = y_mm + radius_mm
    if abs(by_offsets_mm - arch.rise_mm) <= RISE_APART_MM:
        return None
    slip = rise_slip(arch.rise_mm, by_offsets_mm, house.units)
    rise = format_with_unit(arch.rise_mm, house.units)
    return Finding(
        code=ARCH_OFFSETS,
        severity=Severity.STOP,
        place=mark,
        read=say(
            "Read: rise {rise}, and {offsets} points of the curve.",
            rise=rise,
            offsets=len(arch.offsets),
        ),
        wrong=say(
            "The points lie on a circle that rises {by_offsets} above the "
            "springing line, not {rise}.",
            by_offsets=format_tenth(by_offsets_mm, house.units),
            rise=rise,
        ),
        do=say("Read the rise again: is it {slip}?", slip=slip)
        if slip
        else say("Read the rise again, and look which line the points were read from."),
    )


def _no_circle(house: House, mark: str, arch: Arch, worst_mm: float | None) -> Finding:
    units = house.units
    by = (
        ""
        if worst_mm is None
        else say(
            ": one lies {worst} off it",
            worst=format_with_unit(worst_mm, units),
        )
    )
    return Finding(
        code=NOT_A_CIRCLE,
        severity=Severity.STOP,
        place=mark,
        read=say("Read: {offsets} points of the arch's curve.", offsets=len(arch.offsets)),
        wrong=say(
            "They are no part of a circle{by} (our limit is {circle}), and only "
            "circles are planned.",
            by=by,
            circle=format_with_unit(CIRCLE_MM, units),
        ),
        do=say(
            "Read that point again; if the curve is an ellipse or drawn by eye, "
            "make a template from the points and set it out by hand. Accepted, the "
            "best circle is taken."
        ),
    )
