"""Boards of a splayed reveal meet face to face and back to back when sawn as printed."""

import math
import random

import pytest

from longpoint.catalogue.reveals import splayed_lining
from longpoint.pieces.piece import Piece
from tests.solids.kernel import Body, Section, Side, bar, joint
from tests.solids.reveal_lines import (
    CLOSED_MM,
    FEW,
    NAMES,
    OFF_DEG,
    SEEN_MM,
    Corners,
    Line,
    cases,
    described,
    drawn_corners,
    lay,
    off_plane_mm,
    planned,
    sides,
)
from tests.solids.vectors import Vector, cross, unit


def ripped(face_mm: float, thickness_mm: float, splay_deg: float) -> Section:
    """Return the section of a board whose long edges lie flat on the wall and on the frame."""
    lead_mm = thickness_mm * math.tan(math.radians(splay_deg))
    return (
        (lead_mm, 0.0),
        (face_mm + lead_mm, 0.0),
        (face_mm, thickness_mm),
        (0.0, thickness_mm),
    )


def splayed(
    corners: Corners,
    pieces: dict[str, Piece],
    splays_deg: dict[str, float],
    depth_mm: float,
    starts: dict[str, Line],
    off_deg: float,
) -> dict[str, Body]:
    """Return the boards of a splayed reveal laid on the lines of their faces at the frame."""
    laid = {}
    for name, piece in pieces.items():
        front, splay_deg = sides(corners)[NAMES.index(name)], splays_deg[name]
        in_mm = depth_mm * math.tan(math.radians(splay_deg))
        x, y = front.shifted(in_mm).meets(starts[name])
        ux, uy = front.way
        across = unit((uy * in_mm, -ux * in_mm, depth_mm))
        along = (-ux, -uy, 0.0)
        out = cross(along, across)
        section = ripped(math.hypot(in_mm, depth_mm), piece.thickness_mm, splay_deg)
        body = bar(
            piece.width_mm,
            piece.thickness_mm,
            piece.inner_mm,
            piece.left,
            piece.right,
            section=section,
            off_deg=off_deg,
        )
        laid[name] = lay(body, piece.thickness_mm, (x, y, -depth_mm), along, out)
    return laid


def splayed_case(seed: int, how: str) -> tuple[Corners, dict[str, Piece], dict[str, float], float]:
    draw = random.Random(seed)
    corners = drawn_corners(draw, draw.uniform(800, 1500), draw.uniform(800, 1600))
    depth_mm = draw.uniform(80, 250)
    splays_deg = {name: draw.uniform(2.0, 35.0) for name in NAMES}
    splays_deg["head"] = draw.choice((0.0, splays_deg["head"]))
    pieces = planned(
        splayed_lining.TRIM,
        (400.0, draw.uniform(12, 25)),
        described=[described(corners, kind="window", trim="all-round")],
        openings=["O1"],
        profile="P",
        joint=how,
        depth=depth_mm,
        sill=True,
        **{f"splay_{name}": splay for name, splay in splays_deg.items()},
    )
    return corners, pieces, splays_deg, depth_mm


def splayed_mitres_mm(seed: int, off_deg: float = 0.0) -> list[float]:
    corners, pieces, splays_deg, depth_mm = splayed_case(seed, "mitre")
    at_frame = [
        line.shifted(depth_mm * math.tan(math.radians(splays_deg[name])))
        for line, name in zip(sides(corners), NAMES, strict=True)
    ]
    starts = {name: at_frame[(side + 1) % 4] for side, name in enumerate(NAMES)}
    laid = splayed(corners, pieces, splays_deg, depth_mm, starts, off_deg)
    return [
        joint(laid[NAMES[side]], Side.LEFT, laid[NAMES[(side + 1) % 4]], Side.RIGHT).worst_mm
        for side in range(4)
    ]


@cases
def test_boards_of_unequal_splays_meet_face_to_face_and_back_to_back(seed: int) -> None:
    assert max(splayed_mitres_mm(seed)) < CLOSED_MM


def test_a_saw_half_a_degree_off_opens_a_splayed_reveal() -> None:
    assert all(max(splayed_mitres_mm(seed, OFF_DEG)) > SEEN_MM for seed in FEW)


