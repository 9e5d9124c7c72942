"""What is to be said about panelling."""

from collections.abc import Sequence
from typing import Final

from longpoint.catalogue.panels.panel_layout import (
    LEAST_INSIDE_MM,
    Field,
    Obstacle,
    PanelLayout,
    WaysOut,
)
from longpoint.catalogue.trim import Asked
from longpoint.errors import Finding, PieceError, Severity
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say

PANEL_OBSTACLE: Final = "panel-obstacle"
PANEL_WEDGE: Final = "panel-wedge"

SEEN_WEDGE: Final = 0.1
"""A wedge larger than this part of the margin is warned of: our limit, no source."""


def two_are_needed(asked: Asked) -> PieceError:
    """Return the refusal of panelling of which too little is written."""
    return PieceError(
        say(
            "{mark} is written with only one of panels, panel_width and margin, or none.",
            mark=asked.mark,
        ),
        say("It takes two of them to work out the third."),
        say("Write how many frames and which margin, or the width and the margin you would like."),
    )


def margin_negative(asked: Asked, count: int, panel_mm: float, field: Field) -> PieceError:
    """Return the refusal of frames that are together longer than their wall."""
    return PieceError(
        say(
            "{count} frames of {panel} stand on {length} of wall.",
            count=count,
            panel=format_with_unit(panel_mm, asked.units),
            length=format_with_unit(field.length_mm, asked.units),
        ),
        say("They leave less than nothing between them."),
        say("Take fewer frames or narrower ones."),
    )


def too_little_left(asked: Asked, layout: PanelLayout) -> PieceError:
    """Return the refusal of frames that leave no wall inside their moulding."""
    units = asked.units
    narrow = layout.inside_mm[0] < LEAST_INSIDE_MM
    size_mm, along_mm = (
        (layout.panel_mm, layout.field.length_mm)
        if narrow
        else (layout.height_mm, layout.field.height_mm)
    )
    what = say("wide") if narrow else say("high")
    return PieceError(
        say(
            "{count} frames with margins of {margin} on {along} come out {size} {what}.",
            count=layout.count,
            margin=format_with_unit(layout.margin_mm, units),
            along=format_with_unit(along_mm, units),
            size=format_with_unit(size_mm, units),
            what=what,
        ),
        say(
            "Two faces of {face} leave less than {least_inside} of wall between them.",
            face=format_with_unit(layout.face_mm, units),
            least_inside=format_with_unit(LEAST_INSIDE_MM, units),
        ),
        say("Take a smaller margin, a narrower moulding or fewer frames.")
        if narrow
        else say("Take a smaller margin or a narrower moulding."),
    )


def obstacle_off_the_wall(asked: Asked, obstacle: Obstacle, field: Field) -> PieceError:
    """Return the refusal of an obstacle that stands past the wall's end."""
    end_mm = obstacle.left_mm + obstacle.width_mm
    return PieceError(
        say(
            "{obstacle} ends {end} from the left end.",
            obstacle=obstacle.name,
            end=format_with_unit(end_mm, asked.units),
        ),
        say(
            "What is panelled is {length} long, level.",
            length=format_with_unit(field.length_mm, asked.units),
        ),
        say("Read where it stands again, from the left end."),
    )


def obstacles_in_the_way(
    asked: Asked, layout: PanelLayout, clashing: Sequence[Obstacle], free: WaysOut
) -> Finding:
    """Return the finding of obstacles that lie on a moulding, and what would free them."""
    names = joined(say(" and "), (each.name for each in clashing))
    lie = say("lies") if len(clashing) == 1 else say("lie")
    ways = _ways(asked, layout, free)
    return Finding(
        code=PANEL_OBSTACLE,
        severity=Severity.WARNING,
        place=asked.mark,
        read=say(
            "{count} frames, margins of {margin}: {names} {lie} on the moulding of a frame.",
            count=layout.count,
            margin=format_with_unit(layout.margin_mm, asked.units),
            names=names,
            lie=lie,
        ),
        wrong=say("The moulding can't be nailed through it."),
        do=(
            say("All are free with {ways}.", ways=joined(say("; or with "), ways))
            if ways
            else say(
                "No margin, number of frames or shift near these frees all; have "
                "what is in the way moved, or give the frames another height."
            )
        ),
    )


def _ways(asked: Asked, layout: PanelLayout, free: WaysOut) -> list[str]:
    units = asked.units
    ways = []
    if free.margin is not None:
        ways.append(
            say(
                "margins of {margin} (frames of {panel})",
                margin=format_length(free.margin.margin_mm, units),
                panel=format_length(free.margin.panel_mm, units),
            )
        )
    if free.count is not None:
        ways.append(
            say(
                "{count} frames of {panel} each",
                count=free.count.count,
                panel=format_length(free.count.panel_mm, units),
            )
        )
    if free.shift is not None:
        by_mm = free.shift.shift_mm
        ways.append(
            say(
                "the whole row {by} to the {right} (end margins {margin} and {margin_2})",
                by=format_length(abs(by_mm), units),
                right=say("right") if by_mm > 0 else say("left"),
                margin=format_length(layout.margin_mm + by_mm, units),
                margin_2=format_length(layout.margin_mm - by_mm, units),
            )
        )
    return ways


def end_wedge(asked: Asked, layout: PanelLayout, wedge_mm: float) -> Finding:
    """Return the finding of a wall that is longer or shorter above than below."""
    units = asked.units
    both = format_with_unit(abs(wedge_mm), units)
    each = format_length(abs(wedge_mm) / 2.0, units)
    wide, narrow = ("top", "bottom") if wedge_mm > 0 else ("bottom", "top")
    return Finding(
        code=PANEL_WEDGE,
        severity=Severity.WARNING
        if abs(wedge_mm) > SEEN_WEDGE * layout.margin_mm
        else Severity.NOTE,
        place=asked.mark,
        read=say(
            "The wall of {mark} is {both} longer at the {wide} than at the {narrow}.",
            mark=asked.mark,
            both=both,
            wide=wide,
            narrow=narrow,
        ),
        wrong=say(
            "The frames are true and all alike, so the bare wall at the two ends "
            "is wider at the {wide}: together {both}, {each} at each end if both "
            "end walls lean alike.",
            wide=wide,
            both=both,
            each=each,
        ),
        do=say(
            "Plumb both ends to see which one leans, and split the row between them "
            "by eye before you nail; a scribed strip at the leaning end hides it."
        ),
    )
