"""What holds for every set that is tapped."""

import math
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.forecast.fitup.frame import FitLimits, Frame
from longpoint.forecast.tapping.lie import PLACES, Tap, lie_of, moves_of
from longpoint.forecast.tapping.programme import TapRules
from longpoint.forecast.tapping.seen import SeenFrame, SeenJoint
from longpoint.forecast.tapping.taps import Cannot, plan_taps
from longpoint.solvers.highs import HighsSolver
from tests.unit.forecast.tapping.planted import without
from tests.unit.forecast.tapping.wall import Wall, door, hung, polygon_set, private, window

LIMITS = FitLimits(gap_mm=0.5)

closed_sets = st.one_of(
    st.builds(window, st.floats(400.0, 2400.0), st.floats(400.0, 2000.0), st.floats(45.0, 95.0)),
    st.builds(polygon_set, st.integers(3, 8)),
)
seeds = st.integers(0, 2**32)
moves = st.floats(-2.0, 2.0)


@st.composite
def tapped_sets(draw: st.DrawFn) -> tuple[Frame, tuple[Tap, ...]]:
    """Draw a closed set and up to a dozen taps in any places."""
    frame = draw(closed_sets)
    taps = st.builds(
        Tap,
        piece=st.integers(0, len(frame.sides) - 1),
        place=st.sampled_from(PLACES),
        move_mm=moves,
    )
    return frame, tuple(draw(st.lists(taps, max_size=12)))


def turned(frame: Frame, gaps_mm: tuple[float, ...]) -> float:
    """Return the sum of (heel - toe) / joint length. [rad]"""
    return math.fsum(
        (gaps_mm[2 * i] - gaps_mm[2 * i + 1]) / joint.length_mm
        for i, joint in enumerate(frame.joints)
    )


@given(tapped_sets())
def test_no_tap_changes_the_sum_of_angles_on_the_rows(case: tuple[Frame, tuple[Tap, ...]]) -> None:
    frame, taps = case
    lie = lie_of(frame, SeenFrame(joints=(SeenJoint(),) * len(frame.joints)), LIMITS)
    moved = moves_of(len(frame.sides), taps)
    gaps = tuple(row.change_mm(moved) for row in lie if row.is_gap)
    assert abs(turned(frame, gaps)) < 1e-9


@given(tapped_sets(), seeds)
def test_no_tap_changes_the_sum_of_angles_of_true_polygons(
    case: tuple[Frame, tuple[Tap, ...]], seed: int
) -> None:
    frame, taps = case
    rng = Random(seed)
    wall = hung(frame, tuple(private(rng) for _ in frame.sides), rng)
    before, after = true_turn(wall), true_turn(wall.tapped(taps))
    assert abs(after - before) < 1e-9


def true_turn(wall: Wall) -> float:
    """Return the sum over the joints of the angle between the two true cut faces. [rad]"""
    total = 0.0
    for joint in wall.frame.joints:
        _, heel_a, toe_a, _ = wall.boards[joint.before].points
        heel_b, _, _, toe_b = wall.boards[joint.after].points
        a = math.atan2(toe_a.y_mm - heel_a.y_mm, toe_a.x_mm - heel_a.x_mm)
        b = math.atan2(toe_b.y_mm - heel_b.y_mm, toe_b.x_mm - heel_b.x_mm)
        total += (a - b + math.pi) % (2.0 * math.pi) - math.pi
    return total


@settings(max_examples=15)
@given(
    st.one_of(closed_sets, st.builds(door)),
    seeds,
    st.floats(0.1, 1.2),
    st.lists(st.integers(0, 3), max_size=3, unique=True),
    st.sampled_from([0.3, 1.0, 2.0]),
)
def test_no_tap_makes_the_worst_gap_larger(
    frame: Frame, seed: int, pose_mm: float, missing: list[int], room_mm: float
) -> None:
    rng = Random(seed)
    wall = hung(frame, tuple(private(rng, 2.0) for _ in frame.sides), rng, pose_mm)
    seen = without(wall.read(rng), missing)
    rules = TapRules(tap_room_mm=room_mm, free=frozenset({rng.randrange(len(frame.sides))}))
    plan = plan_taps(frame, seen, LIMITS, HighsSolver(), rules)
    before_mm = wall.open_mm()
    for tap in plan.taps:
        wall = wall.tapped((tap,))
        assert wall.open_mm() <= before_mm + 1e-6
    if plan.taps:
        assert Cannot.NO_BETTER not in plan.cannot
