import pytest

from longpoint.errors import PieceError
from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline
from longpoint.trims.rings import mitred_ring
from longpoint.trims.set_rings import BOTTOM, HEAD, LEFT, RIGHT, SetShape, set_rings

WINDOW = (Point(0, 0), Point(900, 0), Point(912, 604), Point(9, 598))
DOOR = (Point(0, 0), Point(820, 0), Point(840, 2050), Point(8, 2041))
ROUND = (TrimSide(inner_mm=5.0, width_mm=70.0),) * 4
LEGS_AND_HEAD = (TrimSide(inner_mm=0.0, width_mm=0.0), *ROUND[1:])


def test_without_anything_else_all_four_are_mitred() -> None:
    found = set_rings(WINDOW, ROUND, SetShape())
    outline = trim_outline(WINDOW, ROUND)
    assert found.sides == {side: mitred_ring(outline, side) for side in range(4)}
    assert (found.blocks, found.plinths, found.band) == ((), {}, {})
    assert found.foot == (outline.outer[0], outline.outer[1])


def test_a_bare_bottom_has_no_piece_no_block_and_no_band() -> None:
    found = set_rings(DOOR, LEGS_AND_HEAD, SetShape(block_mm=76.0))
    assert set(found.sides) == {RIGHT, HEAD, LEFT}
    assert sorted(block.corner for block in found.blocks) == [2, 3]
    banded = set_rings(DOOR, LEGS_AND_HEAD, SetShape(band_mm=20.0))
    assert set(banded.band) == {RIGHT, HEAD, LEFT}


def test_a_band_lies_on_the_outer_edges_and_is_mitred_at_its_own_width() -> None:
    found = set_rings(WINDOW, ROUND, SetShape(band_mm=20.0))
    for side, ring in found.band.items():
        inside = found.sides[side]
        assert ring.inner_start.distance_mm(inside.outer_start) == pytest.approx(0.0, abs=1e-9)
        assert ring.inner_end.distance_mm(inside.outer_end) == pytest.approx(0.0, abs=1e-9)
        assert ring.edges().start_deg == pytest.approx(inside.edges().start_deg)
    assert found.foot[0].distance_mm(found.foot[1]) == pytest.approx(900 + 2 * 95, abs=1.0)


def test_a_wide_plinth_carries_the_band_and_a_narrow_one_lets_it_down_to_the_floor() -> None:
    wide = SetShape(plinth_mm=95.0, plinth_height_mm=200.0, band_mm=20.0)
    on_top = set_rings(DOOR, LEGS_AND_HEAD, wide)
    assert on_top.band[RIGHT].inner_start.y_mm == pytest.approx(200.0, abs=2.0)
    # The band's foot lies on the block's own top, square to the leg.
    assert on_top.band[RIGHT].edges().start_deg == pytest.approx(0.0, abs=1e-9)
    assert on_top.band[LEFT].edges().end_deg == pytest.approx(0.0, abs=1e-9)
    narrow = SetShape(plinth_mm=70.0, plinth_height_mm=200.0, band_mm=20.0)
    beside = set_rings(DOOR, LEGS_AND_HEAD, narrow)
    assert beside.band[RIGHT].inner_start.y_mm == pytest.approx(0.0, abs=1e-9)
    assert beside.band[LEFT].outer_end.y_mm == pytest.approx(0.0, abs=1e-9)


def test_a_set_with_a_sill_piece_has_no_plinths() -> None:
    shape = SetShape(plinth_mm=95.0, plinth_height_mm=200.0)
    assert set_rings(WINDOW, ROUND, shape).plinths == {}


def test_a_plinth_higher_than_its_leg_is_refused() -> None:
    shape = SetShape(plinth_mm=95.0, plinth_height_mm=2100.0)
    with pytest.raises(PieceError):
        set_rings(DOOR, LEGS_AND_HEAD, shape)


def test_blocks_that_leave_no_room_are_refused() -> None:
    small = (Point(0, 0), Point(60, 0), Point(60, 60), Point(0, 60))
    with pytest.raises(PieceError):
        set_rings(small, ROUND, SetShape(block_mm=150.0))


def test_the_bottom_and_the_head_run_through_when_butted() -> None:
    found = set_rings(WINDOW, ROUND, SetShape(is_butted=True, horn_mm=15.0))
    assert found.sides[BOTTOM].edges().inner_mm == pytest.approx(900 + 10 + 140, abs=1.0)
    assert found.sides[HEAD].edges().outer_mm == pytest.approx(903 + 10 + 140 + 30, abs=2.0)
