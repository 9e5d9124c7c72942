"""Settings of sprung mouldings held upside down against the fence."""

import pytest

from longpoint.trims.cornice import SprungRun, corner_cuts
from longpoint.trims.joint_plane import SawAngles
from longpoint.trims.nested import nested_setting


@pytest.mark.parametrize("corner_deg", [70.0, 90.0, 110.0, 250.0, 270.0])
def test_nested_a_level_corner_needs_a_swing_only(corner_deg: float) -> None:
    run = SprungRun(spring_deg=38.0)
    cuts = corner_cuts(corner_deg, run, run)
    assert cuts is not None
    left = nested_setting(38.0, cuts.right_run, at_left=True)
    right = nested_setting(38.0, cuts.left_run, at_left=False)
    assert left == pytest.approx((-(90.0 - corner_deg / 2.0), 0.0), abs=1e-9)
    assert right == pytest.approx((90.0 - corner_deg / 2.0, 0.0), abs=1e-9)


def test_nested_a_joint_on_one_wall_needs_a_lean_only() -> None:
    cuts = corner_cuts(
        180.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=20.0)
    )
    assert cuts is not None
    for cut, at_left in ((cuts.left_run, False), (cuts.right_run, True)):
        setting = nested_setting(38.0, cut, at_left=at_left)
        assert setting.table_deg == pytest.approx(0.0, abs=1e-9)
        assert abs(setting.lean_deg) == pytest.approx(10.0)


def test_nested_the_wrong_spring_leans_the_blade() -> None:
    run = SprungRun(spring_deg=38.0)
    cuts = corner_cuts(90.0, run, run)
    assert cuts is not None
    assert abs(nested_setting(52.0, cuts.left_run, at_left=False).lean_deg) > 5.0


def test_at_no_spring_nested_is_standing_on_the_other_edge() -> None:
    """Against the fence without leaning a bevel is a swing; the left end lies to the right."""
    assert nested_setting(0.0, SawAngles(0.0, 30.0), at_left=False) == pytest.approx((30.0, 0.0))
    assert nested_setting(0.0, SawAngles(0.0, 30.0), at_left=True) == pytest.approx((-30.0, 0.0))


def test_flat_under_the_blade_nested_is_flat_turned_over() -> None:
    """At spring 90 the back lies along the table, the bottom edge at the fence, face up."""
    setting = nested_setting(90.0, SawAngles(30.0, 0.0), at_left=False)
    assert setting == pytest.approx((-30.0, 0.0), abs=1e-9)
