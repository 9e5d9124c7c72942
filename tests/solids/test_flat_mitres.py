"""Architraves cut as solids from their settings, laid round the opening, close at every mitre.

Openings are drawn at random and read by a perfect tape; the program's own pieces are taken. Each is
sawn by OpenCascade from its inner edge and the two settings, and laid with its inner edge on its
quirk line, the left end where two quirk lines cross; the lines are worked out here, from the
corners that were drawn. Nothing else is told where the far end should be.
"""

import json
import math
import random
from dataclasses import dataclass, replace
from itertools import combinations
from typing import Any, Final

import pytest
from shapely import LineString, Polygon

from longpoint.errors import Finding
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.pipeline import plan_house
from longpoint.shape.point import Point
from longpoint.sheets.plan_json import plan_document
from longpoint.survey.house import SurveyResult
from longpoint.survey.openings import Layout, Method, Mitres, Opening, OpeningKind
from tests.fitted_houses import Corners, by_role, house, opening, pieces, quad
from tests.solids.kernel import Body, Section, Side, common_volume_mm3, cut_piece, joint, moulded

CLOSE_MM: Final = 0.01
SQUARE_FOOT_DEG: Final = 0.05
"""A foot nearer to square than this is cut square, and stands off the floor by so much."""

PRINTED_MM: Final = 0.005
PRINTED_DEG: Final = 0.005
"""plan.json rounds to hundredths, half of one either way."""

BOTTOM: Final = 0
SIDE_OF: Final = {Role.SILL: 0, Role.RIGHT_LEG: 1, Role.HEAD: 2, Role.LEFT_LEG: 3}
FAMILIES: Final = tuple(Layout)
FEW, MANY = 10, 200


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """An opening as drawn, in any position, and what stands along its sides.

    Attributes:
        corners: Anticlockwise from the bottom left.
        read: The opening as the program gets it.
        lines: The line that each side's inner edge lies on, anticlockwise; of a bare bottom the
            line that the feet stand on.
        section: The moulding, None for plain boards.
    """

    corners: Corners
    read: Opening
    lines: tuple[LineString, ...]
    section: Section | None

    @property
    def has_feet(self) -> bool:
        return self.read.layout is not Layout.ALL_ROUND


def drawn_case(draw: random.Random, layout: Layout) -> Case:
    """Return a convex opening, up to a few degrees off square or well raked, turned anyhow."""
    is_door = layout is Layout.LEGS_AND_HEAD
    is_raked = draw.random() < 0.3
    width_mm = draw.uniform(600.0, 2000.0) if is_door else draw.uniform(400.0, 2400.0)
    height_mm = draw.uniform(1900.0, 2300.0) if is_door else draw.uniform(400.0, 1800.0)
    off_mm = 0.12 * min(width_mm, height_mm) if is_raked else 9.0
    off = [draw.uniform(-off_mm, off_mm) for _ in range(6)]
    corners = turned(
        quad(
            (0.0, 0.0),
            (width_mm + off[0], off[1]),
            (width_mm + off[2], height_mm + off[3]),
            (off[4], height_mm + off[5]),
        ),
        draw.uniform(-math.pi, math.pi),
    )
    is_even = draw.random() < 0.4
    widths_mm = (draw.uniform(30.0, 150.0),) * 4 if is_even else four(draw, 30.0, 150.0)
    quirks_mm = four(draw, 2.0, 12.0)
    cover_mm = draw.choice((0.0, draw.uniform(1.0, 25.0))) if is_door else 0.0
    read = opening(
        corners,
        kind=OpeningKind.DOOR if is_door else OpeningKind.WINDOW,
        layout=layout,
        quirk_mm=quirks_mm,
        width_mm=widths_mm,
        floor_cover_mm=cover_mm,
        board="140.0 board" if layout is Layout.BOARD_AND_APRON else "",
        horn_mm=draw.uniform(0.0, 60.0),
        raked=is_raked,
    )
    head, right, bottom, left = quirks_mm
    out_mm = (bottom if layout is Layout.ALL_ROUND else -cover_mm, right, head, left)
    return Case(
        corners=corners,
        read=read,
        lines=tuple(line_out(corners, side, out) for side, out in enumerate(out_mm)),
        section=moulded(widths_mm[0], 18.0) if is_even else None,
    )


