"""Drawings of a cornice: its section on the wall and on the saw, and the room from above."""

import math
from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.catalogue.cornice.cornice_ends import CutRun, overall_mm
from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.shape.fitted import FittedRoom
from longpoint.shape.point import direction
from longpoint.speech.said import joined, say
from longpoint.trims.cornice import drop_mm, projection_mm

Spot = tuple[float, float]

BESIDE: Final = 2.3
"""Section on the wall and section on the saw stand so many widths apart."""

LABEL_OFF: Final = 2.5
"""A run's mark stands so many reaches of the moulding off the wall."""


def section_sketch(asked: Asked, spring_deg: float) -> Sketch:
    """Return the section as it is fixed and, beside it, upside down on the saw."""
    profile = asked.profile
    width_mm, thickness_mm = profile.width_mm, profile.thickness_mm
    drop = drop_mm(width_mm, spring_deg)
    out = projection_mm(width_mm, spring_deg)
    fixed = _board(width_mm, thickness_mm, spring_deg)
    aside, room = BESIDE * width_mm, 1.35 * width_mm
    nested = tuple((x + aside, -y - drop) for x, y in fixed)
    lines = (
        Line(points=fixed, stroke=Stroke.TIMBER, closed=True),
        Line(points=((0.0, -room), (0.0, 0.0), (room, 0.0)), stroke=Stroke.EDGE),
        Line(points=nested, stroke=Stroke.TIMBER, closed=True),
        Line(
            points=((aside, room - drop), (aside, -drop), (aside + room, -drop)),
            stroke=Stroke.EDGE,
        ),
    )
    gap = 0.12 * width_mm
    labels = (
        Label(x_mm=room, y_mm=gap / 2, text=say("ceiling"), anchor=Anchor.END),
        Label(x_mm=-gap / 2, y_mm=-room, text=say("wall"), anchor=Anchor.END),
        Label(x_mm=-gap / 2, y_mm=-drop, text=format_length(drop, asked.units), anchor=Anchor.END),
        Label(x_mm=out, y_mm=gap / 2, text=format_length(out, asked.units)),
        Label(x_mm=aside - gap / 2, y_mm=room - drop, text=say("fence"), anchor=Anchor.END),
        Label(x_mm=aside + room, y_mm=-drop - 1.5 * gap, text=say("table"), anchor=Anchor.END),
        Label(x_mm=aside - gap / 2, y_mm=0.0, text=say("bottom edge"), anchor=Anchor.END),
        Label(x_mm=aside + out, y_mm=-drop - 1.5 * gap, text=say("ceiling edge")),
    )
    return Sketch(
        lines=lines,
        labels=labels,
        caption=say(
            "Fixed (left) and nested on the saw, upside down (right); spring "
            "{spring} from the wall.",
            spring=format_angle(spring_deg),
        ),
        described=say(
            "The moulding leans {spring} degrees off the wall, {drop} down "
            "the wall and {out} along the ceiling. On the saw its ceiling "
            "edge lies on the table and its bottom edge at the fence.",
            spring=format_angle(spring_deg),
            drop=format_length(drop, asked.units),
            out=format_length(out, asked.units),
        ),
    )


def room_sketch(asked: Asked, fit: FittedRoom, runs: Sequence[CutRun]) -> Sketch:
    """Return the room from above with the runs along its walls."""
    walls = tuple((corner.x_mm, corner.y_mm) for corner in fit.corners)
    is_closed = len(fit.corners) == len(fit.wall_mm)
    lines = [Line(points=walls, stroke=Stroke.EDGE, closed=is_closed)]
    labels = []
    for cut in runs:
        points = tuple(_on_plan(fit, cut.run.wall, spot) for spot in _strip(asked, cut))
        lines.append(Line(points=points, stroke=Stroke.TIMBER, closed=True))
        lines += [
            Line(points=(points[3], points[0]), stroke=Stroke.CUT),
            Line(points=(points[1], points[2]), stroke=Stroke.CUT),
        ]
        labels.append(_run_label(asked, fit, cut))
    return Sketch(
        lines=tuple(lines),
        labels=tuple(labels),
        caption=say(
            "{fit} from above; each run by its mark, its cuts as seen on the ceiling.",
            fit=fit.name,
        ),
        described=say(
            "Runs along the walls {listed} of {fit}.",
            listed=_listed(cut.run.what for cut in runs),
            fit=fit.name,
        ),
    )


def _board(width_mm: float, thickness_mm: float, spring_deg: float) -> tuple[Spot, ...]:
    """Return the section as fixed, the corner of wall and ceiling at (0, 0)."""
    spring = math.radians(spring_deg)
    across, face = (math.sin(spring), math.cos(spring)), (math.cos(spring), -math.sin(spring))
    drop = width_mm * across[1]
    return tuple(
        (u * across[0] + n * face[0], u * across[1] + n * face[1] - drop)
        for u, n in (
            (0.0, 0.0),
            (width_mm, 0.0),
            (width_mm, thickness_mm),
            (0.0, thickness_mm),
        )
    )


def _strip(asked: Asked, cut: CutRun) -> tuple[Spot, ...]:
    """Return what a run covers, along its wall and off it."""
    level = math.cos(math.radians(cut.run.sprung.slope_deg))
    off_mm = overall_mm(asked.profile, cut.run.sprung.spring_deg)
    start_mm, end_mm = cut.left.at_mm, cut.right.at_mm
    return (
        (start_mm, 0.0),
        (end_mm, 0.0),
        (end_mm + cut.right.reach.top_face_mm * level, off_mm),
        (start_mm - cut.left.reach.top_face_mm * level, off_mm),
    )


def _on_plan(fit: FittedRoom, wall: int, spot: Spot) -> Spot:
    """Return a place along and off a wall as it lies on the plan; the room is to its right."""
    start, end = fit.corners[wall], fit.corners[(wall + 1) % len(fit.corners)]
    ux, uy = direction(start, end)
    along_mm, off_mm = spot
    return (start.x_mm + along_mm * ux + off_mm * uy, start.y_mm + along_mm * uy - off_mm * ux)


def _run_label(asked: Asked, fit: FittedRoom, cut: CutRun) -> Label:
    middle_mm = (cut.left.at_mm + cut.right.at_mm) / 2.0
    off_mm = LABEL_OFF * overall_mm(asked.profile, cut.run.sprung.spring_deg)
    on_wall = _on_plan(fit, cut.run.wall, (middle_mm, 0.0))
    x_mm, y_mm = _on_plan(fit, cut.run.wall, (middle_mm, off_mm))
    sideways = (x_mm - on_wall[0]) / off_mm
    anchor = Anchor.START if sideways > 0.5 else Anchor.END if sideways < -0.5 else Anchor.MIDDLE
    slope_deg = cut.run.sprung.slope_deg
    climbs = say(
        ", {climbs} {slope}",
        climbs=say("climbs") if slope_deg > 0 else say("falls"),
        slope=format_angle(abs(slope_deg)),
    )
    text = cut.run.what + (climbs if slope_deg != 0.0 else "")
    return Label(x_mm=x_mm, y_mm=y_mm, text=text, anchor=anchor, bold=True)


def _listed(marks: Iterable[str]) -> str:
    return joined(", ", marks)
