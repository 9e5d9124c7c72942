import math

import pytest
from shapely import LineString, Polygon
from shapely.affinity import rotate, translate

from longpoint.catalogue.shelves.alcove import (
    Alcove,
    AlcoveReadings,
    Split,
    fit_alcove,
    fit_shelf,
    headroom_mm,
)


def readings_of(alcove: Alcove, *, u_mm: float = 0.6) -> AlcoveReadings:
    """Return what a tape and a gauge would read without error, taken off the plan's corners."""
    front_left, front_right, back_right, back_left = alcove.corners

    def corner_deg(at: tuple[float, float], sign: float) -> float:
        return math.degrees(math.atan2(at[1], sign * at[0]))

    return AlcoveReadings(
        back_mm=back_left.distance_mm(back_right),
        front_mm=front_left.distance_mm(front_right),
        depth_mm=front_left.y_mm,
        left_corner_deg=corner_deg(front_left, 1.0),
        right_corner_deg=corner_deg((front_right.x_mm - back_right.x_mm, front_right.y_mm), -1.0),
        from_back_left_mm=back_left.distance_mm(front_right),
        from_back_right_mm=back_right.distance_mm(front_left),
        u_mm=u_mm,
    )


def an_alcove(left_out_mm: float, right_out_mm: float) -> Alcove:
    return Alcove(
        back_mm=900.0,
        depth_mm=300.0,
        left_out_mm=left_out_mm,
        right_out_mm=right_out_mm,
        split=Split.READ,
    )


@pytest.mark.parametrize("outs_mm", [(5.0, 7.0), (-4.0, 9.0), (12.0, -12.0), (0.0, 0.0)])
def test_exact_readings_give_the_alcove_back(outs_mm: tuple[float, float]) -> None:
    fit = fit_alcove(readings_of(an_alcove(*outs_mm)))
    assert (fit.left_out_mm, fit.right_out_mm) == pytest.approx(outs_mm, abs=1e-9)


@pytest.mark.parametrize(
    "kept", ["left_corner_deg", "right_corner_deg", "from_back_left_mm", "from_back_right_mm"]
)
def test_any_one_of_the_four_splits_the_difference(kept: str) -> None:
    whole = readings_of(an_alcove(-4.0, 9.0))
    alone = AlcoveReadings(
        back_mm=whole.back_mm,
        front_mm=whole.front_mm,
        depth_mm=whole.depth_mm,
        u_mm=0.6,
        **{kept: getattr(whole, kept)},
    )
    fit = fit_alcove(alone)
    assert fit.split is Split.READ
    assert (fit.left_out_mm, fit.right_out_mm) == pytest.approx((-4.0, 9.0), abs=1e-9)


def test_the_shelf_leaves_its_gap_and_lies_in_the_alcove() -> None:
    alcove = an_alcove(-4.0, 9.0)
    shelf = fit_shelf(alcove, 250.0, 2.0)
    # Laid out from its own edges and angles, the back edge 2 from the back left corner.
    left_mm = 2.0 + 250.0 * math.tan(math.radians(shelf.left_deg))
    plan = Polygon(
        [
            (2.0, 0.0),
            (2.0 + shelf.back_mm, 0.0),
            (left_mm + shelf.front_mm, 250.0),
            (left_mm, 250.0),
        ]
    )
    hole = Polygon([(corner.x_mm, corner.y_mm) for corner in alcove.corners])
    assert hole.covers(plan)
    for cheek in ((0, 3), (1, 2)):
        side = LineString([tuple(alcove.corners[end]) for end in cheek])
        out_mm = alcove.left_out_mm if cheek == (0, 3) else alcove.right_out_mm
        square_mm = 2.0 * math.cos(math.atan(out_mm / 300.0))
        assert side.distance(plan) == pytest.approx(square_mm, abs=1e-6)


@pytest.mark.parametrize(("length_mm", "front_mm"), [(900.0, 890.0), (912.0, 900.0), (600, 560)])
def test_a_board_tipped_in_is_as_wide_as_the_front_and_as_high_as_said(
    length_mm: float, front_mm: float
) -> None:
    """The board is turned bit by bit until it passes; shapely says how high it is then."""
    said_mm = headroom_mm(length_mm, front_mm, 22.0)
    assert said_mm is not None
    board = Polygon([(0, 0), (length_mm, 0), (length_mm, 22), (0, 22)])
    for step in range(9000):
        turned = rotate(board, step / 100.0, origin=(0, 0))
        left, low, right, high = translate(turned, 0, 0).bounds
        if right - left <= front_mm and step:
            assert high - low == pytest.approx(said_mm, abs=0.3)
            return
    raise AssertionError("it never passes")


def test_a_board_that_stands_upright_before_it_passes_does_not_go_in() -> None:
    assert headroom_mm(100.0, 20.0, 22.0) is None
