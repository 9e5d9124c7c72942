"""Bodies of pieces: their corners, their faces, and cuts that cross. See also tests/solids."""

from dataclasses import replace

import pytest

from longpoint.pieces.cut_solid import cut_solid, section_area_mm2, section_of
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role

RETURN = EndCut(kind=CutKind.BEVEL, bevel_deg=-45.0)
BAR = Piece(
    mark="A",
    role=Role.RUN,
    profile="SK",
    width_mm=90.0,
    thickness_mm=18.0,
    inner_mm=600.0,
    outer_mm=600.0,
    back_mm=600.0,
    left=SQUARE_CUT,
    right=SQUARE_CUT,
)


def test_a_square_bar_is_a_box_of_eight_corners_and_six_faces() -> None:
    solid = cut_solid(BAR)
    assert solid is not None
    assert set(solid.points) == {
        (x, y, z) for x in (0.0, 600.0) for y in (0.0, 90.0) for z in (0.0, 18.0)
    }
    assert len(solid.faces) == 6


def test_a_return_comes_to_a_point_and_its_body_to_a_wedge() -> None:
    solid = cut_solid(replace(BAR, inner_mm=18.0, left=RETURN))
    assert solid is not None
    # Two ends of three corners' height: back and cut meet in one edge.
    assert len(solid.points) == 6
    assert len(solid.faces) == 5
    assert all(len(set(face)) == len(face) for face in solid.faces)


def test_cuts_that_cross_in_the_timber_leave_no_body() -> None:
    assert cut_solid(replace(BAR, inner_mm=17.0, left=RETURN)) is None


@pytest.mark.parametrize("turned", [False, True])
def test_a_section_is_taken_anticlockwise_however_it_was_drawn(turned: bool) -> None:
    drawn = ((0.0, 0.0), (90.0, 0.0), (90.0, 18.0), (0.0, 6.0))
    section = section_of(BAR, tuple(reversed(drawn)) if turned else drawn)
    assert section_area_mm2(section) == pytest.approx(90.0 * 12.0)


def test_without_a_section_width_by_thickness_is_taken() -> None:
    assert section_area_mm2(section_of(BAR, ())) == pytest.approx(90.0 * 18.0)
