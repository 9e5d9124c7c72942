"""Panelling: equal frames of moulding on a wall or along a stair."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.catalogue.panels.panel_findings import (
    end_wedge,
    margin_negative,
    obstacle_off_the_wall,
    obstacles_in_the_way,
    too_little_left,
    two_are_needed,
)
from longpoint.catalogue.panels.panel_keys import PANELLING_KEYS
from longpoint.catalogue.panels.panel_layout import (
    Field,
    Obstacle,
    PanelLayout,
    count_for,
    in_the_way,
    margin_for,
    ways_out,
)
from longpoint.catalogue.panels.panel_sketch import panel_sketch
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import Finding
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.formatting import format_angle, format_length, format_tenth
from longpoint.quantities.uncertainty import combine
from longpoint.speech.said import joined, say
from longpoint.trims.outline import TrimEdges

_SIDES: Final = (
    ("bottom", Role.RAIL),
    ("right", Role.STILE),
    ("top", Role.RAIL),
    ("left", Role.STILE),
)
_LEAST_WEDGE_MM: Final = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wall:
    """What was read of the wall.

    Attributes:
        field: What is panelled, of its mean length.
        along_mm: That length as read, along the slope on a stair.
        wedge_mm: How much longer the upper edge is than the lower, level.
        obstacles: With the clearance they want.
        bare: The same without it.
    """

    field: Field
    along_mm: float
    wedge_mm: float
    obstacles: tuple[Obstacle, ...]
    bare: tuple[Obstacle, ...]


def plan_panelling(asked: Asked) -> TrimPlan:
    """Return the frames of a panelled wall: all alike, all margins alike.

    Raises:
        PieceError: Too little was written, the frames leave no wall inside them, or an obstacle
            stands beside the wall.
    """
    wall = _wall(asked)
    layout = _layout(asked, wall)
    if not layout.is_possible:
        raise too_little_left(asked, layout)
    clashing = in_the_way(layout, wall.obstacles)
    return TrimPlan(
        pieces=_pieces(asked, wall, layout),
        findings=_findings(asked, wall, layout, clashing),
        sketches=(panel_sketch(asked, layout, wall.bare, {each.name for each in clashing}),),
        lines=_lines(asked, layout),
    )


def _wall(asked: Asked) -> _Wall:
    pitch_deg = asked.get("pitch", 0.0)
    lower_mm = asked.get("length")
    upper_mm = asked.get("length_top", lower_mm)
    along_mm = (lower_mm + upper_mm) / 2.0
    level = math.cos(math.radians(pitch_deg))
    field = Field(
        length_mm=along_mm * level,
        height_mm=asked.get("height"),
        pitch_deg=pitch_deg if asked.get("climbs", "right") == "right" else -pitch_deg,
    )
    bare = tuple(
        Obstacle(
            name=each.get("name", f"obstacle {number}"),
            left_mm=each["x"],
            bottom_mm=each["y"] - asked.get("above_floor", 0.0),
            width_mm=each["width"],
            height_mm=each["height"],
        )
        for number, each in enumerate(asked.get("obstacles", ()), start=1)
    )
    for each in bare:
        if each.left_mm + each.width_mm > field.length_mm:
            raise obstacle_off_the_wall(asked, each, field)
    return _Wall(
        field=field,
        along_mm=along_mm,
        wedge_mm=(upper_mm - lower_mm) * level,
        obstacles=tuple(each.grown(asked.get("clear", 0.0)) for each in bare),
        bare=bare,
    )


def _layout(asked: Asked, wall: _Wall) -> PanelLayout:
    """Return the layout that two of count, width and margin give; count and margin go first."""
    count, margin_mm = asked.get("panels"), asked.get("margin")
    panel_mm = asked.get("panel_width")
    if count is None:
        if margin_mm is None or panel_mm is None:
            raise two_are_needed(asked)
        count = count_for(wall.field, margin_mm, panel_mm)
    if margin_mm is None:
        if panel_mm is None:
            raise two_are_needed(asked)
        margin_mm = margin_for(wall.field, count, panel_mm)
        if margin_mm < 0:
            raise margin_negative(asked, count, panel_mm, wall.field)
    return PanelLayout(
        field=wall.field, count=count, margin_mm=margin_mm, face_mm=asked.profile.width_mm
    )


def _findings(
    asked: Asked, wall: _Wall, layout: PanelLayout, clashing: Sequence[Obstacle]
) -> tuple[Finding, ...]:
    findings = []
    if clashing:
        free = ways_out(layout, wall.obstacles)
        findings.append(obstacles_in_the_way(asked, layout, clashing, free))
    if abs(wall.wedge_mm) >= _LEAST_WEDGE_MM:
        findings.append(end_wedge(asked, layout, wall.wedge_mm))
    return tuple(findings)


def _pieces(asked: Asked, wall: _Wall, layout: PanelLayout) -> tuple[Piece, ...]:
    # A half turn takes a frame to itself, so opposite pieces are alike to the last digit.
    frame = layout.frame(0)
    rail, stile = frame.edges(0), frame.edges(1)
    sums = _sums(asked, wall, layout)
    u_mm = _doubts(asked, wall, layout)
    return tuple(
        _piece(asked, f"{number}-{name}", role, stile if role is Role.STILE else rail, sums, u_mm)
        for number in range(1, layout.count + 1)
        for name, role in _SIDES
    )


def _piece(
    asked: Asked,
    what: str,
    role: Role,
    edges: TrimEdges,
    sums: dict[Role, str],
    u_mm: dict[Role, float],
) -> Piece:
    taken = [edges.inner_mm, edges.outer_mm - edges.inner_mm]
    ends = joined(
        "; ",
        (
            sums[role],
            run_sum(say("inner edge"), taken, asked.units, plus=say("and over the mitres"))
            + say(" over the long points"),
        ),
    )
    return asked.piece(
        what,
        role,
        edges.inner_mm,
        outer_mm=edges.outer_mm,
        left=EndCut(kind=CutKind.MITRE, mitre_deg=edges.end_deg),
        right=EndCut(kind=CutKind.MITRE, mitre_deg=edges.start_deg),
        u_mm=u_mm[role],
        hand_sum=ends,
    )


def _sums(asked: Asked, wall: _Wall, layout: PanelLayout) -> dict[Role, str]:
    """Return where the outer edges of rails and stiles come from."""
    units, field = asked.units, layout.field
    margins = [-layout.margin_mm] * (layout.count + 1)
    level = say(
        "margins: {margin} x {count}",
        margin=format_tenth(layout.margin_mm, units),
        count=layout.count + 1,
    )
    panels_mm = field.length_mm + math.fsum(margins)
    rail = [
        run_sum("wall", [field.length_mm, math.fsum(margins)], units),
        say(
            "{level}; / {count} = {panels}",
            level=level,
            count=layout.count,
            panels=format_tenth(panels_mm / layout.count, units),
        ),
    ]
    over_mm = -layout.margin_mm * field.slope
    stile = [run_sum("height", [field.height_mm, over_mm, over_mm], units)]
    if field.pitch_deg:
        cosine = say("cos {pitch}", pitch=format_angle(abs(field.pitch_deg)))
        along = format_tenth(wall.along_mm, units)
        rail.insert(
            0,
            say(
                "{along} along the slope x {cosine} level",
                along=along,
                cosine=cosine,
            ),
        )
        rail.append(
            say(
                "/ {cosine} = {panel} long points",
                cosine=cosine,
                panel=format_tenth(layout.panel_mm * field.slope, units),
            )
        )
        margin = format_tenth(layout.margin_mm, units)
        stile.append(
            say(
                "a margin of {margin} square to the slope is {margin} / {cosine} plumb",
                margin=margin,
                cosine=cosine,
            )
        )
    return {Role.RAIL: joined("; ", rail), Role.STILE: joined("; ", stile)}


def _doubts(asked: Asked, wall: _Wall, layout: PanelLayout) -> dict[Role, float]:
    """Return the doubt of rails and stiles: what the wall is out by is shared by the frames."""
    tape = asked.house.tape(asked.entry.tape)
    height_mm = layout.field.height_mm
    length_u_mm = combine((tape.private_u_mm(), tape.shared_u_mm(wall.along_mm)))
    return {
        Role.RAIL: length_u_mm / layout.count,
        Role.STILE: combine((tape.private_u_mm(), tape.shared_u_mm(height_mm))),
    }


def _lines(asked: Asked, layout: PanelLayout) -> tuple[str, ...]:
    units = asked.units

    def said(length_mm: float) -> str:
        return format_length(length_mm, units)

    edges = joined(", ", (said(edge_mm) for edge_mm in layout.left_edges_mm))
    outer = layout.frame(0).outer
    rising, falling = outer[0].distance_mm(outer[2]), outer[1].distance_mm(outer[3])
    check = (
        say(
            "Both diagonals of a frame, over its long points, are {said}.",
            said=said(rising),
        )
        if abs(rising - falling) < 0.05
        else say(
            "The diagonals of a frame, over its long points: {said} from bottom "
            "left to top right, {said_2} from bottom right to top left.",
            said=said(rising),
            said_2=said(falling),
        )
    )
    return (
        say(
            "{count} frames alike, {said} wide and {said_2} high over their outer "
            "edges; {said_3} of bare wall between them, at the ends, above and below.",
            count=layout.count,
            said=said(layout.panel_mm),
            said_2=said(layout.height_mm),
            said_3=said(layout.margin_mm),
        ),
        say(
            "{count} rails alike and {count} stiles alike: cut each kind against one stop.",
            count=2 * layout.count,
        ),
        say(
            "Left edges of the frames, level from the left end at half height: {edges}.",
            edges=edges,
        ),
        check,
        *_stair_lines(layout),
    )


def _stair_lines(layout: PanelLayout) -> tuple[str, ...]:
    if not layout.field.pitch_deg:
        return ()
    edges = layout.frame(0).edges(0)
    sharp, blunt = sorted((edges.start_deg, edges.end_deg), reverse=True)
    return (
        say(
            "The stiles stand plumb and the rails climb with the stair. The margin "
            "between two frames is read level, that above and below square to the "
            "slope."
        ),
        say(
            "At the two sharp corners of a frame both pieces are cut {sharp} off "
            "square, at the two blunt ones {blunt}. Where the saw does not swing so "
            "far, clamp the piece square to the fence in a jig and set {sharp_2} "
            "(common practice, no source).",
            sharp=format_angle(sharp),
            blunt=format_angle(blunt),
            sharp_2=format_angle(90.0 - sharp),
        ),
    )


TRIM: Final = TrimKind(
    name="panelling",
    title=say("panelling"),
    asks=PANELLING_KEYS,
    plan=plan_panelling,
)
