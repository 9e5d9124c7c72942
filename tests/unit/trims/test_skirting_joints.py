import math

import pytest

from longpoint.trims.skirting_joints import (
    Seat,
    along_lean_cut,
    corner_cut,
    corner_steps,
    longer_above_mm,
    plumb_height_mm,
    rake_joint_mm,
    rake_mitre_deg,
    scarf_overlap_mm,
    through_cut,
)


def seat(lean_deg: float = 0.0, *, climb_deg: float = 0.0, width_mm: float = 120.0) -> Seat:
    return Seat(width_mm=width_mm, thickness_mm=18.0, lean_deg=lean_deg, climb_deg=climb_deg)


@pytest.mark.parametrize("corner_deg", [35.0, 89.5, 90.5, 135.0, 225.0, 269.5, 300.0])
def test_between_plumb_walls_the_bevel_is_90_less_half_the_corner(corner_deg: float) -> None:
    cut = corner_cut(corner_deg, seat(), seat())
    assert cut.angles.mitre_deg == pytest.approx(0.0, abs=1e-9)
    assert cut.angles.bevel_deg == pytest.approx(90.0 - corner_deg / 2.0)
    # Face less back is t cot(theta / 2).
    short = 18.0 / math.tan(math.radians(corner_deg) / 2.0)
    assert cut.short.face_bottom_mm == pytest.approx(short)
    assert cut.short.back_bottom_mm == pytest.approx(0.0)


def test_the_backs_of_walls_that_lean_back_are_longer_at_the_top() -> None:
    cut = corner_cut(90.0, seat(3.0), seat(3.0))
    # Seen along the one wall the other's line climbs away at its lean, over the board's own slope.
    rise = math.sin(math.radians(3.0))
    assert -cut.short.back_top_mm == pytest.approx(120.0 * rise / 1.0, abs=0.01)
    assert cut.angles.mitre_deg > 0


def test_the_two_ends_of_a_corner_are_mirrored_in_each_other() -> None:
    one = corner_cut(100.0, seat(2.0), seat(-1.0))
    other = corner_cut(100.0, seat(-1.0), seat(2.0))
    assert one.angles.bevel_deg == pytest.approx(other.angles.bevel_deg)
    assert one.angles.mitre_deg != pytest.approx(other.angles.mitre_deg, abs=0.5)


@pytest.mark.parametrize(("difference_deg", "step_mm"), [(1.5, 0.47), (3.0, 0.94)])
def test_edges_step_by_the_thickness_times_the_sine_of_what_the_leans_differ(
    difference_deg: float, step_mm: float
) -> None:
    steps = corner_steps(90.0, seat(0.0), seat(difference_deg))
    assert steps.face_bottom_mm == pytest.approx(step_mm, abs=0.005)


def test_walls_that_lean_alike_leave_no_step() -> None:
    assert corner_steps(112.0, seat(2.5), seat(2.5)).worst_mm == pytest.approx(0.0, abs=1e-9)


def test_a_board_runs_through_to_a_plumb_wall_as_it_always_did() -> None:
    assert through_cut(100.0, seat(), seat()).short.face_bottom_mm == pytest.approx(0.0)
    sharp = through_cut(60.0, seat(), seat())
    assert sharp.angles == (0.0, 0.0)
    assert sharp.short.back_bottom_mm == pytest.approx(18.0 / math.sqrt(3.0))


def test_something_leaning_away_leaves_the_upper_edge_the_longer() -> None:
    cut = along_lean_cut(seat(), 2.0)
    assert cut.angles == (2.0, 0.0)
    assert -cut.short.face_top_mm == pytest.approx(120.0 * math.tan(math.radians(2.0)))


def test_the_stair_of_the_cottage_meets_its_landing_at_half_the_pitch() -> None:
    # The keys of the cottage: pitch 38.01, each piece 19.00 off square, 152.3 high cut plumb.
    pitch_deg = math.degrees(math.atan2(2357 / 13, 232))
    assert pitch_deg == pytest.approx(38.01, abs=0.005)
    assert abs(rake_mitre_deg(pitch_deg)) == pytest.approx(19.00, abs=0.005)
    assert plumb_height_mm(120.0, pitch_deg) == pytest.approx(152.3, abs=0.05)
    assert rake_joint_mm(120.0, pitch_deg) == pytest.approx(126.9, abs=0.05)


def test_a_scarf_laps_over_by_the_thickness_at_45() -> None:
    assert scarf_overlap_mm(20.0, 45.0) == pytest.approx(20.0)
    assert scarf_overlap_mm(20.0, 30.0) == pytest.approx(11.547, abs=0.001)


def test_a_wall_is_longer_above_where_the_next_one_leans_back() -> None:
    assert longer_above_mm(90.0, 0.0, 1.0, 1000.0) == pytest.approx(17.455, abs=0.001)
    assert longer_above_mm(90.0, 5.0, 0.0, 1000.0) == pytest.approx(0.0, abs=1e-9)
    # Round a corner of 120 the wall's own lean counts too.
    assert longer_above_mm(120.0, 1.0, 1.0, 1000.0) == pytest.approx(
        1000.0
        * math.tan(math.radians(1.0))
        * (1 + math.cos(math.radians(120.0)))
        / math.sin(math.radians(120.0))
    )
