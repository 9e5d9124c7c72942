from dataclasses import replace
from random import Random

import pytest

from longpoint.errors import ShapeError
from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.diagnosis import Observable
from longpoint.forecast.tapping.programme import TapRules
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from longpoint.forecast.tapping.taps import Cannot, TapPlan, plan_taps
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import FRAMES, planted, without
from tests.unit.forecast.tapping.wall import Cut, Wall, board_of, door, hung, polygon_set, window

pytestmark = pytest.mark.no_cover

LIMITS = FitLimits(gap_mm=0.5)
TACKED_LEGS = TapRules(free=frozenset({0, 2}))
FAULTS = (Observable.POSE, Observable.ANGLE_SUM, Observable.LENGTHS, Observable.WHOLE_SIZE)

READ_OFF_MM = 0.025
"""Half the feeler's step: what a reading may hide."""


def plan_of(frame: Frame, seen: SeenFrame, rules: TapRules | None = TACKED_LEGS) -> TapPlan:
    return plan_taps(frame, seen, LIMITS, HighsSolver(), rules)


def walk(wall: Wall, plan: TapPlan) -> list[Wall]:
    """Return the true pieces after each tap as it is printed."""
    out = [wall]
    for tap in plan.taps:
        printed = replace(tap, move_mm=float(f"{tap.move_mm:.1f}"))
        out.append(out[-1].tapped((printed,)))
    return out


def assert_never_worse(wall: Wall, plan: TapPlan, pinch_mm: float) -> None:
    before_mm = wall.open_mm()
    for lies in walk(wall, plan):
        assert lies.open_mm() <= before_mm + 1e-6
        assert lies.overlap_mm() <= wall.overlap_mm() + pinch_mm


@pytest.mark.parametrize("fault", FAULTS)
def test_no_tap_makes_the_worst_gap_of_true_polygons_larger(fault: Observable) -> None:
    for case in range(8):
        rng = Random(f"walk {fault} {case}")
        frame = FRAMES[case % len(FRAMES)]
        wall = planted(frame, fault, rng)
        assert_never_worse(wall, plan_of(frame, wall.read(rng)), 0.1)


@pytest.mark.long
@pytest.mark.parametrize("fault", FAULTS)
@pytest.mark.parametrize("missing", [0, 3])
def test_no_tap_makes_any_of_many_walls_worse(fault: Observable, missing: int) -> None:
    for case in range(250):
        rng = Random(f"many {fault} {case}")
        frame = FRAMES[case % len(FRAMES)]
        wall = planted(frame, fault, rng)
        ends = rng.sample(range(8), rng.randint(1, missing)) if missing else []
        plan = plan_of(frame, without(wall.read(rng), ends))
        assert_never_worse(wall, plan, 0.35 if missing else 0.1)


@pytest.mark.parametrize("missing", [1, 2, 3])
def test_with_gaps_missing_no_tap_makes_it_worse(missing: int) -> None:
    helped = 0
    for case in range(6):
        rng, frame = Random(f"missing {missing} {case}"), window()
        wall = planted(frame, Observable.POSE, rng)
        plan = plan_of(frame, without(wall.read(rng), rng.sample(range(8), missing)))
        assert_never_worse(wall, plan, 0.35)
        assert Cannot.PART_READ in plan.cannot
        helped += bool(plan.taps)
    assert helped


def test_true_pieces_nailed_askew_come_within_the_limit() -> None:
    for case in range(8):
        rng, frame = Random(f"askew {case}"), window()
        wall = hung(frame, (Cut(),) * 4, rng, pose_mm=0.5)
        plan = plan_of(frame, wall.read(rng))
        assert walk(wall, plan)[-1].open_mm() <= LIMITS.gap_mm
        assert Cannot.GAP_LEFT not in plan.cannot


def test_what_is_expected_after_the_taps_is_what_the_true_pieces_show() -> None:
    for case in range(6):
        rng = Random(f"expected {case}")
        frame = FRAMES[case % len(FRAMES)]
        wall = planted(frame, Observable.ANGLE_SUM, rng)
        plan = plan_of(frame, wall.read(rng))
        expected = [gap for joint in plan.joints for gap in (joint.heel_mm, joint.toe_mm)]
        # Second order of moves of a few millimetres comes on top of what the feeler hides.
        assert walk(wall, plan)[-1].gaps_mm() == pytest.approx(expected, abs=READ_OFF_MM + 0.06)


def test_the_worst_of_all_angles_alike_is_what_the_closed_form_says() -> None:
    frame = window()
    wall = hung(frame, (Cut(start_deg=0.2, end_deg=0.2),) * 4, Random(1))
    plan = plan_of(frame, wall.read(), TapRules(free=frozenset(range(4))))
    # 2 x root 2 x 70 x 0.2 degrees: each joint keeps a quarter of it all, whatever is tapped.
    assert plan.after_worst_mm == pytest.approx(0.69, abs=0.15)
    assert plan.after_worst_mm is not None
    assert plan.after_worst_mm > 0.64
    assert Cannot.GAP_LEFT in plan.cannot


