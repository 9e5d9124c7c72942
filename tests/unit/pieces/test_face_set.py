import pytest

from longpoint.pieces.face_set import LEAST_FOOT_DEG, end_cut, set_shape
from longpoint.pieces.face_trim import face_trim
from longpoint.pieces.piece import SQUARE_CUT, CutKind, Role
from longpoint.survey.openings import Joint
from longpoint.trims.outline import TrimEdges
from longpoint.trims.set_rings import SetShape
from tests.fitted_houses import door, fitted, opening, rectangle
from tests.set_houses import BLOCK76, set_house, set_of

WINDOW = opening(rectangle(900.0, 600.0))


def test_marks_carry_the_opening_and_the_face() -> None:
    two = set_of(WINDOW, faces=2)
    assert two.mark("head") == "W1a-head"
    assert set_of(WINDOW).mark("head") == "W1-head"


def test_a_pieces_left_end_is_the_end_of_its_edges() -> None:
    face = set_of(WINDOW)
    cut = end_cut(30.0, is_mitre=True)
    edges = TrimEdges(inner_mm=100.0, outer_mm=120.0, start_deg=0.0, end_deg=30.0)
    piece = face.piece("head", Role.HEAD, BLOCK76, edges, left=cut, u_mm=0.4)
    assert (piece.left, piece.right) == (cut, SQUARE_CUT)
    assert (piece.back_mm, piece.u_mm, piece.room) == (120.0, 0.4, "kitchen")


def test_an_end_nearly_square_is_cut_square_unless_it_is_a_mitre() -> None:
    slight = LEAST_FOOT_DEG * 0.9
    assert end_cut(slight, is_mitre=False) is SQUARE_CUT
    assert end_cut(slight, is_mitre=True).kind is CutKind.MITRE
    assert end_cut(-LEAST_FOOT_DEG * 1.1, is_mitre=False).mitre_deg == pytest.approx(-0.055)


def test_sizes_come_from_the_profiles_that_the_joint_asks_for() -> None:
    named = {"corner_block": "CB76", "plinth": "PB95", "plinth_height_mm": 200.0}
    assert set_of(WINDOW, **named).shape == SetShape(plinth_height_mm=200.0)
    blocked = set_of(WINDOW, joint=Joint.BLOCKS, back_band="BB20", **named)
    assert (blocked.shape.block_mm, blocked.shape.band_mm) == (76.0, 20.0)
    standing = set_of(door(rectangle(820.0, 2040.0)), **named)
    assert (standing.shape.plinth_mm, standing.shape.block_mm) == (95.0, 0.0)


def test_the_shape_of_a_plain_set_is_empty() -> None:
    house = set_house(WINDOW)
    assert set_shape(house, WINDOW, face_trim(house, WINDOW, fitted(WINDOW))) == SetShape()
