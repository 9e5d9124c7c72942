import math
from dataclasses import replace
from random import Random

import pytest

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Observable, diagnose
from longpoint.forecast.tapping.lie import Tap, TapPlace
from longpoint.forecast.tapping.programme import TapRules
from longpoint.forecast.tapping.remedies import FILLER_MM, Remedy, RemedyKind, recut_of, remedy_for
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint, SeenQuirks
from longpoint.forecast.tapping.taps import plan_taps
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import planted, without
from tests.unit.forecast.tapping.wall import Cut, hung, window

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
LOOSE = TapRules(free=frozenset(range(4)))


def remedy(
    frame: Frame,
    seen: SeenFrame,
    limits: FitLimits = LIMITS,
    rules: TapRules = LOOSE,
    *,
    is_painted: bool = False,
) -> Remedy:
    solver = HighsSolver()
    return remedy_for(
        frame,
        seen,
        limits,
        diagnose(frame, seen),
        plan_taps(frame, seen, limits, solver, rules),
        solver,
        rules=rules,
        is_painted=is_painted,
    )


def over(each_deg: float, seed: int = 1) -> tuple[Frame, SeenFrame]:
    frame = window()
    cut = Cut(start_deg=each_deg, end_deg=each_deg)
    return frame, hung(frame, (cut,) * 4, Random(seed), pose_mm=0.3).read()


@pytest.mark.parametrize(("over_deg", "at_toe"), [(1.0, True), (-1.0, False)])
def test_a_recut_turns_the_cut_by_what_it_is_over(over_deg: float, at_toe: bool) -> None:
    cut = recut_of(window(), 1, 2, over_deg)
    assert (cut.toe_mm > 0.0) is at_toe
    assert (cut.heel_mm > 0.0) is not at_toe
    # The cut runs from heel to toe, 70 across and 70 along; what comes off changes the run.
    run_mm = 70.0 - cut.toe_mm + cut.heel_mm
    turned_deg = math.degrees(math.atan2(run_mm, 70.0)) - 45.0
    assert turned_deg == pytest.approx(-over_deg, abs=0.02)
    assert cut.turn_deg == -over_deg


def test_pieces_nailed_askew_want_glue_once_they_are_tapped() -> None:
    frame = window()
    seen = hung(frame, (Cut(),) * 4, Random(1), pose_mm=0.4).read()
    assert remedy(frame, seen).kind is RemedyKind.GLUE_AND_PIN


def test_an_angle_error_names_both_pieces_of_every_joint() -> None:
    found = remedy(*over(0.25))
    assert found.kind is RemedyKind.RECUT_ANGLE
    assert len(found.ends) == 8
    for joint in range(4):
        assert len({piece for piece, j in found.ends if j == joint}) == 2
    # 2 degrees in all, shared by four joints 99 long.
    assert found.shaving_mm == pytest.approx(99.0 * math.radians(2.0) / 4, abs=0.05)


@pytest.mark.parametrize("each_deg", [0.25, -0.25])
def test_only_one_end_of_a_cut_is_shaved(each_deg: float) -> None:
    cut = remedy(*over(each_deg)).recut
    assert cut is not None
    assert (cut.toe_mm == 0.0) != (cut.heel_mm == 0.0)
    assert (cut.toe_mm > 0.0) == (each_deg > 0.0)


def test_the_recut_that_it_asks_for_closes_the_set() -> None:
    frame = window()
    seen = hung(frame, (Cut(end_deg=1.5), *(Cut(),) * 3), Random(4), pose_mm=0.3).read()
    found = remedy(frame, seen)
    assert found.recut is not None
    mended = Cut(end_deg=1.5 + found.recut.turn_deg, end_mm=-found.recut.heel_mm)
    again = hung(frame, (mended, *(Cut(),) * 3), Random(4), pose_mm=0.3).read()
    assert remedy(frame, again).kind is RemedyKind.GLUE_AND_PIN


def test_filler_is_offered_only_under_paint_and_only_when_narrow() -> None:
    frame, seen = over(0.2)
    assert remedy(frame, seen, is_painted=True).filler_will_do
    assert not remedy(frame, seen).filler_will_do
    frame, seen = over(0.5)
    wide = remedy(frame, seen, is_painted=True)
    assert not wide.filler_will_do
    assert wide.shaving_mm > FILLER_MM


def test_a_set_held_by_its_nails_is_loosened_before_anything_is_cut() -> None:
    frame = window()
    seen = hung(frame, (Cut(),) * 4, Random(4), pose_mm=1.0).read()
    rules = TapRules(fixed=frozenset({1, 3}), free=frozenset({0, 2}))
    found = remedy(frame, seen, rules=rules)
    assert found.kind is RemedyKind.LOOSEN
    assert found.pieces == (1, 3)


def test_with_ends_not_read_it_asks_for_them_first() -> None:
    frame, seen = over(0.3)
    assert remedy(frame, without(seen, [0, 3])).kind is RemedyKind.READ_MORE


def test_of_two_that_differ_the_longer_comes_first() -> None:
    frame = window()
    for index, order in ((0, (0, 2)), (2, (2, 0))):
        cuts = tuple(Cut(end_mm=9.0 if i == index else 0.0) for i in range(4))
        found = remedy(frame, hung(frame, cuts, Random(3), pose_mm=0.3).read())
        assert found.kind is RemedyKind.SHORTEN
        assert found.pieces == order
        assert found.shorter_mm == pytest.approx(9.0, abs=2.0)


@pytest.mark.parametrize(
    ("over_mm", "kind"), [(7.0, RemedyKind.SHORTEN), (-7.0, RemedyKind.REPLACE)]
)
def test_a_whole_set_of_the_wrong_size_is_treated_as_one(over_mm: float, kind: RemedyKind) -> None:
    frame = window()
    seen = hung(frame, (Cut(end_mm=over_mm),) * 4, Random(3), pose_mm=0.3).read()
    found = remedy(frame, seen)
    assert found.kind is kind
    assert found.pieces == (0, 1, 2, 3)


def test_what_is_left_without_a_reason_is_read_again() -> None:
    frame = window()
    seen = planted(frame, Observable.POSE, Random(2)).read()
    tight = FitLimits(gap_mm=0.02, sight_step_mm=0.001)
    assert remedy(frame, seen, tight).kind is RemedyKind.READ_AGAIN


def test_a_shut_set_that_stands_aside_is_shifted_as_one() -> None:
    joints = (SeenJoint(heel_mm=0.0, toe_mm=0.0, step_mm=0.0),) * 4
    aside = (0.0, 2.4, 0.0, -2.4)
    quirks = tuple(SeenQuirks(start_mm=q, middle_mm=q, end_mm=q) for q in aside)
    seen = SeenFrame(joints=joints, quirks=quirks)
    assert remedy(window(), seen).kind is RemedyKind.SHIFT_SET


def test_more_tapping_is_asked_for_only_after_tapping() -> None:
    frame = window()
    seen = hung(frame, (Cut(),) * 4, Random(4), pose_mm=1.0).read()
    solver = HighsSolver()
    none = plan_taps(frame, seen, LIMITS, solver, TapRules(fixed=frozenset(range(4))))
    some = replace(none, taps=(Tap(piece=0, place=TapPlace.SLIDE, move_mm=0.1),))
    for plan, kind in ((none, RemedyKind.LOOSEN), (some, RemedyKind.READ_AGAIN)):
        told = diagnose(frame, seen)
        assert remedy_for(frame, seen, LIMITS, told, plan, solver, rules=LOOSE).kind is kind