def test_nothing_read_gives_no_taps_and_says_so() -> None:
    plan = plan_of(window(), SeenFrame(joints=(SeenJoint(),) * 4))
    assert plan.taps == ()
    assert plan.before_worst_mm is None
    assert plan.cannot == (Cannot.NOTHING_READ,)


def test_a_set_that_fits_is_left_alone() -> None:
    joints = (SeenJoint(heel_mm=0.05, toe_mm=0.1, step_mm=0.0),) * 4
    plan = plan_of(window(), SeenFrame(joints=joints))
    assert plan.taps == ()
    assert plan.cannot == (Cannot.NO_BETTER,)


def pushed_in(wall: Wall, piece: int, by_mm: float) -> Wall:
    board = wall.boards[piece].nailed(0.0, -by_mm, 0.0, wall.frame.sides[piece])
    boards = (*wall.boards[:piece], board, *wall.boards[piece + 1 :])
    return replace(wall, boards=boards)


def test_forced_joints_are_eased_on_the_true_polygons() -> None:
    frame = window()
    wall = pushed_in(hung(frame, (Cut(),) * 4, Random(6), pose_mm=0.0), 2, 0.4)
    assert wall.overlap_area_mm2() > 1.0
    plan = plan_of(frame, wall.read())
    after = walk(wall, plan)[-1]
    assert after.overlap_mm() < 0.1
    # All joints were shut, so what the feeler hides is all that may open.
    assert after.open_mm() < 0.05
    assert Cannot.FORCED_LEFT not in plan.cannot


@pytest.mark.parametrize("seed", range(5))
def test_a_set_both_open_and_forced_is_made_no_worse(seed: int) -> None:
    frame = window()
    wall = pushed_in(hung(frame, (Cut(),) * 4, Random(seed), pose_mm=0.4), 2, 1.5)
    seen = wall.read()
    assert min(gap for gap in seen.gaps_mm if gap is not None) < 0.0
    plan = plan_of(frame, seen)
    assert_never_worse(wall, plan, 0.1)
    assert walk(wall, plan)[-1].overlap_mm() <= 0.1


def test_pieces_nailed_along_are_not_tapped() -> None:
    frame = window()
    seen = planted(frame, Observable.POSE, Random(9)).read()
    plan = plan_of(frame, seen, TapRules(fixed=frozenset({1, 3}), free=frozenset({0, 2})))
    assert not {tap.piece for tap in plan.taps} & {1, 3}
    held = plan_of(frame, seen, TapRules(fixed=frozenset(range(4))))
    assert held.taps == ()
    assert Cannot.NO_BETTER in held.cannot


@pytest.mark.parametrize("count", [3, 5, 6])
def test_sets_of_any_number_of_sides_are_tapped(count: int) -> None:
    frame = polygon_set(count)
    wall = hung(frame, (Cut(),) * count, Random(count), pose_mm=0.4)
    plan = plan_of(frame, wall.read(), None)
    assert plan.taps
    assert len(plan.taps) <= 3 * count
    assert_never_worse(wall, plan, 0.1)
    assert walk(wall, plan)[-1].open_mm() < wall.open_mm()


def test_a_door_is_tapped() -> None:
    frame = door()
    wall = hung(frame, (Cut(),) * 3, Random(2))
    plan = plan_of(frame, wall.read(), TapRules(free=frozenset({1})))
    assert len(plan.joints) == 2
    assert len(plan.quirks_mm) == 3
    assert_never_worse(wall, plan, 0.1)


def test_a_shut_set_that_stands_aside_is_not_taken_apart_for_its_quirk() -> None:
    frame = window()
    boards = tuple(
        board_of(frame, i, Cut()).nailed(slide_mm, out_mm, 0.0, side)
        for i, (side, (slide_mm, out_mm)) in enumerate(
            zip(frame.sides, ((2.4, 0.0), (0.0, 2.4), (-2.4, 0.0), (0.0, -2.4)), strict=True)
        )
    )
    wall = Wall(frame=frame, boards=boards, reveal_mm=((0.0, 0.0, 0.0),) * 4)
    plan = plan_of(frame, wall.read(), TapRules(free=frozenset(range(4))))
    assert plan.taps == ()
    assert plan.cannot == (Cannot.NO_BETTER, Cannot.QUIRK_LEFT)


def test_readings_of_another_set_are_refused() -> None:
    with pytest.raises(ShapeError):
        plan_of(window(), SeenFrame(joints=(SeenJoint(),) * 3))
