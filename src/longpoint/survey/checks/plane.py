"""The reveal's edge against the lining, where it tells of the frame and not of single joints.

What a proud or a shy corner does to its joint needs the geometry of the pieces; it is worked out
in `longpoint.pieces.proud_findings`.
"""

from collections.abc import Iterator
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length, format_unit
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Plane

SHY_ALL_ROUND_MM: Final = 5.0
TWISTED_MM: Final = 4.0
"""Beyond these the frame wants work before trim; common practice, no source."""


def check_plane(house: House) -> tuple[Finding, ...]:
    """Return what the plane readings say of each frame as a whole."""
    return tuple(
        finding
        for opening in house.openings
        for readings in (opening.readings, opening.readings_b)
        if readings is not None and readings.plane is not None
        for finding in _findings(house, opening, readings.plane)
    )


def is_shy_all_round(plane: Plane) -> bool:
    """Tell whether the reveal is so far back all round that it wants extension pieces."""
    return all(mm <= -SHY_ALL_ROUND_MM for mm in plane.corners_mm())


def _findings(house: House, opening: Opening, plane: Plane) -> Iterator[Finding]:
    yield from _twisted(house, opening, plane)
    if is_shy_all_round(plane):
        yield _shy_all_round(house, opening, plane)


def _shy_all_round(house: House, opening: Opening, plane: Plane) -> Finding:
    figures = [-mm for mm in plane.corners_mm()]
    least, most = (format_length(mm, house.units) for mm in (min(figures), max(figures)))
    by = least if least == most else say("{least} to {most}", least=least, most=most)
    thick = (
        say("as thick as the reveal's edge")
        if opening.lining_edge_mm is None
        else say(
            "{lining_edge} thick",
            lining_edge=format_length(opening.lining_edge_mm, house.units),
        )
    )
    return Finding(
        code="shy-all-round",
        severity=Severity.WARNING,
        place=opening.mark,
        read=say(
            "The reveal sits shy by {by} {units} all round.",
            by=by,
            units=format_unit(house.units),
        ),
        wrong=say("The reveal is short of the wall's lining: trim would bridge the step."),
        do=say(
            "It needs extension pieces {by} deep, {thick}, before the trim, and the "
            'quirk is taken from them: [[trims]] of kind "extension-lining" puts '
            "them on the order.",
            by=by,
            thick=thick,
        ),
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
        read=say(
            "The two jambs stand {at_head} apart across the wall at the head and "
            "{at_foot} at the foot ({units}).",
            at_head=at_head,
            at_foot=at_foot,
            units=format_unit(house.units),
        ),
        wrong=say("The frame is twisted about {at_head} at the head", at_head=at_head)
        + (say(": a door will not close on both corners.") if is_door else "."),
        do=say("Tell whoever hangs the door before architrave locks it.")
        if is_door
        else say("Have the frame reset before trim locks it."),
    )


def _is_twisted(plane: Plane) -> bool:
    """Tell whether one jamb stands proud where the other sits shy, at the head or at the foot."""
    return any(
        min(one, other) <= -1.0 and max(one, other) >= 1.0 and abs(one - other) >= TWISTED_MM
        for one, other in ((plane.tl_mm, plane.tr_mm), (plane.bl_mm, plane.br_mm))
    )
