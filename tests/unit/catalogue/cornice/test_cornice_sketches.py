"""The drawings of a cornice."""

import pytest

from longpoint.catalogue.cornice.cornice import plan_cornice
from longpoint.catalogue.sketch import Stroke
from tests.unit.catalogue.cornice_houses import SQUARE, asked


def test_the_room_is_drawn_with_its_runs_inside_it() -> None:
    plan = plan_cornice(asked())
    section, room = plan.sketches
    assert len([line for line in section.lines if line.stroke is Stroke.TIMBER]) == 2
    strips = [line for line in room.lines if line.stroke is Stroke.TIMBER]
    walls = next(line for line in room.lines if line.stroke is Stroke.EDGE)
    xs, ys = [x for x, _ in walls.points], [y for _, y in walls.points]
    assert len(strips) == len(SQUARE)
    for strip in strips:
        for x, y in strip.points:
            assert min(xs) - 0.5 <= x <= max(xs) + 0.5
            assert min(ys) - 0.5 <= y <= max(ys) + 0.5


def test_nested_the_ceiling_edge_lies_on_the_table_and_the_bottom_edge_at_the_fence() -> None:
    section, _ = plan_cornice(asked()).sketches
    nested = [line for line in section.lines if line.stroke is Stroke.TIMBER][1]
    fence = [line for line in section.lines if line.stroke is Stroke.EDGE][1]
    corner = fence.points[1]
    assert min(x for x, _ in nested.points) == pytest.approx(corner[0])
    assert min(y for _, y in nested.points) == pytest.approx(corner[1])
