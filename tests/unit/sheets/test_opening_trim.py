from dataclasses import replace

import pytest

from longpoint.pieces.piece import SQUARE_CUT, Piece, Role
from longpoint.shape.point import Point
from longpoint.sheets.opening_trim import trim_rings
from longpoint.survey.openings import Layout, PerSide
from tests.unit.sheets.sample import FACE, OPENINGS, PIECES, QUIRK_MM, by_mark

WINDOW = OPENINGS[1]
SQUARE = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
ROUND = by_mark("W2-left-leg", "W2-head", "W2-right-leg", "W2-sill")


def span(ring: tuple[Point, ...]) -> tuple[float, float, float, float]:
    xs, ys = [p.x_mm for p in ring], [p.y_mm for p in ring]
    return (min(xs), max(xs), min(ys), max(ys))


def test_each_piece_lies_a_quirk_outside_its_side() -> None:
    sill, right, head, left = trim_rings(WINDOW, "", SQUARE, ROUND)
    out = QUIRK_MM + FACE
    assert span(sill) == pytest.approx((-out, 900 + out, -out, -QUIRK_MM))
    assert span(head) == pytest.approx((-out, 900 + out, 600 + QUIRK_MM, 600 + out))
    assert span(left) == pytest.approx((-out, -QUIRK_MM, -out, 600 + out))
    assert span(right) == pytest.approx((900 + QUIRK_MM, 900 + out, -out, 600 + out))


def test_legs_of_a_door_end_on_the_floor() -> None:
    right, _head, left = trim_rings(OPENINGS[3], "", SQUARE, ROUND[:3])
    assert span(left)[2] == span(right)[2] == 0.0


def test_the_second_face_has_its_quirks_the_other_way_round() -> None:
    uneven = replace(WINDOW, quirk_mm=PerSide(head=5.0, right=9.0, bottom=5.0, left=3.0))
    left = trim_rings(uneven, "b", SQUARE, ROUND)[3]
    assert span(left)[1] == pytest.approx(-9.0)


def test_a_board_stands_on_its_apron_and_runs_past_it_by_the_horns() -> None:
    apron, board = (
        Piece(
            mark=f"W2-{role.value}",
            role=role,
            opening="W2",
            profile="OG57",
            width_mm=57.0,
            thickness_mm=25.0,
            inner_mm=1000.0,
            outer_mm=1000.0,
            back_mm=1000.0,
            left=SQUARE_CUT,
            right=SQUARE_CUT,
        )
        for role in (Role.APRON, Role.BOARD)
    )
    stool = replace(WINDOW, layout=Layout.BOARD_AND_APRON, horn_mm=40.0)
    *_, shelf, below = trim_rings(stool, "", SQUARE, (*ROUND[:3], apron, board))
    assert span(shelf)[3] - span(shelf)[2] == pytest.approx(25.0)
    assert span(below)[3] == pytest.approx(span(shelf)[2])
    assert span(below)[0] - span(shelf)[0] == pytest.approx(40.0)


def test_a_shape_without_corners_is_drawn_without_trim() -> None:
    flat = (Point(0, 0), Point(900, 0), Point(900.0, 0.0001), Point(0, 0.0001))
    assert trim_rings(WINDOW, "", (flat[0], flat[1], Point(1800, 0), flat[3]), ROUND) == []


def test_no_piece_gives_no_outline() -> None:
    assert trim_rings(WINDOW, "", SQUARE, tuple(p for p in PIECES if p.run)) == []
