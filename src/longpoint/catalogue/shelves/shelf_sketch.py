"""The drawing of a shelf in its alcove, seen from above."""

from longpoint.catalogue.shelves.alcove import Alcove, ShelfCut
from longpoint.catalogue.sketch import Label, Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked
from longpoint.quantities.formatting import format_angle, format_length
from longpoint.speech.said import say


def shelf_sketch(asked: Asked, name: str, alcove: Alcove, cut: ShelfCut) -> Sketch:
    """Return an alcove's plan with its shelf, the room below, and where square would be."""
    board_mm, depth_mm = asked.profile.width_mm, alcove.depth_mm
    front_left, front_right, back_right, back_left = (
        (corner.x_mm, -corner.y_mm) for corner in alcove.corners
    )
    left_mm = (alcove.back_mm - cut.back_mm) / 2.0
    out_mm = alcove.left_out_mm * board_mm / depth_mm
    shelf = (
        (left_mm - out_mm, -board_mm),
        (left_mm - out_mm + cut.front_mm, -board_mm),
        (left_mm + cut.back_mm, 0.0),
        (left_mm, 0.0),
    )
    return Sketch(
        lines=(
            Line(points=shelf, stroke=Stroke.TIMBER, closed=True),
            Line(points=(front_left, back_left, back_right, front_right), stroke=Stroke.EDGE),
            *(
                Line(points=(corner, (corner[0], -depth_mm)), stroke=Stroke.TRUE)
                for corner in (back_left, back_right)
            ),
        ),
        labels=_labels(asked, alcove, cut),
        caption=say(
            "{mark}, {name}, seen from above; you stand below.",
            mark=asked.mark,
            name=name,
        ),
        described=say(
            "The plan of an alcove with {name}; left end {left}, right end "
            "{right} degrees off square.",
            name=name,
            left=format_angle(cut.left_deg),
            right=format_angle(cut.right_deg),
        ),
    )


def _labels(asked: Asked, alcove: Alcove, cut: ShelfCut) -> tuple[Label, ...]:
    middle_mm, board_mm, units = alcove.back_mm / 2.0, asked.profile.width_mm, asked.units
    return (
        Label(
            x_mm=middle_mm,
            y_mm=-0.9 * board_mm,
            text=say("front {front}", front=format_length(cut.front_mm, units)),
            bold=True,
        ),
        Label(
            x_mm=middle_mm,
            y_mm=-0.2 * board_mm,
            text=say("back {back}", back=format_length(cut.back_mm, units)),
            bold=True,
        ),
        Label(
            x_mm=0.12 * alcove.back_mm,
            y_mm=-0.5 * board_mm,
            text=say("{left}° off square", left=format_angle(cut.left_deg)),
        ),
        Label(
            x_mm=0.88 * alcove.back_mm,
            y_mm=-0.5 * board_mm,
            text=say("{right}° off square", right=format_angle(cut.right_deg)),
        ),
    )
