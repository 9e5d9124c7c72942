"""Skirting up a stair and a handrail's returns, cut as solids from their settings, close."""

import math
import random
from dataclasses import dataclass, replace
from typing import Final

import pytest

from longpoint.catalogue.stairs.handrail import plan_handrail
from longpoint.catalogue.stairs.stair_skirting import plan_stair_skirting
from longpoint.catalogue.trim import Asked
from longpoint.pieces.boards import Side as BoardSide
from longpoint.pieces.piece import Piece
from longpoint.pieces.runs import plan_runs
from longpoint.shape.fitted import Shapes
from longpoint.survey.profiles import Profile
from longpoint.survey.trims import TrimEntry
from longpoint.trims.skirting_joints import plumb_height_mm
from tests.room_builder import a_house, a_run
from tests.solids.kernel import Side, cut_piece, joint, moulded
from tests.solids.vectors import Vector, scaled

CLOSE_MM: Final = 0.01
FEW, MANY = 10, 200
FLOOR: Final[Vector] = (0.0, 0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stair:
    """A stair along the wall y = 0 with skirting: its pitch and where its board's ends lie.

    The board's lower edge begins at the origin and climbs in +x.
    """

    pitch_deg: float
    length_mm: float
    profile: Profile

    @property
    def along(self) -> Vector:
        pitch = math.radians(self.pitch_deg)
        return (math.cos(pitch), 0.0, math.sin(pitch))

    @property
    def across(self) -> Vector:
        pitch = math.radians(self.pitch_deg)
        return (-math.sin(pitch), 0.0, math.cos(pitch))


TO_ROOM: Final[Vector] = (0.0, -1.0, 0.0)
LEVEL: Final[Vector] = (1.0, 0.0, 0.0)


def drawn_stair(draw: random.Random) -> Stair:
    return Stair(
        pitch_deg=draw.uniform(20.0, 45.0),
        length_mm=draw.uniform(900.0, 4200.0),
        profile=Profile(
            name="SK90", width_mm=draw.uniform(70.0, 220.0), thickness_mm=draw.uniform(12.0, 25.0)
        ),
    )


def stair_pieces(stair: Stair, **keys: object) -> tuple[Piece, ...]:
    """Return the program's pieces of the raked board."""
    rise_mm = 180.0
    going_mm = rise_mm / math.tan(math.radians(stair.pitch_deg))
    entry = TrimEntry(
        mark="ST1",
        kind="stair-skirting",
        profile="SK90",
        tape="T1",
        values={
            "risers": 1,
            "total_rise": rise_mm,
            "going": going_mm,
            "length": stair.length_mm,
            **keys,
        },
        written={},
    )
    home = a_house(profiles=[stair.profile], stock=())
    plan = plan_stair_skirting(Asked(house=home, shapes=Shapes(), entry=entry))
    return plan.pieces


def level_piece(stair: Stair, side: BoardSide, rake_deg: float) -> Piece:
    """Return a level run of 800 whose one end is a rake."""
    ends = ("square", "rake") if side is BoardSide.RIGHT else ("rake", "square")
    run = replace(
        a_run("L", 800.0, *ends),
        left_rake_deg=rake_deg if side is BoardSide.LEFT else None,
        right_rake_deg=rake_deg if side is BoardSide.RIGHT else None,
    )
    pieces, _ = plan_runs(a_house(runs=[run], profiles=[stair.profile], stock=()), Shapes())
    return pieces[0]


def rake_joints_mm(stair: Stair, off_deg: float = 0.0) -> tuple[float, float]:
    """Return how the joints at foot and head close."""
    section = moulded(stair.profile.width_mm, stair.profile.thickness_mm)
    (raked,) = stair_pieces(stair)
    foot = level_piece(stair, BoardSide.RIGHT, stair.pitch_deg)
    head = level_piece(stair, BoardSide.LEFT, -stair.pitch_deg)
    board = cut_piece(raked, section, off_deg=off_deg).placed(
        (0.0, 0.0, 0.0), stair.along, stair.across, TO_ROOM
    )
    below = cut_piece(foot, section, off_deg=off_deg).placed(
        (-800.0, 0.0, 0.0), LEVEL, FLOOR, TO_ROOM
    )
    above = cut_piece(head, section, off_deg=off_deg).placed(
        scaled(stair.along, stair.length_mm), LEVEL, FLOOR, TO_ROOM
    )
    return (
        joint(below, Side.RIGHT, board, Side.LEFT).worst_mm,
        joint(board, Side.RIGHT, above, Side.LEFT).worst_mm,
    )


def check_rakes(cases: int) -> None:
    draw = random.Random("rakes")
    for _ in range(cases):
        stair = drawn_stair(draw)
        assert max(rake_joints_mm(stair)) < CLOSE_MM
        assert min(rake_joints_mm(stair, off_deg=0.5)) > CLOSE_MM


def test_level_and_raked_boards_close_at_foot_and_head() -> None:
    check_rakes(FEW)


@pytest.mark.long
def test_two_hundred_level_and_raked_boards_close() -> None:
    check_rakes(MANY)


def test_a_plumb_cut_stands_as_high_as_predicted() -> None:
    draw = random.Random("plumb cuts")
    for _ in range(FEW):
        stair = drawn_stair(draw)
        (raked,) = stair_pieces(stair, foot="plumb", head="plumb")
        body = cut_piece(raked).placed((0.0, 0.0, 0.0), stair.along, stair.across, TO_ROOM)
        for end in Side:
            corners = body.end_face(end)
            assert max(x for x, _, _ in corners) - min(x for x, _, _ in corners) < CLOSE_MM
            high_mm = max(z for _, _, z in corners) - min(z for _, _, z in corners)
            predicted = plumb_height_mm(stair.profile.width_mm, stair.pitch_deg)
            assert high_mm == pytest.approx(predicted, abs=CLOSE_MM)


def rail_returns_mm(stair: Stair, clear_mm: float, off_deg: float = 0.0) -> tuple[float, ...]:
    """Return how the returns of a handrail close; its back stands clear of the wall y = 0."""
    thickness_mm = stair.profile.thickness_mm
    entry = TrimEntry(
        mark="HR1",
        kind="handrail",
        profile="SK90",
        tape="T1",
        values={
            "pitch": (stair.pitch_deg,),
            "length": stair.length_mm,
            "height": 900.0,
            "foot": "return",
            "head": "return",
            "clear": clear_mm,
        },
        written={},
    )
    home = a_house(profiles=[stair.profile], stock=())
    plan = plan_handrail(Asked(house=home, shapes=Shapes(), entry=entry))
    section = moulded(stair.profile.width_mm, thickness_mm)
    rail, foot, head = (cut_piece(piece, section, off_deg=off_deg) for piece in plan.pieces)
    rail = rail.placed((0.0, -clear_mm, 0.0), stair.along, stair.across, TO_ROOM)
    # The returns lean with the rail; the head's runs to the wall, the foot's from it.
    x, _, z = scaled(stair.along, stair.length_mm - thickness_mm)
    head = head.placed((x, -clear_mm - thickness_mm, z), (0.0, 1.0, 0.0), stair.across, stair.along)
    down = scaled(stair.along, -1.0)
    x, _, z = scaled(stair.along, thickness_mm)
    foot = foot.placed((x, 0.0, z), TO_ROOM, stair.across, down)
    on_wall = [point[1] for point in (*head.end_face(Side.RIGHT), *foot.end_face(Side.LEFT))]
    assert max(abs(y) for y in on_wall) < CLOSE_MM
    return (
        joint(rail, Side.RIGHT, head, Side.LEFT).worst_mm,
        joint(foot, Side.RIGHT, rail, Side.LEFT).worst_mm,
    )


def test_a_handrail_s_returns_close_and_reach_the_wall() -> None:
    draw = random.Random("handrails")
    for _ in range(FEW):
        stair, clear_mm = drawn_stair(draw), draw.uniform(35.0, 75.0)
        assert max(rail_returns_mm(stair, clear_mm)) < CLOSE_MM
        assert min(rail_returns_mm(stair, clear_mm, off_deg=0.5)) > CLOSE_MM
