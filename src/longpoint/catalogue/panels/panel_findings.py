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

PANEL_OBSTACLE: Final = "panel-obstacle"
PANEL_WEDGE: Final = "panel-wedge"

SEEN_WEDGE: Final = 0.1
"""A wedge larger than this part of the margin is warned of: our limit, no source."""


def two_are_needed(asked: Asked) -> PieceError:
    """Return the refusal of panelling of which too little is written."""
    return PieceError(
        f"{asked.mark} is written with only one of panels, panel_width and margin, or none.",
        "It takes two of them to work out the third.",
        "Write how many frames and which margin, or the width and the margin you would like.",
    )


def margin_negative(asked: Asked, count: int, panel_mm: float, field: Field) -> PieceError:
    """Return the refusal of frames that are together longer than their wall."""
    return PieceError(
        f"{count} frames of {format_with_unit(panel_mm, asked.units)} stand on "
        f"{format_with_unit(field.length_mm, asked.units)} of wall.",
        "They leave less than nothing between them.",
        "Take fewer frames or narrower ones.",
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
    what = "wide" if narrow else "high"
    return PieceError(
        f"{layout.count} frames with margins of {format_with_unit(layout.margin_mm, units)} on "
        f"{format_with_unit(along_mm, units)} come out {format_with_unit(size_mm, units)} {what}.",
        f"Two faces of {format_with_unit(layout.face_mm, units)} leave less than "
        f"{format_with_unit(LEAST_INSIDE_MM, units)} of wall between them.",
        "Take a smaller margin, a narrower moulding or fewer frames."
        if narrow
        else "Take a smaller margin or a narrower moulding.",
    )


def obstacle_off_the_wall(asked: Asked, obstacle: Obstacle, field: Field) -> PieceError:
    """Return the refusal of an obstacle that stands past the wall's end."""
    end_mm = obstacle.left_mm + obstacle.width_mm
    return PieceError(
        f"{obstacle.name} ends {format_with_unit(end_mm, asked.units)} from the left end.",
        f"What is panelled is {format_with_unit(field.length_mm, asked.units)} long, level.",
        "Read where it stands again, from the left end.",
    )


def obstacles_in_the_way(
    asked: Asked, layout: PanelLayout, clashing: Sequence[Obstacle], free: WaysOut
) -> Finding:
    """Return the finding of obstacles that lie on a moulding, and what would free them."""
    names = " and ".join(each.name for each in clashing)
    lie = "lies" if len(clashing) == 1 else "lie"
    ways = _ways(asked, layout, free)
    return Finding(
        code=PANEL_OBSTACLE,
        severity=Severity.WARNING,
        place=asked.mark,
        read=f"{layout.count} frames, margins of {format_with_unit(layout.margin_mm, asked.units)}:"
        f" {names} {lie} on the moulding of a frame.",
        wrong="The moulding can't be nailed through it.",
        do=(
            f"All are free with {'; or with '.join(ways)}."
            if ways
            else "No margin, number of frames or shift near these frees all; have what is in the "
            "way moved, or give the frames another height."
        ),
    )


def _ways(asked: Asked, layout: PanelLayout, free: WaysOut) -> list[str]:
    units = asked.units
    ways = []
    if free.margin is not None:
        ways.append(
            f"margins of {format_length(free.margin.margin_mm, units)} (frames of "
            f"{format_length(free.margin.panel_mm, units)})"
        )
    if free.count is not None:
        ways.append(
            f"{free.count.count} frames of {format_length(free.count.panel_mm, units)} each"
        )
    if free.shift is not None:
        by_mm = free.shift.shift_mm
        ways.append(
            f"the whole row {format_length(abs(by_mm), units)} to the "
            f"{'right' if by_mm > 0 else 'left'} (end margins "
            f"{format_length(layout.margin_mm + by_mm, units)} and "
            f"{format_length(layout.margin_mm - by_mm, units)})"
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
        read=f"The wall of {asked.mark} is {both} longer at the {wide} than at the {narrow}.",
        wrong="The frames are true and all alike, so the bare wall at the two ends is wider at the "
        f"{wide}: together {both}, {each} at each end if both end walls lean alike.",
        do="Plumb both ends to see which one leans, and split the row between them by eye before "
        "you nail; a scribed strip at the leaning end hides it.",
    )
