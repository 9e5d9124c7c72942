from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Observable, diagnose
from longpoint.forecast.tapping.programme import TapRules
from longpoint.forecast.tapping.remedies import remedy_for
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from longpoint.forecast.tapping.taps import plan_taps
from longpoint.forecast.tapping.words import Advice, advice_for
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import planted, without
from tests.unit.forecast.tapping.wall import Cut, door, hung, polygon_set, window

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
TACKED_LEGS = TapRules(free=frozenset({0, 2}))


def advice(
    frame: Frame, seen: SeenFrame, rules: TapRules = TACKED_LEGS, *, is_painted: bool = False
) -> Advice:
    solver = HighsSolver()
    told = diagnose(frame, seen)
    plan = plan_taps(frame, seen, LIMITS, solver, rules)
    remedy = remedy_for(frame, seen, LIMITS, told, plan, solver, rules=rules, is_painted=is_painted)
    return advice_for(frame, seen, LIMITS, told, plan, remedy)


def test_a_set_nailed_askew_is_tapped_then_glued() -> None:
    frame = window()
    said = advice(frame, hung(frame, (Cut(),) * 4, Random(1), pose_mm=0.4).read())
    assert "nailed" in said.says[0]
    assert said.taps
    assert said.lines[len(said.says)].startswith("1. ")
    assert "not measured" in said.leaves[0]
    assert "glue and pin" in said.then[-1]


def test_an_angle_error_is_said_of_all_cuts_and_of_no_piece() -> None:
    frame = window()
    said = advice(frame, hung(frame, (Cut(end_deg=2.0), *(Cut(),) * 3), Random(4)).read())
    text = " ".join((*said.says, *said.then))
    assert "All cuts together are" in text
    assert "past their angle" in text
    assert not [name for name in ("head", "leg", "sill piece") if name in text]
    assert "don't guess" in text
    assert "which of the two pieces" in " ".join(said.blind)


def test_toes_are_said_to_open_when_the_cuts_are_short_of_their_angle() -> None:
    frame = window()
    blunt = Cut(start_deg=-0.3, end_deg=-0.3)
    said = advice(frame, hung(frame, (blunt,) * 4, Random(4)).read(), is_painted=True)
    assert "short of their angle" in said.says[1]
    assert "every joint's toes stay open by 1.0" in said.says[1]
    assert "off its short point" in " ".join(said.then)


def test_what_filler_can_do_is_said_to_have_no_source() -> None:
    frame = window()
    over = Cut(start_deg=0.2, end_deg=0.2)
    seen = hung(frame, (over,) * 4, Random(1), pose_mm=0.3).read()
    said = advice(frame, seen, TapRules(free=frozenset(range(4))), is_painted=True)
    assert "common practice, no source" in said.then[-1]


def test_nothing_read_is_said_and_nothing_else_advised() -> None:
    said = advice(window(), SeenFrame(joints=(SeenJoint(),) * 4))
    assert said.taps == ()
    assert said.leaves == (
        "No gap was read, so there is nothing to advise: read heel and toe of each joint.",
    )


def test_readings_that_are_missing_are_asked_for() -> None:
    frame = window()
    seen = without(planted(frame, Observable.POSE, Random(1)).read(), [1, 4])
    said = advice(frame, seen)
    assert "weren't read" in " ".join(said.leaves)
    assert "Read heel and toe of every joint" in said.then[0]


def test_a_forced_joint_is_warned_of() -> None:
    joints = (SeenJoint(heel_mm=-0.3, toe_mm=0.2), *(SeenJoint(heel_mm=0.1, toe_mm=0.6),) * 3)
    said = advice(window(), SeenFrame(joints=joints))
    assert "forced" in said.leaves[1]


def test_lengths_that_differ_are_said_with_their_doubt() -> None:
    frame = window()
    cuts = tuple(Cut(end_mm=9.0 if i == 2 else 0.0) for i in range(4))
    said = advice(frame, hung(frame, cuts, Random(3), pose_mm=0.3).read())
    assert any("head is longer than the sill piece by" in line for line in said.says)
    assert "give or take" in said.says[1]
    assert any("measure both" in line for line in said.blind)


def test_a_head_of_a_door_is_too_long_for_its_opening() -> None:
    frame = door()
    cuts = (Cut(), Cut(end_mm=8.0), Cut())
    said = advice(frame, hung(frame, cuts, Random(3), pose_mm=0.3).read(), TapRules())
    assert any("The head is too long for the opening by" in line for line in said.says)


@pytest.mark.parametrize("fault", [Observable.POSE, Observable.ANGLE_SUM, Observable.WHOLE_SIZE])
def test_every_line_is_a_sentence_without_a_percentage(fault: Observable) -> None:
    for frame in (window(), polygon_set(6)):
        for line in advice(frame, planted(frame, fault, Random(5)).read()).lines:
            assert line.endswith(".")
            assert "%" not in line
            assert "  " not in line
