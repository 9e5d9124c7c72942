"""Skirting cut as solids from its settings, laid against its walls, closes at every joint.

Walls are drawn at random: the corner between them on the floor, how far each leans, how the floor
falls. A board is laid with the lower edge of its back on the line where its wall meets the floor,
its far end where the wall was read from; where the corner's end comes to lie follows from its
length and its cut alone. The walls' planes are worked out here, by turning an upright about the
wall's line on the floor.
"""

import math
import random
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

import pytest

from longpoint.pieces.boards import Board, Stop
from longpoint.pieces.boards import Side as BoardSide
from longpoint.pieces.piece import CutKind, Piece
from longpoint.pieces.run_corners import Meeting, meetings
from longpoint.pieces.run_leans import seat
from longpoint.pieces.runs import board_pieces, plan_runs
from longpoint.shape.fitted import Shapes
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import RunEnd
from longpoint.trims.skirting_joints import corner_steps
from tests.room_builder import a_house, a_run
from tests.solids.kernel import Body, Section, Side, cut_piece, joint, moulded, rectangle
from tests.solids.vectors import Vector, cross, dot, scaled, turned

CLOSE_MM: Final = 0.01
FEW, MANY = 10, 200
FLOOR: Final[Vector] = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A wall: where its line on the floor heads for, and how its face stands.

    Attributes:
        along: Along the floor, from left to right as seen from the room.
        up: Up the wall, square to that.
    """

    along: Vector
    up: Vector

    @property
    def out(self) -> Vector:
        """Into the room, square to the wall's face."""
        return cross(self.along, self.up)


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A corner of two walls, with a board on each that ends square at its other end.

    Attributes:
        corner_deg: Inside the room, on the floor.
        boards: The left-hand board, whose right end stands in the corner, and the right-hand one.
        walls: Their walls.
        section: Of both.
    """

    corner_deg: float
    boards: tuple[Board, Board]
    walls: tuple[Wall, Wall]
    section: Section


def wall(heading_deg: float, lean_deg: float) -> Wall:
    """Return a wall; + leans with the top away from the room, which lies right of its heading."""
    along = turned((1.0, 0.0, 0.0), FLOOR, heading_deg)
    # Away from the room is to the left of the heading: against the turn that takes up to out.
    return Wall(along=along, up=turned(FLOOR, along, -lean_deg))


def drawn_case(
    draw: random.Random, kind: RunEnd, *, lean_deg: float, unequal_deg: float = 0.0
) -> Case:
    """Return a corner whose walls lean up to `lean_deg`, by up to `unequal_deg` from each other."""
    inside_deg = draw.uniform(40.0, 165.0)
    corner_deg = inside_deg if kind is RunEnd.INTERNAL else 360.0 - inside_deg
    leans = [draw.uniform(-lean_deg, lean_deg)] * 2
    leans[1] += draw.uniform(-unequal_deg, unequal_deg)
    heading_deg = draw.uniform(0.0, 360.0)
    profile = Profile(
        name="SK90", width_mm=draw.uniform(60.0, 220.0), thickness_mm=draw.uniform(12.0, 25.0)
    )
    left, right = (
        Board(
            mark=mark,
            room="Den",
            profile=profile,
            length_mm=draw.uniform(400.0, 4000.0),
            u_mm=0.0,
            left=Stop(kind=RunEnd.SQUARE),
            right=Stop(kind=RunEnd.SQUARE),
            sum_text="",
            lean_deg=lean,
        )
        for mark, lean in zip("AB", leans, strict=True)
    )
    corner = Stop(kind=kind, corner_deg=corner_deg)
    return Case(
        corner_deg=corner_deg,
        boards=(
            replace(left, right=replace(corner, lean_deg=leans[1])),
            replace(right, left=replace(corner, lean_deg=leans[0])),
        ),
        walls=(
            wall(heading_deg, leans[0]),
            # Walls are met in the order in which one turns to the right.
            wall(heading_deg - (180.0 - corner_deg), leans[1]),
        ),
        section=moulded(profile.width_mm, profile.thickness_mm)
        if draw.random() < 0.5
        else rectangle(profile.width_mm, profile.thickness_mm),
    )


def planned(case: Case, *, through: str = "") -> tuple[Piece, Piece]:
    """Return the program's pieces; both are mitred unless one runs through."""
    met = {
        ("A", BoardSide.RIGHT): Meeting(runs_through=through == "A", other="B"),
        ("B", BoardSide.LEFT): Meeting(runs_through=through == "B", other="A"),
    }
    pieces, _ = board_pieces(a_house(stock=()), case.boards, met)
    left, right = pieces
    return left, right


