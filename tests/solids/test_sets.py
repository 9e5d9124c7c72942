"""Sets put together otherwise than by four mitres, cut in a CAD kernel and laid in the room.

Where a piece is laid follows from the reveal's corners alone: sides moved out by quirk and face,
and where those lines cross. Whether it then ends where its neighbour begins is what is tested.
"""

import math
import random
from collections.abc import Callable
from dataclasses import dataclass, replace

import pytest

from longpoint.pieces.face_set import FaceSet, face_set
from longpoint.pieces.openings import opening_pieces
from longpoint.pieces.piece import Piece
from longpoint.pieces.window_boards import notches
from longpoint.shape.opening_fit import fit_openings
from longpoint.shape.point import interior_angles_deg
from longpoint.survey.openings import BoardFit, Joint, Layout, Opening
from tests.fitted_houses import Corners, door, opening, quad
from tests.set_houses import BAND20, BLOCK76, BOARD225, PLINTH95, set_house
from tests.solids.kernel import Body, Side, bar, common_volume_mm3, cut_piece, joint

CLOSED_MM = 0.01
NEARLY_SQUARE_DEG = 0.12
"""Corners nearer to square are not drawn: an end within 0.05 of square is cut square, and half of
a corner's error falls to each end at a block."""
FEW = range(10)
MANY = range(200)

XY = tuple[float, float]
Line = tuple[XY, XY]
"""A point and a direction of length 1."""


@dataclass(frozen=True)
class Case:
    """An opening drawn at random, its pieces by what they are, and its lines."""

    one: Opening
    face: FaceSet
    pieces: dict[str, Piece]
    bottom: Line
    right: Line
    head: Line
    left: Line
    widths_mm: tuple[float, float, float, float]

    def outer(self, side: int) -> Line:
        """Return the outer line of a side: bottom, right, head, left."""
        return shifted((self.bottom, self.right, self.head, self.left)[side], self.widths_mm[side])


def case(seed: int, change: Callable[[Opening], Opening], *, on_floor: bool) -> Case:
    """Return a leaning opening of unequal widths and quirks, put together as `change` says."""
    draw = random.Random(seed)
    corners = leaning(draw)
    while min(abs(deg - 90.0) for deg in interior_angles_deg(corners)) < NEARLY_SQUARE_DEG:
        corners = leaning(draw)
    widths_mm = tuple(draw.choice((45.0, 57.0, 66.0, 70.0)) for _ in range(4))
    quirks_mm = tuple(draw.uniform(3, 8) for _ in range(4))
    plain = opening(
        corners,
        quirk_mm=(quirks_mm[2], quirks_mm[1], quirks_mm[0], quirks_mm[3]),
        width_mm=(widths_mm[2], widths_mm[1], widths_mm[0], widths_mm[3]),
    )
    if on_floor:
        stands = door(corners)
        plain = replace(plain, mark="D1", kind=stands.kind, layout=stands.layout)
        widths_mm, quirks_mm = (0.0, *widths_mm[1:]), (0.0, *quirks_mm[1:])
    # No wedge is allowed, so that every end is cut to its angle.
    one = replace(change(plain), max_gap_mm=0.0)
    house = set_house(one)
    (fitted,) = fit_openings(house)[0]
    made = {piece.mark.split("-", 1)[1]: piece for piece in opening_pieces(house, one, fitted)}
    lines = []
    for index, quirk_mm in enumerate(quirks_mm):
        here, there = corners[index], corners[(index + 1) % 4]
        lines.append(shifted(line_through(here, there), quirk_mm))
    bottom, right, head, left = lines
    return Case(
        one=one,
        face=face_set(house, one, fitted),
        pieces=made,
        bottom=bottom,
        right=right,
        head=head,
        left=left,
        widths_mm=(widths_mm[0], widths_mm[1], widths_mm[2], widths_mm[3]),
    )


def leaning(draw: random.Random) -> Corners:
    """Return the corners of a reveal of which no two sides are parallel, but by chance."""
    wide, high = draw.uniform(600, 1200), draw.uniform(900, 2100)
    sway = [draw.choice((-1, 1)) * draw.uniform(7, 18) for _ in range(4)]
    return quad((0, 0), (wide, 0), (wide + sway[0], high + sway[1]), (sway[2], high + sway[3] / 2))


def line_through(here: XY, there: XY) -> Line:
    length = math.dist(here, there)
    return (here[0], here[1]), ((there[0] - here[0]) / length, (there[1] - here[1]) / length)


def shifted(line: Line, out_mm: float) -> Line:
    """Return a side's line moved out; sides run anticlockwise, so out is to their right."""
    (x, y), (dx, dy) = line
    return (x + out_mm * dy, y - out_mm * dx), (dx, dy)


