"""Sprung mouldings: one plane, however it is looked at and however the moulding is held."""

import math

from hypothesis import given
from hypothesis import strategies as st

from longpoint.trims.cornice import (
    SprungRun,
    corner_cuts,
    corner_frames,
)
from longpoint.trims.joint_plane import BoardFrame, SawAngles, Vector, cross, dot, plus, times
from longpoint.trims.nested import NestedSetting, nested_setting
from longpoint.trims.run_joint import joint_normal, misfit, rectangle

springs = st.floats(20.0, 70.0)
slopes = st.floats(-40.0, 40.0)
corners = st.one_of(st.floats(40.0, 170.0), st.floats(190.0, 320.0))
mitres = st.floats(-60.0, 60.0)
bevels = st.floats(-50.0, 50.0)

X: Vector = (1.0, 0.0, 0.0)
Y: Vector = (0.0, 1.0, 0.0)
Z: Vector = (0.0, 0.0, 1.0)


def turned(vector: Vector, axis: Vector, by_deg: float) -> Vector:
    """Return a vector turned about an axis of length 1, anticlockwise looked at against it."""
    by = math.radians(by_deg)
    along = times(axis, dot(axis, vector))
    rest = plus(vector, times(along, -1.0))
    return plus(along, plus(times(rest, math.cos(by)), times(cross(axis, rest), math.sin(by))))


def flat_blade(cut: SawAngles, way: float) -> Vector:
    """Return the blade's normal for a board on its back (along, across, face); way + at the right.

    The blade, square across, is turned about the upright, then tilted about its line on the face.
    """
    normal = turned(times(X, way), Z, -way * cut.mitre_deg)
    return turned(normal, turned(Y, Z, -way * cut.mitre_deg), -way * cut.bevel_deg)


def nested_blade(setting: NestedSetting) -> Vector:
    """Return the blade's normal in the saw's directions: x right, y up, z from fence to you.

    The handle points to you; swung right it moves to x. Leaning left the top of the blade moves
    to -x.
    """
    foot = turned(Z, Y, setting.table_deg)
    return turned(turned(X, Y, setting.table_deg), foot, setting.lean_deg)


def nested_on_the_saw(spring_deg: float, normal: Vector) -> Vector:
    """Return a direction of the board (along, across, face) as it lies nested, upside down.

    On the wall the board is rolled by the spring; half a turn about z stands it on its head.
    """
    rolled = [turned(axis, X, spring_deg) for axis in (X, Y, Z)]
    on_wall = (0.0, 0.0, 0.0)
    for part, axis in zip(normal, rolled, strict=True):
        on_wall = plus(on_wall, times(axis, part))
    return turned(on_wall, Z, 180.0)


def near(one: Vector, other: Vector, within: float = 1e-9) -> bool:
    return math.dist(one, other) < within


def same_plane(one: Vector, other: Vector) -> bool:
    return near(one, other) or near(one, times(other, -1.0))


def in_the_room(frame: BoardFrame, cut: SawAngles) -> Vector:
    """Return the cut's normal in the room, from the settings alone."""
    along, across, face = flat_blade(cut, 1.0)
    return plus(
        times(frame.outward, along), plus(times(frame.across, across), times(frame.face, face))
    )


@given(corners, springs, slopes)
def test_both_boards_see_one_plane(corner_deg: float, spring_deg: float, slope_deg: float) -> None:
    left = SprungRun(spring_deg=spring_deg, slope_deg=slope_deg)
    right = SprungRun(spring_deg=spring_deg, slope_deg=-slope_deg)
    cuts = corner_cuts(corner_deg, left, right)
    assert cuts is not None
    one, other = corner_frames(corner_deg, left, right)
    assert near(in_the_room(one, cuts.left_run), times(in_the_room(other, cuts.right_run), -1.0))


@given(springs, slopes, slopes)
def test_two_slopes_always_meet_on_one_wall(spring_deg: float, one: float, other: float) -> None:
    left = SprungRun(spring_deg=spring_deg, slope_deg=one)
    right = SprungRun(spring_deg=spring_deg, slope_deg=other)
    cuts = corner_cuts(180.0, left, right)
    assert cuts is not None
    frames = corner_frames(180.0, left, right)
    normal = in_the_room(frames[0], cuts.left_run)
    assert near(normal, times(in_the_room(frames[1], cuts.right_run), -1.0), 1e-6)
    assert misfit(*frames, rectangle(90.0, 18.0), normal).halved_mm < 1e-3


@given(corners, springs)
def test_an_external_corner_is_the_internal_one_with_both_signs_changed(
    corner_deg: float, spring_deg: float
) -> None:
    run = SprungRun(spring_deg=spring_deg)
    cuts, others = corner_cuts(corner_deg, run, run), corner_cuts(360.0 - corner_deg, run, run)
    assert cuts is not None
    assert others is not None
    assert math.dist(cuts.left_run, [-angle for angle in others.left_run]) < 1e-9


@given(corners, springs, springs, slopes, slopes)
def test_settings_are_given_only_where_every_line_meets_its_own(
    corner_deg: float, spring: float, other_spring: float, slope: float, other_slope: float
) -> None:
    left = SprungRun(spring_deg=spring, slope_deg=slope)
    right = SprungRun(spring_deg=other_spring, slope_deg=other_slope)
    frames = corner_frames(corner_deg, left, right)
    normal = joint_normal(*frames)
    section = rectangle(90.0, 18.0)
    if normal is None:
        assert misfit(*frames, section).least_mm > 0
    else:
        assert misfit(*frames, section, normal).halved_mm < 0.01


@given(springs, mitres, bevels, st.booleans())
def test_nested_and_flat_are_one_plane_through_the_moulding(
    spring_deg: float, mitre_deg: float, bevel_deg: float, at_left: bool
) -> None:
    cut = SawAngles(mitre_deg, bevel_deg)
    flat = flat_blade(cut, -1.0 if at_left else 1.0)
    nested = nested_blade(nested_setting(spring_deg, cut, at_left=at_left))
    assert same_plane(nested, nested_on_the_saw(spring_deg, flat))


@given(springs, mitres, bevels, st.booleans())
def test_half_a_degree_off_is_another_plane(
    spring_deg: float, mitre_deg: float, bevel_deg: float, at_left: bool
) -> None:
    cut = SawAngles(mitre_deg, bevel_deg)
    setting = nested_setting(spring_deg, cut, at_left=at_left)
    off = nested_blade(NestedSetting(setting.table_deg, setting.lean_deg + 0.5))
    flat = nested_on_the_saw(spring_deg, flat_blade(cut, -1.0 if at_left else 1.0))
    assert not same_plane(off, flat)
