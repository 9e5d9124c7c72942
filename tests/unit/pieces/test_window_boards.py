from dataclasses import replace
from typing import Any

import pytest

from longpoint.errors import PieceError
from longpoint.pieces.piece import CutKind, Role
from longpoint.pieces.window_board_findings import below_findings
from longpoint.pieces.window_boards import below_pieces, notches
from longpoint.quantities.length import Units
from longpoint.survey.openings import ApronEnds, BoardFit, Layout, Method, Opening
from longpoint.survey.profiles import Profile
from tests.fitted_houses import opening, quad, rectangle
from tests.set_houses import planned, set_house, set_of

FIT = BoardFit(depth_left_mm=140.0, depth_right_mm=142.0, nosing_mm=46.0)


def window(**changes: Any) -> Opening:  # noqa: ANN401
    """Return a window of 1180 on a 225 board with horns of 25."""
    plain = opening(
        rectangle(1180.0, 620.0), layout=Layout.BOARD_AND_APRON, board="WB225", horn_mm=25.0
    )
    return replace(plain, **changes)


def test_the_board_runs_from_horn_to_horn_and_says_how() -> None:
    made, _ = planned(set_house(window()))
    board, apron = made["W1-board"], made["W1-apron"]
    assert board.inner_mm == pytest.approx(1180 + 10 + 132 + 50)
    assert board.hand_sum == "1180 + 2 x 5 + 2 x 66 legs + 2 x 25 horns = 1372"
    assert apron.hand_sum == "1180 + 2 x 5 + 2 x 66 legs = 1322"
    assert board.notes == ()


def test_a_fitted_board_is_ripped_and_notched_at_each_end() -> None:
    made, found = planned(set_house(window(board_fit=FIT)))
    # Along: quirk 5 + leg 66 + horn 25; across: sash to wall.
    assert made["W1-board"].notes == (
        "lies with its back edge, to the sash, away from you",
        "rip to 186 at the left, 188 at the right",
        "notch 96 x 140 at the left end, 96 x 142 at the right",
    )
    assert found == ()


def test_equal_ends_are_said_once_and_a_board_of_the_right_width_is_not_ripped() -> None:
    even = replace(FIT, depth_right_mm=140.0)
    made, _ = planned(set_house(window(board_fit=even)))
    assert made["W1-board"].notes[1:] == (
        "rip to 186",
        "notch 96 x 140 at both ends, along x back from the sash",
    )
    fits = Profile(name="WB225", width_mm=186.0, thickness_mm=25.0)
    made, _ = planned(set_house(window(board_fit=even), profiles=(fits,)))
    assert "rip" not in " ".join(made["W1-board"].notes)


def test_notches_and_inside_add_up_to_the_board() -> None:
    racked = quad((0, 0), (1180, 0), (1196, 622), (14, 618))
    for method in (Method.BATCH, Method.BENCH):
        one = replace(window(board_fit=FIT, method=method), readings=opening(racked).readings)
        face = set_of(one)
        left, right = notches(face, FIT)
        board = next(p for p in below_pieces(face) if p.role is Role.BOARD)
        assert left.along_mm + 1180.0 + right.along_mm == pytest.approx(board.inner_mm, abs=1e-6)
        # A true frame shares the lean, so that its ends stand unevenly over the linings.
        is_uneven = abs(left.along_mm - right.along_mm) > 5.0
        assert is_uneven is (method is Method.BENCH)


def test_linings_read_at_the_board_share_what_they_differ_between_the_ends() -> None:
    read = replace(FIT, inside_mm=1176.0)
    left, right = notches(set_of(window()), read)
    assert (left.along_mm, right.along_mm) == pytest.approx((98.0, 98.0))
    assert (left.depth_mm, right.depth_mm) == (140.0, 142.0)
    out_mm = 98.0 * 2.0 / 1176.0
    assert left.rip_mm == pytest.approx(186.0 - out_mm)
    assert right.rip_mm == pytest.approx(188.0 + out_mm)