def crossing(one: Line, other: Line) -> XY:
    (ax, ay), (ux, uy) = one
    (bx, by), (vx, vy) = other
    along = ((bx - ax) * vy - (by - ay) * vx) / (ux * vy - uy * vx)
    return (ax + along * ux, ay + along * uy)


def ahead(point: XY, way: XY, by_mm: float) -> XY:
    return (point[0] + by_mm * way[0], point[1] + by_mm * way[1])


def back(line: Line) -> XY:
    """Return a side's direction the other way round: clockwise, as its piece runs."""
    return (-line[1][0], -line[1][1])


def laid(piece: Piece, at: XY, way: XY, off_deg: float) -> Body:
    """Return a piece on the wall: its left inner corner, and where it runs."""
    return cut_piece(piece, off_deg=off_deg).placed(
        (at[0], at[1], 0.0), (way[0], way[1], 0.0), (-way[1], way[0], 0.0), (0.0, 0.0, 1.0)
    )


def stands_off_mm(body: Body, end: Side, line: Line) -> float:
    """Return how far an end's cut face is from lying along a line, at its worst corner."""
    (x, y), (dx, dy) = line
    return max(abs((px - x) * dy - (py - y) * dx) for px, py, _ in body.end_face(end))


def end_line(body: Body, end: Side) -> tuple[XY, XY, XY]:
    """Return the middle of an end's cut face, its way from inner to outer edge, and the way out."""
    _, (ox, oy, _) = body.plane(end)
    found = sorted({(round(x, 7), round(y, 7)) for x, y, _ in body.end_face(end)})
    (ax, ay), (bx, by) = found[0], found[-1]
    middle = ((ax + bx) / 2.0, (ay + by) / 2.0)
    # The way to the outer edge lies left of the way out at a right end, right of it at a left.
    turn = 1.0 if end is Side.RIGHT else -1.0
    return middle, (-turn * oy, turn * ox), (ox, oy)


def butted_mm(seed: int, *, on_floor: bool, horn_mm: float, off_deg: float) -> float:
    """Return the worst that a butted set's ends stand off the lines they are to lie along."""
    it = case(
        seed,
        lambda plain: replace(plain, joint=Joint.BUTT, head_horn_mm=horn_mm),
        on_floor=on_floor,
    )
    left = laid(it.pieces["left-leg"], crossing(it.left, it.bottom), back(it.left), off_deg)
    right = laid(it.pieces["right-leg"], crossing(it.right, it.head), back(it.right), off_deg)
    head_at, far = crossing(it.head, it.outer(3)), crossing(it.head, it.outer(1))
    head = laid(it.pieces["head"], ahead(head_at, back(it.head), -horn_mm), back(it.head), off_deg)
    off = [
        stands_off_mm(left, Side.LEFT, it.bottom),
        stands_off_mm(left, Side.RIGHT, it.head),
        stands_off_mm(right, Side.LEFT, it.head),
        stands_off_mm(right, Side.RIGHT, it.bottom),
    ]
    square = (-it.head[1][1], it.head[1][0])
    ends = (
        (it.outer(3), it.outer(1))
        if horn_mm == 0.0
        else (
            (ahead(head_at, back(it.head), -horn_mm), square),
            (ahead(far, back(it.head), horn_mm), square),
        )
    )
    off += [stands_off_mm(head, end, line) for end, line in zip(Side, ends, strict=True)]
    if not on_floor:
        at = crossing(it.bottom, it.outer(1))
        sill = laid(it.pieces["sill"], at, back(it.bottom), off_deg)
        off.append(stands_off_mm(sill, Side.LEFT, it.outer(1)))
        off.append(stands_off_mm(sill, Side.RIGHT, it.outer(3)))
    assert common_volume_mm3(left, head) < 1.0 or off_deg
    return max(off)


