"""The drawing of a cover bead: the plan of its room."""

from typing import Final

from longpoint.catalogue.sketch import Label, Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked
from longpoint.errors import ShapeError
from longpoint.shape.point import Point, direction, line_crossing
from longpoint.speech.said import say
from longpoint.survey.rooms import Room

_LABEL_ROOM: Final = 0.06
"""How far a wall's name stands inside it, as a part of the longest wall."""


def bead_sketch(
    asked: Asked, room: Room, walls: frozenset[str], behind_mm: tuple[float, ...]
) -> tuple[Sketch, ...]:
    """Return the room's fitted plan with the bead's front inside it; nothing without a fit.

    What stands behind the bead and the bead itself are thin against a room; they are drawn true.
    """
    fit = next((fit for fit in asked.shapes.rooms if fit.name == room.name), None)
    if fit is None or not room.closed:
        return ()
    corners = fit.corners[: len(room.walls)]
    bead_mm = asked.profile.thickness_mm
    back = _inside(corners, behind_mm)
    front = _inside(corners, tuple(thickness_mm + bead_mm for thickness_mm in behind_mm))
    if back is None or front is None:
        return ()
    after = tuple((index + 1) % len(corners) for index in range(len(corners)))
    beads = [
        Line(
            points=_points((back[here], back[there], front[there], front[here])),
            stroke=Stroke.TIMBER,
            closed=True,
        )
        for here, there in enumerate(after)
        if room.walls[here].mark in walls
    ]
    named = _inside(corners, (_LABEL_ROOM * max(fit.wall_mm),) * len(corners)) or corners
    labels = [
        Label(
            x_mm=(named[here].x_mm + named[there].x_mm) / 2.0,
            y_mm=(named[here].y_mm + named[there].y_mm) / 2.0,
            text=room.walls[here].mark,
            bold=True,
        )
        for here, there in enumerate(after)
    ]
    return (
        Sketch(
            lines=(Line(points=_points(corners), stroke=Stroke.EDGE, closed=True), *beads),
            labels=tuple(labels),
            caption=say(
                "{mark} in {room}, seen from above; door places are not drawn.",
                mark=asked.mark,
                room=room.name,
            ),
            described=say(
                "The plan of {room} with a bead along {beads} walls.",
                room=room.name,
                beads=len(beads),
            ),
        ),
    )


def _inside(corners: tuple[Point, ...], in_mm: tuple[float, ...]) -> tuple[Point, ...] | None:
    """Return the corners of a clockwise plan with each wall moved in; None where none cross."""
    lines = []
    try:
        for index, here in enumerate(corners):
            there = corners[(index + 1) % len(corners)]
            ux, uy = direction(here, there)
            dx, dy = uy * in_mm[index], -ux * in_mm[index]
            lines.append((here.moved(dx, dy), there.moved(dx, dy)))
        return tuple(line_crossing(*lines[i - 1], *lines[i]) for i in range(len(lines)))
    except ShapeError:
        return None


def _points(corners: tuple[Point, ...]) -> tuple[tuple[float, float], ...]:
    return tuple((corner.x_mm, corner.y_mm) for corner in corners)
