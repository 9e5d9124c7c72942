import math

import pytest

from longpoint.errors import ShapeError
from longpoint.shape.point import (
    Point,
    direction,
    interior_angles_deg,
    line_crossing,
    side_lengths_mm,
)

RIGHT_TRIANGLE = (Point(0.0, 0.0), Point(4.0, 0.0), Point(0.0, 3.0))


def test_a_distance_is_the_same_both_ways() -> None:
    assert Point(0.0, 0.0).distance_mm(Point(3.0, 4.0)) == 5.0
    assert Point(3.0, 4.0).distance_mm(Point(0.0, 0.0)) == 5.0


def test_a_moved_point_is_moved_by_as_much() -> None:
    assert Point(1.0, 2.0).moved(3.0, -4.0) == Point(4.0, -2.0)


def test_a_direction_has_length_one() -> None:
    assert direction(Point(1.0, 1.0), Point(4.0, 5.0)) == pytest.approx((0.6, 0.8))


def test_two_points_in_one_have_no_direction() -> None:
    with pytest.raises(ShapeError):
        direction(Point(1.0, 1.0), Point(1.0, 1.0))


def test_lines_cross_beyond_their_ends_too() -> None:
    crossing = line_crossing(Point(0, 0), Point(1, 1), Point(10, 0), Point(9, 1))
    assert crossing == pytest.approx((5.0, 5.0))


@pytest.mark.parametrize("turn_deg", [0.0, 0.05])
def test_parallel_lines_cross_nowhere(turn_deg: float) -> None:
    far = Point(math.cos(math.radians(turn_deg)), 1.0 + math.sin(math.radians(turn_deg)))
    with pytest.raises(ShapeError):
        line_crossing(Point(0, 0), Point(1, 0), Point(0, 1), far)


def test_the_angles_of_a_triangle_are_as_drawn_and_add_to_180() -> None:
    angles = interior_angles_deg(RIGHT_TRIANGLE)
    assert angles == pytest.approx((90.0, math.degrees(math.atan2(3, 4)), 53.13010235))
    assert math.fsum(angles) == pytest.approx(180.0)


def test_an_inside_corner_of_more_than_180_is_kept_so() -> None:
    dart = (Point(0, 0), Point(4, 0), Point(1, 1), Point(0, 4))
    assert interior_angles_deg(dart)[2] > 180.0


def test_side_i_runs_from_corner_i_to_the_next() -> None:
    assert side_lengths_mm(RIGHT_TRIANGLE) == pytest.approx((4.0, 5.0, 3.0))