def test_the_long_edges_lie_on_the_wall_and_on_the_frame() -> None:
    for seed in FEW:
        corners, pieces, splays_deg, depth_mm = splayed_case(seed, "mitre")
        starts = {name: sides(corners)[(side + 1) % 4] for side, name in enumerate(NAMES)}
        for body in splayed(corners, pieces, splays_deg, depth_mm, starts, 0.0).values():
            heights = sorted(z for _, _, z in body.corners)
            assert heights[:4] == pytest.approx([-depth_mm] * 4, abs=1e-6)
            assert heights[4:] == pytest.approx([0.0] * 4, abs=1e-6)


def test_each_board_has_its_front_edge_as_long_as_the_reveal_at_the_wall() -> None:
    for seed in FEW:
        corners, pieces, splays_deg, depth_mm = splayed_case(seed, "mitre")
        starts = {name: sides(corners)[(side + 1) % 4] for side, name in enumerate(NAMES)}
        laid = splayed(corners, pieces, splays_deg, depth_mm, starts, 0.0)
        for side, name in enumerate(NAMES):
            a, b = corners[side], corners[(side + 1) % 4]
            way = ((b[0] - a[0]) / math.dist(a, b), (b[1] - a[1]) / math.dist(a, b))
            front = [c for c in laid[name].corners if abs(c[2]) < 1e-6]
            # Of the four corners at the wall, two lie on the face: those on the reveal's line.
            on_line = [
                (x - a[0]) * way[0] + (y - a[1]) * way[1]
                for x, y, _ in front
                if abs((x - a[0]) * way[1] - (y - a[1]) * way[0]) < 1e-4
            ]
            assert len(on_line) == 2
            assert max(on_line) - min(on_line) == pytest.approx(math.dist(a, b), abs=CLOSED_MM)


def splayed_butts_mm(seed: int, off_deg: float = 0.0) -> list[float]:
    """Return how far legs stand off the head and sill faces, and these off the legs' backs."""
    corners, pieces, splays_deg, depth_mm = splayed_case(seed, "butt")
    fronts = dict(zip(NAMES, sides(corners), strict=True))
    thick_mm = pieces["head"].thickness_mm

    def face(name: str, behind_mm: float = 0.0) -> tuple[Vector, Vector]:
        splay = math.radians(splays_deg[name])
        ux, uy = fronts[name].way
        normal = (-uy * math.cos(splay), ux * math.cos(splay), math.sin(splay))
        x, y = fronts[name].start
        point = tuple(p - behind_mm * n for p, n in zip((x, y, 0.0), normal, strict=True))
        return (point[0], point[1], point[2]), normal

    def at_frame(name: str, behind_mm: float = 0.0) -> Line:
        point, normal = face(name, behind_mm)
        # The plane cut at z = -depth: its trace runs with the front line.
        down = (-depth_mm - point[2]) * normal[2] / math.hypot(normal[0], normal[1])
        flat = unit((normal[0], normal[1], 0.0))
        start = (point[0] - down * flat[0], point[1] - down * flat[1])
        ux, uy = fronts[name].way
        return Line(start, (start[0] + ux, start[1] + uy))

    starts = {
        "sill": at_frame("right", thick_mm),
        "right": at_frame("head"),
        "head": at_frame("left", thick_mm),
        "left": at_frame("sill"),
    }
    laid = splayed(corners, pieces, splays_deg, depth_mm, starts, off_deg)
    stops = [
        ("sill", Side.LEFT, face("right", thick_mm)),
        ("sill", Side.RIGHT, face("left", thick_mm)),
        ("head", Side.LEFT, face("left", thick_mm)),
        ("head", Side.RIGHT, face("right", thick_mm)),
        ("left", Side.LEFT, face("sill")),
        ("left", Side.RIGHT, face("head")),
        ("right", Side.LEFT, face("head")),
        ("right", Side.RIGHT, face("sill")),
    ]
    return [off_plane_mm(laid[name], end, *plane) for name, end, plane in stops]


@cases
def test_splayed_boards_butted_end_on_each_others_faces_and_backs(seed: int) -> None:
    assert max(splayed_butts_mm(seed)) < CLOSED_MM


def test_a_saw_half_a_degree_off_opens_butted_boards() -> None:
    assert all(max(splayed_butts_mm(seed, OFF_DEG)) > SEEN_MM for seed in FEW)
