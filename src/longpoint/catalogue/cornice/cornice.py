"""Cornice, scotia, cove: a moulding that springs across the corner of wall and ceiling."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.catalogue.cornice.cornice_ends import CutRun, cut_runs
from longpoint.catalogue.cornice.cornice_keys import KEYS, Corners, SpringFrom
from longpoint.catalogue.cornice.cornice_leans import lean_findings
from longpoint.catalogue.cornice.cornice_pieces import run_pieces
from longpoint.catalogue.cornice.cornice_runs import (
    CorniceRun,
    Meets,
    asked_spring_deg,
    cornice_runs,
)
from longpoint.catalogue.cornice.cornice_sketches import room_sketch, section_sketch
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding, Severity
from longpoint.pieces.piece import Piece
from longpoint.pieces.run_corners import RUN_CORNER_ASSUMED
from longpoint.quantities.formatting import format_angle, format_length, format_with_unit
from longpoint.speech.said import joined, say
from longpoint.trims.cornice import drop_mm, projection_mm

SPRING_ASSUMED: Final = "spring-assumed"
CORNICE_WIDTH: Final = "cornice-width"

WIDTH_DIFFERS_MM: Final = 3.0
"""Drop and projection may make the back this much wider or narrower than the profile: ours."""


def plan_cornice(asked: Asked) -> TrimPlan:
    """Return the pieces of a cornice round a room or along some of its walls.

    Raises:
        PieceError: Its spring or its walls are not known well enough.
    """
    spring_deg = asked_spring_deg(asked)
    runs = cornice_runs(asked, spring_deg)
    cut, stops = cut_runs(asked, runs)
    if stops:
        return TrimPlan(findings=stops)
    pieces: list[Piece] = []
    room = next(room for room in asked.house.rooms if room.name == asked.entry.room)
    findings = [
        *_spring_note(asked, spring_deg),
        *_width_note(asked),
        *_corner_notes(asked, runs),
        *lean_findings(asked, [wall.mark for wall in room.walls]),
    ]
    for one in cut:
        made, said = run_pieces(asked, one)
        pieces += made
        findings += said
    fit = next((fit for fit in asked.shapes.rooms if fit.name == asked.entry.room), None)
    sketches = [section_sketch(asked, spring_deg)]
    if fit is not None:
        sketches.append(room_sketch(asked, fit, cut))
    return TrimPlan(
        pieces=tuple(pieces),
        findings=tuple(findings),
        sketches=tuple(sketches),
        lines=_lines(asked, spring_deg, cut),
    )


def _lines(asked: Asked, spring_deg: float, runs: Sequence[CutRun]) -> tuple[str, ...]:
    drop = format_length(drop_mm(asked.profile.width_mm, spring_deg), asked.units)
    out = format_with_unit(projection_mm(asked.profile.width_mm, spring_deg), asked.units)
    own = [run for run in runs if run.run.sprung.spring_deg != spring_deg]
    return (
        say(
            "Spring {spring} degrees from the wall, {spring_2} from the ceiling: {spring_source}.",
            spring=format_angle(spring_deg),
            spring_2=format_angle(90.0 - spring_deg),
            spring_source=_spring_source(asked),
        ),
        *(
            say(
                "On {what} it springs {spring} degrees from the wall.",
                what=one.run.what,
                spring=format_angle(one.run.sprung.spring_deg),
            )
            for one in own
        ),
        say(
            "The back touches the wall {drop} below the ceiling and the ceiling {out} "
            "off the wall: snap both lines before you fix.",
            drop=drop,
            out=out,
        ),
        say(
            "A wall's length runs along its wall at that height, corner to corner: it "
            "is the bottom edge of the moulding's back. Inner edge means the bottom "
            "edge of the face, outer edge the ceiling edge of the face."
        ),
        say(
            "Flat: on its back, face up, ceiling edge at the fence. Nested: upside "
            "down at its spring, bottom edge up at the fence, ceiling edge on the "
            "table, so left and right change places: the left end lies to your right."
        ),
        *_slope_line(runs),
        *_order(asked, runs),
    )


def _spring_source(asked: Asked) -> str:
    if asked.get("spring") is None:
        drop, out = (format_length(asked.get(key), asked.units) for key in ("drop", "projection"))
        return say(
            "worked out from {drop} down the wall and {out} along the ceiling",
            drop=drop,
            out=out,
        )
    if asked.get("spring_from") is None:
        return say("taken as measured from the wall, since the house file doesn't say")
    return say(
        "measured from the {springfrom}",
        springfrom=SpringFrom(asked.get("spring_from")),
    )


def _slope_line(runs: Sequence[CutRun]) -> tuple[str, ...]:
    if all(one.run.sprung.slope_deg == 0.0 for one in runs):
        return ()
    return (
        say(
            "A slope is taken along its wall, the ceiling square off that wall. Where "
            "the ceiling tips towards or off a wall, the moulding keeps its spring to "
            "the wall: offer up a short length there before you cut."
        ),
    )


def _order(asked: Asked, runs: Sequence[CutRun]) -> tuple[str, ...]:
    corners = Corners(asked.get("corners", Corners.SCRIBE))
    stops = [stop for one in runs for stop in (one.run.left, one.run.right)]
    has_joint = any(stop.meets is Meets.CORNER and stop.is_internal for stop in stops)
    if corners is not Corners.SCRIBE or not has_joint:
        return ()
    order = sorted(range(len(runs)), key=lambda index: (-runs[index].run.level_mm, index))
    marks = joined(", ", (f"{asked.mark}-{runs[index].run.what}" for index in order))
    return (
        say(
            "Internal corners are scribed: the longer run goes up first, its end to "
            "the wall; the other is sawn at the setting given, which shows the line, "
            "and coped back along it."
        ),
        say("Put them up in this order: {marks}.", marks=marks),
    )


def _spring_note(asked: Asked, spring_deg: float) -> tuple[Finding, ...]:
    if asked.get("spring") is None or asked.get("spring_from") is not None:
        return ()
    written, other = format_angle(spring_deg), format_angle(90.0 - spring_deg)
    return (
        Finding(
            code=SPRING_ASSUMED,
            severity=Severity.NOTE,
            place=asked.mark,
            read=say("{mark} springs {written} degrees.", mark=asked.mark, written=written),
            wrong=say(
                "It was taken as measured from the wall; measured from the "
                "ceiling it would be {other} from the wall, and every setting "
                "another.",
                other=other,
            ),
            do=say(
                "Look on the moulding's label, or hold a piece in a square, and write spring_from."
            ),
        ),
    )


def _width_note(asked: Asked) -> tuple[Finding, ...]:
    drop, out = asked.get("drop"), asked.get("projection")
    if not drop or not out:
        return ()
    width_mm = math.hypot(drop, out)
    if abs(width_mm - asked.profile.width_mm) <= WIDTH_DIFFERS_MM:
        return ()
    return (
        Finding(
            code=CORNICE_WIDTH,
            severity=Severity.WARNING,
            place=asked.mark,
            read=say(
                "Drop and projection of {mark} make its back {width} wide; "
                "profile {profile} is {width_2}.",
                mark=asked.mark,
                width=format_with_unit(width_mm, asked.units),
                profile=asked.profile.name,
                width_2=format_with_unit(asked.profile.width_mm, asked.units),
            ),
            wrong=say(
                "The settings go by the drop and the projection, the lengths of "
                "the ceiling edge by the profile's width."
            ),
            do=say("Measure the moulding across its back, and its drop and projection, again."),
        ),
    )


def _corner_notes(asked: Asked, runs: Sequence[CorniceRun]) -> tuple[Finding, ...]:
    corners = [
        say("right of wall {wall_mark}", wall_mark=run.wall_mark)
        for run in runs
        if run.right.is_assumed
    ]
    corners += [
        say("left of wall {wall_mark}", wall_mark=run.wall_mark)
        for run in runs
        if run.left.is_assumed and run.left.other is None
    ]
    if not corners:
        return ()
    return (
        Finding(
            code=RUN_CORNER_ASSUMED,
            severity=Severity.NOTE,
            place=asked.mark,
            read=say(
                "Not read: the corner at the {corners}.",
                corners=joined(say(", at the "), corners),
            ),
            wrong=say("It was taken as square."),
            do=say("Read it with a bevel gauge, up at the ceiling, before you cut there."),
        ),
    )


TRIM: Final = TrimKind(
    name="cornice",
    title=say("a cornice"),
    asks=KEYS,
    plan=plan_cornice,
    needs_room=True,
)
