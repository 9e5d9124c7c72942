"""Whole sets round a reveal off the wall: every end as the plan has it, laid at its corner.

At each corner a piece is turned until its back touches the lining's back arris (or lies at the
height that a packer gives), and slid until the inner edge of its back ends at the corner's inner
point. What the plan's formulas say of tilts and lengths isn't used.
"""

import math
from dataclasses import replace
from random import Random

import pytest

from longpoint.pieces.face_trim import FaceTrim, face_trim
from longpoint.pieces.flush import flush_pieces
from longpoint.pieces.openings import opening_pieces
from longpoint.pieces.piece import Piece, Role
from longpoint.survey.openings import Flush, Opening
from longpoint.survey.readings import Plane
from tests.fitted_houses import by_role, fitted, house, opening, quad
from tests.solids.kernel import Body, Side, cut_piece, joint
from tests.solids.vectors import Vector, cross, unit

EDGE_MM = 19.0
CLOSED_MM = 0.01
OUT: Vector = (0.0, 0.0, 1.0)
ROLES = (Role.SILL, Role.RIGHT_LEG, Role.HEAD, Role.LEFT_LEG)


def random_set(rng: Random, flush: Flush) -> Opening:
    wide_mm, high_mm = rng.uniform(500, 1500), rng.uniform(500, 1500)

    def off() -> float:
        return rng.uniform(-15.0, 15.0)

    corners = quad(
        (0, 0), (wide_mm, 0), (wide_mm + off(), high_mm + off()), (off(), high_mm + off())
    )
    widths = tuple(round(rng.uniform(52.0, 110.0), 1) for _ in range(4))
    quirks = tuple(rng.uniform(3.0, 7.0) for _ in range(4))
    one = opening(corners, width_mm=widths, quirk_mm=quirks)  # type: ignore[arg-type]
    plane = Plane(**{f"{c}_mm": rng.uniform(1.0, 4.0) for c in ("tl", "tr", "br", "bl")})
    return replace(
        one,
        readings=replace(one.readings, plane=plane),
        lining_edge_mm=EDGE_MM,
        flush=flush,
    )


def planned(one: Opening) -> tuple[dict[Role, Piece], FaceTrim]:
    shape = fitted(one)
    trim = face_trim(house(one), one, shape)
    plain = opening_pieces(house(one), replace(one, flush=Flush.LEAVE), shape)
    made, _ = flush_pieces(house(one), one, shape, trim, plain)
    return by_role(made), trim


def tilts_at(one: Opening, trim: FaceTrim, corner: int) -> dict[int, float]:
    """Return the tilt of both pieces at a corner, in radians, from what touches what."""
    assert one.readings.plane is not None
    proud_mm = one.readings.plane.corners_mm()[corner]
    rises_mm = {}
    for side in ((corner - 1) % 4, corner):
        width_mm, quirk_mm = trim.sides[side].width_mm, trim.quirks_mm[side]
        rises_mm[side] = proud_mm * width_mm / (width_mm + quirk_mm - EDGE_MM)
    if one.flush is Flush.PACK:
        rises_mm = dict.fromkeys(rises_mm, max(rises_mm.values()))
    return {side: math.asin(mm / trim.sides[side].width_mm) for side, mm in rises_mm.items()}


def laid(piece: Piece, trim: FaceTrim, corner: int, side: int, tilt: float, off: float) -> Body:
    """Return a piece at one of its corners, the inner edge of its back ending there."""
    end = Side.LEFT if side != corner else Side.RIGHT
    here, there = trim.outline.inner[side], trim.outline.inner[(side + 1) % 4]
    along = unit((here.x_mm - there.x_mm, here.y_mm - there.y_mm, 0.0))
    flat = cross(OUT, along)
    across = tuple(math.cos(tilt) * f - math.sin(tilt) * z for f, z in zip(flat, OUT, strict=True))
    body = cut_piece(piece, off_deg=off)
    at_saw = min(body.end_face(end), key=lambda c: c[1] + c[2])
    turned = body.placed((0.0, 0.0, 0.0), along, across, cross(along, across))  # type: ignore[arg-type]
    corner_at = trim.outline.inner[corner]
    rise_mm = trim.sides[side].width_mm * math.sin(tilt)
    wanted = (corner_at.x_mm, corner_at.y_mm, rise_mm)
    x, y, z = (w - at_saw[0] * a for w, a in zip(wanted, along, strict=True))
    return turned.moved((x, y, z))


