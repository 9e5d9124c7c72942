"""The reveal's edge against the lining: what stands proud opens the joint, what sits shy hides it.

References:
    A piece proud by p tilts by asin(p / d) over its bearing d; a flat cut at 45 then opens at the
    face by sin 45 (u (1 - cos tilt) + T sin tilt), u from the toe; two tilted pieces add up.
"""

import math
from collections.abc import Iterator
from typing import Final, NamedTuple

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_tenth, format_unit
from longpoint.survey.house import House
from longpoint.survey.openings import Layout, Opening
from longpoint.survey.readings import OpeningReadings, Plane

ASSUMED_EDGE_MM: Final = 19.0
"""Thickness of the reveal's edge where it wasn't read."""

PROUD_WARNING_MM: Final = 2.0
SHY_ALL_ROUND_MM: Final = 5.0
TWISTED_MM: Final = 4.0
"""Beyond these the frame wants work before trim; common practice, no source."""

_NAMES: Final = ("bottom left", "bottom right", "top right", "top left")


class Opened(NamedTuple):
    """How far a joint stands open at the face: with one of its pieces tilted, and with both."""

    one_mm: float
    both_mm: float


def open_at_face_mm(
    proud_mm: float, thickness_mm: float, bearing_mm: float, *, from_toe_mm: float = 0.0
) -> float:
    """Return how far a flat 45 stands open at the face when one of its pieces tilts.

    Args:
        proud_mm: Reveal off the lining. >= 0. [mm]
        thickness_mm: Thickness of the tilted piece. > 0. [mm]
        bearing_mm: What it bears on along its back. > 0. [mm]
        from_toe_mm: Where along the joint: 0 at the toe, the face width at the heel. [mm]

    Returns:
        Opening square to the joint. [mm]

    Example:
        >>> round(open_at_face_mm(3.0, 19.0, 57.0), 2)
        0.71
        >>> round(open_at_face_mm(3.0, 19.0, 57.0, from_toe_mm=57.0), 2)
        0.76

    References:
        See the head of this file.
    """
    tilt = math.asin(min(1.0, proud_mm / bearing_mm))
    return math.sin(math.pi / 4) * (
        from_toe_mm * (1.0 - math.cos(tilt)) + thickness_mm * math.sin(tilt)
    )


def check_plane(house: House) -> tuple[Finding, ...]:
    """Return what the plane readings mean for the joints, opening by opening."""
    return tuple(
        finding
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None and readings.plane is not None
        for finding in _findings(house, opening, readings, readings.plane)
    )


def _findings(
    house: House, opening: Opening, readings: OpeningReadings, plane: Plane
) -> Iterator[Finding]:
    yield from _twisted(house, opening, plane)
    proud = [i for i, mm in enumerate(plane.corners_mm()) if mm >= 1.0]
    if proud:
        yield _proud(house, opening, plane, proud)
    shy = [i for i, mm in enumerate(plane.corners_mm()) if mm <= -1.0]
    if all(mm <= -SHY_ALL_ROUND_MM for mm in plane.corners_mm()):
        yield _shy_all_round(house, opening, plane)
    elif shy:
        yield _shy(house, opening, plane, shy)


def _listed(house: House, plane: Plane, corners: list[int]) -> str:
    figures = plane.corners_mm()
    return ", ".join(
        f"{format_length(abs(figures[i]), house.units)} at the {_NAMES[i]}" for i in corners
    )


def _proud(house: House, opening: Opening, plane: Plane, corners: list[int]) -> Finding:
    figures = plane.corners_mm()
    mitred = [i for i in corners if i in _mitred_corners(opening)]
    most_mm = max((figures[i] for i in mitred), default=0.0)
    told = [i for i in mitred if figures[i] >= min(most_mm, PROUD_WARNING_MM)]
    return Finding(
        code="proud",
        severity=Severity.WARNING if most_mm >= PROUD_WARNING_MM else Severity.NOTE,
        place=opening.mark,
        read=f"The reveal stands proud {_listed(house, plane, corners)} "
        f"({format_unit(house.units)}).",
        wrong=_opens(house, opening, plane, told)
        if told
        else "The legs will tilt there; no mitre is touched.",
        do="Plane the reveal, or pack the outer edge of both pieces at that corner (a wedge "
        "tapering to nothing), or relieve the backs of the cuts."
        if told
        else "Plane the reveal, or pack the outer edge of the leg.",
    )


def _opens(house: House, opening: Opening, plane: Plane, corners: list[int]) -> str:
    figures = plane.corners_mm()
    by_figure = {
        mm: [_NAMES[i] for i in reversed(corners) if figures[i] == mm]
        for mm in sorted({figures[i] for i in corners}, reverse=True)
    }
    told = "; ".join(
        f"{' and '.join(names)} {_range(house, opening, _NAMES.index(names[0]), mm)}"
        for mm, names in by_figure.items()
    )
    if opening.lining_edge_mm is not None:
        return f"Cut flat, the mitre will stand open at the face: {told}."
    edge = format_length(ASSUMED_EDGE_MM, house.units)
    return (
        f"Cut flat, the mitre will stand open at the face: {told} (the reveal's edge is assumed "
        f"{edge} thick)."
    )