def four(draw: random.Random, least: float, most: float) -> tuple[float, float, float, float]:
    a, b, c, d = (draw.uniform(least, most) for _ in range(4))
    return (a, b, c, d)


def turned(corners: Corners, by: float) -> Corners:
    cos, sin = math.cos(by), math.sin(by)
    a, b, c, d = ((x * cos - y * sin + 300.0, x * sin + y * cos - 70.0) for x, y in corners)
    return quad(a, b, c, d)


def line_out(corners: Corners, side: int, out_mm: float) -> LineString:
    """Return a side moved outwards and drawn far past both its ends, by shapely."""
    (x1, y1), (x2, y2) = corners[side], corners[(side + 1) % 4]
    far = 3.0
    long = LineString(
        [
            (x1 - far * (x2 - x1), y1 - far * (y2 - y1)),
            (x2 + far * (x2 - x1), y2 + far * (y2 - y1)),
        ]
    )
    # Round an anticlockwise opening the outside is on the right hand.
    return long.offset_curve(-out_mm)


def crossing(one: LineString, other: LineString) -> Point:
    met = one.intersection(other)
    return Point(met.x, met.y)


def laid(case: Case, piece: Piece, *, off_deg: float = 0.0) -> Body:
    """Return a piece in its place: inner edge on its line, left end where the next line crosses."""
    side = SIDE_OF[piece.role]
    start, end = case.corners[(side + 1) % 4], case.corners[side]
    ux, uy = (end.x_mm - start.x_mm), (end.y_mm - start.y_mm)
    length_mm = math.hypot(ux, uy)
    ux, uy = ux / length_mm, uy / length_mm
    at = crossing(case.lines[side], case.lines[(side + 1) % 4])
    body = cut_piece(piece, case.section, off_deg=off_deg)
    return body.placed((at.x_mm, at.y_mm, 0.0), (ux, uy, 0.0), (-uy, ux, 0.0), (0.0, 0.0, 1.0))


def bodies(
    case: Case, made: dict[Role, Piece], *, off_deg: float = 0.0
) -> dict[int, tuple[Piece, Body]]:
    return {
        SIDE_OF[role]: (piece, laid(case, piece, off_deg=off_deg))
        for role, piece in made.items()
        if role in SIDE_OF
    }


def worst_mm(laid_round: dict[int, tuple[Piece, Body]]) -> list[float]:
    """Return gap, overlap or slip of each mitre, whichever is worst."""
    return [
        joint(body, Side.LEFT, laid_round[(side + 1) % 4][1], Side.RIGHT).worst_mm
        for side, (_, body) in laid_round.items()
        if (side + 1) % 4 in laid_round
    ]


def off_floor_mm(
    case: Case, laid_round: dict[int, tuple[Piece, Body]]
) -> list[tuple[Piece, float]]:
    """Return how far each foot stands off the line of the floor, cover or board."""
    (x1, y1), (x2, y2) = case.lines[BOTTOM].coords
    length_mm = math.hypot(x2 - x1, y2 - y1)
    feet = ((1, Side.RIGHT), (3, Side.LEFT))
    return [
        (
            laid_round[side][0],
            max(
                abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) / length_mm
                for x, y, _ in laid_round[side][1].end_face(end)
            ),
        )
        for side, end in feet
    ]


