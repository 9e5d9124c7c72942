"""Rails and beads sawn as solids and laid round a room: do the mitres close?

The room is six points in plan, clockwise as seen from above, with one external corner; where the
boards' faces and backs run is found by shapely.
"""

import math
import random
from typing import Any

import pytest
from shapely import Polygon

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.along_walls.cover_bead import TRIM as COVER_BEAD
from longpoint.catalogue.along_walls.dado_rail import TRIM as DADO_RAIL
from longpoint.catalogue.plan_trims import plan_trims
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.shape.room_fit import fit_rooms
from longpoint.survey.house_file import read_house
from tests.house_documents import house
from tests.room_builder import lengths_and_corners
from tests.solids.kernel import Body, JointMeasure, Side, cut_piece, joint, moulded

CLOSE_MM = 0.01
OFF_DEG = 0.5
KINDS = (DADO_RAIL, COVER_BEAD)
Plan = list[tuple[float, float]]


def a_plan(draw: random.Random) -> Plan:
    """Return an L-shaped room a little out of square everywhere."""
    corners = [(0, 0), (0, 3000), (4000, 3000), (4000, 1500), (2500, 1500), (2500, 0)]
    return [(x + draw.uniform(-90, 90), y + draw.uniform(-90, 90)) for x, y in corners]


def pieces_round(plan: Plan, entry: dict[str, Any], size: tuple[float, float]) -> list[Piece]:
    """Return the pieces of a trim, wall by wall."""
    lengths, corners = lengths_and_corners(plan)
    walls = [
        {"mark": f"w{index}", "length": length, "corner": corner}
        for index, (length, corner) in enumerate(zip(lengths, corners, strict=True))
    ]
    section = {"face": size[0], "thickness": size[1]}
    document = house(
        profiles={**house()["profiles"], "P": section},
        rooms=[{"name": "Den", "walls": walls}],
        trims=[{"mark": "T", "room": "Den", "profile": "P", "internal": "mitre", **entry}],
    )
    survey = read_house(document, trim_tables(KINDS))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    fitted, _ = fit_rooms(survey.house)
    result = plan_trims(survey.house, Shapes(rooms=fitted), kinds=KINDS)
    assert result.trims, [str(finding) for finding in result.findings]
    found = {piece.mark: piece for piece in result.trims[0].plan.pieces}
    assert set(found) == {f"T-w{index}" for index in range(len(plan))}
    return [found[f"T-w{index}"] for index in range(len(plan))]


def inside(plan: Plan, by_mm: float) -> Plan:
    """Return the room's corners moved in by so much, each next to the corner it belongs to."""
    ring = Polygon(plan).buffer(-by_mm, join_style="mitre", mitre_limit=50.0).exterior.coords[:-1]
    moved = [min(ring, key=lambda at: math.dist(at, corner)) for corner in plan]
    assert len(set(moved)) == len(plan) == len(ring)
    return moved


def laid(plan: Plan, pieces: list[Piece], behind_mm: float, off_deg: float = 0.0) -> list[Body]:
    """Return each piece with its back `behind_mm` off its wall, the face's start in its corner."""
    thickness_mm = pieces[0].thickness_mm
    faces = inside(plan, behind_mm + thickness_mm)
    bodies = []
    for index, piece in enumerate(pieces):
        start, end = plan[index], plan[(index + 1) % len(plan)]
        length = math.dist(start, end)
        ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
        x, y = faces[index]
        origin = (x - thickness_mm * uy, y + thickness_mm * ux, 0.0)
        section = moulded(piece.width_mm, thickness_mm)
        bodies.append(
            cut_piece(piece, section, off_deg=off_deg).placed(
                origin, (ux, uy, 0.0), (0.0, 0.0, 1.0), (uy, -ux, 0.0)
            )
        )
    return bodies


def joints_of(bodies: list[Body]) -> list[JointMeasure]:
    return [
        joint(body, Side.RIGHT, bodies[(index + 1) % len(bodies)], Side.LEFT)
        for index, body in enumerate(bodies)
    ]


def check(seed: int, *, is_bead: bool) -> None:
    draw = random.Random(seed)
    plan = a_plan(draw)
    size = (draw.uniform(12, 70), draw.uniform(12, 30))
    behind_mm = draw.uniform(10, 25) if is_bead else 0.0
    entry: dict[str, Any] = {"kind": "dado-rail", "height": 900.0}
    if is_bead:
        entry = {"kind": "cover-bead", "behind": behind_mm}
    pieces = pieces_round(plan, entry, size)
    for met in joints_of(laid(plan, pieces, behind_mm)):
        assert met.worst_mm < CLOSE_MM
    off = joints_of(laid(plan, pieces, behind_mm, OFF_DEG))
    assert all(met.worst_mm > CLOSE_MM for met in off)


@pytest.mark.parametrize("seed", range(5))
def test_a_mitred_rail_closes_round_a_room_and_half_a_degree_off_it_doesn_t(seed: int) -> None:
    check(seed, is_bead=False)


@pytest.mark.parametrize("seed", range(5))
def test_a_bead_before_the_skirting_closes_and_half_a_degree_off_it_doesn_t(seed: int) -> None:
    check(1000 + seed, is_bead=True)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(100))
def test_many_rails_and_beads_close(seed: int) -> None:
    check(2000 + seed, is_bead=False)
    check(3000 + seed, is_bead=True)
