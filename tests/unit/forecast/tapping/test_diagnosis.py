from collections import Counter
from random import Random

import pytest

from longpoint.forecast.tapping.diagnosis import Blind, Observable, diagnose
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from tests.unit.forecast.tapping.planted import FRAMES, planted, without
from tests.unit.forecast.tapping.wall import Cut, door, hung, polygon_set, private, window

pytestmark = pytest.mark.no_cover

FAULTS = (
    Observable.POSE,
    Observable.ANGLE_SUM,
    Observable.LENGTHS,
    Observable.WHOLE_SIZE,
)


def told_right(fault: Observable, cases: int) -> float:
    right = 0
    for case in range(cases):
        rng = Random(f"{fault} {case}")
        frame = FRAMES[case % len(FRAMES)]
        told = diagnose(frame, planted(frame, fault, rng).read(rng))
        right += told.observable is fault and (
            fault is not Observable.ANGLE_SUM or Blind.WHICH_END in told.blind
        )
    return right / cases


@pytest.mark.parametrize("fault", FAULTS)
def test_a_planted_fault_is_told_for_what_it_is(fault: Observable) -> None:
    assert told_right(fault, 50) > 0.9


@pytest.mark.long
@pytest.mark.parametrize("fault", FAULTS)
def test_a_planted_fault_is_told_in_a_thousand_walls(fault: Observable) -> None:
    assert told_right(fault, 1000) > 0.9


def test_an_angle_error_looks_the_same_in_both_pieces_of_a_joint() -> None:
    frame = window()
    ends = ((Cut(end_deg=1.0), Cut()), (Cut(), Cut(start_deg=1.0)))
    told = [diagnose(frame, hung(frame, (*c, Cut(), Cut()), Random(8)).read()) for c in ends]
    assert told[0].observable is told[1].observable is Observable.ANGLE_SUM
    assert told[0].angles[0].over_deg == pytest.approx(told[1].angles[0].over_deg, abs=0.1)


@pytest.mark.parametrize("over_deg", [-0.2, 0.2])
def test_the_sum_of_angles_keeps_its_sign(over_deg: float) -> None:
    frame, cut = window(), Cut(start_deg=over_deg, end_deg=over_deg)
    told = diagnose(frame, hung(frame, (cut,) * 4, Random(2)).read())
    assert told.angles[0].over_deg == pytest.approx(8 * over_deg, abs=0.1)
    # All eight cuts 0.2 degrees off, 70 wide: 2 x root 2 x 70 x 0.00349 = 0.69 at every joint.
    assert told.angles[0].left_mm == pytest.approx(0.69, abs=0.05)


def test_two_faults_are_mixed() -> None:
    frame = window()
    off = tuple(Cut(start_deg=0.1, end_deg=0.1, end_mm=end_mm) for end_mm in (9.0, 0.0, 0.0, 0.0))
    assert diagnose(frame, hung(frame, off, Random(1)).read()).observable is Observable.MIXED


def test_a_set_that_lies_true_has_nothing_to_say() -> None:
    frame = window()
    told = diagnose(frame, hung(frame, (Cut(),) * 4, Random(1), pose_mm=0.0).read())
    assert told.observable is Observable.CLOSED


def test_with_nothing_read_it_says_so() -> None:
    told = diagnose(window(), SeenFrame(joints=(SeenJoint(),) * 4))
    assert told.observable is Observable.UNREAD
    assert told.blind == (Blind.ANGLES, Blind.LENGTHS)


def test_gaps_alone_tell_the_angles_but_not_the_lengths() -> None:
    rng, frame = Random(4), window()
    read = planted(frame, Observable.LENGTHS, rng).read(rng)
    gaps = SeenFrame(
        joints=tuple(SeenJoint(heel_mm=j.heel_mm, toe_mm=j.toe_mm) for j in read.joints)
    )
    told = diagnose(frame, gaps)
    assert Blind.ANGLES not in told.blind
    assert Blind.LENGTHS in told.blind
    assert told.observable is Observable.POSE


def test_missing_gaps_never_make_a_fault_of_nailing() -> None:
    wrong: Counter[Observable] = Counter()
    for case in range(40):
        rng, frame = Random(case), window()
        seen = planted(frame, Observable.POSE, rng).read(rng)
        missing = rng.sample(range(8), rng.randint(1, 3))
        wrong[diagnose(frame, without(seen, missing)).observable] += 1
    assert set(wrong) <= {Observable.POSE, Observable.UNREAD}


def test_a_door_tells_its_angles_joint_by_joint() -> None:
    frame = door()
    cuts = (Cut(end_deg=1.0), Cut(), Cut())
    told = diagnose(frame, hung(frame, cuts, Random(3), pose_mm=0.3).read(Random(3)))
    assert told.observable is Observable.ANGLE_SUM
    first, second = told.angles
    assert first.is_wrong
    assert first.over_deg == pytest.approx(1.0, abs=0.2)
    assert not second.is_wrong


def test_a_door_without_quirks_can_not_tell_angle_from_nailing() -> None:
    frame = door()
    read = hung(frame, (Cut(end_deg=1.0), Cut(), Cut()), Random(3)).read(Random(3))
    told = diagnose(frame, SeenFrame(joints=read.joints))
    assert Blind.ANGLES in told.blind


@pytest.mark.parametrize("count", [3, 5, 6])
def test_any_number_of_sides_is_told(count: int) -> None:
    frame = polygon_set(count)
    rng = Random(count)
    cuts = tuple(private(rng) for _ in range(count))
    assert diagnose(frame, hung(frame, cuts, rng).read(rng)).observable is Observable.POSE
    over = tuple(Cut(start_deg=0.2, end_deg=0.2) for _ in range(count))
    told = diagnose(frame, hung(frame, over, rng).read(rng))
    assert told.observable is Observable.ANGLE_SUM
    assert told.angles[0].over_deg == pytest.approx(0.4 * count, abs=0.15)