def check_closed(case: Case) -> None:
    made = by_role(pieces(case.read))
    laid_round = bodies(case, made)
    mitres = worst_mm(laid_round)
    assert len(mitres) == (2 if case.has_feet else 4)
    assert max(mitres) < CLOSE_MM
    if case.has_feet:
        for leg, off_mm in off_floor_mm(case, laid_round):
            is_square = CutKind.SQUARE in (leg.left.kind, leg.right.kind)
            square_mm = leg.width_mm * math.tan(math.radians(SQUARE_FOOT_DEG))
            assert off_mm < CLOSE_MM + (square_mm if is_square else 0.0)
    for (_, one), (_, other) in combinations(laid_round.values(), 2):
        assert common_volume_mm3(one, other) < CLOSE_MM * 18.0 * 300.0


def check_half_a_degree_shows(case: Case) -> None:
    made = by_role(pieces(case.read))
    for off_deg in (0.5, -0.5):
        laid_round = bodies(case, made, off_deg=off_deg)
        # Both pieces are off, so the mitre is by 1 degree, over at least the narrower width.
        assert min(worst_mm(laid_round)) > 30.0 * math.sin(math.radians(1.0)) - CLOSE_MM
        if case.has_feet:
            for leg, off_mm in off_floor_mm(case, laid_round):
                if CutKind.SQUARE not in (leg.left.kind, leg.right.kind):
                    assert off_mm > CLOSE_MM


@pytest.mark.parametrize("layout", FAMILIES)
def test_the_pieces_of_a_random_opening_close(layout: Layout) -> None:
    draw = random.Random(f"closes {layout}")
    for _ in range(FEW):
        check_closed(drawn_case(draw, layout))


@pytest.mark.long
@pytest.mark.parametrize("layout", FAMILIES)
def test_the_pieces_of_two_hundred_random_openings_close(layout: Layout) -> None:
    draw = random.Random(f"two hundred {layout}")
    for _ in range(MANY):
        check_closed(drawn_case(draw, layout))


@pytest.mark.parametrize("layout", FAMILIES)
def test_a_saw_half_a_degree_off_leaves_every_mitre_open(layout: Layout) -> None:
    draw = random.Random(f"half a degree {layout}")
    for _ in range(4):
        check_half_a_degree_shows(drawn_case(draw, layout))


def test_the_apron_ends_under_the_outer_edges_of_the_legs_and_the_board_past_them() -> None:
    draw = random.Random("aprons")
    for _ in range(FEW):
        case = drawn_case(draw, Layout.BOARD_AND_APRON)
        made = by_role(pieces(case.read))
        laid_round = bodies(case, made)
        outer = [
            max(laid_round[side][1].end_face(end), key=lambda corner: _off_middle(case, corner))
            for side, end in ((1, Side.RIGHT), (3, Side.LEFT))
        ]
        apron, board = cut_piece(made[Role.APRON]), cut_piece(made[Role.BOARD])
        long_mm = {
            name: max(x for x, _, _ in body.corners) - min(x for x, _, _ in body.corners)
            for name, body in (("apron", apron), ("board", board))
        }
        outer_mm = math.dist(outer[0][:2], outer[1][:2])
        # A foot that is cut square ends its outer edge a little off the line of the board.
        assert abs(long_mm["apron"] - outer_mm) < CLOSE_MM + 0.02
        assert abs(long_mm["board"] - outer_mm - 2.0 * case.read.horn_mm) < CLOSE_MM + 0.02


