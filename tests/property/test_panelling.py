"""Whatever the wall, frames and margins fill it; whatever the alcove, the shelf lies in it."""

import math
from itertools import pairwise

from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import Polygon

from longpoint.catalogue.panels.panel_layout import (
    Field,
    Obstacle,
    PanelLayout,
    count_for,
    in_the_moulding,
    in_the_way,
    margin_for,
    ways_out,
)
from longpoint.catalogue.shelves.alcove import Alcove, AlcoveReadings, Split, fit_alcove, fit_shelf

FIELDS = st.builds(
    Field,
    length_mm=st.floats(600, 8000),
    height_mm=st.floats(500, 2400),
    pitch_deg=st.floats(-45, 45),
)
LAYOUTS = st.builds(
    PanelLayout,
    field=FIELDS,
    count=st.integers(1, 9),
    margin_mm=st.floats(20, 140),
    face_mm=st.floats(10, 60),
).filter(lambda layout: layout.is_possible)
OBSTACLES = st.builds(
    Obstacle,
    name=st.just("socket"),
    left_mm=st.floats(0, 4000),
    bottom_mm=st.floats(-200, 2000),
    width_mm=st.floats(30, 300),
    height_mm=st.floats(30, 300),
)


@given(LAYOUTS)
def test_panels_and_margins_add_up_to_the_wall(layout: PanelLayout) -> None:
    total_mm = layout.count * layout.panel_mm + (layout.count + 1) * layout.margin_mm
    assert math.isclose(total_mm, layout.field.length_mm, abs_tol=1e-6)
    last_mm = layout.left_edges_mm[-1] + layout.panel_mm + layout.margin_mm
    assert math.isclose(last_mm, layout.field.length_mm, abs_tol=1e-6)


@given(LAYOUTS)
def test_frames_lie_in_the_field_and_keep_the_margin_from_its_edges(layout: PanelLayout) -> None:
    field = Polygon([tuple(corner) for corner in layout.field.corners])
    frames = [
        Polygon([tuple(corner) for corner in layout.frame(index).outer])
        for index in range(layout.count)
    ]
    edge = field.exterior
    for frame in frames:
        assert field.covers(frame)
        least_mm = min(layout.margin_mm, layout.margin_mm * math.cos(math.radians(45.0)))
        assert edge.distance(frame) >= least_mm - 1e-6
    for here, there in pairwise(frames):
        assert not here.overlaps(there)


@given(LAYOUTS)
def test_a_frame_s_outlines_are_a_face_apart_all_round(layout: PanelLayout) -> None:
    frame = layout.frame(0)
    outer = Polygon([tuple(corner) for corner in frame.outer])
    inner = Polygon([tuple(corner) for corner in frame.inner])
    shrunk = outer.buffer(-layout.face_mm, join_style="mitre", mitre_limit=50.0)
    assert inner.symmetric_difference(shrunk).area < 1e-3 * outer.length


@given(LAYOUTS, OBSTACLES)
def test_an_obstacle_clashes_as_shapely_sees_it(layout: PanelLayout, obstacle: Obstacle) -> None:
    block = Polygon([tuple(corner) for corner in obstacle.corners])
    common_mm2 = 0.0
    for index in range(layout.count):
        frame = layout.frame(index)
        outer = Polygon([tuple(corner) for corner in frame.outer])
        ring = outer.difference(Polygon([tuple(corner) for corner in frame.inner]))
        common_mm2 += ring.intersection(block).area
    assume(common_mm2 == 0.0 or common_mm2 > 0.01)
    assert in_the_moulding(layout, obstacle) is (common_mm2 > 0.0)


@given(LAYOUTS, st.lists(OBSTACLES, min_size=1, max_size=2))
def test_every_way_out_is_one(layout: PanelLayout, obstacles: list[Obstacle]) -> None:
    assume(in_the_way(layout, obstacles))
    free = ways_out(layout, obstacles)
    for way in (free.margin, free.count, free.shift):
        assert way is None or (way.is_possible and not in_the_way(way, obstacles))


@given(FIELDS, st.integers(1, 9), st.floats(50, 1500))
def test_count_and_width_give_the_margin_back(field: Field, count: int, panel_mm: float) -> None:
    margin_mm = margin_for(field, count, panel_mm)
    layout = PanelLayout(field=field, count=count, margin_mm=margin_mm, face_mm=20.0)
    assert math.isclose(layout.panel_mm, panel_mm, abs_tol=1e-6)


@given(FIELDS, st.floats(20, 140), st.floats(100, 1500))
def test_no_other_number_comes_nearer_to_the_wanted_width(
    field: Field, margin_mm: float, panel_mm: float
) -> None:
    def off_mm(count: int) -> float:
        layout = PanelLayout(field=field, count=count, margin_mm=margin_mm, face_mm=20.0)
        return abs(layout.panel_mm - panel_mm)

    chosen = count_for(field, margin_mm, panel_mm)
    assert off_mm(chosen) <= min(off_mm(count) for count in range(1, 60)) + 1e-9


@given(
    st.floats(400, 2000),
    st.floats(150, 500),
    st.floats(-60, 60),
    st.floats(-60, 60),
    st.floats(0.3, 1.0),
    st.floats(0, 5),
)
def test_a_shelf_lies_in_its_alcove_and_leaves_its_gap(
    back_mm: float, depth_mm: float, left_mm: float, right_mm: float, share: float, gap_mm: float
) -> None:
    true = Alcove(
        back_mm=back_mm,
        depth_mm=depth_mm,
        left_out_mm=left_mm,
        right_out_mm=right_mm,
        split=Split.READ,
    )
    front_left, front_right, back_right, back_left = true.corners
    fit = fit_alcove(
        AlcoveReadings(
            back_mm=back_mm,
            front_mm=front_left.distance_mm(front_right),
            depth_mm=depth_mm,
            from_back_left_mm=back_left.distance_mm(front_right),
            from_back_right_mm=back_right.distance_mm(front_left),
            u_mm=0.6,
        )
    )
    shelf = fit_shelf(fit, share * depth_mm, gap_mm)
    # Laid out again from its two edges and its left end's angle alone.
    deep_mm = share * depth_mm
    start_mm = gap_mm + deep_mm * math.tan(math.radians(shelf.left_deg))
    board = [
        (gap_mm, 0.0),
        (gap_mm + shelf.back_mm, 0.0),
        (start_mm + shelf.front_mm, deep_mm),
        (start_mm, deep_mm),
    ]
    hole = Polygon([tuple(corner) for corner in true.corners])
    assert hole.buffer(1e-6).covers(Polygon(board))
    # The right end closes at its own angle.
    right_mm = (board[2][0] - board[1][0]) + deep_mm * math.tan(math.radians(shelf.right_deg))
    assert abs(right_mm) < 1e-6
    left_over_mm2 = hole.intersection(
        Polygon([(-1e4, 0), (1e4, 0), (1e4, deep_mm), (-1e4, deep_mm)])
    )
    spare_mm2 = left_over_mm2.area - Polygon(board).area
    assert math.isclose(spare_mm2, 2.0 * gap_mm * deep_mm, abs_tol=1e-3)
