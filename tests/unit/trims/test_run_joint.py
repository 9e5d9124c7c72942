"""Runs that a cut joins, and runs that none does."""

import math

import pytest

from longpoint.trims.cornice import SprungRun, corner_frames
from longpoint.trims.joint_plane import BoardFrame, dot
from longpoint.trims.run_joint import halving_normal, joint_normal, misfit, rectangle

FLAT = BoardFrame(outward=(1, 0, 0), across=(0, 1, 0), face=(0, 0, 1))
BACK = BoardFrame(outward=(-1, 0, 0), across=(0, 1, 0), face=(0, 0, 1))


def test_two_runs_in_one_line_meet_square() -> None:
    assert joint_normal(FLAT, BACK) == pytest.approx((1.0, 0.0, 0.0))
    assert misfit(FLAT, BACK, rectangle(90.0, 18.0)) == pytest.approx((0.0, 0.0))


def test_two_runs_in_one_line_but_rolled_do_not_meet() -> None:
    s, c = math.sin(math.radians(7.0)), math.cos(math.radians(7.0))
    rolled = BoardFrame(outward=(-1, 0, 0), across=(0, c, s), face=(0, -s, c))
    assert joint_normal(FLAT, rolled) is None
    apart = misfit(FLAT, rolled, rectangle(90.0, 0.0))
    assert apart.least_mm == pytest.approx(2.0 * 90.0 * math.sin(math.radians(3.5)))
    assert apart.halved_mm == pytest.approx(apart.least_mm)


def test_the_normal_points_out_of_the_first_run_and_has_length_one() -> None:
    run = SprungRun(spring_deg=38.0)
    for corner_deg in (60.0, 90.0, 135.0, 225.0, 300.0):
        one, other = corner_frames(corner_deg, run, run)
        normal = joint_normal(one, other)
        assert normal is not None
        assert dot(normal, normal) == pytest.approx(1.0)
        assert dot(normal, one.outward) > 0
        assert dot(normal, other.outward) < 0


def test_equal_runs_meet_in_the_plane_that_halves_their_angle() -> None:
    one, other = corner_frames(
        100.0,
        SprungRun(spring_deg=38.0, slope_deg=12.0),
        SprungRun(spring_deg=38.0, slope_deg=-12.0),
    )
    assert joint_normal(one, other) == pytest.approx(halving_normal(one, other))


def test_with_the_joints_own_plane_nothing_stands_apart() -> None:
    one, other = corner_frames(
        180.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=20.0)
    )
    normal = joint_normal(one, other)
    assert normal is not None
    apart = misfit(one, other, rectangle(90.0, 18.0), normal)
    assert apart == pytest.approx((0.0, 0.0), abs=1e-9)


def test_no_cut_brings_refused_runs_nearer_than_the_least() -> None:
    """Level round a square corner into a run climbing to it at 15; a thousand other cuts."""
    one, other = corner_frames(
        90.0, SprungRun(spring_deg=38.0), SprungRun(spring_deg=38.0, slope_deg=-15.0)
    )
    section = rectangle(90.0, 18.0)
    apart = misfit(one, other, section)
    middle = halving_normal(one, other)
    steps = [0.06 * (k - 15) for k in range(31)]
    found = [
        misfit(one, other, section, (middle[0], middle[1] + a, middle[2] + b)).halved_mm
        for a in steps
        for b in steps
    ]
    assert apart.halved_mm == pytest.approx(31.0, abs=0.05)
    assert min(found) >= apart.least_mm - 1e-9
    assert min(found) < apart.least_mm + 1.0