def outer_back(body: Body, end: Side, trim: FaceTrim, corner: int) -> Vector:
    """Return the corner of a cut face that lies on the wall, at the outer edge of the back."""
    found = min(body.end_face(end), key=lambda c: c[2])
    assert found[2] == pytest.approx(0.0, abs=1e-6)
    inner = trim.outline.inner[corner]
    assert math.dist(found[:2], (inner.x_mm, inner.y_mm)) > 40.0
    return found


def check_set(one: Opening, off_deg: float = 0.0) -> None:
    made, trim = planned(one)
    for corner in range(4):
        before = (corner - 1) % 4
        tilts = tilts_at(one, trim, corner)
        head, leg = (
            laid(made[ROLES[side]], trim, corner, side, tilts[side], off_deg)
            for side in (before, corner)
        )
        met = joint(head, Side.LEFT, leg, Side.RIGHT)
        assert max(met.gap_mm, met.overlap_mm) < CLOSED_MM
        toes = [
            outer_back(body, end, trim, corner)
            for body, end in ((head, Side.LEFT), (leg, Side.RIGHT))
        ]
        assert math.dist(toes[0][:2], toes[1][:2]) < CLOSED_MM
        if one.flush is Flush.PACK:
            # Equal rises: the faces differ by what the two tilts take off the thickness, no more.
            heights = [
                max(c[2] for c in body.end_face(end))
                for body, end in ((head, Side.LEFT), (leg, Side.RIGHT))
            ]
            assert abs(heights[0] - heights[1]) < 0.1
    for side, role in enumerate(ROLES):
        back_mm = math.dist(
            *(
                min(cut_piece(made[role], off_deg=off_deg).end_face(end), key=lambda c: c[1] + c[2])
                for end in Side
            )
        )
        assert back_mm == pytest.approx(trim.outline.edges(side).inner_mm, abs=CLOSED_MM)


def seeds(count: int) -> list[object]:
    return [
        seed if seed < 10 else pytest.param(seed, marks=pytest.mark.long) for seed in range(count)
    ]


@pytest.mark.parametrize("flush", [Flush.BACK_BEVEL, Flush.PACK])
@pytest.mark.parametrize("seed", seeds(100))
def test_every_corner_of_a_set_closes_and_keeps_its_quirk(seed: int, flush: Flush) -> None:
    check_set(random_set(Random(f"flush {seed}"), flush))


@pytest.mark.parametrize("flush", [Flush.BACK_BEVEL, Flush.PACK])
def test_a_set_cut_flat_does_not_close_there(flush: Flush) -> None:
    one = random_set(Random("left"), flush)
    made, trim = planned(one)
    plain, _ = planned(replace(one, flush=Flush.LEAVE))
    tilts = tilts_at(one, trim, 3)
    head, leg = (laid(plain[ROLES[side]], trim, 3, side, tilts[side], 0.0) for side in (2, 3))
    met = joint(head, Side.LEFT, leg, Side.RIGHT)
    assert max(met.gap_mm, met.overlap_mm) > 0.2
    assert made[Role.HEAD] != plain[Role.HEAD]


@pytest.mark.parametrize("flush", [Flush.BACK_BEVEL, Flush.PACK])
def test_a_saw_half_a_degree_off_is_found_out(flush: Flush) -> None:
    with pytest.raises(AssertionError):
        check_set(random_set(Random("off"), flush), 0.5)
