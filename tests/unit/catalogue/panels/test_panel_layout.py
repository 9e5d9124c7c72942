import pytest

from longpoint.catalogue.panels.panel_layout import (
    Field,
    Obstacle,
    PanelLayout,
    count_for,
    in_the_moulding,
    in_the_way,
    ways_out,
)

WALL = Field(length_mm=4606.0, height_mm=780.0)


def a_layout(field: Field = WALL, count: int = 5, margin_mm: float = 90.0) -> PanelLayout:
    return PanelLayout(field=field, count=count, margin_mm=margin_mm, face_mm=28.0)


def a_block(left_mm: float, bottom_mm: float, width_mm: float = 86.0) -> Obstacle:
    return Obstacle(
        name="block", left_mm=left_mm, bottom_mm=bottom_mm, width_mm=width_mm, height_mm=86.0
    )


@pytest.mark.parametrize(
    ("left_mm", "bottom_mm", "clashes"),
    [
        (300.0, 300.0, False),  # inside the first frame
        (118.0, 118.0, False),  # touching its inner edges
        (117.0, 300.0, True),  # on its left stile
        (4.0, 300.0, False),  # touching its outer edge
        (5.0, 300.0, True),
        (300.0, 4.0, False),  # in the margin below
        (300.0, 50.0, True),  # across the lower rail
        (300.0, 660.0, True),  # across the upper rail
        (905.0, 300.0, False),  # in the margin between two frames (903.2 to 993.2)
        (915.0, 300.0, True),
    ],
)
def test_a_block_clashes_when_it_lies_on_a_moulding(
    left_mm: float, bottom_mm: float, clashes: bool
) -> None:
    assert in_the_moulding(a_layout(), a_block(left_mm, bottom_mm)) is clashes


def test_a_block_that_covers_a_whole_frame_clashes() -> None:
    whole = Obstacle(name="hatch", left_mm=0, bottom_mm=0, width_mm=950, height_mm=780)
    assert in_the_moulding(a_layout(), whole)


def test_on_a_stair_a_block_at_one_height_clashes_further_up() -> None:
    stair = Field(length_mm=3000.0, height_mm=780.0, pitch_deg=38.0)
    layout = a_layout(stair, count=3)
    left_mm, right_mm = 200.0, 700.0
    # The lower rail at x lies from 90 / cos 38 to 118 / cos 38 above x tan 38.
    assert in_the_moulding(layout, a_block(left_mm, 230.0))
    assert not in_the_moulding(layout, a_block(left_mm, 400.0))
    assert in_the_moulding(layout, a_block(right_mm, 620.0))


def test_every_way_out_frees_every_obstacle() -> None:
    blocks = (a_block(960.0, 300.0, 55.0), a_block(2760.0, 300.0, 55.0))
    layout = a_layout()
    assert len(in_the_way(layout, blocks)) == 2
    free = ways_out(layout, blocks)
    found = [way for way in (free.margin, free.count, free.shift) if way is not None]
    assert found
    for way in found:
        assert in_the_way(way, blocks) == ()
        assert way.is_possible


def test_a_shift_moves_the_row_and_nothing_else() -> None:
    free = ways_out(a_layout(), (a_block(960.0, 300.0, 55.0),))
    assert free.shift is not None
    assert free.shift.panel_mm == a_layout().panel_mm
    assert free.shift.left_edges_mm[0] == 90.0 + free.shift.shift_mm


def test_a_block_between_two_counts_takes_the_nearer_width() -> None:
    assert count_for(WALL, 90.0, 660.0) == 6
    assert count_for(WALL, 90.0, 5000.0) == 1


def test_a_wider_moulding_leaves_less_inside_on_a_stair() -> None:
    stair = a_layout(Field(length_mm=4606.0, height_mm=780.0, pitch_deg=40.0))
    assert stair.inside_mm[0] == a_layout().inside_mm[0]
    assert stair.inside_mm[1] < a_layout().inside_mm[1]
