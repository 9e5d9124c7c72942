"""Panelling frames and shelves sawn as solids and laid where the wall and the alcove want them.

The frames' outer edges are laid out here from the wall, their inner edges by shapely; the alcove is
two lines in plan. What the plan of the trim says is used for the saw's settings and the inner edge
of each piece alone.
"""

import math
import random
from typing import Any

import pytest
from shapely import Polygon

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.panels.panelling import TRIM as PANELLING
from longpoint.catalogue.plan_trims import plan_trims
from longpoint.catalogue.shelves.shelf import TRIM as SHELF
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house
from tests.solids.kernel import Body, JointMeasure, Side, cut_piece, joint, moulded

CLOSE_MM = 0.01
OFF_DEG = 0.5
Plan = tuple[float, float]


def pieces_of(entry: dict[str, Any], face_mm: float, thickness_mm: float) -> dict[str, Piece]:
    kinds = (PANELLING, SHELF)
    section = {"face": face_mm, "thickness": thickness_mm}
    profiles = {**house()["profiles"], "P": section}
    document = house(profiles=profiles, trims=[{"mark": "T", "profile": "P", **entry}])
    survey = read_house(document, trim_tables(kinds))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    result = plan_trims(survey.house, Shapes(), kinds=kinds)
    assert result.trims, [str(finding) for finding in result.findings]
    return {piece.mark.removeprefix("T-"): piece for piece in result.trims[0].plan.pieces}


def a_wall(draw: random.Random, *, stair: bool) -> dict[str, Any]:
    entry: dict[str, Any] = {
        "kind": "panelling",
        "length": draw.uniform(2200, 5200),
        "height": draw.uniform(700, 1100),
        "panels": draw.randint(1, 4),
        "margin": draw.uniform(60, 110),
    }
    if stair:
        entry |= {"pitch": draw.uniform(25, 42), "climbs": draw.choice(["left", "right"])}
    return entry


def outer_corners(entry: dict[str, Any], index: int) -> list[Plan]:
    """Return where a frame's outer corners have to lie, anticlockwise from bottom left.

    The wall is walked from its left end: a margin, a panel, a margin and so on; the lower edge
    climbs at the pitch, and the frame's keeps the margin from it square to it.
    """
    pitch = math.radians(entry.get("pitch", 0.0))
    climb = math.tan(pitch) * (-1.0 if entry.get("climbs") == "left" else 1.0)
    margin, count = entry["margin"], entry["panels"]
    level = entry["length"] * math.cos(pitch)
    panel = (level - margin * (count + 1)) / count
    left = margin + index * (panel + margin)
    lower, upper = margin / math.cos(pitch), entry["height"] - margin / math.cos(pitch)
    return [
        (left, left * climb + lower),
        (left + panel, (left + panel) * climb + lower),
        (left + panel, (left + panel) * climb + upper),
        (left, left * climb + upper),
    ]


def inner_corners(outer: list[Plan], face_mm: float) -> list[Plan]:
    """Return the inner edge's corners, each next to its outer one, by shapely."""
    ring = Polygon(outer).buffer(-face_mm, join_style="mitre", mitre_limit=50.0).exterior.coords
    assert len(ring) == 5
    found: list[Plan] = []
    for corner, opposite in zip(outer, (outer[2], outer[3], outer[0], outer[1]), strict=True):
        # The order in which shapely walks the ring is its own: take the corner that is nearest.
        found.append(min(ring[:-1], key=lambda at: math.dist(at, corner)))
        assert math.dist(found[-1], corner) < math.dist(found[-1], opposite)
    assert len(set(found)) == 4
    return found


def laid_frame(
    pieces: dict[str, Piece], number: int, inner: list[Plan], off_deg: float = 0.0
) -> dict[str, Body]:
    """Return the four pieces, each along its inner edge with its left end at the right corner."""
    bodies = {}
    for side, name in enumerate(("bottom", "right", "top", "left")):
        piece = pieces[f"{number}-{name}"]
        (sx, sy), (ex, ey) = inner[(side + 1) % 4], inner[side]
        length = math.hypot(ex - sx, ey - sy)
        ux, uy = (ex - sx) / length, (ey - sy) / length
        section = moulded(piece.width_mm, piece.thickness_mm)
        bodies[name] = cut_piece(piece, section, off_deg=off_deg).placed(
            (sx, sy, 0.0), (ux, uy, 0.0), (-uy, ux, 0.0), (0.0, 0.0, 1.0)
        )
    return bodies


def joints_of(bodies: dict[str, Body]) -> list[JointMeasure]:
    around = ("bottom", "left", "top", "right")
    return [
        joint(bodies[here], Side.RIGHT, bodies[after], Side.LEFT)
        for here, after in zip(around, around[1:] + around[:1], strict=True)
    ]


