"""Drawings of boards in a reveal: sections through the wall, and boards with their rips."""

import math
from collections.abc import Sequence
from typing import Final

from longpoint.catalogue.sketch import Anchor, Label, Line, Sketch, Stroke
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.quantities.length import Units
from longpoint.shape.point import Point, direction
from longpoint.speech.said import say

_WALL_MM: Final = 90.0
"""How much of the wall a section shows beside the reveal."""


def extension_section(depth_mm: float, thickness_mm: float, step_mm: float, units: Units) -> Sketch:
    """Return a section through a jamb: the lining, its extension and the wall, the room below.

    Args:
        depth_mm: What the extension fills. > 0.
        thickness_mm: Its thickness.
        step_mm: Its step behind the lining's face.
        units: Unit printed.
    """
    back_mm = depth_mm + 40.0
    lining_mm = thickness_mm + step_mm
    wall_mm = lining_mm + 8.0
    return Sketch(
        lines=(
            _box(-lining_mm, depth_mm, 0.0, back_mm, Stroke.EDGE),
            _box(-step_mm - thickness_mm, 0.0, -step_mm, depth_mm, Stroke.TIMBER),
            Line(
                points=((-wall_mm, back_mm), (-wall_mm, 0.0), (-wall_mm - _WALL_MM, 0.0)),
                stroke=Stroke.EDGE,
            ),
            Line(points=((-wall_mm, 0.0), (40.0, 0.0)), stroke=Stroke.TRUE),
            Line(points=((14.0, 0.0), (14.0, depth_mm)), stroke=Stroke.MARK),
        ),
        labels=(
            _beside(
                18.0,
                depth_mm / 2.0,
                say(
                    "{depth} deep",
                    depth=format_length(depth_mm, units),
                ),
            ),
            _beside(18.0, depth_mm + 25.0, say("lining")),
            Label(x_mm=-wall_mm - _WALL_MM / 2.0, y_mm=14.0, text=say("wall")),
            Label(x_mm=-wall_mm / 2.0, y_mm=-16.0, text=say("room")),
        ),
        caption=say("Section at the deepest corner: the extension stands on the lining's edge."),
        described=say("A lining with an extension piece between its edge and the wall's face."),
    )


def rip_picture(
    length_mm: float,
    at_left_mm: float,
    at_right_mm: float,
    name: str,
    units: Units,
    *,
    edges: tuple[str, str] = (
        say("planed edge: to the room"),
        say("ripped edge: against the lining"),
    ),
) -> Sketch:
    """Return a board lying face up, its taper drawn so that it can be seen.

    Args:
        length_mm: Its length.
        at_left_mm: Width it is ripped to at its left end.
        at_right_mm: The same at its right end.
        name: What it is.
        units: Unit printed.
        edges: Said at the edge away from you and at the one towards you.
    """
    most_mm = max(at_left_mm, at_right_mm)
    high_mm = 0.2 * length_mm
    off_mm = 0.08 * length_mm if abs(at_left_mm - at_right_mm) >= 0.25 else 0.0
    left_mm, right_mm = (off_mm if mm < most_mm - 0.01 else 0.0 for mm in (at_left_mm, at_right_mm))
    low_mm = -0.06 * length_mm
    return Sketch(
        lines=(
            Line(
                points=((0.0, high_mm), (length_mm, high_mm), (length_mm, right_mm), (0, left_mm)),
                stroke=Stroke.TIMBER,
                closed=True,
            ),
            Line(points=((0.0, left_mm), (length_mm, right_mm)), stroke=Stroke.CUT),
        ),
        labels=(
            Label(
                x_mm=-0.01 * length_mm,
                y_mm=high_mm / 2.0,
                text=format_length(at_left_mm, units),
                anchor=Anchor.END,
            ),
            _beside(1.01 * length_mm, high_mm / 2.0, format_length(at_right_mm, units)),
            Label(x_mm=length_mm / 2.0, y_mm=1.15 * high_mm, text=edges[0]),
            Label(x_mm=length_mm / 2.0, y_mm=low_mm, text=edges[1]),
            Label(x_mm=length_mm / 2.0, y_mm=high_mm / 2.0, text=name, bold=True),
        ),
        caption=say(
            "As it lies at the saw, face up, left end at your left; the taper is not to scale."
        ),
        described=say(
            "{name}: {at_left} wide at the left end, {at_right} at the right.",
            name=name,
            at_left=format_length(at_left_mm, units),
            at_right=format_length(at_right_mm, units),
        ),
    )