def blocked_mm(seed: int, *, off_deg: float) -> float:
    """Return how far the second leg's end is from its block, the set built up from the first leg.

    A block is laid square on the first leg's end, the head against that block, a second block on
    the head's other end: the second leg, standing on the floor, has to come up against it.
    """
    it = case(
        seed,
        lambda plain: replace(plain, joint=Joint.BLOCKS, corner_block=BLOCK76.name),
        on_floor=True,
    )
    half_mm = BLOCK76.width_mm / 2.0
    left = laid(it.pieces["left-leg"], crossing(it.left, it.bottom), back(it.left), off_deg)
    middle, outwards, up = end_line(left, Side.RIGHT)
    inner_face: Line = (ahead(middle, outwards, -half_mm), up)
    head = laid(it.pieces["head"], crossing(it.head, inner_face), back(it.head), off_deg)
    head_middle, _, _ = end_line(head, Side.LEFT)
    block_middle = ahead(inner_face[0], up, half_mm)
    off = [
        stands_off_mm(left, Side.LEFT, it.bottom),
        stands_off_mm(head, Side.LEFT, inner_face),
        # Over the head, too, the block stands out alike on both edges.
        math.dist(head_middle, block_middle),
    ]
    middle, outwards, out = end_line(head, Side.RIGHT)
    lower_face: Line = (ahead(middle, outwards, -half_mm), out)
    leg = it.pieces["right-leg"]
    top = ahead(crossing(it.right, it.bottom), it.right[1], leg.inner_mm)
    right = laid(leg, top, back(it.right), off_deg)
    leg_middle, _, _ = end_line(right, Side.LEFT)
    off += [
        stands_off_mm(right, Side.RIGHT, it.bottom),
        stands_off_mm(right, Side.LEFT, lower_face),
        math.dist(leg_middle, ahead(lower_face[0], out, half_mm)),
    ]
    return max(off)


def on_plinths_mm(seed: int, *, off_deg: float) -> float:
    """Return the worst gap, overlap or step of legs on plinths under a mitred head."""
    it = case(
        seed,
        lambda plain: replace(plain, plinth=PLINTH95.name, plinth_height_mm=200.0),
        on_floor=True,
    )
    top_left, top_right = crossing(it.left, it.head), crossing(it.right, it.head)
    leg = it.pieces["left-leg"]
    left = laid(leg, ahead(top_left, it.left[1], leg.inner_mm), back(it.left), off_deg)
    right = laid(it.pieces["right-leg"], top_right, back(it.right), off_deg)
    head = laid(it.pieces["head"], top_left, back(it.head), off_deg)
    left_block = laid(
        it.pieces["left-plinth"], crossing(it.left, it.bottom), back(it.left), off_deg
    )
    block = it.pieces["right-plinth"]
    right_top = ahead(crossing(it.right, it.bottom), it.right[1], block.inner_mm)
    right_block = laid(block, right_top, back(it.right), off_deg)
    mitres = (joint(left, Side.RIGHT, head, Side.LEFT), joint(head, Side.RIGHT, right, Side.LEFT))
    stands = (
        joint(left_block, Side.RIGHT, left, Side.LEFT),
        joint(right, Side.RIGHT, right_block, Side.LEFT),
    )
    return max(
        *(met.worst_mm for met in mitres),
        *(max(met.gap_mm, met.overlap_mm) for met in stands),
        stands_off_mm(left_block, Side.LEFT, it.bottom),
        stands_off_mm(right_block, Side.RIGHT, it.bottom),
    )


def banded_mm(seed: int, *, off_deg: float) -> float:
    """Return the worst joint of a back band laid along the set's outer lines."""
    it = case(seed, lambda plain: replace(plain, back_band=BAND20.name), on_floor=False)
    names = ("band-sill", "band-right-leg", "band-head", "band-left-leg")
    bodies = [
        laid(
            it.pieces[name],
            crossing(it.outer(side), it.outer((side + 1) % 4)),
            back(it.outer(side)),
            off_deg,
        )
        for side, name in enumerate(names)
    ]
    return max(
        joint(bodies[side], Side.LEFT, bodies[(side + 1) % 4], Side.RIGHT).worst_mm
        for side in range(4)
    )


def eared_mm(seed: int) -> tuple[float, ...]:
    """Return how far off the wall's line a board's notches are: at both linings and both ends.

    The wall's face is drawn through the depths at the linings; the board lies along the sash.
    """
    fit = BoardFit(depth_left_mm=140.0, depth_right_mm=163.0, nosing_mm=45.0)
    it = case(
        seed,
        lambda plain: replace(
            plain, layout=Layout.BOARD_AND_APRON, board=BOARD225.name, board_fit=fit, horn_mm=30.0
        ),
        on_floor=False,
    )
    left, right = notches(it.face, fit)
    wide_mm = it.face.fitted.side_mm.first
    wall: Line = ((0.0, 140.0), (wide_mm, 163.0 - 140.0))
    bottom: Line = ((0.0, 0.0), (1.0, 0.0))
    start_mm = crossing(it.outer(3), bottom)[0] - 30.0
    end_mm = start_mm + it.pieces["board"].inner_mm
    at = {
        start_mm: left.end_depth_mm,
        start_mm + left.along_mm: left.depth_mm,
        end_mm - right.along_mm: right.depth_mm,
        end_mm: right.end_depth_mm,
    }
    return tuple(
        depth_mm - crossing(wall, ((x_mm, 0.0), (0.0, 1.0)))[1] for x_mm, depth_mm in at.items()
    )


