"""Where pieces lie round an opening: marks found, frames right-handed, edges on their lines."""

from typing import Any

import pytest

from longpoint.pieces.laid_set import laid_set
from longpoint.pieces.lying import Lying
from longpoint.pieces.openings import plan_openings
from longpoint.pieces.other_shapes import fitted_faces, outline_faces
from longpoint.pieces.piece import Piece
from longpoint.shape.fitted import FittedOpening, FittedOutline
from tests.shaped_houses import GABLE, HALL, read, shapes

PLAIN = {"top": 900, "bottom": 900, "left": 1000, "right": 1000, "architrave": "OG57"}
DOOR = {
    **PLAIN,
    "kind": "cased",
    "trim": "legs-and-head",
    "plinth": "PB75",
    "plinth_height": 150,
}


def laid(opening: dict[str, Any]) -> tuple[dict[str, Piece], dict[str, Lying]]:
    """Return the pieces and how they lie, by mark."""
    house = read(opening)
    found = shapes(house)
    pieces, _ = plan_openings(house, found, frozenset())
    (one,) = house.openings
    faces: list[FittedOpening | FittedOutline] = [*fitted_faces(one, found)]
    faces += outline_faces(one, found)
    lying: dict[str, Lying] = {}
    for fitted in faces:
        own = [piece for piece in pieces if piece.face in ("", fitted.face)]
        lying |= laid_set(house, one, fitted, own)
    return {piece.mark: piece for piece in pieces}, lying


@pytest.mark.parametrize(
    "opening",
    [
        PLAIN,
        DOOR,
        {**PLAIN, "back_band": "BB25"},
        {**PLAIN, "joint": "blocks", "corner_block": "PB75"},
        {**PLAIN, "joint": "butt"},
        {**PLAIN, "faces": 2},
        {**PLAIN, "trim": "board-and-apron", "apron_ends": "return"},
        GABLE,
        HALL,
    ],
    ids=["plain", "plinths", "band", "blocks", "butt", "two faces", "apron", "gable", "arch"],
)
def test_every_piece_round_an_opening_has_its_place(opening: dict[str, Any]) -> None:
    pieces, lying = laid(opening)
    assert len(pieces) >= 3
    assert set(lying) == {mark for mark in pieces if not mark.endswith(("-board", "-wedge"))}


def test_the_head_lies_a_quirk_above_the_reveal_and_the_legs_beside_it() -> None:
    pieces, lying = laid(PLAIN)
    head, left, right = (lying[f"W1-{side}"] for side in ("head", "left-leg", "right-leg"))
    assert head.origin == pytest.approx((-5.0, 1005.0, 0.0), abs=1e-6)
    assert head.along == pytest.approx((1.0, 0.0, 0.0), abs=1e-9)
    assert head.out == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)
    # Clockwise: the left leg runs up, its outer edge to the left; the right one down.
    assert left.origin == pytest.approx((-5.0, -5.0, 0.0), abs=1e-6)
    assert left.across == pytest.approx((-1.0, 0.0, 0.0), abs=1e-9)
    assert right.origin == pytest.approx((905.0, 1005.0, 0.0), abs=1e-6)
    end = right.at((pieces["W1-right-leg"].inner_mm, 0.0, 0.0))
    assert end == pytest.approx((905.0, -5.0, 0.0), abs=1e-6)
