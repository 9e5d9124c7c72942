import pytest

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Board, Corner, Side, Stop
from longpoint.pieces.run_floors import (
    board_scribes,
    climb_deg,
    floor_findings,
    scribe_notes,
)
from longpoint.quantities.length import Units
from longpoint.survey.profiles import Profile
from longpoint.survey.rooms import FloorFit, FloorPoint, RunEnd
from longpoint.trims.floor_scribe import Scribe
from tests.room_builder import a_house

OG170 = Profile(name="OG170", width_mm=170.0, thickness_mm=20.0)
FALLS_9 = ((0.0, 9.0), (4188.0, 0.0))
HUMP_6 = ((0.0, 0.0), (1900.0, 6.0), (3640.0, 0.0))
FALLS_12 = ((0.0, 12.0), (3402.0, 0.0))


def board(
    mark: str,
    length_mm: float,
    floor: tuple[FloorPoint, ...] = (),
    fit: FloorFit = FloorFit.FOLLOW,
    *,
    left: Corner | None = None,
    right: Corner | None = None,
) -> Board:
    return Board(
        mark=mark,
        room="Parlour",
        profile=OG170,
        length_mm=length_mm,
        u_mm=1.0,
        left=Stop(kind=RunEnd.INTERNAL, at=left),
        right=Stop(kind=RunEnd.INTERNAL, at=right),
        sum_text="",
        floor=floor,
        floor_fit=fit,
    )


def said(*boards: Board) -> tuple[Finding, ...]:
    return floor_findings(a_house(), boards, board_scribes(boards))


def test_a_floor_that_falls_evenly_is_followed_and_the_other_way_is_told() -> None:
    (note,) = said(board("R1", 4188.0, FALLS_9))
    assert (note.code, note.severity, note.place) == ("floor-followed", Severity.NOTE, "R1")
    assert "falls 9 mm left to right" in note.read
    assert "9 comes off at the left, 0 at the right" in note.do
    assert "161 of 170" in note.do


def test_a_hump_is_marked_on_the_piece_and_asks_for_nothing_else() -> None:
    hump = board("R2", 3640.0, HUMP_6)
    assert said(hump) == ()
    assert scribe_notes(board_scribes([hump])["R2"], Units.MM) == (
        "scribe the bottom edge: 0 off at the left, 6 at 1900, 0 at the right",
    )


def test_twelve_off_a_level_board_is_too_much_and_both_ways_out_are_told() -> None:
    (deep,) = said(board("R10", 3402.0, FALLS_12, FloorFit.LEVEL))
    assert (deep.code, deep.severity) == ("scribe-deep", Severity.WARNING)
    assert "12 has to come off the bottom of R10 at its left end" in deep.read
    assert "158 of 170" in deep.read
    assert "no source" in deep.wrong
    assert 'floor_fit = "follow": then 0 comes off, its top is 12 out of level' in deep.do
    assert "6 at most, which leaves 164" in deep.do
    assert "bead at least 9 high" in deep.do


def test_the_same_floor_followed_asks_for_no_scribing() -> None:
    (note,) = said(board("R10", 3402.0, FALLS_12))
    assert note.code == "floor-followed"
    assert "12 mm out of level in 3402" in note.wrong


def test_a_hump_too_high_to_follow_leaves_the_bead() -> None:
    (deep,) = said(board("R2", 3640.0, ((0.0, 0.0), (1900.0, 14.0), (3640.0, 0.0))))
    assert deep.code == "scribe-deep"
    assert "follow" not in deep.do
    assert "1900 from its left end" in deep.read
    assert deep.do.startswith("Split it: take off half of every figure, 7 at most")


def test_boards_set_level_in_one_room_share_one_level() -> None:
    scribes = board_scribes(
        [
            board("R1", 4188.0, FALLS_9, FloorFit.LEVEL),
            board("R5", 1206.0, ((0.0, 9.0),), FloorFit.LEVEL),
            board("R2", 3640.0, HUMP_6),
        ]
    )
    assert (scribes["R1"].left_mm, scribes["R5"].right_mm) == (9.0, 9.0)
    assert scribes["R2"].left_mm == 0.0


def test_tops_that_step_in_a_corner_are_found() -> None:
    corner = Corner("Parlour", 3)
    level = board("R1", 4188.0, FALLS_9, FloorFit.LEVEL, left=corner)
    unread = board("R9", 1018.0, right=corner)
    (step,) = said(level, unread)
    assert (step.code, step.place) == ("corner-heights", "R1")
    assert "stand 161 and 170 over the floor (no floor was read under R9)" in step.read
    assert "9 mm" in step.wrong
    followed = board("R1", 4188.0, FALLS_9, left=corner)
    assert [f.code for f in said(followed, unread)] == ["floor-followed"]


def test_little_is_not_worth_a_line() -> None:
    assert scribe_notes(Scribe(marks=((0.0, 0.5), (900.0, 0.0))), Units.MM) == ()


def test_a_board_climbs_to_one_end_what_it_falls_to_the_other() -> None:
    scribe = Scribe(marks=((0.0, 0.0), (1000.0, 0.0)), rise_mm=10.0)
    assert climb_deg(scribe, Side.RIGHT) == pytest.approx(0.573, abs=0.001)
    assert climb_deg(scribe, Side.LEFT) == pytest.approx(-0.573, abs=0.001)
    assert climb_deg(None, Side.LEFT) == 0.0