def notched(seed: int) -> tuple[Body, tuple[Body, Body]]:
    """Return the part of a notched board between its linings, and the linings."""
    fit = BoardFit(depth_left_mm=140.0, depth_right_mm=140.0, nosing_mm=45.0)
    it = case(
        seed,
        lambda plain: replace(
            plain, layout=Layout.BOARD_AND_APRON, board=BOARD225.name, board_fit=fit, horn_mm=30.0
        ),
        on_floor=False,
    )
    left, right = notches(it.face, fit)
    board = it.pieces["board"]
    # The legs of this one run down to the board, which lies along the reveal's own bottom.
    bottom: Line = ((0.0, 0.0), (1.0, 0.0))
    start_mm = crossing(it.outer(3), bottom)[0] - 30.0
    between_mm = board.inner_mm - left.along_mm - right.along_mm
    plank = bar(left.depth_mm, 25.0, between_mm, board.left, board.right)
    middle = plank.placed((start_mm + left.along_mm, 0, 0), (1, 0, 0), (0, 1, 0), (0, 0, 1))
    lining = bar(140.0, 100.0, 30.0, board.left, board.right)
    wide_mm = it.face.fitted.side_mm.first
    ends = tuple(
        lining.placed((x, 0, -40), (1, 0, 0), (0, 1, 0), (0, 0, 1)) for x in (-30.0, wide_mm)
    )
    return middle, (ends[0], ends[1])


@pytest.mark.parametrize("seed", FEW)
@pytest.mark.parametrize(("on_floor", "horn_mm"), [(True, 0.0), (True, 20.0), (False, 0.0)])
def test_a_butted_set_lies_along_its_lines(seed: int, on_floor: bool, horn_mm: float) -> None:
    assert butted_mm(seed, on_floor=on_floor, horn_mm=horn_mm, off_deg=0.0) < CLOSED_MM


@pytest.mark.parametrize("seed", FEW)
def test_a_set_between_blocks_closes_its_round(seed: int) -> None:
    assert blocked_mm(seed, off_deg=0.0) < CLOSED_MM


@pytest.mark.parametrize("seed", FEW)
def test_legs_stand_flat_on_their_plinths_and_these_on_the_floor(seed: int) -> None:
    assert on_plinths_mm(seed, off_deg=0.0) < CLOSED_MM


@pytest.mark.parametrize("seed", FEW)
def test_a_back_band_closes_round_the_set(seed: int) -> None:
    assert banded_mm(seed, off_deg=0.0) < CLOSED_MM


@pytest.mark.parametrize("seed", FEW)
def test_a_boards_ears_lie_on_the_wall_that_runs_on_from_its_linings(seed: int) -> None:
    assert eared_mm(seed) == pytest.approx((0.0,) * 4, abs=CLOSED_MM)


@pytest.mark.parametrize("seed", FEW)
def test_a_notched_board_goes_between_its_linings_and_touches_both(seed: int) -> None:
    middle, linings = notched(seed)
    for lining, way in zip(linings, (-1.0, 1.0), strict=True):
        assert common_volume_mm3(middle, lining) < 1.0
        assert common_volume_mm3(middle.moved((way * CLOSED_MM, 0, 0)), lining) > 1.0


@pytest.mark.parametrize("seed", FEW)
def test_a_saw_half_a_degree_off_shows_in_every_kind_of_set(seed: int) -> None:
    assert butted_mm(seed, on_floor=True, horn_mm=0.0, off_deg=0.5) > 10 * CLOSED_MM
    assert blocked_mm(seed, off_deg=0.5) > 10 * CLOSED_MM
    assert on_plinths_mm(seed, off_deg=0.5) > 10 * CLOSED_MM
    assert banded_mm(seed, off_deg=0.5) > 10 * CLOSED_MM


@pytest.mark.long
def test_two_hundred_sets_of_every_kind_close() -> None:
    for seed in MANY:
        assert butted_mm(seed, on_floor=seed % 2 == 0, horn_mm=0.0, off_deg=0.0) < CLOSED_MM
        assert butted_mm(seed, on_floor=True, horn_mm=25.0, off_deg=0.0) < CLOSED_MM
        assert blocked_mm(seed, off_deg=0.0) < CLOSED_MM
        assert on_plinths_mm(seed, off_deg=0.0) < CLOSED_MM
        assert banded_mm(seed, off_deg=0.0) < CLOSED_MM
