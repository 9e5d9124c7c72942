import math
import random

import numpy
import pytest

from longpoint.pieces.bench_frame import bench_frame
from longpoint.shape.point import interior_angles_deg, side_lengths_mm
from tests.fitted_houses import Corners, fitted, opening, quad, rectangle

pytestmark = pytest.mark.no_cover


def random_opening(draw: random.Random, spread_mm: float) -> Corners:
    width_mm, height_mm = draw.uniform(500, 2400), draw.uniform(500, 2100)
    right, left = (draw.gauss(0.0, spread_mm) for _ in range(2))
    return quad(
        (0.0, 0.0),
        (width_mm, 0.0),
        (width_mm + right, height_mm + draw.gauss(0.0, spread_mm)),
        (left, height_mm),
    )


@pytest.mark.parametrize("on_floor", [False, True])
def test_a_true_opening_gets_its_own_rectangle_and_no_change_of_quirk(on_floor: bool) -> None:
    frame = bench_frame(fitted(opening(rectangle(1180.0, 620.0))), on_floor=on_floor)
    assert side_lengths_mm(frame.corners) == pytest.approx((1180.0, 620.0, 1180.0, 620.0))
    assert (frame.least_off_mm, frame.most_off_mm) == pytest.approx((0.0, 0.0), abs=1e-6)


def test_the_frame_is_square_whatever_the_opening() -> None:
    draw = random.Random(7)
    for _ in range(50):
        frame = bench_frame(fitted(opening(random_opening(draw, 8.0))), on_floor=False)
        assert interior_angles_deg(frame.corners) == pytest.approx((90.0,) * 4)


def test_on_the_floor_the_head_is_square_and_the_feet_keep_the_floor() -> None:
    falling = quad((0, 0), (820, 0), (826, 2050), (-14, 2036))
    frame = bench_frame(fitted(opening(falling)), on_floor=True)
    angles = interior_angles_deg(frame.corners)
    assert angles[2:] == pytest.approx((90.0, 90.0))
    assert angles[0] + angles[1] == pytest.approx(180.0)
    assert [corner.y_mm for corner in frame.corners[:2]] == pytest.approx([0.0, 0.0], abs=1e-6)


def test_a_lean_is_shared_so_that_no_quirk_changes_by_much() -> None:
    leaning = quad((0, 0), (1200, 0), (1203, 1050), (3, 1050))
    frame = bench_frame(fitted(opening(leaning)), on_floor=False)
    # A frame turned to share: lean times the side over twice the sum of both sides.
    shared_mm = 3.0 * 1200.0 / (2.0 * (1200.0 + 1050.0))
    assert frame.most_off_mm == pytest.approx(shared_mm, abs=0.02)
    assert frame.least_off_mm == pytest.approx(-shared_mm, abs=0.02)


@pytest.mark.parametrize("spread_mm", [1.0, 4.0, 25.0])
def test_no_other_turn_leaves_the_worst_corner_nearer(spread_mm: float) -> None:
    draw = random.Random(11)
    turns = numpy.linspace(-0.12, 0.12, 2401)
    cos, sin = numpy.cos(turns), numpy.sin(turns)
    for _ in range(100):
        shape = fitted(opening(random_opening(draw, spread_mm)))
        frame = bench_frame(shape, on_floor=False)
        x = numpy.array([p.x_mm * cos + p.y_mm * sin for p in shape.corners])
        y = numpy.array([p.y_mm * cos - p.x_mm * sin for p in shape.corners])
        # A side through the middle of its two corners strays half of what they differ by.
        halves = [x[0] - x[3], x[1] - x[2], y[0] - y[1], y[2] - y[3]]
        least_mm = float(numpy.abs(halves).max(axis=0).min()) / 2.0
        assert max(frame.most_off_mm, -frame.least_off_mm) <= least_mm + 1e-6


def test_the_change_told_is_that_of_the_worst_corner() -> None:
    draw = random.Random(13)
    for _ in range(50):
        shape = fitted(opening(random_opening(draw, 6.0)))
        frame = bench_frame(shape, on_floor=False)
        changes = []
        for side in range(4):
            a, b = frame.corners[side], frame.corners[(side + 1) % 4]
            ux, uy = (b.x_mm - a.x_mm, b.y_mm - a.y_mm)
            length_mm = math.hypot(ux, uy)
            for corner in (shape.corners[side], shape.corners[(side + 1) % 4]):
                inside = ux * (corner.y_mm - a.y_mm) - uy * (corner.x_mm - a.x_mm)
                changes.append(inside / length_mm)
        assert frame.least_off_mm == pytest.approx(min(changes))
        assert frame.most_off_mm == pytest.approx(max(changes))