@pytest.mark.parametrize("method", [Method.BENCH, Method.BATCH])
def test_a_frame_of_45s_closes_as_a_true_rectangle_of_its_own_inner_edges(method: Method) -> None:
    draw = random.Random(f"true frame {method}")
    for _ in range(FEW):
        width_mm, height_mm = draw.uniform(400.0, 2000.0), draw.uniform(400.0, 1500.0)
        lean_mm, face_mm = draw.uniform(-2.0, 2.0), draw.uniform(30.0, 90.0)
        corners = quad((0, 0), (width_mm, 0), (width_mm + lean_mm, height_mm), (lean_mm, height_mm))
        read = opening(corners, quirk_mm=6.0, width_mm=face_mm, method=method)
        made = by_role(pieces(replace(read, mitres=Mitres.AT_STOP)))
        head_mm, leg_mm = made[Role.HEAD].inner_mm, made[Role.LEFT_LEG].inner_mm
        frame = quad((0, 0), (head_mm, 0), (head_mm, leg_mm), (0, leg_mm))
        case = Case(
            corners=frame,
            read=read,
            lines=tuple(line_out(frame, side, 0.0) for side in range(4)),
            section=moulded(face_mm, 18.0),
        )
        for off_deg, closes in ((0.0, True), (0.5, False)):
            mitres = worst_mm(bodies(case, made, off_deg=off_deg))
            assert len(mitres) == 4
            assert (max(mitres) < CLOSE_MM) is closes


def _off_middle(case: Case, corner: tuple[float, float, float]) -> float:
    middle = Polygon(case.corners).centroid
    bl, br = case.corners[0], case.corners[1]
    ux, uy = br.x_mm - bl.x_mm, br.y_mm - bl.y_mm
    return abs(float((corner[0] - middle.x) * ux + (corner[1] - middle.y) * uy))


def as_printed(piece: Piece, entry: dict[str, Any]) -> Piece:
    """Return a piece as another program reads it out of plan.json."""

    def end(name: str) -> EndCut:
        cut = entry[name]
        return EndCut(
            kind=CutKind(cut["cut"]), mitre_deg=cut["mitre_deg"], bevel_deg=cut["bevel_deg"]
        )

    return replace(piece, inner_mm=entry["inner_mm"], left=end("left"), right=end("right"))


def rounding_bound_mm(one: Piece, other: Piece, mitre_deg: float) -> float:
    """Return what hundredths can do to a mitre.

    References:
        Each saw angle is half a hundredth of a degree out, so the mitre a hundredth over its
        length, width / cos(mitre); the far end of the inner edge lies half a hundredth of a
        millimetre out along its piece.
    """
    longest_mm = max(one.width_mm, other.width_mm) / math.cos(math.radians(mitre_deg))
    return longest_mm * math.radians(2.0 * PRINTED_DEG) + PRINTED_MM


@pytest.mark.parametrize("layout", FAMILIES)
def test_the_hundredths_of_plan_json_open_a_mitre_by_no_more_than_they_must(layout: Layout) -> None:
    draw = random.Random(f"hundredths {layout}")
    worst = 0.0
    for _ in range(FEW):
        case = drawn_case(draw, layout)
        exact = by_role(pieces(case.read))
        printed = planned(case.read)
        made = {role: as_printed(piece, printed[piece.mark]) for role, piece in exact.items()}
        laid_round = bodies(case, made)
        for side, (piece, body) in laid_round.items():
            if (side + 1) % 4 not in laid_round:
                continue
            other_piece, other = laid_round[(side + 1) % 4]
            met = joint(body, Side.LEFT, other, Side.RIGHT)
            steepest_deg = max(piece.left.mitre_deg, other_piece.right.mitre_deg)
            bound_mm = rounding_bound_mm(piece, other_piece, steepest_deg)
            assert max(met.gap_mm, met.overlap_mm) <= bound_mm + 1e-6
            worst = max(worst, met.gap_mm, met.overlap_mm)
    # The bound is of use: hundredths do show, and for a 150 mm face stay under a paper's thickness.
    assert 0.001 < worst < 0.06


def planned(one: Opening) -> dict[str, dict[str, Any]]:
    """Return the pieces of plan.json, as text and back, of a house with one opening."""
    none: tuple[Finding, ...] = ()
    plan = plan_house(SurveyResult(house=house(one), findings=none))
    document = json.loads(json.dumps(plan_document(plan)))
    return {entry["mark"]: entry for entry in document["pieces"]}
