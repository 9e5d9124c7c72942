"""A room seen from above as its readings say, and a skirting run seen from the room."""

import math
from typing import Final

from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.quantities.length import Units
from longpoint.shape.fitted import FittedRoom
from longpoint.shape.point import Point
from longpoint.speech.said import joined, say
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import Room, Run, RunEnd

OFF_SQUARE_DEG: Final = 0.25
"""A corner nearer to square than this is not worth a figure: what a bevel gauge tells."""
NARROW: Final = 0.45
"""A room less wide than this share of its longest way has no place for figures side by side."""

_END_WORDS: Final = {
    RunEnd.INTERNAL: say("internal corner"),
    RunEnd.EXTERNAL: say("external corner"),
    RunEnd.SQUARE: say("square"),
    RunEnd.RETURN: say("returned"),
    RunEnd.ARCHITRAVE: say("architrave"),
    RunEnd.RAKE: say("rake"),
}


def room_sketch(room: Room, fitted: FittedRoom, units: Units, shown: float = 4.0) -> Sketch:
    """Return a room from above: walls with their marks and lengths, corners that aren't square.

    Args:
        room: As read.
        fitted: Its plan.
        units: In which lengths stand on it.
        shown: How much more the walls turn than they do, so that it is seen.
    """
    corners = _exaggerated(fitted, shown) if room.closed else fitted.corners
    middle = Point(
        sum(p.x_mm for p in corners) / len(corners), sum(p.y_mm for p in corners) / len(corners)
    )
    size_mm = max(math.dist(a, b) for a in corners for b in corners)
    across_mm = max(p.x_mm for p in corners) - min(p.x_mm for p in corners)
    is_narrow = across_mm < NARROW * size_mm
    lines = [
        Line(
            points=tuple((p.x_mm, p.y_mm) for p in corners), stroke=Stroke.EDGE, closed=room.closed
        )
    ]
    labels: list[Label] = []
    for index, wall in enumerate(room.walls):
        start, end = corners[index], corners[(index + 1) % len(corners)]
        lines += _openings(room, fitted, index, start, end)
        labels += _wall_labels(
            wall.mark,
            format_length(fitted.wall_mm[index], units),
            (start, end),
            size_mm,
            is_narrow=is_narrow,
        )
        is_corner = room.closed or index + 1 < len(room.walls)
        angle_deg = fitted.corner_deg[index]
        if is_corner and abs(angle_deg % 180.0 - 90.0) >= OFF_SQUARE_DEG:
            text = say("{angle}°", angle=format_angle(angle_deg))
            labels.append(_toward(end, middle, size_mm, text, is_narrow=is_narrow))
    return Sketch(
        lines=tuple(lines), labels=tuple(labels), described=_described(room, fitted, units)
    )


def room_question(room: Room, fitted: FittedRoom) -> str:
    """Return what the carpenter is asked of the drawing of a room.

    Example:
        >>> from longpoint.survey.rooms import Wall
        >>> room = Room(name="Loft", walls=(Wall(mark="N", length_mm=1.0),), tape="T1")
        >>> fitted = FittedRoom(
        ...     name="Loft",
        ...     corners=(),
        ...     wall_mm=(1.0,),
        ...     wall_u_mm=(1.0,),
        ...     corner_deg=(91.2,),
        ...     corner_u_deg=(0.5,),
        ... )
        >>> room_question(room, fitted)
        'The corner after N is 1.2 degrees wider than square.'
    """
    said = []
    for wall, angle_deg in zip(room.walls, fitted.corner_deg, strict=True):
        off_deg = angle_deg - (90.0 if angle_deg < 180.0 else 270.0)
        if OFF_SQUARE_DEG <= abs(off_deg) < 20.0:
            way = say("wider") if off_deg > 0 else say("tighter")
            said.append(
                say(
                    "The corner after {mark} is {off_deg:.1f} degrees {way} than square.",
                    mark=wall.mark,
                    off_deg=abs(off_deg),
                    way=way,
                )
            )
    return joined(" ", said) or say("Every corner is square, as near as it was read.")


def run_sketch(run: Run, pieces: tuple[Piece, ...], profile: Profile, units: Units) -> Sketch:
    """Return a run seen from the room: its board or boards, and what each end stops at.

    Args:
        run: As read.
        pieces: Its boards, from left to right.
        profile: Its section.
        units: In which lengths stand on it.
    """
    high_mm = max(profile.width_mm, run.length_mm * 0.05)
    lines = [
        Line(points=((0.0, 0.0), (run.length_mm, 0.0)), stroke=Stroke.EDGE),
        Line(
            points=((0.0, 0.0), (run.length_mm, 0.0), (run.length_mm, high_mm), (0.0, high_mm)),
            stroke=Stroke.TIMBER,
            closed=True,
        ),
    ]
    for x_mm, end in ((0.0, run.left), (run.length_mm, run.right)):
        if end in (RunEnd.INTERNAL, RunEnd.ARCHITRAVE):
            lines.append(Line(points=((x_mm, 0.0), (x_mm, 2.2 * high_mm)), stroke=Stroke.CUT))
    joints = [piece.back_mm for piece in pieces[:-1] if piece.back_mm]
    for index in range(len(joints)):
        x_mm = sum(joints[: index + 1])
        lines.append(Line(points=((x_mm, 0.0), (x_mm, high_mm)), stroke=Stroke.CUT))
    length = format_length(run.length_mm, units)
    labels = (
        Label(
            x_mm=run.length_mm / 2,
            y_mm=high_mm * 1.5,
            text=say(
                "{mark} {length}",
                mark=run.mark,
                length=length,
            ),
            bold=True,
        ),
        Label(x_mm=0.0, y_mm=-high_mm * 1.2, text=_END_WORDS[run.left], anchor=Anchor.START),
        Label(
            x_mm=run.length_mm,
            y_mm=-high_mm * 1.2,
            text=_END_WORDS[run.right],
            anchor=Anchor.END,
        ),
    )
    return Sketch(
        lines=tuple(lines),
        labels=labels,
        described=say(
            "Run {mark}, {length} along the wall; left {end_words}, right {end_words_2}.",
            mark=run.mark,
            length=length,
            end_words=_END_WORDS[run.left],
            end_words_2=_END_WORDS[run.right],
        ),
    )


