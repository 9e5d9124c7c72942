"""Bodies given to other people's programs, against the saw bench of OpenCascade.

The kernel cuts the same pieces with a blade of its own; volume and every corner have to agree.
"""

import math
import random
from itertools import pairwise
from typing import Final

import pytest

from longpoint.pieces.cut_solid import CutSolid, cut_solid
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from tests.solids.kernel import Body, cut_piece, moulded

CLOSE_MM: Final = 0.001
FEW: Final = 12


def drawn_piece(draw: random.Random, *, bevel_deg: float) -> Piece:
    left, right = (
        EndCut(
            kind=CutKind.COMPOUND,
            mitre_deg=draw.uniform(-50.0, 50.0),
            bevel_deg=draw.uniform(-bevel_deg, bevel_deg),
        )
        for _ in range(2)
    )
    return Piece(
        mark="A",
        role=Role.HEAD,
        profile="A",
        width_mm=draw.uniform(40.0, 120.0),
        thickness_mm=draw.uniform(12.0, 30.0),
        inner_mm=draw.uniform(700.0, 2500.0),
        outer_mm=0.0,
        back_mm=0.0,
        left=left,
        right=right,
    )


def volume_mm3(solid: CutSolid) -> float:
    """Return what the faces enclose, each taken apart into triangles from its first corner."""
    total = 0.0
    for face in solid.faces:
        (ax, ay, az), *rest = (solid.points[number] for number in face)
        for (bx, by, bz), (cx, cy, cz) in pairwise(rest):
            total += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz)
            total += az * (bx * cy - by * cx)
    return total / 6.0


def apart_mm(solid: CutSolid, body: Body) -> float:
    """Return how far a corner of either is from the nearest of the other."""
    ours, theirs = solid.points, body.corners
    return max(
        max(min(math.dist(a, b) for b in theirs) for a in ours),
        max(min(math.dist(a, b) for b in ours) for a in theirs),
    )


@pytest.mark.parametrize("bevel_deg", [0.0, 47.0], ids=["flat", "compound"])
def test_a_body_is_what_the_saw_leaves(bevel_deg: float) -> None:
    draw = random.Random(f"bodies {bevel_deg}")
    for _ in range(FEW):
        piece = drawn_piece(draw, bevel_deg=bevel_deg)
        section = tuple(moulded(piece.width_mm, piece.thickness_mm))
        solid = cut_solid(piece, section)
        assert solid is not None
        body = cut_piece(piece, section)
        assert apart_mm(solid, body) < CLOSE_MM
        assert volume_mm3(solid) == pytest.approx(body.volume_mm3, rel=1e-6)
        # Half a degree at the saw is seen.
        assert apart_mm(solid, cut_piece(piece, section, off_deg=0.5)) > 0.1
