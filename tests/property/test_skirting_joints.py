"""Corners of walls that lean, and boards over uneven floors, whatever the readings."""

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from longpoint.trims.floor_scribe import (
    NEARLY_ALIKE_MM,
    following_scribe,
    height_at,
    level_scribe,
)
from longpoint.trims.skirting_joints import Seat, corner_cut, corner_steps, longer_above_mm

inside_deg = st.floats(35.0, 170.0)
corners_deg = st.one_of(inside_deg, inside_deg.map(lambda deg: 360.0 - deg))
leans_deg = st.floats(-10.0, 10.0)
heights_mm = st.floats(-15.0, 15.0)
floors = st.lists(
    st.tuples(st.integers(0, 4000), heights_mm), min_size=1, max_size=8, unique_by=lambda p: p[0]
).map(sorted)


def seat(lean_deg: float, climb_deg: float = 0.0) -> Seat:
    return Seat(width_mm=150.0, thickness_mm=20.0, lean_deg=lean_deg, climb_deg=climb_deg)


@given(corners_deg, leans_deg)
def test_walls_that_lean_alike_meet_without_a_step(corner_deg: float, lean_deg: float) -> None:
    assert corner_steps(corner_deg, seat(lean_deg), seat(lean_deg)).worst_mm < 1e-9


@given(corners_deg, leans_deg, leans_deg)
def test_the_step_is_at_least_the_thickness_times_what_the_leans_sines_differ(
    corner_deg: float, one_deg: float, other_deg: float
) -> None:
    steps = corner_steps(corner_deg, seat(one_deg), seat(other_deg))
    sines = math.sin(math.radians(one_deg)) - math.sin(math.radians(other_deg))
    assert steps.face_bottom_mm >= 20.0 * abs(sines) - 1e-9
    turned = corner_steps(corner_deg, seat(other_deg), seat(one_deg))
    assert turned == pytest.approx(steps, abs=1e-9)


@given(corners_deg, leans_deg, leans_deg, st.floats(-1.0, 1.0))
def test_the_saw_s_angles_are_those_of_the_ends(
    corner_deg: float, one_deg: float, other_deg: float, climb_deg: float
) -> None:
    cut = corner_cut(corner_deg, seat(one_deg, climb_deg), seat(other_deg))
    mitre, bevel = (math.radians(angle) for angle in cut.angles)
    across_mm = cut.short.face_bottom_mm - cut.short.face_top_mm
    through_mm = cut.short.face_bottom_mm - cut.short.back_bottom_mm
    assert across_mm == pytest.approx(150.0 * math.tan(mitre), abs=1e-6)
    assert through_mm == pytest.approx(20.0 * math.tan(bevel) / math.cos(mitre), abs=1e-6)


@given(inside_deg, leans_deg, leans_deg, st.floats(0.0, 2500.0))
def test_what_a_wall_gains_above_grows_evenly(
    corner_deg: float, one_deg: float, other_deg: float, height_mm: float
) -> None:
    one = longer_above_mm(corner_deg, one_deg, other_deg, height_mm)
    twice = longer_above_mm(corner_deg, one_deg, other_deg, 2.0 * height_mm)
    assert twice == pytest.approx(2.0 * one, abs=1e-6)


@given(floors)
def test_no_board_stands_below_its_floor_and_every_one_stands_on_it(
    floor: list[tuple[float, float]],
) -> None:
    for scribe in (following_scribe(floor, 4000.0), level_scribe(floor, 4000.0)):
        offs = [off_mm for _, off_mm in scribe.marks]
        assert min(offs) == pytest.approx(0.0, abs=1e-9)


@given(floors)
def test_following_the_floor_never_takes_off_much_more_than_a_level_top(
    floor: list[tuple[float, float]],
) -> None:
    # The line from end to end is among those tried, so a floor with level ends gains at least that.
    assume(abs(height_at(floor, 0.0) - height_at(floor, 4000.0)) < 1e-9)
    following, level = following_scribe(floor, 4000.0), level_scribe(floor, 4000.0)
    assert following.deepest_mm <= level.deepest_mm + NEARLY_ALIKE_MM + 1e-9


@given(floors, st.floats(0.0, 0.9), st.floats(0.05, 1.0))
def test_a_part_of_a_board_is_scribed_as_the_whole_is_there(
    floor: list[tuple[float, float]], start: float, part: float
) -> None:
    whole = following_scribe(floor, 4000.0)
    start_mm = 4000.0 * start
    end_mm = start_mm + (4000.0 - start_mm) * part
    cut = whole.part(start_mm, end_mm)
    assert all(a[0] <= b[0] for a, b in pairwise(cut.marks))
    for x, off_mm in cut.marks:
        assert off_mm == pytest.approx(height_at(whole.marks, start_mm + x), abs=1e-6)
