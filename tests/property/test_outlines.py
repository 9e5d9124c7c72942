"""The pieces of an opening, put together again from what is printed of them, close.

Readings exact to the last figure go in; only the printed record of each piece is used to draw it:
its two edges, its face width and the saw angle of both ends. It is laid with its inner edge on the
quirk line of its side, the line being drawn by the test itself. Where the pieces ought to lie is
cut out of half planes by shapely, which knows nothing of mitres.
"""

import math
import random
from itertools import combinations
from typing import Final

import pytest
from shapely import Polygon
from shapely.ops import unary_union

from longpoint.pieces.piece import CutKind, Piece, Role
from longpoint.shape.point import Point
from longpoint.survey.openings import Layout, OpeningKind
from longpoint.trims.outline import TrimSide, trim_outline
from tests.fitted_houses import Corners, by_role, opening, pieces, quad

CLOSE_MM: Final = 0.01
FOOT_DEG: Final = 0.05
"""A foot nearer to square than this is cut square, and may stand off the floor by as much."""

FAR_MM: Final = 20_000.0
SIDE_OF: Final = {Role.SILL: 0, Role.RIGHT_LEG: 1, Role.HEAD: 2, Role.LEFT_LEG: 3}


def random_opening(draw: random.Random, *, raked: bool) -> Corners:
    """Return a convex opening: corners up to 3 degrees off square, raked up to 30."""
    while True:
        width_mm, height_mm = draw.uniform(350, 2400), draw.uniform(350, 2100)
        spread_mm = 0.15 * min(width_mm, height_mm) if raked else 8.0
        off = [draw.uniform(-spread_mm, spread_mm) for _ in range(5)]
        corners = quad(
            (0.0, 0.0),
            (width_mm + off[0], 0.0),
            (width_mm + off[1], height_mm + off[2]),
            (off[3], height_mm + off[4]),
        )
        if Polygon(corners).is_valid:
            return corners


def four(draw: random.Random, least: float, most: float) -> tuple[float, float, float, float]:
    """Return one value for head, right, bottom and left; often all the same."""
    if draw.random() < 0.3:
        return (draw.uniform(least, most),) * 4
    head, right, bottom, left = (draw.uniform(least, most) for _ in range(4))
    return (head, right, bottom, left)


def line_out(start: Point, end: Point, out_mm: float) -> tuple[Point, Point]:
    """Return a side of an anticlockwise opening, moved outwards."""
    length_mm = math.dist(start, end)
    dx = (end.y_mm - start.y_mm) / length_mm * out_mm
    dy = -(end.x_mm - start.x_mm) / length_mm * out_mm
    return start.moved(dx, dy), end.moved(dx, dy)


def inside_of(start: Point, end: Point) -> Polygon:
    """Return the half plane to the left of a line, as far as it matters."""
    turn = math.atan2(end.y_mm - start.y_mm, end.x_mm - start.x_mm)
    cos, sin = math.cos(turn) * FAR_MM, math.sin(turn) * FAR_MM
    a, b = start.moved(-cos, -sin), start.moved(cos, sin)
    return Polygon([a, b, b.moved(-sin, cos), a.moved(-sin, cos)])


def region(corners: Corners, out_mm: tuple[float, float, float, float]) -> Polygon:
    """Return what lies within all four sides moved outwards."""
    lines = [line_out(corners[i], corners[(i + 1) % 4], out_mm[i]) for i in range(4)]
    found = inside_of(*lines[0])
    for line in lines[1:]:
        found = found.intersection(inside_of(*line))
    return found


def runs_past_mm(piece: Piece) -> tuple[float, float]:
    """Return how far the outer edge runs past the inner one at both ends, by the saw angles."""
    left, right = (math.tan(math.radians(cut.mitre_deg)) for cut in (piece.left, piece.right))
    return piece.width_mm * left, piece.width_mm * right


def laid(piece: Piece, left_inner: Point, towards: Point) -> Polygon:
    """Return a piece as drawn from its record, its left inner end at a point, outer edge outside.

    Round an opening the pieces run clockwise, so outside is on the left hand.
    """
    length_mm = math.dist(left_inner, towards)
    ux = (towards.x_mm - left_inner.x_mm) / length_mm
    uy = (towards.y_mm - left_inner.y_mm) / length_mm
    width_mm = piece.width_mm
    left_mm, right_mm = runs_past_mm(piece)
    local = (
        (0.0, 0.0),
        (piece.inner_mm, 0.0),
        (piece.inner_mm + right_mm, width_mm),
        (-left_mm, width_mm),
    )
    return Polygon(
        [(left_inner.x_mm + x * ux - y * uy, left_inner.y_mm + x * uy + y * ux) for x, y in local]
    )


def crossing(a: tuple[Point, Point], b: tuple[Point, Point]) -> Point:
    """Return where two lines cross, by determinants."""
    (x1, y1), (x2, y2) = a
    (x3, y3), (x4, y4) = b
    bottom = (x1 - x2) * (y3 - y4) - (y1 - y2) * (x3 - x4)
    first, second = x1 * y2 - y1 * x2, x3 * y4 - y3 * x4
    return Point(
        (first * (x3 - x4) - (x1 - x2) * second) / bottom,
        (first * (y3 - y4) - (y1 - y2) * second) / bottom,
    )


@pytest.mark.parametrize("layout", Layout)
@pytest.mark.parametrize("raked", [False, True])
def test_the_pieces_of_an_opening_meet_its_quirk_line_and_each_other(
    layout: Layout, raked: bool
) -> None:
    draw = random.Random(f"{layout} {raked}")
    for _ in range(170):
        _check_one(draw, layout, raked=raked)


