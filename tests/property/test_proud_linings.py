import math

from hypothesis import given
from hypothesis import strategies as st

from longpoint.trims.tilt import (
    Lie,
    closing_cuts,
    face_step_mm,
    level_lies,
    plain_cuts_open,
    tilt_deg,
)

CORNERS = st.floats(60.0, 130.0)
LIES = st.builds(
    Lie,
    width_mm=st.floats(40.0, 140.0),
    thickness_mm=st.floats(8.0, 30.0),
    tilt_deg=st.floats(-10.0, 10.0),
)
LIFTED = st.builds(
    Lie,
    width_mm=st.floats(60.0, 100.0),
    thickness_mm=st.floats(8.0, 30.0),
    tilt_deg=st.floats(0.0, 8.0),
)


@given(CORNERS, LIES, LIES)
def test_wood_touches_somewhere_and_nowhere_goes_through(
    corner_deg: float, first: Lie, second: Lie
) -> None:
    assert min(plain_cuts_open(corner_deg, first, second)) == 0.0


@given(CORNERS, LIES, LIES)
def test_naming_the_pieces_the_other_way_round_changes_nothing(
    corner_deg: float, first: Lie, second: Lie
) -> None:
    one, other = (
        plain_cuts_open(corner_deg, first, second),
        plain_cuts_open(corner_deg, second, first),
    )
    assert all(math.isclose(a, b, abs_tol=1e-9) for a, b in zip(one, other, strict=True))
    assert closing_cuts(corner_deg, first, second) == closing_cuts(corner_deg, second, first)[::-1]
    assert face_step_mm(first, second) == -face_step_mm(second, first)


@given(CORNERS, LIFTED, LIFTED)
def test_two_lifted_pieces_open_at_least_as_far_as_either_alone(
    corner_deg: float, first: Lie, second: Lie
) -> None:
    flat = Lie(width_mm=second.width_mm, thickness_mm=second.thickness_mm)
    both = plain_cuts_open(corner_deg, first, second)
    alone = plain_cuts_open(corner_deg, first, flat)
    # Beside a much wider piece on a blunt corner the other's mitre leans back; not among these.
    if min(cut.plan_deg for cut in closing_cuts(corner_deg, first, second)) > 0.0:
        assert both.toe_mm >= alone.toe_mm - 1e-9
        assert both.heel_mm >= alone.heel_mm - 1e-9
        assert both.toe_behind_mm == 0.0


@given(CORNERS, LIES, LIES)
def test_the_two_cuts_lie_in_one_plane(corner_deg: float, first: Lie, second: Lie) -> None:
    cuts = closing_cuts(corner_deg, first, second)
    assert math.isclose(sum(cut.plan_deg for cut in cuts), 180.0 - corner_deg, abs_tol=1e-9)
    lengths_mm = [
        lie.plan_width_mm / math.cos(math.radians(cut.plan_deg))
        for cut, lie in zip(cuts, (first, second), strict=True)
    ]
    assert math.isclose(*lengths_mm, rel_tol=1e-9)


@given(LIFTED, LIFTED)
def test_packing_levels_the_faces_but_for_their_thicknesses(first: Lie, second: Lie) -> None:
    one, other = level_lies(first, second)
    assert math.isclose(one.rise_mm, other.rise_mm, abs_tol=1e-9)
    planned_mm = first.thickness_mm - second.thickness_mm
    assert abs(face_step_mm(one, other) - planned_mm) < 30.0 * (1 - math.cos(math.radians(14.0)))


@given(st.floats(-5.0, 5.0), st.floats(25.0, 120.0))
def test_a_tilt_lifts_by_what_made_it(proud_mm: float, bears_mm: float) -> None:
    found = tilt_deg(proud_mm, bears_mm)
    assert math.isclose(bears_mm * math.sin(math.radians(found)), proud_mm, abs_tol=1e-9)
