"""The drawing of a rail: the walls of its room side by side, as you turn to the right."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.catalogue.along_walls.rail_heights import RailHeights
from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked
from longpoint.pieces.boards import Side
from longpoint.quantities.formatting import format_length
from longpoint.speech.said import say
from longpoint.survey.openings import Opening
from longpoint.survey.rooms import Room, Wall
from longpoint.survey.trimmed_openings import trimmed_opening

_APART: Final = 0.06
"""Room between two walls, as a part of all their lengths."""

_BELOW: Final = 0.022
"""How far heights stand below the floor, as a part of the whole drawing's length."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Strip:
    """One wall as it is drawn.

    Attributes:
        wall: The wall.
        start_mm: Where its left end is drawn.
        length_mm: Its length.
        stops_mm: From where to where openings with their trim take the rail's place.
    """

    wall: Wall
    start_mm: float
    length_mm: float
    stops_mm: tuple[tuple[float, float], ...]

    @property
    def between_mm(self) -> tuple[tuple[float, float], ...]:
        """What lies before, between and behind the openings; may be of no length."""
        edges = [0.0, *(edge for stop in self.stops_mm for edge in stop), self.length_mm]
        return tuple(zip(edges[::2], edges[1::2], strict=True))


def rail_sketch(
    asked: Asked,
    room: Room,
    walls: frozenset[str],
    heights: RailHeights,
    stopping: Sequence[Opening],
) -> Sketch:
    """Return the walls with the rail level across them, and the floor as it falls."""
    lines: list[Line] = []
    labels: list[Label] = []
    strips = _strips(asked, room, walls, stopping)
    below_mm = _BELOW * (strips[-1].start_mm + strips[-1].length_mm)
    for strip in strips:
        lines += _wall_lines(asked, strip, heights)
        labels += _wall_labels(asked, strip, heights, below_mm)
    return Sketch(
        lines=tuple(lines),
        labels=tuple(labels),
        caption=say(
            "{mark} round {room}, wall by wall as you turn to the right; the "
            "rail is level, the floor as read. Below each end: how high it "
            "stands over the floor there.",
            mark=asked.mark,
            room=room.name,
        ),
        described=say(
            "The walls of {room} side by side with the rail across them.",
            room=room.name,
        ),
    )


def _strips(
    asked: Asked, room: Room, walls: frozenset[str], stopping: Sequence[Opening]
) -> list[_Strip]:
    lengths = _lengths_mm(asked, room)
    drawn = [
        (wall, length_mm)
        for wall, length_mm in zip(room.walls, lengths, strict=True)
        if wall.mark in walls
    ]
    apart_mm = _APART * sum(length_mm for _, length_mm in drawn)
    start_mm, strips = 0.0, []
    for wall, length_mm in drawn:
        stops_mm = _stops_mm(asked, room, wall, stopping)
        strips.append(_Strip(wall=wall, start_mm=start_mm, length_mm=length_mm, stops_mm=stops_mm))
        start_mm += length_mm + apart_mm
    return strips


def _lengths_mm(asked: Asked, room: Room) -> list[float]:
    fit = next((fit for fit in asked.shapes.rooms if fit.name == room.name), None)
    fitted = fit.wall_mm if fit is not None else (0.0,) * len(room.walls)
    return [
        wall.length_mm if wall.length_mm is not None else fitted_mm
        for wall, fitted_mm in zip(room.walls, fitted, strict=True)
    ]


def _stops_mm(
    asked: Asked, room: Room, wall: Wall, stopping: Sequence[Opening]
) -> tuple[tuple[float, float], ...]:
    by_mark = {opening.mark: opening for opening in stopping}
    stops = []
    for place in wall.openings:
        opening = by_mark.get(place.mark)
        if opening is None or place.from_left_mm is None:
            continue
        trim = trimmed_opening(asked.house, opening, room.name)
        width_mm = trim.floor_width_mm or trim.width_mm or 0.0
        left_mm = place.from_left_mm - trim.left_mm
        stops.append((left_mm, place.from_left_mm + width_mm + trim.right_mm))
    return tuple(sorted(stops))


def _wall_lines(asked: Asked, strip: _Strip, heights: RailHeights) -> list[Line]:
    """Return a wall's ends, its floor, what stands in it, and the rail. The datum's floor is 0."""
    start_mm, end_mm = strip.start_mm, strip.start_mm + strip.length_mm
    high_mm = heights.height_mm
    if asked.get("measured_to", "top") == "bottom":
        high_mm += asked.profile.width_mm
    low_mm = high_mm - asked.profile.width_mm
    floors = _floors_mm(strip, heights)
    top_mm = max(high_mm, asked.get("ceiling", high_mm))
    outline = (
        (start_mm, top_mm),
        (start_mm, floors[0]),
        (end_mm, floors[1]),
        (end_mm, top_mm),
    )
    return [
        Line(points=outline, stroke=Stroke.EDGE),
        Line(points=((start_mm, 0.0), (end_mm, 0.0)), stroke=Stroke.TRUE),
        *(
            Line(
                points=_box(start_mm + left, start_mm + right, 0.0, high_mm),
                stroke=Stroke.MARK,
                closed=True,
            )
            for left, right in strip.stops_mm
        ),
        *(
            Line(
                points=_box(start_mm + left, start_mm + right, low_mm, high_mm),
                stroke=Stroke.TIMBER,
                closed=True,
            )
            for left, right in strip.between_mm
            if right > left
        ),
    ]


def _wall_labels(asked: Asked, strip: _Strip, heights: RailHeights, below_mm: float) -> list[Label]:
    """Return the name of each board under it, and the rail's height below each end's floor."""
    name = f"{asked.mark}-{strip.wall.mark}"
    labels = [
        Label(
            x_mm=strip.start_mm + (left + right) / 2.0,
            y_mm=0.5 * heights.height_mm,
            text=say("{name}-{number}", name=name, number=number) if strip.stops_mm else name,
            bold=True,
        )
        for number, (left, right) in enumerate(strip.between_mm, start=1)
        if right > left
    ]
    for side, at_mm, anchor in (
        (Side.LEFT, strip.start_mm, Anchor.START),
        (Side.RIGHT, strip.start_mm + strip.length_mm, Anchor.END),
    ):
        above_mm = heights.at(strip.wall.mark, side)
        if above_mm is not None:
            text = format_length(above_mm, asked.units)
            y_mm = min(0.0, *_floors_mm(strip, heights)) - below_mm
            labels.append(Label(x_mm=at_mm, y_mm=y_mm, text=text, anchor=anchor))
    return labels


def _floors_mm(strip: _Strip, heights: RailHeights) -> tuple[float, float]:
    """Return where the floor is at both ends; level with the other end, or the datum, if unread."""
    left, right = (heights.at(strip.wall.mark, side) for side in Side)
    known = left if left is not None else right if right is not None else heights.height_mm
    return (
        heights.height_mm - (left if left is not None else known),
        heights.height_mm - (right if right is not None else known),
    )


def _box(left: float, right: float, low: float, high: float) -> tuple[tuple[float, float], ...]:
    return ((left, low), (right, low), (right, high), (left, high))
