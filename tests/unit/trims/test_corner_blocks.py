import math

import pytest

from longpoint.shape.point import Point, direction
from longpoint.trims.corner_blocks import corner_block, gap_at_block_mm, ring_between_blocks
from longpoint.trims.outline import TrimSide, trim_outline

SIDES = (TrimSide(inner_mm=5.0, width_mm=70.0),) * 4
SQUARE = (Point(0, 0), Point(900, 0), Point(900, 600), Point(0, 600))
LEANING = (Point(0, 0), Point(900, 0), Point(912, 604), Point(9, 598))


def test_pieces_are_shorter_by_what_each_block_stands_proud() -> None:
    outline = trim_outline(SQUARE, SIDES)
    blocks = [corner_block(outline, SIDES, corner, 76.0) for corner in range(4)]
    found = [
        ring_between_blocks(outline, side, blocks[side], blocks[(side + 1) % 4]).edges()
        for side in range(4)
    ]
    # 910 and 610 less 3 at each end.
    assert [edges.inner_mm for edges in found] == pytest.approx([904, 604, 904, 604])
    assert [edges.outer_mm for edges in found] == pytest.approx([904, 604, 904, 604])
    assert all(block.off_deg == 0.0 for block in blocks)


def test_where_one_trim_is_wider_the_block_still_stands_out_alike_over_each() -> None:
    sides = (SIDES[0], SIDES[1], TrimSide(inner_mm=5.0, width_mm=64.0), SIDES[3])
    block = corner_block(trim_outline(SQUARE, sides), sides, 2, 76.0)
    xs, ys = [p.x_mm for p in block.corners], [p.y_mm for p in block.corners]
    assert (905 - min(xs), max(xs) - 975) == pytest.approx((3, 3))
    assert (605 - min(ys), max(ys) - 669) == pytest.approx((6, 6))


@pytest.mark.parametrize("corner", range(4))
def test_a_block_is_square_and_shares_the_lean_of_its_corner(corner: int) -> None:
    outline = trim_outline(LEANING, SIDES)
    block = corner_block(outline, SIDES, corner, 76.0)
    first, second, third, fourth = block.corners
    lengths = [a.distance_mm(b) for a, b in zip(block.corners, block.corners[1:], strict=False)]
    assert lengths == pytest.approx([76.0] * 3)
    assert first.distance_mm(third) == pytest.approx(76.0 * math.sqrt(2.0))
    assert second.distance_mm(fourth) == pytest.approx(76.0 * math.sqrt(2.0))
    after = ring_between_blocks(outline, corner, block, None).edges()
    before = ring_between_blocks(outline, (corner - 1) % 4, None, block).edges()
    assert after.start_deg == pytest.approx(before.end_deg) == pytest.approx(block.off_deg)


def test_a_wide_corner_leaves_the_inner_edge_the_longer() -> None:
    outline = trim_outline(LEANING, SIDES)
    wide = max(range(4), key=lambda corner: -corner_block(outline, SIDES, corner, 76.0).off_deg)
    block = corner_block(outline, SIDES, wide, 76.0)
    ux, uy = direction(outline.inner[wide], outline.inner[(wide + 1) % 4])
    vx, vy = direction(outline.inner[wide], outline.inner[wide - 1])
    assert ux * vx + uy * vy < 0.0, "wider than square"
    assert block.off_deg < 0.0


def test_the_wedge_at_a_block_is_the_width_times_the_lean() -> None:
    assert gap_at_block_mm(70.0, -0.5) == pytest.approx(70.0 * math.tan(math.radians(0.5)))
