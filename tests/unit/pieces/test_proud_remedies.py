from dataclasses import replace

import pytest

from longpoint.errors import PieceError
from longpoint.pieces.proud_remedies import (
    ProudCorner,
    best_way,
    edge_mm,
    face_plane,
    packing,
    proud_corners,
)
from longpoint.survey.openings import Flush, Joint, Layout, Opening
from longpoint.survey.readings import Plane
from tests.fitted_houses import house, opening, rectangle

WINDOW = rectangle(1180.0, 620.0)
SQUARE = (90.0,) * 4


def corners_of(one: Opening, **corners_mm: float) -> tuple[ProudCorner, ...]:
    plane = Plane(**{f"{corner}_mm": mm for corner, mm in corners_mm.items()})
    return proud_corners(house(one), one, plane, SQUARE)


def top_left(proud_mm: float, *, edge: float | None = None, width_mm: float = 66.0) -> ProudCorner:
    one = replace(opening(WINDOW, width_mm=width_mm), lining_edge_mm=edge)
    (found,) = corners_of(one, tl=proud_mm)
    return found


def test_head_and_left_leg_meet_at_the_top_left() -> None:
    found = top_left(3.0)
    assert (found.first.side, found.second.side) == (2, 3)
    assert found.name == "top left"


def test_a_proud_lining_tilts_over_what_lies_outside_its_back_arris() -> None:
    assert top_left(3.0).first.bears_mm == 66.0 + 5.0 - 19.0
    assert top_left(3.0, edge=32.0).first.bears_mm == 66.0 + 5.0 - 32.0
    assert top_left(-2.0, edge=32.0).first.bears_mm == 32.0 - 5.0


def test_a_narrower_bearing_opens_more() -> None:
    assert top_left(3.0, edge=32.0).both_open().heel_mm > top_left(3.0).both_open().heel_mm


def test_trim_clear_of_the_lining_does_not_tilt() -> None:
    found = top_left(3.0, edge=4.0)
    assert found.both_open() == pytest.approx((0.0,) * 4)
    assert packing(found) is None


def test_a_lining_too_shy_to_nail_down_on_is_bridged() -> None:
    assert top_left(-6.0).both_open() == pytest.approx((0.0,) * 4)
    assert top_left(-2.0).both_open().most_behind_mm > 1.0


def test_one_too_proud_is_refused() -> None:
    with pytest.raises(PieceError):
        top_left(14.0)


def test_one_alone_opens_half_as_far_and_steps_by_the_rise() -> None:
    found = top_left(3.0)
    assert found.one_opens().heel_mm == pytest.approx(found.both_open().heel_mm / 2.0)
    assert found.step_mm() == 0.0
    assert found.step_alone_mm() == pytest.approx(3.0 * 66.0 / 52.0, abs=0.04)


def test_unequal_thickness_is_no_step_of_the_linings_doing() -> None:
    found = top_left(3.0)
    thin = replace(found.first.flat, thickness_mm=12.0)
    first = replace(found.first, flat=thin, tilted=replace(found.first.tilted, thickness_mm=12.0))
    assert replace(found, first=first).step_mm() < 0.02


def test_a_board_leaves_the_two_corners_of_the_head() -> None:
    one = replace(opening(WINDOW), layout=Layout.BOARD_AND_APRON)
    found = corners_of(one, tl=2.0, tr=2.0, br=2.0, bl=2.0)
    assert [each.corner for each in found] == [2, 3]


def test_butts_have_no_mitred_corner() -> None:
    assert corners_of(replace(opening(WINDOW), joint=Joint.BUTT), tl=3.0) == ()


def test_under_a_millimetre_is_in_plane() -> None:
    assert corners_of(opening(WINDOW), tl=0.9, bl=-0.9) == ()


def test_of_two_alike_the_head_is_packed_as_thick_as_the_leg_is_proud() -> None:
    found = packing(top_left(3.0))
    assert found is not None
    assert (found.side, found.on_proud_mm) == (2, 0.0)
    assert found.thick_mm == pytest.approx(3.0)
    for packed, alone in zip(found.cuts, top_left(3.0).back_bevels(), strict=True):
        assert packed == pytest.approx(alone)


@pytest.mark.parametrize(
    ("proud_mm", "way"),
    [
        (1.0, Flush.BACK_BEVEL),
        (2.0, Flush.BACK_BEVEL),
        (3.0, Flush.PACK),
        (4.0, Flush.PACK),
        (5.0, Flush.RE_SET),
        (-5.0, Flush.LEAVE),
    ],
)
def test_the_more_it_stands_proud_the_farther_the_remedy_goes(proud_mm: float, way: Flush) -> None:
    assert best_way((top_left(proud_mm),), 0.2) is way


def test_what_stays_within_the_crews_limit_is_left() -> None:
    found = top_left(1.0, width_mm=90.0)
    most_mm = found.both_open().most_at_face_mm
    assert best_way((found,), most_mm + 0.01) is Flush.LEAVE
    assert best_way((found,), most_mm - 0.01) is Flush.BACK_BEVEL


def test_the_worst_corner_decides_for_the_opening() -> None:
    found = corners_of(opening(WINDOW), tl=1.0, tr=5.0, bl=-3.0)
    assert best_way(found, 0.2) is Flush.RE_SET


def test_the_second_face_has_readings_of_its_own_or_none() -> None:
    one = opening(WINDOW)
    plane = Plane(tl_mm=1.0)
    read = replace(one, readings=replace(one.readings, plane=plane))
    assert face_plane(read, is_second=False) == plane
    assert face_plane(read, is_second=True) is None
    assert edge_mm(one) == 19.0
