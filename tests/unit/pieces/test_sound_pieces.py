from dataclasses import replace

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import CutKind, EndCut, Piece, Role
from longpoint.pieces.sound_pieces import unsound_pieces
from tests.random_sticks import architrave_piece, house_of

GOOD = architrave_piece("W1-head", 900.0, 45.0, 44.5)
SHORT = architrave_piece("W2-head", 10.0, -20.0, -20.0)


def test_pieces_as_they_are_made_are_sound() -> None:
    back_to_a_point = replace(GOOD, role=Role.RETURN, back_mm=0.0)

    assert unsound_pieces(house_of(), (GOOD, back_to_a_point)) == ()


@pytest.mark.parametrize(
    "piece",
    [
        SHORT,
        replace(GOOD, back_mm=-3.0),
        replace(GOOD, back_mm=0.0),
        replace(GOOD, outer_mm=GOOD.outer_mm + 2.0),
        replace(GOOD, inner_mm=float("nan")),
        replace(GOOD, left=EndCut(kind=CutKind.MITRE, mitre_deg=89.9)),
    ],
)
def test_a_piece_that_no_saw_could_make_stops_its_place(piece: Piece) -> None:
    (finding,) = unsound_pieces(house_of(), (piece, piece))

    assert (finding.place, finding.severity) == (piece.place, Severity.STOP)
    assert piece.mark in finding.read


def test_a_lean_too_small_to_cut_is_no_fault() -> None:
    assert unsound_pieces(house_of(), (replace(GOOD, outer_mm=GOOD.outer_mm + 0.1),)) == ()
