import math

import pytest

from longpoint.errors import PieceError
from longpoint.trims.joints import mitre_pair
from longpoint.trims.tilt import (
    Lie,
    bearing_mm,
    butt_opens_mm,
    closing_cuts,
    face_step_mm,
    level_lies,
    packer_mm,
    plain_cuts_open,
    tilt_deg,
)

FLAT = Lie(width_mm=57.0, thickness_mm=19.0)
LIFTED = Lie(width_mm=57.0, thickness_mm=19.0, tilt_deg=tilt_deg(3.0, 57.0))
LET_DOWN = Lie(width_mm=57.0, thickness_mm=19.0, tilt_deg=-LIFTED.tilt_deg)


def test_one_piece_lifted_by_3_opens_as_a_solid_model_did() -> None:
    # Worked value for T 19, bearing 57, proud 3: 0.71 at the toe, 0.76 at the heel.
    found = plain_cuts_open(90.0, LIFTED, FLAT)
    assert found.toe_mm == pytest.approx(0.71, abs=0.005)
    assert found.heel_mm == pytest.approx(0.76, abs=0.005)


def test_packing_the_neighbour_and_cutting_plain_doubles_it() -> None:
    # Worked value: 1.53 at the heel instead of 0.76.
    found = plain_cuts_open(90.0, LIFTED, LIFTED)
    assert found.heel_mm == pytest.approx(1.53, abs=0.005)
    one = plain_cuts_open(90.0, LIFTED, FLAT)
    assert found.toe_mm == pytest.approx(2.0 * one.toe_mm)


def test_proud_shows_at_the_face_and_touches_at_the_wall() -> None:
    found = plain_cuts_open(88.0, LIFTED, FLAT)
    assert found.toe_behind_mm == 0.0
    assert found.most_at_face_mm == found.heel_mm > found.most_behind_mm


def test_shy_touches_at_the_face_and_gaps_behind() -> None:
    found = plain_cuts_open(90.0, LET_DOWN, FLAT)
    assert found.toe_mm == 0.0
    assert found.heel_mm == pytest.approx(0.055, abs=0.002)
    assert found.most_behind_mm == pytest.approx(0.76, abs=0.005)


def test_it_does_not_matter_which_piece_is_named_first() -> None:
    narrow = Lie(width_mm=45.0, thickness_mm=15.0, tilt_deg=4.0)
    one = plain_cuts_open(97.0, LIFTED, narrow)
    assert one == pytest.approx(plain_cuts_open(97.0, narrow, LIFTED))


def test_flat_pieces_close() -> None:
    assert plain_cuts_open(83.0, FLAT, FLAT) == pytest.approx((0.0,) * 4)


def test_the_bevel_is_about_forty_degrees_for_each_proud_over_bearing() -> None:
    # Worked value at 45: B about 40.5 p / d degrees, and the mitre hardly moves.
    cut, _ = closing_cuts(90.0, LIFTED, LIFTED)
    assert cut.bevel_deg == pytest.approx(-40.5 * 3.0 / 57.0, rel=0.002)
    assert cut.mitre_deg == pytest.approx(45.0 - 0.04, abs=0.003)


@pytest.mark.parametrize("corner_deg", [70.0, 88.5, 90.0, 112.0])
@pytest.mark.parametrize("tilts_deg", [(3.0, 0.0), (3.0, 3.0), (5.0, -2.0)])
def test_the_settings_are_those_of_a_plane_square_to_the_wall(
    corner_deg: float, tilts_deg: tuple[float, float]
) -> None:
    pieces = (
        Lie(width_mm=57.0, thickness_mm=19.0, tilt_deg=tilts_deg[0]),
        Lie(width_mm=90.0, thickness_mm=22.0, tilt_deg=tilts_deg[1]),
    )
    cuts = closing_cuts(corner_deg, *pieces)
    assert sum(cut.plan_deg for cut in cuts) == pytest.approx(180.0 - corner_deg)
    for cut, lie in zip(cuts, pieces, strict=True):
        plan, tilt = math.radians(cut.plan_deg), math.radians(lie.tilt_deg)
        assert math.tan(math.radians(cut.mitre_deg)) == pytest.approx(
            math.tan(plan) * math.cos(tilt)
        )
        assert math.sin(math.radians(cut.bevel_deg)) == pytest.approx(
            -math.sin(plan) * math.sin(tilt)
        )