def test_the_wall_runs_on_straight_to_the_ends_of_the_board() -> None:
    read = replace(FIT, inside_mm=1180.0, depth_left_mm=160.0, depth_right_mm=185.0)
    face = set_of(window(board_fit=read))
    left, right = notches(face, read)
    board = next(p for p in below_pieces(face) if p.role is Role.BOARD)
    # Three points of one line: at the end, at the lining, at the other lining.
    slope = (185.0 - 160.0) / 1180.0
    assert left.end_depth_mm == pytest.approx(160.0 - slope * left.along_mm)
    assert right.end_depth_mm == pytest.approx(185.0 + slope * right.along_mm)
    assert right.rip_mm - left.rip_mm == pytest.approx(slope * board.inner_mm)
    assert "at its end" in " ".join(board.notes)


def test_the_notes_give_both_depths_of_a_notch_where_they_differ() -> None:
    wide = opening(
        rectangle(1221.0, 620.0),
        layout=Layout.BOARD_AND_APRON,
        board="WB225",
        horn_mm=42.1,
    )
    fit = BoardFit(inside_mm=1221.0, depth_left_mm=160.0, depth_right_mm=185.0, nosing_mm=40.0)
    left, right = notches(set_of(wide), fit)
    # 25 in 1221 is 0.02048 a millimetre; 113.1 further out 2.3.
    assert (left.along_mm, right.along_mm) == pytest.approx((113.1, 113.1))
    assert (left.end_depth_mm, right.end_depth_mm) == pytest.approx((157.68, 187.32), abs=0.01)
    assert (left.rip_mm, right.rip_mm) == pytest.approx((197.68, 227.32), abs=0.01)
    broad = Profile(name="WB225", width_mm=230.0, thickness_mm=25.0)
    made, _ = planned(set_house(replace(wide, board_fit=fit), profiles=(broad,)))
    assert made["W1-board"].notes[1:] == (
        "rip to 197.5 at the left, 227.5 at the right",
        "notch 113 x 160 (157.5 at its end) at the left end, 113 x 185 (187.5 at its end) at the "
        "right",
    )


def test_from_the_second_face_left_and_right_change_places() -> None:
    face = set_of(window())
    behind = replace(face, fitted=replace(face.fitted, face="b"))
    assert [notch.depth_mm for notch in notches(behind, FIT)] == [142.0, 140.0]


def test_a_board_that_reaches_nowhere_past_its_linings_is_refused() -> None:
    with pytest.raises(PieceError):
        notches(set_of(window()), replace(FIT, inside_mm=1500.0))


def test_a_returned_apron_is_long_on_the_face_and_gets_two_returns() -> None:
    made, found = planned(set_house(window(apron_ends=ApronEnds.RETURN)))
    apron = made["W1-apron"]
    assert (apron.inner_mm, apron.outer_mm) == pytest.approx((1322.0, 1322.0))
    assert apron.back_mm == pytest.approx(1322.0 - 2 * 18.0)
    for cut in (apron.left, apron.right):
        assert (cut.kind, cut.bevel_deg) == (CutKind.BEVEL, -45.0)
    left, right = made["W1-apron-return-left"], made["W1-apron-return-right"]
    assert (left.right.bevel_deg, right.left.bevel_deg) == (-45.0, -45.0)
    assert left.left.kind is right.right.kind is CutKind.SQUARE
    for piece in (left, right):
        assert (piece.role, piece.opening, piece.run) == (Role.RETURN, "W1", None)
        assert (piece.inner_mm, piece.back_mm) == (18.0, 0.0)
    assert [(f.code, f.place) for f in found] == [("return-small", "W1")]


def test_an_apron_too_short_for_its_returns_is_refused() -> None:
    tiny = opening(
        rectangle(10.0, 620.0), layout=Layout.BOARD_AND_APRON, width_mm=8.0, quirk_mm=1.0
    )
    with pytest.raises(PieceError):
        below_pieces(set_of(tiny, apron_ends=ApronEnds.RETURN))


def test_in_inches_the_notes_are_in_sixteenths() -> None:
    made, _ = planned(set_house(window(board_fit=FIT), units=Units.INCH))
    assert "notch 3 3/4 x 5 1/2 at the left end, 3 3/4 x 5 9/16 at the right" in (
        made["W1-board"].notes
    )


def test_other_layouts_have_nothing_below() -> None:
    face = set_of(opening(rectangle(1180.0, 620.0)))
    assert (below_pieces(face), below_findings(face)) == ((), ())
