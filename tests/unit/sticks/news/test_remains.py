from dataclasses import replace

import pytest

from longpoint.pieces.piece import CutKind, EndCut, Piece
from longpoint.sticks.news.remains import (
    Remains,
    behind_point_mm,
    fitting,
    left_part,
    right_part,
    seat_in,
    tip_to_tip_mm,
    whole,
)
from tests.random_sticks import architrave_piece, mitre, skirting_piece

KERF_MM = 2.5


def head(mark: str, inner_mm: float, left: float = 45.0, right: float = 45.0) -> Piece:
    return architrave_piece(mark, inner_mm, left, right)


def kept(piece: Piece) -> Remains:
    rest = whole(piece)
    assert rest is not None
    return rest


def test_from_tip_to_tip_a_mitred_piece_is_as_long_as_its_outer_edge() -> None:
    assert tip_to_tip_mm(head("W1-head", 1000.0)) == pytest.approx(1132.0)
    assert tip_to_tip_mm(skirting_piece("K1", 3000.0, -45.0, 45.0)) == pytest.approx(3018.0)


def test_a_rough_end_is_square_across() -> None:
    assert behind_point_mm(None, 66.0, 18.0) == (0.0, 0.0, 0.0, 0.0)


def test_a_bevel_leaves_the_face_or_the_back_behind() -> None:
    relieved = EndCut(kind=CutKind.BEVEL, bevel_deg=-45.0)
    behind = behind_point_mm(relieved, 95.0, 18.0)

    assert behind == pytest.approx((0.0, 0.0, 18.0, 18.0))


def test_a_shorter_head_keeps_one_cut_and_needs_one_kerf_and_no_more() -> None:
    rest = kept(head("W2-head", 1000.0))

    just = seat_in(rest, head("D1-head", 1000.0 - KERF_MM), KERF_MM, can_turn=False)
    assert just is not None
    assert (just.keeps_left, just.keeps_right, just.laid.start_mm) == (True, False, 0.0)
    assert just.laid.end_mm == pytest.approx(1132.0 - KERF_MM)
    too_long = head("D1-head", 1000.01 - KERF_MM)
    assert seat_in(rest, too_long, KERF_MM, can_turn=False) is None


def test_a_piece_without_a_like_end_needs_a_kerf_at_both() -> None:
    # Square ends in a mitred piece: along the inner edge, where it is shortest.
    rest = kept(head("W2-head", 1000.0))

    assert seat_in(rest, head("X", 1000.0 - 2 * KERF_MM, 0.0, 0.0), KERF_MM, can_turn=False)
    longer = head("X", 1000.01 - 2 * KERF_MM, 0.0, 0.0)
    assert seat_in(rest, longer, KERF_MM, can_turn=False) is None


def test_a_whole_piece_serves_where_the_very_same_is_needed() -> None:
    seat = seat_in(kept(head("W2-head", 1000.0)), head("W5-head", 1000.0), KERF_MM, can_turn=False)

    assert seat is not None
    assert seat.keeps_left
    assert seat.keeps_right


def test_a_leg_turns_into_the_other_leg_only_where_the_section_allows_it() -> None:
    # A right leg is mitred at its left, a left leg at its right: turned, they lie the same way
    # round, but then the mitre leans the other way, so that its triangle is lost.
    rest = kept(head("W2-right-leg", 1500.0, 45.0, 0.0))
    leg = head("W2-left-leg", 1000.0, 0.0, 45.0)
    seat = seat_in(rest, leg, KERF_MM, can_turn=True)

    assert seat is not None
    assert not seat.keeps_left


def test_the_end_that_went_wrong_is_rough_and_the_other_one_stays() -> None:
    piece = head("W2-head", 1000.0)
    left, right = left_part(piece, 700.0, turned=False), right_part(piece, 700.0, turned=False)

    assert left == Remains(of="W2-head", length_mm=700.0, left=piece.left)
    assert right == Remains(of="W2-head", length_mm=700.0, right=piece.right)
    assert left_part(piece, 700.0, turned=True) == right


def test_a_scribed_end_is_never_kept_and_loses_a_thickness() -> None:
    scribed = replace(
        skirting_piece("K1", 3000.0, 0.0, 45.0), left=EndCut(kind=CutKind.SCRIBE, bevel_deg=0.0)
    )
    rest = kept(scribed)

    assert rest.left is None
    assert rest.length_mm == pytest.approx(3018.0 - 18.0)
    assert seat_in(
        rest, replace(scribed, inner_mm=2000.0, outer_mm=2000.0), KERF_MM, can_turn=False
    )


def test_nothing_is_left_of_a_piece_spoiled_at_its_very_point() -> None:
    assert left_part(head("W2-head", 1000.0), 0.0, turned=False) is None


def test_the_longest_that_fits_comes_first() -> None:
    rest = Remains(of="W2-head", length_mm=1000.0, left=mitre(45.0))
    pieces = [head(f"P{mm:.0f}", mm) for mm in (500.0, 900.0, 840.0)]

    found = fitting(rest, pieces, KERF_MM, can_turn=False)
    assert [piece.mark for piece, _ in found] == ["P840", "P500"]


def test_a_spoiled_piece_never_serves_as_itself() -> None:
    piece, twin = head("W2-head", 1000.0), head("W5-head", 1000.0)

    found = fitting(kept(piece), [piece, twin], KERF_MM, can_turn=False)
    assert [each.mark for each, _ in found] == ["W5-head"]
