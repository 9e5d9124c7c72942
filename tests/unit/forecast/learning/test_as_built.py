import math
from dataclasses import replace

import pytest

from longpoint.errors import QuantityError
from longpoint.forecast.learning.as_built import (
    Axis,
    BuiltFrame,
    angle_sum_deg,
    built_angle,
    built_sizes,
    mitre_length_mm,
)
from longpoint.forecast.learning.setup_key import SetupKey
from longpoint.survey.as_built import JointRead

OPEN_HEEL = JointRead(heel_mm=0.4, toe_mm=0.0)
WINDOW = BuiltFrame(
    mark="W1",
    key=SetupKey(saw="S1", tape="T1"),
    mitre_length_mm=(mitre_length_mm(66.0, 45.0),) * 4,
    gaps=(OPEN_HEEL,) * 4,
)
DOOR = replace(WINDOW, mark="D1", mitre_length_mm=WINDOW.mitre_length_mm[:2], gaps=(OPEN_HEEL,) * 2)


def test_heels_open_by_04_on_a_66_face_are_012_degrees_a_cut() -> None:
    # By hand: 0.4 / (66 root 2) is 0.2456 degrees for the two cuts of a joint.
    angle, notes = built_angle(WINDOW)
    assert angle is not None
    assert notes == ()
    assert angle.over_cut_deg == pytest.approx(0.1228, abs=5e-5)


def test_open_toes_are_cuts_short_of_their_angle() -> None:
    shallow = replace(WINDOW, gaps=(JointRead(heel_mm=0.0, toe_mm=0.4),) * 4)
    angle, _ = built_angle(shallow)
    assert angle is not None
    assert angle.over_cut_deg == pytest.approx(-0.1228, abs=5e-5)


def test_however_the_fitter_shares_a_gap_out_the_saw_is_the_same() -> None:
    shut = JointRead(heel_mm=0.0, toe_mm=0.0)
    shared = replace(WINDOW, gaps=(JointRead(heel_mm=1.6, toe_mm=0.0), shut, shut, shut))
    pushed = replace(WINDOW, gaps=(JointRead(heel_mm=0.9, toe_mm=0.5),) * 4)
    for frame in (shared, pushed):
        assert angle_sum_deg(frame) == pytest.approx(angle_sum_deg(WINDOW))


def test_what_was_dialled_off_is_added_to_what_is_left() -> None:
    angle, _ = built_angle(replace(WINDOW, dialled_deg=0.1))
    assert angle is not None
    assert angle.over_cut_deg == pytest.approx(0.2228, abs=5e-5)


def test_joints_of_different_mitres_count_each_by_its_own_length() -> None:
    m = WINDOW.mitre_length_mm[0]
    wide = replace(WINDOW, mitre_length_mm=(m, m, 2 * m, 2 * m))
    assert angle_sum_deg(wide) == pytest.approx(0.75 * (angle_sum_deg(WINDOW) or 0.0))


@pytest.mark.parametrize("unread", [None, JointRead(heel_mm=0.4), JointRead(toe_mm=0.0)])
def test_a_joint_not_read_is_said_and_nothing_is_learned_of_the_saw(
    unread: JointRead | None,
) -> None:
    frame = replace(WINDOW, gaps=(OPEN_HEEL, unread, OPEN_HEEL, OPEN_HEEL))
    angle, (note,) = built_angle(frame)
    assert angle is None
    assert (note.code, note.place) == ("frame-not-closed", "W1")
    assert "bottom right" in note.read
    assert angle_sum_deg(frame) is None


def test_a_door_whose_legs_may_splay_tells_nothing_of_the_saw() -> None:
    angle, (note,) = built_angle(DOOR)
    assert angle is None
    assert note.code == "legs-free"


def test_a_door_whose_legs_were_held_tells_less_than_a_window() -> None:
    angle, notes = built_angle(replace(DOOR, legs_held_mm=2040.0))
    window, _ = built_angle(WINDOW)
    assert angle is not None
    assert window is not None
    assert notes == ()
    assert angle.over_cut_deg == pytest.approx(window.over_cut_deg)
    # By hand: four cuts of 0.05, four feelers of 0.0144 in 93 mm, sides 1 mm from parallel in 2040.
    parts = (0.05 / 2, math.degrees(0.0144 / 93.3) / 2, math.degrees(1 / 2040.0) / 4)
    assert angle.u_deg == pytest.approx(math.hypot(*parts), rel=1e-3)
    assert angle.u_deg > 1.4 * window.u_deg


def test_feelers_and_single_cuts_leave_a_window_002_unsure() -> None:
    angle, _ = built_angle(WINDOW)
    assert angle is not None
    # By hand: 0.05 / root 8 from the cuts; 0.0144 mm root 8 / (8 x 93.3 mm) from the feelers.
    assert angle.u_deg == pytest.approx(math.hypot(0.01768, 0.00313), rel=1e-3)
    coarse, _ = built_angle(WINDOW, feeler_mm=0.5)
    assert coarse is not None
    assert coarse.u_deg == pytest.approx(math.hypot(0.01768, 0.0313), rel=1e-2)


def test_quirks_one_too_wide_all_round_are_a_frame_two_too_large() -> None:
    frame = replace(WINDOW, planned_quirk_mm=5.0, quirk_mm=((6.0, None, 6.0),) * 4)
    sizes = {size.axis: size.too_large_mm for size in built_sizes(frame)}
    assert sizes == {Axis.WIDTH: 2.0, Axis.HEIGHT: 2.0}


def test_a_frame_moved_or_turned_in_its_opening_is_no_larger() -> None:
    frame = replace(
        WINDOW,
        planned_quirk_mm=5.0,
        quirk_mm=((5.5, None, 4.5), (7.0, 2.0, 6.0), (4.0, None, 6.0), (3.0, None, 4.0)),
    )
    assert [size.too_large_mm for size in built_sizes(frame)] == [0.0, 0.0]


def test_what_was_allowed_for_is_added_to_what_is_left() -> None:
    frame = replace(WINDOW, planned_quirk_mm=5.0, quirk_mm=((5.0, 5.0, 5.0),) * 4, allowed_mm=0.8)
    assert [size.too_large_mm for size in built_sizes(frame)] == [0.8, 0.8]


def test_a_door_tells_its_width_alone() -> None:
    nothing = (None, None, None)
    side = (5.5, None, None)
    frame = replace(DOOR, planned_quirk_mm=5.0, quirk_mm=(nothing, side, side, side))
    assert [(s.axis, s.too_large_mm) for s in built_sizes(frame)] == [(Axis.WIDTH, 1.0)]


def test_no_quirks_read_tell_no_size() -> None:
    assert built_sizes(WINDOW) == ()
    assert built_sizes(replace(WINDOW, quirk_mm=((None, None, None),) * 4)) == ()


@pytest.mark.parametrize(
    ("gaps", "lengths"), [(3, 3), (4, 3), (2, 4), (0, 0)], ids=["three", "short", "long", "none"]
)
def test_a_frame_has_two_joints_or_four_and_a_mitre_for_each(gaps: int, lengths: int) -> None:
    with pytest.raises(QuantityError):
        replace(WINDOW, gaps=(OPEN_HEEL,) * gaps, mitre_length_mm=(90.0,) * lengths)


@pytest.mark.parametrize("length_mm", [0.0, -1.0, math.inf, math.nan])
def test_a_mitre_has_a_length(length_mm: float) -> None:
    with pytest.raises(QuantityError):
        replace(WINDOW, mitre_length_mm=(length_mm,) * 4)
