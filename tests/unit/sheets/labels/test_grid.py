import itertools
from dataclasses import replace

import pytest

from longpoint.errors import SheetError
from longpoint.sheets.labels.grid import GRIDS, LETTER, Paper, read_grid

A4_24 = GRIDS["a4-3x8"]


@pytest.mark.parametrize("name", GRIDS)
def test_labels_of_a_known_grid_stand_apart_and_on_the_page(name: str) -> None:
    grid = GRIDS[name]
    places = [grid.place(index) for index in range(grid.on_page)]
    for one, other in itertools.combinations(places, 2):
        apart_x = abs(one.left_mm - other.left_mm) >= grid.width_mm - 0.01
        apart_y = abs(one.top_mm - other.top_mm) >= grid.height_mm - 0.01
        assert apart_x or apart_y
    assert all(p.left_mm >= 0 and p.top_mm >= 0 for p in places)
    assert max(p.left_mm + p.width_mm for p in places) <= grid.paper.width_mm + 0.05
    assert max(p.top_mm + p.height_mm for p in places) <= grid.paper.height_mm + 0.05


@pytest.mark.parametrize("name", ["a4-3x8", "a4-2x7", "letter-3x10", "letter-2x5"])
def test_margins_left_and_right_top_and_bottom_of_a_known_grid_agree(name: str) -> None:
    """Label paper is cut evenly; a figure remembered wrong would show here."""
    grid = GRIDS[name]
    last = grid.place(grid.on_page - 1)
    right_mm = grid.paper.width_mm - last.left_mm - last.width_mm
    bottom_mm = grid.paper.height_mm - last.top_mm - last.height_mm
    assert right_mm == pytest.approx(grid.left_mm, abs=0.15)
    assert bottom_mm == pytest.approx(grid.top_mm, abs=0.15)


def test_a_grid_is_given_by_its_numbers_on_either_paper() -> None:
    found = read_grid("2X5  101.6x50.8 at 3.969x12.7 every 106.363x50.8", LETTER)
    assert found == GRIDS["letter-2x5"]


def test_a_nudge_moves_every_label_alike() -> None:
    moved = A4_24.nudged(0.5, -1.25)
    for index in range(24):
        was, now = A4_24.place(index), moved.place(index)
        assert now.left_mm - was.left_mm == pytest.approx(0.5)
        assert now.top_mm - was.top_mm == pytest.approx(-1.25)


@pytest.mark.parametrize(
    "written",
    [
        "",
        "3x8",
        "three by eight",
        "20x20",
        "3x8 63.5x33.9 at 7.2x12.9 every 60x33.9",
        "3x8 63.5x33.9 at 7.2x12.9 every 66x30",
        "4x8 63.5x33.9 at 7.2x12.9 every 66x33.9",
        "0x8 63.5x33.9 at 7.2x12.9 every 66x33.9",
        "3x8 63.5x33.9 at 7.2x12.9 every 66x33.9 mm",
    ],
)
def test_paper_that_cannot_be_is_refused(written: str) -> None:
    with pytest.raises(SheetError):
        read_grid(written)


def test_a_nudge_off_the_page_or_too_many_labels_are_refused() -> None:
    with pytest.raises(SheetError):
        A4_24.nudged(30.0, 0.0)
    with pytest.raises(SheetError):
        replace(A4_24, paper=Paper(width_mm=9999.0, height_mm=9999.0), columns=99, rows=99)