def laid(case: Case, pieces: tuple[Piece, Piece], off_deg: float = 0.0) -> tuple[Body, Body]:
    """Return both boards where their square ends belong; the corner is at the origin."""
    starts = (-case.boards[0].length_mm, case.boards[1].length_mm - pieces[1].inner_mm)
    a, b = (
        cut_piece(piece, case.section, off_deg=off_deg).placed(
            scaled(at.along, start), at.along, at.up, at.out
        )
        for piece, at, start in zip(pieces, case.walls, starts, strict=True)
    )
    return a, b


def mitre_mm(case: Case, off_deg: float = 0.0) -> float:
    a, b = laid(case, planned(case), off_deg)
    return joint(a, Side.RIGHT, b, Side.LEFT).worst_mm


KINDS = pytest.mark.parametrize("kind", [RunEnd.INTERNAL, RunEnd.EXTERNAL], ids=str)


def check_mitres(kind: RunEnd, lean_deg: float, cases: int) -> None:
    draw = random.Random(f"skirting {kind} {lean_deg}")
    for _ in range(cases):
        case = drawn_case(draw, kind, lean_deg=lean_deg)
        assert mitre_mm(case) < CLOSE_MM
        assert mitre_mm(case, off_deg=0.5) > CLOSE_MM


@KINDS
@pytest.mark.parametrize("lean_deg", [0.0, 6.0], ids=["plumb", "leaning alike"])
def test_mitred_corners_close_on_all_of_both_faces(kind: RunEnd, lean_deg: float) -> None:
    check_mitres(kind, lean_deg, FEW)


@pytest.mark.long
@KINDS
@pytest.mark.parametrize("lean_deg", [0.0, 6.0], ids=["plumb", "leaning alike"])
def test_two_hundred_mitred_corners_close(kind: RunEnd, lean_deg: float) -> None:
    check_mitres(kind, lean_deg, MANY)


def check_steps(kind: RunEnd, cases: int) -> None:
    draw = random.Random(f"unequal leans {kind}")
    largest = 0.0
    for _ in range(cases):
        case = drawn_case(draw, kind, lean_deg=2.0, unequal_deg=4.0)
        width_mm, thickness_mm = (
            case.boards[0].profile.width_mm,
            case.boards[0].profile.thickness_mm,
        )
        case = replace(case, section=rectangle(width_mm, thickness_mm))
        a, b = laid(case, planned(case))
        met = joint(a, Side.RIGHT, b, Side.LEFT)
        steps = corner_steps(case.corner_deg, seat(case.boards[0]), seat(case.boards[1]))
        # The cut faces lie in one plane; what is left is the edges' step.
        assert max(met.gap_mm, met.overlap_mm) < CLOSE_MM
        assert met.outline_mm == pytest.approx(steps.worst_mm, abs=CLOSE_MM)
        leans = [math.radians(board.lean_deg) for board in case.boards]
        assert steps.face_bottom_mm >= thickness_mm * abs(math.sin(leans[0]) - math.sin(leans[1]))
        largest = max(largest, met.outline_mm)
    assert largest > 0.5


@KINDS
def test_walls_that_lean_otherwise_close_flat_and_step_as_predicted(kind: RunEnd) -> None:
    check_steps(kind, FEW)


@pytest.mark.long
@KINDS
def test_two_hundred_corners_of_unequal_leans_step_as_predicted(kind: RunEnd) -> None:
    check_steps(kind, MANY)


