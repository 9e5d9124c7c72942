import math
from dataclasses import replace

import pytest

from longpoint.pieces.piece import LEAST_HOOK_DEG, SQUARE_CUT, CutKind, EndCut, HookEnd, Piece, Role


def mitre(deg: float) -> EndCut:
    return EndCut(kind=CutKind.MITRE, mitre_deg=deg)


PIECE = Piece(
    mark="W1-head",
    role=Role.HEAD,
    opening="W1",
    profile="66 wide",
    width_mm=66.0,
    thickness_mm=18.0,
    inner_mm=1190.0,
    outer_mm=1322.0,
    back_mm=1322.0,
    left=mitre(45.0),
    right=mitre(45.0),
)


def test_the_tape_is_hooked_on_the_left_long_point_and_read_on_the_slant() -> None:
    assert PIECE.hook_from is HookEnd.LEFT
    assert PIECE.hook_mm == pytest.approx(math.hypot(1190.0 + 66.0, 66.0))


def test_a_piece_square_on_the_left_is_hooked_on_the_right() -> None:
    leg = replace(PIECE, left=SQUARE_CUT)
    assert leg.hook_from is HookEnd.RIGHT
    assert leg.hook_mm == PIECE.hook_reading_mm(45.0)


def test_a_piece_square_at_both_ends_has_no_point_to_hook() -> None:
    board = replace(PIECE, left=SQUARE_CUT, right=SQUARE_CUT)
    assert (board.hook_from, board.hook_mm) == (None, None)


@pytest.mark.parametrize(
    ("foot_deg", "hooked"),
    [
        (-30.0, HookEnd.RIGHT),
        (0.5, HookEnd.RIGHT),
        (LEAST_HOOK_DEG - 0.01, HookEnd.RIGHT),
        (LEAST_HOOK_DEG, HookEnd.LEFT),
    ],
)
def test_an_end_nearly_square_or_cut_back_gives_the_hook_nothing(
    foot_deg: float, hooked: HookEnd
) -> None:
    assert replace(PIECE, left=mitre(foot_deg)).hook_from is hooked


def test_long_and_short_edges_are_told_by_their_length() -> None:
    assert (PIECE.long_mm, PIECE.short_mm) == (1322.0, 1190.0)
    turned = replace(PIECE, inner_mm=1322.0, outer_mm=1190.0)
    assert (turned.long_mm, turned.short_mm) == (1322.0, 1190.0)


def test_the_two_hooks_of_a_piece_differ_when_its_mitres_do() -> None:
    piece = replace(PIECE, left=mitre(49.18), right=mitre(40.82))
    left_mm, right_mm = (piece.hook_reading_mm(cut.mitre_deg) for cut in (piece.left, piece.right))
    assert left_mm - right_mm > 15.0
    assert piece.hook_mm == left_mm