def _check_one(draw: random.Random, layout: Layout, *, raked: bool) -> None:
    corners = random_opening(draw, raked=raked)
    quirk_mm, width_mm = four(draw, 2.0, 12.0), four(draw, 30.0, 150.0)
    is_door = layout is Layout.LEGS_AND_HEAD
    cover_mm = draw.choice((0.0, draw.uniform(1.0, 25.0))) if is_door else 0.0
    horn_mm = draw.uniform(0.0, 60.0)
    one = opening(
        corners,
        kind=OpeningKind.DOOR if is_door else OpeningKind.WINDOW,
        layout=layout,
        quirk_mm=quirk_mm,
        width_mm=width_mm,
        floor_cover_mm=cover_mm,
        board="140.0 board" if layout is Layout.BOARD_AND_APRON else "",
        horn_mm=horn_mm,
        raked=raked,
    )
    made = by_role(pieces(one))
    has_bare_bottom = layout is not Layout.ALL_ROUND

    head, right, bottom, left = quirk_mm
    inner_out = (-cover_mm if has_bare_bottom else bottom, right, head, left)
    faces = (width_mm[2], width_mm[1], width_mm[0], width_mm[3])
    outer_out = tuple(
        out + (0.0 if has_bare_bottom and side == 0 else faces[side])
        for side, out in enumerate(inner_out)
    )
    assert len(outer_out) == 4
    hole = region(corners, inner_out)
    whole = region(corners, outer_out)
    lines = [line_out(corners[i], corners[(i + 1) % 4], inner_out[i]) for i in range(4)]

    polygons = []
    foot_slack_mm2 = 0.0
    for role, side in SIDE_OF.items():
        if role not in made:
            continue
        piece = made[role]
        start = crossing(lines[side], lines[(side + 1) % 4])
        end = crossing(lines[side - 1], lines[side])
        drawn = laid(piece, start, end)
        polygons.append(drawn)
        # The inner edge ends where the neighbour's quirk line begins.
        assert math.dist(drawn.exterior.coords[1], end) < CLOSE_MM
        # The outer edge that is printed is the one that the saw leaves.
        foot_mm = 0.0
        if CutKind.SQUARE in (piece.left.kind, piece.right.kind):
            assert has_bare_bottom
            foot_mm = piece.width_mm * math.tan(math.radians(FOOT_DEG))
            foot_slack_mm2 += piece.width_mm * foot_mm / 2.0
        sawn_mm = piece.inner_mm + sum(runs_past_mm(piece))
        assert abs(sawn_mm - piece.outer_mm) < CLOSE_MM + foot_mm
    assert len(polygons) == (3 if has_bare_bottom else 4)

    for a, b in combinations(polygons, 2):
        mitre_mm = 2.0 * max(made[role].width_mm for role in SIDE_OF if role in made)
        assert a.intersection(b).area < CLOSE_MM * mitre_mm
    together = unary_union(polygons)
    ring = whole.difference(hole)
    assert together.symmetric_difference(ring).area < CLOSE_MM * 4 * 150.0 + foot_slack_mm2
    assert together.difference(whole.buffer(CLOSE_MM)).area <= foot_slack_mm2 + 1e-6
    assert together.intersection(hole.buffer(-CLOSE_MM)).area < 1e-6

    if layout is Layout.BOARD_AND_APRON:
        outer_mm = whole.intersection(inside_of(*lines[0])).exterior
        on_board = [p for p in outer_mm.coords[:-1] if _off_line(p, lines[0]) < CLOSE_MM]
        assert len(on_board) == 2
        outer_to_outer_mm = math.dist(*on_board)
        assert abs(made[Role.APRON].inner_mm - outer_to_outer_mm) < CLOSE_MM
        assert abs(made[Role.BOARD].inner_mm - outer_to_outer_mm - 2 * horn_mm) < CLOSE_MM


def _off_line(point: tuple[float, float], line: tuple[Point, Point]) -> float:
    (x1, y1), (x2, y2) = line
    across = (x2 - x1) * (point[1] - y1) - (y2 - y1) * (point[0] - x1)
    return abs(across) / math.dist(*line)


def test_the_edges_of_an_even_trim_are_the_mitred_buffers_of_any_convex_opening() -> None:
    draw = random.Random(23)
    for _ in range(300):
        corners = tuple(
            Point(1000.0 * math.cos(turn), draw_mm * math.sin(turn))
            for draw_mm in [draw.uniform(500.0, 1000.0)]
            for turn in sorted(_turns(draw, draw.randint(3, 9)))
        )
        quirk_mm, width_mm = draw.uniform(2.0, 12.0), draw.uniform(30.0, 150.0)
        outline = trim_outline(
            corners, (TrimSide(inner_mm=quirk_mm, width_mm=width_mm),) * len(corners)
        )
        for ours, out_mm in ((outline.inner, quirk_mm), (outline.outer, quirk_mm + width_mm)):
            theirs = Polygon(corners).buffer(out_mm, join_style="mitre", mitre_limit=1000.0)
            assert len(theirs.exterior.coords) == len(ours) + 1
            assert Polygon(ours).hausdorff_distance(theirs) < 1e-6


def _turns(draw: random.Random, corners: int) -> list[float]:
    """Return directions that leave no two corners close together and no side too long."""
    step = 2.0 * math.pi / corners
    return [step * (index + draw.uniform(-0.3, 0.3)) for index in range(corners)]