def _range(house: House, opening: Opening, corner: int, proud_mm: float) -> str:
    least, most = opened_between(house, opening, corner, proud_mm)
    one = _from_to(house, least.one_mm, most.one_mm)
    both = _from_to(house, least.both_mm, most.both_mm)
    return f"{one} if one piece tilts, {both} if both do"


def _from_to(house: House, least_mm: float, most_mm: float) -> str:
    least, most = format_tenth(least_mm, house.units), format_tenth(most_mm, house.units)
    return least if least == most else f"{least} to {most}"


def opened_between(
    house: House, opening: Opening, corner: int, proud_mm: float
) -> tuple[Opened, Opened]:
    """Return the least and the most a mitre may stand open at the face of a proud corner.

    The least is at the toe of trim that bears over its whole width, the most at the heel of trim
    that bears only from the lining's back arris to its own outer edge.

    Args:
        house: The house, for the profiles.
        opening: The opening.
        corner: 0 bottom left, 1 bottom right, 2 top right, 3 top left.
        proud_mm: Reveal off the lining there. > 0. [mm]
    """
    sides = ((0, 3), (0, 1), (2, 1), (2, 3))[corner]
    edge_mm = ASSUMED_EDGE_MM if opening.lining_edge_mm is None else opening.lining_edge_mm
    least, most = [], []
    for side in sides:
        profile = house.profile(opening.profiles.anticlockwise()[side])
        quirk_mm = opening.quirk_mm.anticlockwise()[side]
        width_mm, thick_mm = profile.width_mm, profile.thickness_mm
        narrow_mm = min(width_mm, max(width_mm / 4.0, width_mm + quirk_mm - edge_mm))
        least.append(open_at_face_mm(proud_mm, thick_mm, width_mm))
        most.append(open_at_face_mm(proud_mm, thick_mm, narrow_mm, from_toe_mm=width_mm))
    return (
        Opened(one_mm=min(least), both_mm=sum(least)),
        Opened(one_mm=max(most), both_mm=sum(most)),
    )


def _mitred_corners(opening: Opening) -> tuple[int, ...]:
    return (0, 1, 2, 3) if opening.layout is Layout.ALL_ROUND else (2, 3)


def _shy(house: House, opening: Opening, plane: Plane, corners: list[int]) -> Finding:
    return Finding(
        code="shy",
        severity=Severity.NOTE,
        place=opening.mark,
        read=f"The reveal sits shy {_listed(house, plane, corners)} ({format_unit(house.units)}).",
        wrong="A mitre there closes at the face and gaps only behind.",
        do="Pack behind the inner edge so that the nails don't pull the trim round.",
    )


def _shy_all_round(house: House, opening: Opening, plane: Plane) -> Finding:
    figures = [-mm for mm in plane.corners_mm()]
    least, most = (format_length(mm, house.units) for mm in (min(figures), max(figures)))
    by = least if least == most else f"{least} to {most}"
    return Finding(
        code="shy-all-round",
        severity=Severity.WARNING,
        place=opening.mark,
        read=f"The reveal sits shy by {by} {format_unit(house.units)} all round.",
        wrong="The reveal is short of the wall's lining: trim would bridge the step.",
        do=f"Fix extension pieces {by} thick to its edge before the trim, and take the quirk from "
        "them; they are not on the order.",
    )


def _twisted(house: House, opening: Opening, plane: Plane) -> Iterator[Finding]:
    if not _is_twisted(plane):
        return
    at_head, at_foot = (
        format_length(abs(mm), house.units)
        for mm in (plane.tr_mm - plane.tl_mm, plane.br_mm - plane.bl_mm)
    )
    is_door = opening.stands_on_floor
    yield Finding(
        code="twisted",
        severity=Severity.WARNING,
        place=opening.mark,
        read=f"The two jambs stand {at_head} apart across the wall at the head and {at_foot} at "
        f"the foot ({format_unit(house.units)}).",
        wrong=f"The frame is twisted about {at_head} at the head"
        + (": a door will not close on both corners." if is_door else "."),
        do="Tell whoever hangs the door before architrave locks it."
        if is_door
        else "Have the frame reset before trim locks it.",
    )


def _is_twisted(plane: Plane) -> bool:
    """Tell whether one jamb stands proud where the other sits shy, at the head or at the foot."""
    return any(
        min(one, other) <= -1.0 and max(one, other) >= 1.0 and abs(one - other) >= TWISTED_MM
        for one, other in ((plane.tl_mm, plane.tr_mm), (plane.bl_mm, plane.br_mm))
    )
