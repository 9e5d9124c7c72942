from collections import Counter
from dataclasses import replace

import pytest

from longpoint.errors import SheetError
from longpoint.sheets.blocks import Drawing, Heading, Note, Outline, Table, Word
from longpoint.sheets.labels.bundle_sheet import bundle_sheet
from longpoint.sheets.labels.grid import GRIDS, read_grid
from longpoint.sheets.labels.label_pages import LabelOrder, label_pages, labelled, trial_page
from longpoint.sheets.labels.piece_label import AROUND
from longpoint.sheets.text_width import text_width_mm
from tests.unit.sheets.sample import PLAN

DOTS = ((True, False), (False, True))


def qr(_: str) -> tuple[tuple[bool, ...], ...]:
    return DOTS


def drawings(name: str = "a4-3x8", order: LabelOrder = LabelOrder.SAW) -> list[Drawing]:
    pages = label_pages(PLAN, GRIDS[name], qr, order)
    return [drawing for page in pages for _, drawing in page.labels]


def words(drawing: Drawing) -> list[str]:
    return [mark.text for mark in drawing.marks if isinstance(mark, Word)]


def test_every_piece_has_one_label_and_every_held_place_one_that_says_so() -> None:
    for order in LabelOrder:
        named = Counter(words(drawing)[0] for drawing in drawings(order=order))
        assert named == Counter(
            [*(piece.mark for piece in PLAN.pieces), *(f"HOLD {mark}" for mark in PLAN.held)]
        )


@pytest.mark.parametrize("name", [*GRIDS, "50x25"])
def test_all_that_is_drawn_stays_inside_the_label(name: str) -> None:
    for page in label_pages(PLAN, read_grid(name), qr):
        for place, drawing in page.labels:
            assert (drawing.width_mm, drawing.height_mm) == (place.width_mm, place.height_mm)
            for mark in drawing.marks:
                if isinstance(mark, Outline):
                    xs, ys = zip(*mark.points, strict=True)
                    assert 0.0 <= min(xs) <= max(xs) <= place.width_mm
                    assert 0.0 <= min(ys) <= max(ys) <= place.height_mm
                else:
                    wide = text_width_mm(mark.text, mark.size_mm)
                    before = {"start": 0.0, "middle": 0.5, "end": 1.0}[mark.anchor.value] * wide
                    assert mark.x_mm - before >= -0.01
                    assert mark.x_mm - before + wide <= place.width_mm + 0.01
                    assert mark.size_mm <= mark.y_mm + 0.5
                    assert mark.y_mm <= place.height_mm - 0.5


def test_a_leg_says_its_hand_and_which_end_goes_up() -> None:
    said = {words(drawing)[0]: words(drawing) for drawing in drawings()}
    assert "LEFT UP" in said["W1-left-leg"]
    assert "RIGHT UP" in said["W1-right-leg"]
    assert not {"LEFT UP", "RIGHT UP"} & set(said["W1-head"])


def test_the_edge_that_goes_to_the_opening_is_named() -> None:
    said = {words(drawing)[0]: words(drawing) for drawing in drawings()}
    for piece in PLAN.pieces:
        assert ("this edge to the opening" in said[piece.mark]) is (piece.role in AROUND)
        assert ("this edge to the floor" in said[piece.mark]) is piece.is_along_wall


def test_labels_that_are_used_up_are_left_free() -> None:
    grid = GRIDS["a4-3x8"]
    count = len(PLAN.pieces) + len(PLAN.held)
    first, *others = label_pages(PLAN, grid, qr, skip=20)
    assert first.labels[0][0] == grid.place(20)
    assert [len(first.labels), sum(len(page.labels) for page in others)] == [4, count - 4]
    with pytest.raises(SheetError):
        label_pages(PLAN, grid, qr, skip=24)


def test_bundle_by_bundle_the_pieces_of_an_opening_follow_each_other() -> None:
    places = [piece.place for piece in labelled(PLAN, LabelOrder.BUNDLE)]
    runs = [place for n, place in enumerate(places) if places[n - 1 : n] != [place]]
    assert len(runs) == len(set(runs))


def test_the_list_of_bundles_names_every_piece_once_under_its_room() -> None:
    blocks = bundle_sheet(PLAN).blocks
    tables = [block for block in blocks if isinstance(block, Table)]
    named = [row[1] for table in tables for row in table.rows]
    assert sorted(map(str, named)) == sorted(piece.mark for piece in PLAN.pieces)
    titles = [block.text.partition(":")[0] for block in blocks if isinstance(block, Heading)]
    assert titles == list(dict.fromkeys(p.room or "No room named" for p in PLAN.pieces))
    assert any(isinstance(block, Note) and "W3" in block.text for block in blocks)
    bare = bundle_sheet(replace(PLAN, held=frozenset()))
    assert not any(isinstance(block, Note) for block in bare.blocks)


def test_the_test_print_shows_the_edge_of_every_label() -> None:
    grid = GRIDS["a4-3x8"].nudged(0.5, 0.0)
    ((_, drawing),) = trial_page(grid).labels
    edges = [mark.points[0] for mark in drawing.marks if isinstance(mark, Outline) and mark.closed]
    places = [grid.place(index) for index in range(24)]
    assert edges == [(place.left_mm, place.top_mm) for place in places]
    assert "+0.5 right" in " ".join(words(drawing))
    ((_, roll),) = trial_page(GRIDS["roll-62x29"]).labels
    assert len([mark for mark in roll.marks if isinstance(mark, Outline) and mark.closed]) == 1