def off_moulding_mm(case: Case, point: Vector, index: int) -> float:
    """Return how far a point stands off the moulded surface of one of the boards."""
    at = case.walls[index]
    u_mm, n_mm = dot(point, at.up), dot(point, at.out)
    outline = list(case.section)
    edges = zip(outline, outline[1:] + outline[:1], strict=True)
    return min(
        off_segment_mm((u_mm, n_mm), start, end)
        for start, end in edges
        if not (start[1] == 0.0 and end[1] == 0.0)
    )


def off_segment_mm(
    point: tuple[float, float], start: tuple[float, float], end: tuple[float, float]
) -> float:
    along = (end[0] - start[0], end[1] - start[1])
    to_point = (point[0] - start[0], point[1] - start[1])
    length = along[0] ** 2 + along[1] ** 2
    part = max(0.0, min(1.0, (to_point[0] * along[0] + to_point[1] * along[1]) / length))
    return math.hypot(to_point[0] - part * along[0], to_point[1] - part * along[1])


def exposed_mm(case: Case, through: str, off_deg: float = 0.0) -> float:
    """Return how far the profile that a scribe's cut exposes stands off the board it goes over."""
    index = 1 if through == "A" else 0
    end = Side.LEFT if through == "A" else Side.RIGHT
    pieces = planned(case, through=through)
    assert (pieces[index].left if index else pieces[index].right).kind is CutKind.SCRIBE
    body = laid(case, pieces, off_deg)[index]
    at = case.walls[index]
    # The corner of the cut that lies on the wall is cut away behind the profile.
    seen = [point for point in body.end_face(end) if dot(point, at.out) > 1e-6]
    assert len(seen) >= 2
    return max(off_moulding_mm(case, point, 1 - index) for point in seen)


def check_scribes(lean_deg: float, cases: int) -> None:
    draw = random.Random(f"scribes {lean_deg}")
    for number in range(cases):
        case = drawn_case(draw, RunEnd.INTERNAL, lean_deg=lean_deg)
        profile = case.boards[0].profile
        case = replace(case, section=moulded(profile.width_mm, profile.thickness_mm))
        through = "AB"[number % 2]
        assert exposed_mm(case, through) < CLOSE_MM
        assert exposed_mm(case, through, off_deg=0.5) > CLOSE_MM


@pytest.mark.parametrize("lean_deg", [0.0, 6.0], ids=["plumb", "leaning alike"])
def test_a_scribe_exposes_the_other_board_s_profile(lean_deg: float) -> None:
    check_scribes(lean_deg, FEW)


@pytest.mark.long
@pytest.mark.parametrize("lean_deg", [0.0, 6.0], ids=["plumb", "leaning alike"])
def test_two_hundred_scribes_expose_the_other_board_s_profile(lean_deg: float) -> None:
    check_scribes(lean_deg, MANY)


def check_through(cases: int) -> None:
    draw = random.Random("running through")
    for number in range(cases):
        case = drawn_case(draw, RunEnd.INTERNAL, lean_deg=4.0, unequal_deg=8.0)
        through = "AB"[number % 2]
        index = "AB".index(through)
        body = laid(case, planned(case, through=through))[index]
        next_wall = case.walls[1 - index]
        end = body.end_face(Side.RIGHT if index == 0 else Side.LEFT)
        off_mm = [dot(point, next_wall.out) for point in end]
        # It touches the other wall without going into it, and its board covers what stays open.
        assert min(off_mm) > -CLOSE_MM
        thickness_mm = case.boards[0].profile.thickness_mm
        backs = [dot(p, next_wall.out) for p in end if abs(dot(p, case.walls[index].out)) < 1e-6]
        blunt = abs(math.tan(math.radians(90.0 - case.corner_deg)))
        assert max(backs) < thickness_mm * (0.5 + blunt) + CLOSE_MM


def test_a_board_that_runs_through_does_not_jam_and_its_end_stays_hidden() -> None:
    check_through(FEW)


@pytest.mark.long
def test_two_hundred_boards_that_run_through_do_not_jam() -> None:
    check_through(MANY)


