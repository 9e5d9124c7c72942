import pytest

from longpoint.errors import ShapeError
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks, check_seen
from tests.unit.forecast.tapping.wall import door, window


def test_the_worst_gap_is_the_widest_that_was_read() -> None:
    joints = (SeenJoint(heel_mm=0.4), SeenJoint(toe_mm=0.9), SeenJoint(), SeenJoint(heel_mm=-0.2))
    seen = SeenFrame(joints=joints)
    assert seen.worst_gap_mm == 0.9
    assert seen.gaps_mm == (0.4, None, None, 0.9, None, None, -0.2, None)


def test_without_a_gap_there_is_no_worst() -> None:
    assert SeenFrame(joints=(SeenJoint(),) * 4).worst_gap_mm is None


def test_one_quirk_makes_a_side_read() -> None:
    assert SeenQuirks(middle_mm=0.0).is_read
    assert not SeenQuirks().is_read


def test_quirks_may_be_left_out_altogether() -> None:
    seen = SeenFrame(joints=(SeenJoint(),) * 4)
    check_seen(window(), seen)
    assert seen.quirks_of(2) == SeenQuirks()


def test_readings_of_another_set_are_refused() -> None:
    seen = SeenFrame(joints=(SeenJoint(),) * 4)
    with pytest.raises(ShapeError):
        check_seen(door(), seen)
    with pytest.raises(ShapeError):
        check_seen(window(), SeenFrame(joints=seen.joints, quirks=(SeenQuirks(),) * 3))