def lining_elevation(
    between_mm: float, leg_mm: float, thickness_mm: float, packing_mm: float, units: Units
) -> Sketch:
    """Return a lining in its hole, from the front.

    Args:
        between_mm: Between the legs.
        leg_mm: Height under the head, from what the legs stand on.
        thickness_mm: Thickness of the lining.
        packing_mm: Left at each side.
        units: Unit printed.
    """
    out_mm = thickness_mm + packing_mm
    top_mm = leg_mm + thickness_mm
    hole_mm = top_mm + packing_mm
    return Sketch(
        lines=(
            Line(
                points=(
                    (-out_mm, 0.0),
                    (-out_mm, hole_mm),
                    (between_mm + out_mm, hole_mm),
                    (between_mm + out_mm, 0.0),
                ),
                stroke=Stroke.EDGE,
            ),
            _box(-thickness_mm, 0.0, 0.0, leg_mm, Stroke.TIMBER),
            _box(between_mm, 0.0, between_mm + thickness_mm, leg_mm, Stroke.TIMBER),
            _box(-thickness_mm, leg_mm, between_mm + thickness_mm, top_mm, Stroke.TIMBER),
        ),
        labels=(
            Label(x_mm=between_mm / 2.0, y_mm=leg_mm / 2.0, text=format_length(between_mm, units)),
            _beside(between_mm + out_mm + 20.0, leg_mm / 2.0, format_length(leg_mm, units)),
        ),
        caption=say("From the front: the head over the legs, room for packers all round."),
        described=say("A lining in a rough opening."),
    )


def splay_section(
    front_mm: float,
    depth_mm: float,
    splays_deg: tuple[float, float],
    thickness_mm: float,
    units: Units,
) -> Sketch:
    """Return a section across a splayed reveal: left or lower board first, the room below.

    Args:
        front_mm: Between the faces at the wall's face.
        depth_mm: From the wall's face to the frame.
        splays_deg: Of the first and of the second board.
        thickness_mm: Thickness of both.
        units: Unit printed.
    """
    in_one, in_other = (depth_mm * math.tan(math.radians(splay)) for splay in splays_deg)
    at_frame = (in_one, front_mm - in_other)
    boards = (
        _splayed_board(0.0, in_one, depth_mm, thickness_mm, splays_deg[0], -1.0),
        _splayed_board(front_mm, -in_other, depth_mm, thickness_mm, splays_deg[1], 1.0),
    )
    walls = tuple(
        Line(points=((start, 0.0), (start + _WALL_MM, 0.0)), stroke=Stroke.EDGE)
        for start in (-_WALL_MM, front_mm)
    )
    square = tuple(
        Line(points=((x_mm, 0.0), (x_mm, depth_mm)), stroke=Stroke.TRUE) for x_mm in (0.0, front_mm)
    )
    frame = Line(points=((at_frame[0], depth_mm), (at_frame[1], depth_mm)), stroke=Stroke.EDGE)
    wide = format_length(at_frame[1] - at_frame[0], units)
    one, other = (say("{splay}°", splay=format_angle(splay)) for splay in splays_deg)
    low_mm = depth_mm / 3.0
    return Sketch(
        lines=(*walls, *boards, frame, *square),
        labels=(
            Label(x_mm=front_mm / 2.0, y_mm=-14.0, text=format_length(front_mm, units)),
            Label(x_mm=sum(at_frame) / 2.0, y_mm=depth_mm + 8.0, text=wide),
            _beside(in_one / 2.0 + 16.0, low_mm, one),
            Label(
                x_mm=front_mm - in_other / 2.0 - 16.0, y_mm=low_mm, text=other, anchor=Anchor.END
            ),
        ),
        caption=say(
            "Section from above: frame at the top, room below; dotted is square to the wall."
        ),
        described=say("Two boards splayed outwards from the frame to the wall's face."),
    )


def _splayed_board(
    front_mm: float,
    in_mm: float,
    depth_mm: float,
    thickness_mm: float,
    splay_deg: float,
    out: float,
) -> Line:
    """Return the section of a board from its place at the wall; `out` is -1 at the left."""
    thick_mm = out * thickness_mm / math.cos(math.radians(splay_deg))
    back_mm = front_mm + in_mm
    return Line(
        points=(
            (front_mm, 0.0),
            (back_mm, depth_mm),
            (back_mm + thick_mm, depth_mm),
            (front_mm + thick_mm, 0.0),
        ),
        stroke=Stroke.TIMBER,
        closed=True,
    )


