from collections.abc import Sequence
from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.sticks.order.saw_order import (
    cutting_order,
    saw_steps,
    setting_changes,
    settings_used,
)
from longpoint.sticks.order.saw_setting import Side
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource
from longpoint.survey.instruments import Saw

SAW = Saw(name="S1", found_left_deg=45.1, found_right_deg=45.0)


def piece(mark: str, long_mm: float, left_deg: float, right_deg: float) -> Piece:
    ends = [
        EndCut(kind=CutKind.MITRE, mitre_deg=deg) if deg else SQUARE_CUT
        for deg in (left_deg, right_deg)
    ]
    return Piece(
        mark=mark,
        role=Role.HEAD,
        profile="A",
        width_mm=57.0,
        thickness_mm=18.0,
        inner_mm=long_mm - 114.0,
        outer_mm=long_mm,
        back_mm=long_mm,
        left=ends[0],
        right=ends[1],
    )


def stick(name: str, *pieces: Piece) -> CutStick:
    laid, at = [], 10.0
    for one in pieces:
        laid.append(Laid(piece=one.mark, start_mm=at, end_mm=at + one.long_mm))
        at += one.long_mm + 4.0
    return CutStick(
        name=name,
        profile="A",
        length_mm=5400.0,
        source=StickSource.STOCK,
        laid=tuple(laid),
        used_mm=at,
        left_mm=0.0,
    )


def names(sticks: Sequence[CutStick]) -> str:
    return "".join(one.name for one in sticks)


def test_the_stick_with_the_biggest_piece_comes_first() -> None:
    pieces = (piece("p", 900, 45, 45), piece("q", 2100, 45, 45), piece("r", 1500, 45, 45))
    sticks = tuple(stick(p.mark, p) for p in pieces)
    assert names(cutting_order(sticks)) == "qrp"


def test_sticks_about_as_long_stay_as_they_come() -> None:
    pieces = (piece("p", 1960, 45, 45), piece("q", 2100, 44.6, 45.4), piece("r", 2000, 45, 45))
    sticks = tuple(stick(p.mark, p) for p in pieces)
    assert names(cutting_order(sticks)) == "pqr"
    # By hand: the right cuts L 45, L 45.4 differ from the left cuts R 45, R 44.6 on every piece
    # and between all pieces, so the saw is set anew before each of the 6 cuts but the first.
    assert setting_changes(saw_steps(CutPlan(sticks=sticks), pieces, SAW)) == 5


def test_a_stick_that_came_late_is_cut_before_those_it_is_much_bigger_than() -> None:
    pieces = (piece("p", 2100, 45, 45), piece("q", 1500, 45, 45), piece("new", 2000, 45, 45))
    sticks = tuple(stick(p.mark, p) for p in pieces)
    assert [one.name for one in cutting_order(sticks)] == ["p", "new", "q"]


def test_settings_are_counted_stops_first_then_by_angle() -> None:
    pieces = (
        piece("p", 900, 45, 45),
        piece("q", 900, 44.6, 45),
        piece("r", 900, 0, 44.6),
        replace(piece("s", 900, 0, 0), right=EndCut(kind=CutKind.BEVEL, bevel_deg=45.0)),
    )
    used = settings_used(saw_steps(CutPlan(sticks=(stick("A-1", *pieces),)), pieces, SAW))
    told = [
        (u.setting.swing, u.setting.swing_deg, u.setting.dial_deg, u.setting.tilt, u.count)
        for u in used
    ]
    # A right end whose outer edge is the longer is swung left; 44.6 on the side that cuts 0.1 more
    # than it shows is set to 44.5.
    assert told == [
        (Side.SQUARE, 0.0, None, Side.SQUARE, 2),
        (Side.LEFT, 45.0, 44.9, Side.SQUARE, 2),
        (Side.RIGHT, 45.0, 45.0, Side.SQUARE, 1),
        (Side.SQUARE, 0.0, None, Side.LEFT, 1),
        (Side.LEFT, 44.6, 44.5, Side.SQUARE, 1),
        (Side.RIGHT, 44.6, 44.6, Side.SQUARE, 1),
    ]
    assert [u.is_at_45 for u in used] == [False, True, True, True, False, False]
    assert [u.is_square for u in used] == [True, *[False] * 5]
    assert used[-2].pieces == ("r",)


def test_a_piece_with_one_setting_at_both_ends_is_named_once_and_counted_twice() -> None:
    own = (piece("p", 900, 0, 0),)
    (used,) = settings_used(saw_steps(CutPlan(sticks=(stick("A-1", *own),)), own, SAW))
    assert (used.count, used.pieces) == (2, ("p",))


@given(st.lists(st.tuples(st.integers(300, 2400), st.sampled_from((0, 44.6, 45))), max_size=12))
def test_ordering_again_changes_nothing_and_loses_nothing(
    drawn: list[tuple[int, float]],
) -> None:
    pieces = tuple(piece(f"p{n}", mm, deg, 45) for n, (mm, deg) in enumerate(drawn))
    sticks = tuple(stick(p.mark, p) for p in pieces)
    once = cutting_order(sticks)
    assert sorted(map(id, once)) == sorted(map(id, sticks))
    assert cutting_order(once) == once
    assert sum(u.count for u in settings_used(saw_steps(CutPlan(sticks=once), pieces, SAW))) == (
        2 * len(pieces)
    )
