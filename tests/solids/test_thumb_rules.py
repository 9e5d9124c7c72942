"""Two pieces tilted on a proud lining, as solids: plain 45s gape, the cut that is named closes.

Top left corner, its inner corner at the origin; both pieces turned about their outer back edges,
so that the inner ones are lifted, and laid with the inner corners of their faces together.
"""

import math
import random

from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut
from longpoint.trims.thumb_figures import ThumbFigures
from longpoint.trims.thumb_rules import gap_beside_flat_mm, pack
from tests.solids.kernel import Body, Side, bar, joint
from tests.solids.vectors import Vector, dot

HEAD_MM, LEG_MM = 500.0, 400.0
OFF_JOINT: Vector = (math.sqrt(0.5), math.sqrt(0.5), 0.0)


def tilted_pair(
    figures: ThumbFigures, mitre_deg: float, bevel_deg: float, off_deg: float = 0.0
) -> tuple[Body, Body]:
    wide_mm, thick_mm = figures.face_mm, figures.thickness_mm
    tilt = math.asin(figures.proud_mm / figures.bearing_mm)
    s, c = math.sin(tilt), math.cos(tilt)
    end = EndCut(kind=CutKind.COMPOUND, mitre_deg=mitre_deg, bevel_deg=bevel_deg)
    head = bar(wide_mm, thick_mm, HEAD_MM, end, SQUARE_CUT, off_deg=off_deg)
    leg = bar(wide_mm, thick_mm, LEG_MM, SQUARE_CUT, end, off_deg=off_deg)
    return (
        head.placed((0.0, -thick_mm * s, -thick_mm * c), (1, 0, 0), (0, c, -s), (0, s, c)),
        leg.placed((thick_mm * s, -LEG_MM, -thick_mm * c), (0, 1, 0), (-c, 0, -s), (-s, 0, c)),
    )


def drawn(draw: random.Random) -> ThumbFigures:
    return ThumbFigures(
        face_mm=draw.uniform(50.0, 120.0),
        thickness_mm=draw.uniform(12.0, 25.0),
        proud_mm=draw.uniform(0.5, 4.0),
    )


def test_the_named_settings_close_two_packed_pieces_and_half_a_degree_off_does_not() -> None:
    draw = random.Random(31)
    for _ in range(10):
        figures = drawn(draw)
        mitre_deg, bevel_deg = pack(figures).true
        head, leg = tilted_pair(figures, mitre_deg, bevel_deg)
        assert joint(head, Side.LEFT, leg, Side.RIGHT).worst_mm < 0.01
        head, leg = tilted_pair(figures, mitre_deg, bevel_deg, off_deg=0.5)
        assert joint(head, Side.LEFT, leg, Side.RIGHT).worst_mm > 0.3


def test_a_plain_45_on_a_tilted_piece_leaves_the_upright_through_the_joint_by_what_is_said() -> (
    None
):
    draw = random.Random(32)
    for _ in range(10):
        figures = drawn(draw)
        pair = tilted_pair(figures, 45.0, 0.0)
        spreads = []
        for body, end in zip(pair, (Side.LEFT, Side.RIGHT), strict=True):
            off_mm = [dot(corner, OFF_JOINT) for corner in body.end_face(end)]
            spreads.append(max(off_mm) - min(off_mm))
        beside_flat_mm = gap_beside_flat_mm(figures, figures.proud_mm)
        assert all(abs(spread - beside_flat_mm) < 1e-6 for spread in spreads)
        assert abs(sum(spreads) - pack(figures).off_mm) < 1e-6
