"""Dado and picture rails: one plan for both."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.catalogue.along_walls.rail_heights import (
    RailHeights,
    height_lines,
    level_findings,
    rail_heights,
)
from longpoint.catalogue.along_walls.rail_openings import Band, opening_findings, openings_met
from longpoint.catalogue.along_walls.rail_sketch import rail_sketch
from longpoint.catalogue.along_walls.wall_course import (
    Ends,
    chosen_walls,
    course_boards,
    course_pieces,
    order_of_work,
    the_room,
)
from longpoint.catalogue.trim import Asked, TrimPlan
from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.boards import Board
from longpoint.pieces.piece import Role
from longpoint.pieces.wall_boards import Course
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.survey.openings import Opening
from longpoint.survey.readings import Place

RAIL_AT_LEANING_LEG: Final = "rail-at-leaning-leg"

_LEAST_LEAN_MM: Final = 1.0
"""Less is not worth reading again for."""


def plan_rail(asked: Asked) -> TrimPlan:
    """Return the rail of a room: boards wall by wall, set to a level line.

    Raises:
        PieceError: It stands below the floor or above the ceiling, or something it needs was not
            read.
    """
    room = the_room(asked)
    walls = chosen_walls(asked, room)
    heights = rail_heights(asked, room)
    band = _band(asked, heights)
    ends = Ends(
        what=say("rail"),
        role=Role.RAIL,
        is_mitred=asked.get("internal", "scribe") == "mitre",
        is_returned=asked.get("at_trim", "square") == "return",
    )
    met = openings_met(asked, room, walls, band)
    course = Course(
        mark=asked.mark,
        profile=asked.profile,
        low_mm=band.low_mm,
        openings=frozenset(opening.mark for opening in met.stopping),
    )
    boards, said = course_boards(asked, room, course, walls, ends)
    pieces, more = course_pieces(asked, boards, ends)
    return TrimPlan(
        pieces=pieces,
        findings=(
            *said,
            *more,
            *level_findings(asked, room, heights),
            *opening_findings(asked, met, band),
            *_leaning(asked, met.stopping, band),
        ),
        sketches=(rail_sketch(asked, room, walls, heights, met.stopping),),
        lines=(*height_lines(asked, room, heights), *_lines(asked, boards, ends)),
    )


def _band(asked: Asked, heights: RailHeights) -> Band:
    """Return what the rail covers of the wall at the datum."""
    width_mm, units = asked.profile.width_mm, asked.units
    to_top = asked.get("measured_to", "top") == "top"
    high_mm = heights.height_mm if to_top else heights.height_mm + width_mm
    low_mm = high_mm - width_mm
    if low_mm < 0:
        raise PieceError(
            say(
                "The top of {mark} is to stand {high} above the floor.",
                mark=asked.mark,
                high=format_with_unit(high_mm, units),
            ),
            say(
                "The rail itself is {width} wide, so it would stand in the floor.",
                width=format_with_unit(width_mm, units),
            ),
            say("Look at its height again."),
        )
    ceiling_mm = asked.get("ceiling")
    if ceiling_mm is not None and high_mm > ceiling_mm:
        raise PieceError(
            say(
                "The top of {mark} is to stand {high} above the floor.",
                mark=asked.mark,
                high=format_with_unit(high_mm, units),
            ),
            say(
                "The ceiling is {ceiling} above it.",
                ceiling=format_with_unit(ceiling_mm, units),
            ),
            say("Look at both again."),
        )
    return Band(low_mm=low_mm, high_mm=high_mm)


def _lines(asked: Asked, boards: Sequence[Board], ends: Ends) -> tuple[str, ...]:
    return (
        say("Each piece lies on the saw on its back, its upper edge away from you."),
        order_of_work([board for board in boards if not board.is_held], ends),
        say(
            "A wall whose lean was not read is taken as plumb: try the two pieces of a "
            "corner at the rail's height before you fix them."
        ),
    )


def _leaning(asked: Asked, openings: Sequence[Opening], band: Band) -> tuple[Finding, ...]:
    """Return the note of openings that are wider or narrower at the rail than at the floor."""
    middle_mm = (band.low_mm + band.high_mm) / 2.0
    leaning = []
    for opening in openings:
        wider_mm = _wider_mm(opening, middle_mm) if opening.stands_on_floor else 0.0
        if abs(wider_mm) >= _LEAST_LEAN_MM:
            way = say("wider") if wider_mm > 0 else say("narrower")
            leaning.append(
                say(
                    "{mark} {wider} {way}",
                    mark=opening.mark,
                    wider=format_length(abs(wider_mm), asked.units),
                    way=way,
                )
            )
    if not leaning:
        return ()
    return (
        Finding(
            code=RAIL_AT_LEANING_LEG,
            severity=Severity.NOTE,
            place=asked.mark,
            read=say(
                "At the rail's height, against the floor: {leaning}.",
                leaning=joined(", ", leaning),
            ),
            wrong=say(
                "Where a door stands was read at one height, and which leg leans "
                "is not known; the boards beside it reach to where its legs "
                "stand at the floor."
            ),
            do=say(
                "Cut these boards last, to a tape from the corner to the leg at the rail's height."
            ),
        ),
    )


def _wider_mm(opening: Opening, height_mm: float) -> float:
    """Return how much wider an opening is at a height than at its bottom, by its readings."""
    readings = opening.readings
    top_mm, bottom_mm = readings.side_mm(Place.TOP), readings.side_mm(Place.BOTTOM)
    sides = [readings.side_mm(place) for place in (Place.LEFT, Place.RIGHT)]
    tall = [side_mm for side_mm in sides if side_mm is not None]
    if top_mm is None or bottom_mm is None or not tall:
        return 0.0
    part = min(1.0, height_mm / (math.fsum(tall) / len(tall)))
    return (top_mm - bottom_mm) * part
