import math

import pytest

from longpoint.shape.point import Point
from longpoint.trims.outline import TrimSide, trim_outline
from longpoint.trims.plinths import on_plinth
from longpoint.trims.rings import mitred_ring

SIDES = (
    TrimSide(inner_mm=0.0, width_mm=0.0),
    TrimSide(inner_mm=5.0, width_mm=90.0),
    TrimSide(inner_mm=5.0, width_mm=90.0),
    TrimSide(inner_mm=5.0, width_mm=90.0),
)
LEANING = (Point(0, 0), Point(820, 0), Point(840, 2050), Point(8, 2041))


@pytest.mark.parametrize(("side", "foot_at_start"), [(1, True), (3, False)])
def test_leg_and_block_add_up_to_the_leg_along_the_inner_edge(
    side: int, *, foot_at_start: bool
) -> None:
    whole = mitred_ring(trim_outline(LEANING, SIDES), side)
    leg, plinth = on_plinth(whole, foot_at_start=foot_at_start, face_mm=95.0, height_mm=200.0)
    assert plinth.edges().inner_mm == pytest.approx(200.0)
    assert leg.edges().inner_mm + 200.0 == pytest.approx(whole.edges().inner_mm)


@pytest.mark.parametrize(("side", "foot_at_start"), [(1, True), (3, False)])
def test_the_legs_foot_is_square_and_the_block_takes_the_floors_angle(
    side: int, *, foot_at_start: bool
) -> None:
    whole = mitred_ring(trim_outline(LEANING, SIDES), side)
    leg, plinth = on_plinth(whole, foot_at_start=foot_at_start, face_mm=95.0, height_mm=200.0)
    before, after, block = whole.edges(), leg.edges(), plinth.edges()
    foot_deg = before.start_deg if foot_at_start else before.end_deg
    assert abs(foot_deg) > 0.2
    assert (after.start_deg if foot_at_start else after.end_deg) == pytest.approx(0.0, abs=1e-9)
    assert (block.start_deg if foot_at_start else block.end_deg) == pytest.approx(foot_deg)
    assert (block.end_deg if foot_at_start else block.start_deg) == pytest.approx(0.0, abs=1e-9)
    assert block.outer_mm - 200.0 == pytest.approx(95.0 * math.tan(math.radians(foot_deg)))
    feet = (
        (plinth.inner_start, plinth.outer_start)
        if foot_at_start
        else (plinth.inner_end, plinth.outer_end)
    )
    assert [corner.y_mm for corner in feet] == pytest.approx([0.0, 0.0], abs=1e-9)


def test_the_mitre_at_the_head_stays() -> None:
    whole = mitred_ring(trim_outline(LEANING, SIDES), 1)
    leg, _ = on_plinth(whole, foot_at_start=True, face_mm=95.0, height_mm=200.0)
    assert (leg.inner_end, leg.outer_end) == (whole.inner_end, whole.outer_end)
