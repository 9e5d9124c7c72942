import pytest

from longpoint.pieces.boards import Side
from longpoint.pieces.piece import SQUARE_CUT, CutKind, Piece, Role
from longpoint.pieces.returns import RETURN_CUT, return_caution, return_piece
from longpoint.quantities.length import Units

BOARD = Piece(
    mark="S1-2",
    role=Role.RUN,
    run="S1",
    room="Den",
    profile="SK95",
    width_mm=95.0,
    thickness_mm=16.0,
    inner_mm=1200.0,
    outer_mm=1200.0,
    back_mm=1184.0,
    left=SQUARE_CUT,
    right=RETURN_CUT,
    u_mm=0.8,
    hand_sum="as read 1200",
    notes=("something of its own",),
)


@pytest.mark.parametrize("side", Side)
def test_a_return_is_as_long_as_the_board_is_thick_and_comes_to_a_point(side: Side) -> None:
    piece = return_piece(BOARD, "S1", side)
    assert piece.mark == f"S1-return-{side}"
    assert (piece.role, piece.run, piece.room, piece.profile) == (Role.RETURN, "S1", "Den", "SK95")
    assert (piece.inner_mm, piece.outer_mm, piece.back_mm) == (16.0, 16.0, 0.0)
    joint, wall = (piece.left, piece.right) if side is Side.RIGHT else (piece.right, piece.left)
    assert (joint.kind, joint.bevel_deg, wall) == (CutKind.BEVEL, -45.0, SQUARE_CUT)
    assert piece.notes == ()


def test_face_less_back_is_the_thickness_at_45() -> None:
    piece = return_piece(BOARD, "S1", Side.LEFT)
    assert piece.inner_mm - piece.back_mm == pytest.approx(piece.thickness_mm)


def test_the_caution_counts_them() -> None:
    one = return_caution("S1", "S1", 16.0, 1, Units.MM)
    two = return_caution("W1", "W1-apron", 16.0, 2, Units.MM)
    assert one.read.startswith("The return of S1 is 16 mm")
    assert two.read.startswith("Each return of W1-apron")
    assert two.place == "W1"