def _exaggerated(fitted: FittedRoom, shown: float) -> tuple[Point, ...]:
    """Return the corners, each wall turned out of the square so many times more than it is."""
    corners = fitted.corners
    turned = []
    for index, start in enumerate(corners):
        end = corners[(index + 1) % len(corners)]
        angle = math.atan2(end.y_mm - start.y_mm, end.x_mm - start.x_mm)
        square = round(angle / (math.pi / 2)) * (math.pi / 2)
        is_crooked = abs(angle - square) < math.radians(5.0)
        turned.append(square + shown * (angle - square) if is_crooked else angle)
    found = [corners[0]]
    for index in range(len(corners) - 1):
        length_mm = fitted.wall_mm[index]
        x_mm = found[-1].x_mm + length_mm * math.cos(turned[index])
        y_mm = found[-1].y_mm + length_mm * math.sin(turned[index])
        found.append(Point(x_mm, y_mm))
    return tuple(found)


def _openings(room: Room, fitted: FittedRoom, index: int, start: Point, end: Point) -> list[Line]:
    """Return a tick across the wall where each opening begins."""
    wall, along_mm = room.walls[index], fitted.wall_mm[index]
    ux, uy = (end.x_mm - start.x_mm) / along_mm, (end.y_mm - start.y_mm) / along_mm
    tick_mm = 0.03 * max(fitted.wall_mm)
    ticks = []
    for opening in wall.openings:
        if opening.from_left_mm is None:
            continue
        x_mm = start.x_mm + ux * opening.from_left_mm
        y_mm = start.y_mm + uy * opening.from_left_mm
        across = (
            (x_mm - uy * tick_mm, y_mm + ux * tick_mm),
            (x_mm + uy * tick_mm, y_mm - ux * tick_mm),
        )
        ticks.append(Line(points=across, stroke=Stroke.CUT))
    return ticks


def _wall_labels(
    mark: str, length: str, wall: tuple[Point, Point], size_mm: float, *, is_narrow: bool
) -> tuple[Label, ...]:
    """Return a wall's mark outside the room and its length inside, both at its middle.

    The lengths of a narrow room's long walls stand outside, below their marks.
    """
    start, end = wall
    x_mm, y_mm = (start.x_mm + end.x_mm) / 2, (start.y_mm + end.y_mm) / 2
    wide_mm = math.hypot(end.x_mm - start.x_mm, end.y_mm - start.y_mm) or 1.0
    ox, oy = -(end.y_mm - start.y_mm) / wide_mm, (end.x_mm - start.x_mm) / wide_mm
    off_mm = 0.05 * size_mm
    is_steep = abs(ox) > abs(oy)
    anchors = (Anchor.START, Anchor.END) if is_steep else (Anchor.MIDDLE, Anchor.MIDDLE)
    outside, inside = anchors if ox > 0 else anchors[::-1]
    drop_mm = 0.015 * size_mm
    side = 1.0 if is_narrow and is_steep else -1.0
    below_mm = 0.07 * size_mm if side > 0 else 0.0
    return (
        Label(
            x_mm=x_mm + ox * off_mm,
            y_mm=y_mm + oy * off_mm - drop_mm,
            text=mark,
            anchor=outside,
            bold=True,
        ),
        Label(
            x_mm=x_mm + side * ox * off_mm,
            y_mm=y_mm + side * oy * off_mm - drop_mm - below_mm,
            text=length,
            anchor=outside if side > 0 else inside,
        ),
    )


def _toward(corner: Point, middle: Point, size_mm: float, text: str, *, is_narrow: bool) -> Label:
    """Return the figure of a corner: inside by it, or outside where there is no place for it."""
    away_mm = math.dist(corner, middle) or 1.0
    step = (0.06 if is_narrow else 0.17) * size_mm / away_mm
    is_left = corner.x_mm < middle.x_mm
    is_start = is_left is not is_narrow
    return Label(
        x_mm=corner.x_mm + (0.03 if is_start else -0.03) * size_mm,
        y_mm=corner.y_mm + step * (middle.y_mm - corner.y_mm),
        text=text,
        anchor=Anchor.START if is_start else Anchor.END,
    )


def _described(room: Room, fitted: FittedRoom, units: Units) -> str:
    walls = joined(
        ", ",
        (
            say("{mark} {length}", mark=wall.mark, length=format_length(length_mm, units))
            for wall, length_mm in zip(room.walls, fitted.wall_mm, strict=True)
        ),
    )
    return say("{room} seen from above, clockwise: {walls}.", room=room.name, walls=walls)
