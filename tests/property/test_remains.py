"""A piece cut from what is left of another, against solids slid along it a tenth at a time."""

import random

import pytest

from longpoint.errors import StockError
from longpoint.pieces.piece import Piece
from longpoint.sticks.news.at_the_saw import StickAtSaw
from longpoint.sticks.news.check_rests import check_on_rest
from longpoint.sticks.news.remains import (
    Remains,
    left_part,
    right_part,
    seat_in,
    tip_to_tip_mm,
    whole,
)
from longpoint.sticks.plan import Laid, StickSource
from longpoint.survey.house import House
from tests.random_sticks import architrave_piece, house_of, skirting_piece

CASES = 120
STEP_MM = 0.1
ANGLES = (0.0, 45.0, 44.6, 45.3, -45.0)


def drawn_piece(draw: random.Random, mark: str, length_mm: float) -> Piece:
    left, right = draw.choice(ANGLES), draw.choice(ANGLES)
    if draw.random() < 0.5:
        return architrave_piece(mark, length_mm, left, right, profile="OG")
    return skirting_piece(mark, length_mm, left, right, profile="OG")


def drawn_rest(draw: random.Random, piece: Piece) -> Remains | None:
    length_mm = tip_to_tip_mm(piece)
    turned = draw.random() < 0.3
    match draw.randrange(3):
        case 0:
            return whole(piece, draw.choice((0.0, draw.uniform(0.0, 20.0))))
        case 1:
            return left_part(piece, draw.uniform(0.5, 1.0) * length_mm, turned=turned)
        case _:
            return right_part(piece, draw.uniform(0.5, 1.0) * length_mm, turned=turned)


def goes(rest: Remains, piece: Piece, laid: Laid, house: House) -> bool:
    stick = StickAtSaw(
        name="R",
        profile="OG",
        length_mm=rest.length_mm,
        source=StickSource.REST,
        next=(laid,),
        rest=rest,
    )
    try:
        check_on_rest(stick, {piece.mark: piece}, house)
    except StockError:
        return False
    return True


def anywhere(rest: Remains, piece: Piece, house: House) -> bool:
    """Try the piece at every tenth of a millimetre, and flush with both ends."""
    length_mm = tip_to_tip_mm(piece)
    room_mm = rest.length_mm - length_mm
    starts = [0.0, room_mm, *(STEP_MM * n for n in range(int(max(room_mm, 0.0) / STEP_MM) + 1))]
    ways = (False, True) if house.profile("OG").reversible else (False,)
    return any(
        goes(
            rest,
            piece,
            Laid(piece=piece.mark, turned=way, start_mm=start, end_mm=start + length_mm),
            house,
        )
        for start in starts
        for way in ways
    )


@pytest.mark.parametrize("reversible", [False, True])
def test_what_is_seated_can_be_cut_and_what_is_not_goes_nowhere(reversible: bool) -> None:
    draw = random.Random(7)
    house = house_of(reversible=reversible)
    seen = [0, 0]
    for _ in range(CASES):
        rest = drawn_rest(draw, drawn_piece(draw, "W1", draw.uniform(300.0, 500.0)))
        if rest is None:
            continue
        # Near the longest that can go in, where it is decided.
        near_mm = rest.length_mm - draw.uniform(0.0, 160.0)
        piece = drawn_piece(draw, "W2", near_mm)
        seat = seat_in(rest, piece, house.saw.kerf_mm, can_turn=reversible)
        seen[seat is not None] += 1
        if seat is not None:
            assert goes(rest, piece, seat.laid, house)
            continue
        assert not anywhere(rest, piece, house)
    assert min(seen) > CASES // 10
