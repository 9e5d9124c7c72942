import math
from itertools import pairwise

import pytest

from longpoint.shape.point import Point
from longpoint.trims.arch import ArchTrim, arch_trim
from longpoint.trims.arch_segments import (
    MOST_SEGMENTS,
    STEEPEST_DEG,
    arch_segments,
    fewest_segments,
    segment_sizes,
)
from longpoint.trims.outline import TrimSide


def arch(span_mm: float = 900.0, rise_mm: float = 150.0, lean_mm: float = 0.0) -> ArchTrim:
    corners = (
        Point(0.0, 0.0),
        Point(span_mm - lean_mm, 0.0),
        Point(span_mm, 1000.0),
        Point(0.0, 1004.0),
    )
    return arch_trim(corners, rise_mm, (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4)


@pytest.mark.parametrize("count", [1, 2, 3, 5])
def test_neighbouring_segments_share_their_ends_and_the_outer_two_end_at_the_legs(
    count: int,
) -> None:
    trim = arch()
    segments = arch_segments(trim, count)
    for before, after in pairwise(segments):
        assert before.inner[1].distance_mm(after.inner[0]) == pytest.approx(0.0, abs=1e-9)
        assert before.outer[1].distance_mm(after.outer[0]) == pytest.approx(0.0, abs=1e-9)
    assert (segments[0].inner[0], segments[0].outer[0]) == (trim.left.inner, trim.left.outer)
    assert (segments[-1].inner[1], segments[-1].outer[1]) == (trim.right.inner, trim.right.outer)


@pytest.mark.parametrize("count", [2, 3, 6])
def test_every_joint_between_segments_is_cut_at_one_setting(count: int) -> None:
    trim = arch(lean_mm=9.0)
    blanks = [segment.blank(140.0).edges() for segment in arch_segments(trim, count)]
    for before, after in pairwise(blanks):
        assert before.start_deg == pytest.approx(trim.circle.half_deg / count)
        assert after.end_deg == pytest.approx(trim.circle.half_deg / count)


@pytest.mark.parametrize("lean_mm", [-30.0, 0.0, 30.0])
def test_the_whole_of_a_segment_lies_on_its_board(lean_mm: float) -> None:
    trim = arch(lean_mm=lean_mm)
    for segment in arch_segments(trim, 3):
        ends = [trim.circle.angle_deg(p) for p in (*segment.inner, *segment.outer)]
        for share in range(51):
            for radius_mm in (trim.inner_mm, trim.outer_mm):
                point = trim.circle.at(
                    min(ends) + (max(ends) - min(ends)) * share / 50.0, radius_mm
                )
                across_mm = (point.x_mm - segment.centre.x_mm) * segment.way[0] + (
                    point.y_mm - segment.centre.y_mm
                ) * segment.way[1]
                assert across_mm <= segment.high_mm + 1e-9
        for corner in segment.inner:
            across_mm = (corner.x_mm - segment.centre.x_mm) * segment.way[0] + (
                corner.y_mm - segment.centre.y_mm
            ) * segment.way[1]
            assert across_mm >= segment.low_mm - 1e-9


def test_a_middle_blank_is_chord_tangent_and_the_width_between_them() -> None:
    trim = arch()
    half = math.radians(trim.circle.half_deg / 5)
    middle = arch_segments(trim, 5)[2]
    edges = middle.blank(middle.board_mm).edges()
    assert edges.inner_mm == pytest.approx(2.0 * trim.inner_mm * math.sin(half))
    assert edges.outer_mm == pytest.approx(2.0 * trim.outer_mm * math.tan(half))
    assert middle.board_mm == pytest.approx(trim.outer_mm - trim.inner_mm * math.cos(half))


def test_the_sizes_told_are_those_of_the_blanks() -> None:
    trim = arch()
    sizes = segment_sizes(trim, 4)
    segments = arch_segments(trim, 4)
    middle = segments[1]
    edges = middle.blank(middle.board_mm).edges()
    assert edges.inner_mm == pytest.approx(sizes.short_mm)
    assert edges.outer_mm == pytest.approx(sizes.long_mm)
    assert edges.start_deg == pytest.approx(sizes.saw_deg)
    assert middle.outer[0].distance_mm(middle.outer[1]) == pytest.approx(sizes.over_points_mm)
    assert sizes.board_mm == max(segment.board_mm for segment in segments)
    assert sizes.angle_deg * 4 == pytest.approx(2.0 * trim.circle.half_deg)


def test_the_end_segments_run_on_to_a_joint_that_is_not_radial() -> None:
    corners = (Point(0, 0), Point(900, 0), Point(900, 1000), Point(0, 1000))
    trim = arch_trim(corners, 150.0, (TrimSide(inner_mm=5.0, width_mm=66.0),) * 4)
    sizes = segment_sizes(trim, 3)
    inner_deg = math.degrees(math.asin(455.0 / 755.0))
    outer_deg = math.degrees(math.asin(521.0 / 821.0))
    assert outer_deg - inner_deg == pytest.approx(2.3, abs=0.05)
    assert sizes.right_extra_deg == pytest.approx(outer_deg - trim.circle.half_deg)
    assert sizes.left_extra_deg == pytest.approx(sizes.right_extra_deg)


def test_the_fewest_segments_are_the_first_number_that_the_board_is_wide_enough_for() -> None:
    trim = arch()
    for board_mm in (80.0, 100.0, 140.0):
        count = fewest_segments(trim, board_mm)
        assert count is not None
        assert segment_sizes(trim, count).board_mm <= board_mm
        assert count == 1 or segment_sizes(trim, count - 1).board_mm > board_mm


def test_a_board_narrower_than_the_trim_does_for_no_number() -> None:
    assert fewest_segments(arch(), 65.0) is None
    assert segment_sizes(arch(), MOST_SEGMENTS).board_mm > 66.0


def test_a_low_arch_comes_out_of_one_board_unless_its_ends_are_too_steep() -> None:
    assert fewest_segments(arch(rise_mm=20.0), 140.0) == 1
    steep = arch(rise_mm=400.0)
    assert segment_sizes(steep, 1).board_mm < 700.0
    (whole,) = arch_segments(steep, 1)
    assert whole.blank(700.0).edges().start_deg > STEEPEST_DEG
    assert fewest_segments(steep, 700.0) == 2