def check_frame(seed: int, *, stair: bool) -> None:
    draw = random.Random(seed)
    entry = a_wall(draw, stair=stair)
    face_mm, thickness_mm = draw.uniform(18, 40), draw.uniform(9, 20)
    pieces = pieces_of(entry, face_mm, thickness_mm)
    assert len(pieces) == 4 * entry["panels"]
    number = draw.randint(1, entry["panels"])
    outer = outer_corners(entry, number - 1)
    inner = inner_corners(outer, face_mm)
    bodies = laid_frame(pieces, number, inner)
    for met in joints_of(bodies):
        assert met.worst_mm < CLOSE_MM
    # Closed, and where the wall wants it: each outer corner is a corner of the timber.
    timber = [(x, y) for body in bodies.values() for x, y, _ in body.corners]
    for corner in outer:
        assert min(math.dist(corner, at) for at in timber) < CLOSE_MM
    off = laid_frame(pieces, number, inner, off_deg=OFF_DEG)
    assert any(met.worst_mm > CLOSE_MM for met in joints_of(off))


@pytest.mark.parametrize("seed", range(5))
def test_frames_on_a_wall_close_and_a_saw_half_a_degree_off_opens_them(seed: int) -> None:
    check_frame(seed, stair=False)


@pytest.mark.parametrize("seed", range(5))
def test_parallelograms_on_a_stair_close_and_half_a_degree_off_they_don_t(seed: int) -> None:
    check_frame(1000 + seed, stair=True)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(100))
def test_many_frames_close(seed: int) -> None:
    check_frame(2000 + seed, stair=False)
    check_frame(3000 + seed, stair=True)


def an_alcove(draw: random.Random) -> tuple[dict[str, Any], list[Plan]]:
    """Return an alcove's readings and its corners: back left, back right, front right, left."""
    depth, back = draw.uniform(220, 400), draw.uniform(500, 1500)
    left_out, right_out = (draw.uniform(-0.06, 0.06) * depth for _ in range(2))
    corners = [(0.0, 0.0), (back, 0.0), (back + right_out, depth), (-left_out, depth)]
    shelf = {
        "back": back,
        "front": math.dist(corners[2], corners[3]),
        "from_back_left": math.dist(corners[0], corners[2]),
    }
    if draw.random() < 0.5:
        shelf["left_corner"] = math.degrees(math.atan2(depth, -left_out))
    gap = draw.uniform(0, 3)
    return {"kind": "shelf", "depth": depth, "gap": gap, "shelves": [shelf]}, corners


def off_the_cheeks_mm(entry: dict[str, Any], corners: list[Plan], off_deg: float = 0.0) -> float:
    """Return the farthest that a corner of a cut is from where its gap wants it.

    The shelf's back edge lies against the back wall, its back left corner the gap from the
    alcove's. Seen from above with the back at y = 0 the room is at positive y, so up is -z.
    """
    board_mm = entry["board"]
    asked = {key: value for key, value in entry.items() if key != "board"}
    (piece,) = pieces_of(asked, board_mm, 22.0).values()
    left_mm = entry["gap"] + piece.width_mm * math.tan(math.radians(piece.left.mitre_deg))
    body = cut_piece(piece, off_deg=off_deg).placed(
        (left_mm, board_mm, 0.0), (1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)
    )
    worst_mm = 0.0
    for side, (start, end) in ((Side.LEFT, (0, 3)), (Side.RIGHT, (1, 2))):
        out, depth = corners[end][0] - corners[start][0], corners[end][1]
        square_mm = entry["gap"] * depth / math.hypot(out, depth)
        way = 1.0 if side is Side.LEFT else -1.0
        gaps = [
            way * inside_mm(corners[start], corners[end], (x, y)) for x, y, _ in body.end_face(side)
        ]
        worst_mm = max(worst_mm, *(abs(gap - square_mm) for gap in gaps))
    return worst_mm


def inside_mm(start: Plan, end: Plan, at: Plan) -> float:
    """Return how far a point stands to the right of a line, negative on its left."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    return ((at[0] - start[0]) * dy - (at[1] - start[1]) * dx) / math.hypot(dx, dy)


def check_shelf(seed: int) -> None:
    draw = random.Random(seed)
    entry, corners = an_alcove(draw)
    entry["board"] = draw.uniform(0.6, 1.0) * entry["depth"]
    assert off_the_cheeks_mm(entry, corners) < CLOSE_MM
    assert off_the_cheeks_mm(entry, corners, OFF_DEG) > CLOSE_MM


@pytest.mark.parametrize("seed", range(10))
def test_a_shelf_stands_parallel_to_both_cheeks_and_half_a_degree_off_it_doesn_t(seed: int) -> None:
    check_shelf(4000 + seed)


@pytest.mark.long
@pytest.mark.parametrize("seed", range(200))
def test_many_shelves_stand_parallel_to_their_cheeks(seed: int) -> None:
    check_shelf(5000 + seed)