def test_pieces_that_lie_flat_get_their_plain_cuts() -> None:
    wide = Lie(width_mm=90.0, thickness_mm=19.0)
    cuts = closing_cuts(93.0, FLAT, wide)
    assert [c.mitre_deg for c in cuts] == pytest.approx(mitre_pair(93.0, 57.0, 90.0))
    assert [c.bevel_deg for c in cuts] == pytest.approx([0.0, 0.0])
    assert [c.longer_mm for c in cuts] == pytest.approx([0.0, 0.0])


def test_a_lifted_face_stands_above_a_flat_one_at_the_heel_and_not_at_the_toe() -> None:
    assert face_step_mm(LIFTED, FLAT) == pytest.approx(
        3.0 - 19.0 * (1 - math.cos(0.05266)), abs=1e-3
    )
    assert face_step_mm(FLAT, LIFTED) == -face_step_mm(LIFTED, FLAT)
    assert abs(face_step_mm(LIFTED, FLAT, at_heel=False)) < 0.03


def test_a_thicker_piece_stands_above_a_thinner_one_however_they_lie() -> None:
    assert face_step_mm(Lie(width_mm=57.0, thickness_mm=25.0), FLAT) == 6.0


def test_one_tilt_makes_equal_widths_level_and_unequal_ones_not() -> None:
    wide = Lie(width_mm=90.0, thickness_mm=19.0, tilt_deg=LIFTED.tilt_deg)
    assert face_step_mm(LIFTED, LIFTED) == 0.0
    assert abs(face_step_mm(LIFTED, wide)) > 1.0
    narrow_packed, wide_packed = level_lies(LIFTED, Lie(width_mm=90.0, thickness_mm=19.0))
    assert narrow_packed.tilt_deg == pytest.approx(LIFTED.tilt_deg)
    assert narrow_packed.rise_mm == pytest.approx(wide_packed.rise_mm)
    assert abs(face_step_mm(narrow_packed, wide_packed)) < 0.02


def test_a_packer_is_as_thick_as_the_lining_is_proud_at_its_arris_and_thicker_further_in() -> None:
    lie = Lie(width_mm=57.0, thickness_mm=19.0, tilt_deg=tilt_deg(3.0, 43.0))
    assert packer_mm(lie, 43.0) == pytest.approx(3.0)
    assert packer_mm(lie, 57.0) == pytest.approx(3.0 * 57.0 / 43.0) == pytest.approx(lie.rise_mm)
    assert packer_mm(lie, 0.0) == 0.0


@pytest.mark.parametrize(
    ("proud_mm", "edge_mm", "bears_mm"),
    [(2.0, 19.0, 43.0), (-2.0, 19.0, 14.0), (2.0, 5.0, 0.0), (-2.0, 4.0, 0.0), (2.0, 70.0, 0.0)],
)
def test_what_a_piece_bears_on(proud_mm: float, edge_mm: float, bears_mm: float) -> None:
    assert bearing_mm(proud_mm, 57.0, 5.0, edge_mm) == bears_mm


def test_trim_clear_of_the_lining_is_not_tilted_by_it() -> None:
    assert tilt_deg(3.0, 0.0) == 0.0
    assert tilt_deg(0.0, 57.0) == 0.0


def test_a_tilt_nobody_would_nail_is_refused() -> None:
    with pytest.raises(PieceError, match="15 degrees"):
        tilt_deg(-6.0, 14.0)
    with pytest.raises(PieceError):
        tilt_deg(20.0, 14.0)


def test_a_butt_opens_by_the_lean_of_the_edge_it_stands_against() -> None:
    assert butt_opens_mm(LIFTED, 25.0) == pytest.approx(1.0, abs=0.001)
    assert butt_opens_mm(LIFTED, 9.5) == pytest.approx(0.5, abs=0.001)
    assert butt_opens_mm(LET_DOWN, 19.0) == 0.0