def stop_section(
    stop_mm: float, thickness_mm: float, door_mm: float, gap_mm: float, units: Units
) -> Sketch:
    """Return a section through a jamb with its stop: the door stands at the left.

    Args:
        stop_mm: Width of the stop along the jamb.
        thickness_mm: How far it stands off the jamb.
        door_mm: From the jamb's edge to the door's far face.
        gap_mm: Between door and stop.
        units: Unit printed.
    """
    start_mm = door_mm + gap_mm
    end_mm = start_mm + stop_mm + 30.0
    return Sketch(
        lines=(
            _box(0.0, -25.0, end_mm, 0.0, Stroke.EDGE),
            _box(0.0, 3.0, door_mm, 60.0, Stroke.EDGE),
            _box(start_mm, 0.0, start_mm + stop_mm, thickness_mm, Stroke.TIMBER),
            Line(points=((0.0, -34.0), (start_mm, -34.0)), stroke=Stroke.MARK),
        ),
        labels=(
            Label(x_mm=door_mm / 2.0, y_mm=30.0, text=say("door")),
            Label(x_mm=end_mm / 2.0, y_mm=-14.0, text=say("jamb")),
            Label(
                x_mm=start_mm / 2.0,
                y_mm=-46.0,
                text=say(
                    "line at {start}",
                    start=format_length(start_mm, units),
                ),
            ),
            _beside(start_mm + stop_mm + 4.0, thickness_mm / 2.0, "stop"),
        ),
        caption=say(
            "Section from above: the line is measured from the jamb's edge on the door's side."
        ),
        described=say("A door, a gap, and the stop on the jamb behind it."),
    )


def stop_corner(
    backs: Sequence[Point], faces: Sequence[Point], mark: str, *, is_butt: bool
) -> Sketch:
    """Return the top left corner of a door's stops looked at from its front.

    Args:
        backs: Corners of the jambs' faces, anticlockwise from the bottom left. [mm], (4,)
        faces: Corners of the stops' faces; the first two on the floor.
        mark: Mark of the door.
        is_butt: True where the leg stands under the head piece; False where it runs up to the
            head lining, mitred or scribed.
    """
    thick_mm = backs[3].y_mm - faces[3].y_mm
    corner, inner = backs[3], faces[3]
    meet = _level_with(backs[0], corner, inner.y_mm) if is_butt else corner
    right, low = (_towards(corner, backs[i], 9.0 * thick_mm) for i in (2, 0))
    right_face, low_face = (_towards(inner, faces[i], 8.0 * thick_mm) for i in (2, 0))
    head = (corner, right, right_face, inner, *((meet,) if is_butt else ()))
    return Sketch(
        lines=(
            Line(points=head, stroke=Stroke.TIMBER, closed=True),
            Line(points=(meet, inner, low_face, low), stroke=Stroke.TIMBER, closed=True),
            Line(points=(right, corner, low), stroke=Stroke.EDGE),
            Line(points=(meet, inner), stroke=Stroke.CUT),
        ),
        labels=(
            _beside(
                inner.x_mm + 1.5 * thick_mm, inner.y_mm - 1.5 * thick_mm, say("head piece first")
            ),
            _beside(inner.x_mm + thick_mm, inner.y_mm - 4.0 * thick_mm, say("then the leg")),
        ),
        caption=say(
            "{mark} from the front, its top left corner; the other is its mirror.",
            mark=mark,
        ),
        described=say("A door stop's head piece between the jambs, and a leg that meets it."),
    )


def _towards(start: Point, end: Point, by_mm: float) -> Point:
    ux, uy = direction(start, end)
    return start.moved(by_mm * ux, by_mm * uy)


def _level_with(low: Point, high: Point, y_mm: float) -> Point:
    """Return the point of a jamb at a height."""
    share = (y_mm - low.y_mm) / (high.y_mm - low.y_mm)
    return Point(low.x_mm + share * (high.x_mm - low.x_mm), y_mm)


def _box(left_mm: float, low_mm: float, right_mm: float, high_mm: float, stroke: Stroke) -> Line:
    corners = ((left_mm, low_mm), (right_mm, low_mm), (right_mm, high_mm), (left_mm, high_mm))
    return Line(points=corners, stroke=stroke, closed=True)


def _beside(x_mm: float, y_mm: float, text: str) -> Label:
    return Label(x_mm=x_mm, y_mm=y_mm, text=text, anchor=Anchor.START)