def test_a_board_that_follows_a_falling_floor_still_closes_its_corner() -> None:
    draw = random.Random("falling floor")
    for _ in range(FEW):
        case = drawn_case(draw, RunEnd.EXTERNAL, lean_deg=2.0)
        a, b = case.boards
        rise_mm = draw.choice((-1.0, 1.0)) * a.length_mm * draw.uniform(0.009, 0.02)
        # Its left end lies so much lower than the corner; over 60 mm of height that is never less
        # than the half millimetre which is left out.
        case = replace(case, boards=(replace(a, floor=((0.0, -rise_mm), (a.length_mm, 0.0))), b))
        pieces = planned(case)
        at = case.walls[0]
        along = turned(at.along, at.out, math.degrees(math.atan2(rise_mm, a.length_mm)))
        assert dot(along, FLOOR) * rise_mm > 0
        up = cross(at.out, along)
        body = cut_piece(pieces[0], case.section).placed(
            scaled(along, -a.length_mm), along, up, at.out
        )
        other = laid(case, pieces)[1]
        met = joint(body, Side.RIGHT, other, Side.LEFT)
        assert max(met.gap_mm, met.overlap_mm) < CLOSE_MM


def test_scarfed_parts_close_and_keep_the_run_s_length() -> None:
    draw = random.Random("scarfs")
    for _ in range(FEW):
        length_mm = draw.uniform(5600.0, 14000.0)
        pieces, _ = plan_runs(a_house(runs=[a_run("A", length_mm, "square", "square")]), Shapes())
        assert len(pieces) > 1
        flat: Vector = (1.0, 0.0, 0.0)
        start = 0.0
        bodies = []
        for piece in pieces:
            body = cut_piece(piece, moulded(piece.width_mm, piece.thickness_mm))
            bodies.append(body.placed((start, 0.0, 0.0), flat, FLOOR, (0.0, -1.0, 0.0)))
            start += piece.inner_mm
        assert start == pytest.approx(length_mm, abs=CLOSE_MM)
        for one, other in pairwise(bodies):
            assert joint(one, Side.RIGHT, other, Side.LEFT).worst_mm < CLOSE_MM


@pytest.mark.parametrize("end", ["left", "right"])
@pytest.mark.parametrize(("off_deg", "closes"), [(0.0, True), (0.5, False)])
def test_a_return_closes_the_open_end_back_to_the_wall(
    end: str, off_deg: float, closes: bool
) -> None:
    ends = ("return", "square") if end == "left" else ("square", "return")
    pieces, _ = plan_runs(a_house(runs=[a_run("A", 640.0, *ends)]), Shapes())
    board, small = pieces
    section = moulded(board.width_mm, board.thickness_mm)
    t = board.thickness_mm
    # The wall is y = 0, the room in front of it; the board's face ends at 640, or begins at 0.
    a = cut_piece(board, section, off_deg=off_deg).placed(
        (0.0, 0.0, 0.0), (1.0, 0.0, 0.0), FLOOR, (0.0, -1.0, 0.0)
    )
    b = cut_piece(small, section, off_deg=off_deg)
    if end == "right":
        b = b.placed((640.0 - t, -t, 0.0), (0.0, 1.0, 0.0), FLOOR, (1.0, 0.0, 0.0))
        met = joint(a, Side.RIGHT, b, Side.LEFT)
    else:
        b = b.placed((t, 0.0, 0.0), (0.0, -1.0, 0.0), FLOOR, (-1.0, 0.0, 0.0))
        met = joint(b, Side.RIGHT, a, Side.LEFT)
    assert (met.worst_mm < CLOSE_MM) is closes


def test_without_a_word_on_who_runs_through_each_board_meets_the_next_once() -> None:
    case = drawn_case(random.Random("who"), RunEnd.INTERNAL, lean_deg=1.0)
    met = meetings(case.boards)
    assert met["A", BoardSide.RIGHT].runs_through is False
    assert met["B", BoardSide.LEFT].runs_through is True
