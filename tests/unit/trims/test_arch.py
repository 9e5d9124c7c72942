import math

import pytest

from longpoint.errors import PieceError
from longpoint.shape.point import Point
from longpoint.trims.arch import ArchTrim, Springing, arch_circle, arch_radius_mm, arch_trim
from longpoint.trims.outline import TrimSide


def hole(
    width_mm: float, left_mm: float = 1000.0, right_mm: float = 1000.0, lean_mm: float = 0.0
) -> tuple[Point, ...]:
    return (
        Point(0.0, 0.0),
        Point(width_mm, 0.0),
        Point(width_mm + lean_mm, right_mm),
        Point(lean_mm, left_mm),
    )


def even(quirk_mm: float, width_mm: float) -> tuple[TrimSide, ...]:
    return (TrimSide(inner_mm=quirk_mm, width_mm=width_mm),) * 4


def off_the_leg_mm(corner: Point, start: Point, end: Point) -> float:
    """Return how far a corner lies to the right of a line going up."""
    length_mm = math.dist(start, end)
    dx, dy = (end.x_mm - start.x_mm) / length_mm, (end.y_mm - start.y_mm) / length_mm
    return dy * (corner.x_mm - start.x_mm) - dx * (corner.y_mm - start.y_mm)


def both(trim: ArchTrim) -> tuple[Springing, Springing]:
    return trim.left, trim.right


def test_the_circle_goes_through_both_springings_and_the_crown() -> None:
    circle = arch_circle(Point(-3.0, 1000.0), Point(911.0, 1011.0), 286.0)
    assert circle.left.distance_mm(circle.centre) == pytest.approx(circle.radius_mm)
    assert circle.right.distance_mm(circle.centre) == pytest.approx(circle.radius_mm)
    crown = circle.at(0.0, circle.radius_mm)
    assert crown.distance_mm(Point(454.0, 1005.5)) == pytest.approx(286.0)
    assert circle.angle_deg(circle.right) == pytest.approx(circle.half_deg)
    assert circle.angle_deg(circle.left) == pytest.approx(-circle.half_deg)


def test_an_arch_is_turned_with_the_line_between_springings_that_are_not_level() -> None:
    circle = arch_circle(Point(0.0, 1000.0), Point(900.0, 1020.0), 150.0)
    lean_deg = math.degrees(math.atan2(-circle.up[0], circle.up[1]))
    assert lean_deg == pytest.approx(math.degrees(math.atan2(20.0, 900.0)))
    assert circle.radius_mm == pytest.approx(arch_radius_mm(math.hypot(900.0, 20.0), 150.0))


def test_the_joint_lies_on_the_leg_s_lines_and_on_the_arch_s_circles_whatever_the_legs() -> None:
    corners = hole(900.0, 995.0, 1012.0, lean_mm=14.0)
    sides = (
        TrimSide(inner_mm=5.0, width_mm=66.0),
        TrimSide(inner_mm=4.0, width_mm=60.0),
        TrimSide(inner_mm=6.0, width_mm=70.0),
        TrimSide(inner_mm=5.0, width_mm=66.0),
    )
    trim = arch_trim(corners, 150.0, sides)
    centre = trim.circle.centre
    for joint in both(trim):
        assert joint.inner.distance_mm(centre) == pytest.approx(trim.inner_mm)
        assert joint.outer.distance_mm(centre) == pytest.approx(trim.outer_mm)
    right, left = (corners[1], corners[2]), (corners[0], corners[3])
    assert off_the_leg_mm(trim.right.inner, *right) == pytest.approx(4.0)
    assert off_the_leg_mm(trim.right.outer, *right) == pytest.approx(64.0)
    assert off_the_leg_mm(trim.left.inner, *left) == pytest.approx(-5.0)
    assert off_the_leg_mm(trim.left.outer, *left) == pytest.approx(-71.0)


def test_the_leg_is_cut_along_the_line_from_inner_to_outer_corner_not_at_half_the_break() -> None:
    joint = arch_trim(hole(900.0), 150.0, even(5.0, 66.0)).right
    along_mm = joint.outer.y_mm - joint.inner.y_mm
    assert joint.leg_deg == pytest.approx(math.degrees(math.atan(along_mm / 66.0)))
    assert joint.leg_deg == pytest.approx(25.88, abs=0.005)
    assert joint.break_deg / 2.0 - joint.leg_deg == pytest.approx(0.69, abs=0.01)


def test_members_meet_on_a_line_as_far_from_the_leg_as_from_the_circle_which_bows() -> None:
    joint = arch_trim(hole(900.0), 150.0, even(5.0, 66.0)).right
    # By hand: member halfway, 38 mm outside the reveal: on the circle of radius 788.
    x_mm, radius_mm = 450.0 + 38.0, 750.0 + 38.0
    y_mm = math.sqrt(radius_mm**2 - x_mm**2) - 600.0 + 1000.0
    ux, uy = joint.outer.x_mm - joint.inner.x_mm, joint.outer.y_mm - joint.inner.y_mm
    off_mm = abs(
        ux * (y_mm - joint.inner.y_mm) - uy * (450.0 + x_mm - joint.inner.x_mm)
    ) / math.hypot(ux, uy)
    assert off_mm == pytest.approx(joint.bow_mm, abs=0.002)
    assert 0.05 < joint.bow_mm < 0.23


def test_a_semicircle_springs_square() -> None:
    for joint in both(arch_trim(hole(900.0), 450.0, even(5.0, 66.0))):
        assert joint.leg_deg == pytest.approx(0.0, abs=1e-9)
        assert joint.break_deg == pytest.approx(0.0, abs=1e-9)
        assert joint.past_mm == pytest.approx(0.0, abs=1e-9)
        assert joint.bow_mm == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("rise_mm", [446.5, 449.0, 451.0, 453.5])
def test_a_semicircle_read_a_little_off_still_springs_nearly_square(rise_mm: float) -> None:
    joint = arch_trim(hole(900.0), rise_mm, even(5.0, 66.0)).right
    assert abs(joint.leg_deg) < 0.3
    assert joint.bow_mm < 0.01


def test_a_horseshoe_is_refused() -> None:
    with pytest.raises(PieceError, match="more than a semicircle"):
        arch_trim(hole(900.0), 470.0, even(5.0, 66.0))


def test_an_arch_that_bulges_past_a_leg_leaning_in_is_refused_at_that_springing() -> None:
    leaning = (Point(-100, 0), Point(900, 0), Point(900, 1000), Point(0, 1000))
    with pytest.raises(PieceError, match="left springing"):
        arch_trim(leaning, 449.0, even(5.0, 66.0))


@pytest.mark.parametrize("rise_mm", [0.0, -5.0])
def test_an_arch_without_a_rise_is_refused(rise_mm: float) -> None:
    with pytest.raises(PieceError, match="No circle"):
        arch_circle(Point(0, 0), Point(900, 0), rise_mm)


def test_a_leg_wider_than_the_head_of_a_semicircle_meets_it_nowhere_and_is_refused() -> None:
    head, leg = TrimSide(inner_mm=5.0, width_mm=57.0), TrimSide(inner_mm=5.0, width_mm=66.0)
    with pytest.raises(PieceError, match="don't meet"):
        arch_trim(hole(900.0), 450.0, (leg, leg, head, leg))
