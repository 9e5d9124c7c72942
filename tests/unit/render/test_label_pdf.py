"""Labels measured on a raster of 203 dots to the inch, as a thermal printer has."""

from io import BytesIO

import numpy as np
import numpy.typing as npt
import pypdf
import pypdfium2
import pytest
import zxingcpp

from longpoint.errors import SheetError
from longpoint.render.label_pdf import render_labels
from longpoint.render.qr import qr_modules
from longpoint.sheets.labels.grid import GRIDS, LabelGrid, read_grid
from longpoint.sheets.labels.label_pages import label_pages, trial_page
from longpoint.sheets.labels.piece_code import read_piece_code
from tests.unit.sheets.sample import PLAN

DPI = 203.0
MM_PER_DOT = 25.4 / DPI
Grey = npt.NDArray[np.uint8]


def rasters(pdf: bytes) -> list[Grey]:
    document = pypdfium2.PdfDocument(pdf)
    try:
        return [page.render(scale=DPI / 72, grayscale=True).to_numpy() for page in document]
    finally:
        document.close()


def labels(grid: LabelGrid) -> bytes:
    return render_labels(label_pages(PLAN, grid, qr_modules), "Labels")


@pytest.mark.parametrize("name", ["a4-3x8", "letter-3x10", "roll-62x29", "50x25"])
def test_every_code_is_read_back_from_the_raster(name: str) -> None:
    found = [
        read_piece_code(code.text)
        for page in rasters(labels(read_grid(name)))
        for code in zxingcpp.read_barcodes(page)
    ]
    assert sorted(found) == sorted((PLAN.readings_code, piece.mark) for piece in PLAN.pieces)


@pytest.mark.parametrize("name", ["a4-3x8", "a4-2x7", "letter-3x10", "letter-2x5"])
@pytest.mark.parametrize("nudge_mm", [(0.0, 0.0), (1.5, -2.0)])
def test_the_edges_of_the_labels_land_within_half_a_millimetre(
    name: str, nudge_mm: tuple[float, float]
) -> None:
    grid = GRIDS[name].nudged(*nudge_mm)
    (page,) = rasters(render_labels((trial_page(grid),), "Test print"))
    assert page.shape[1] * MM_PER_DOT == pytest.approx(grid.paper.width_mm, abs=0.2)
    assert page.shape[0] * MM_PER_DOT == pytest.approx(grid.paper.height_mm, abs=0.2)
    for index in range(grid.on_page):
        place = grid.place(index)
        down = slice(dots(place.top_mm + 6.0), dots(place.top_mm + place.height_mm - 1.0))
        across = slice(dots(place.left_mm + 8.0), dots(place.left_mm + place.width_mm - 1.0))
        sides = [place.left_mm, place.left_mm + place.width_mm]
        heights = [place.top_mm, place.top_mm + place.height_mm]
        for at_mm in sides:
            assert darkest(page[down].mean(axis=0), at_mm) == pytest.approx(at_mm, abs=0.5)
        for at_mm in heights:
            assert darkest(page[:, across].mean(axis=1), at_mm) == pytest.approx(at_mm, abs=0.5)


def test_nothing_is_printed_outside_a_label() -> None:
    grid = GRIDS["a4-3x8"]
    first, *_ = rasters(labels(grid))
    outside = np.ones_like(first, dtype=bool)
    for index in range(grid.on_page):
        place = grid.place(index)
        rows = slice(dots(place.top_mm), dots(place.top_mm + place.height_mm) + 1)
        outside[rows, dots(place.left_mm) : dots(place.left_mm + place.width_mm) + 1] = False
    assert first[outside].min() == 255
    assert first.min() < 60


def test_the_words_can_be_taken_out_of_the_file_and_its_fonts_are_in_it() -> None:
    pdf = labels(GRIDS["a4-3x8"])
    reader = pypdf.PdfReader(BytesIO(pdf))
    text = " ".join(page.extract_text() for page in reader.pages)
    for piece in PLAN.pieces:
        assert piece.mark in text
    assert b"/StructTreeRoot" in pdf
    assert reader.metadata is not None
    assert reader.metadata.title == "Labels"


def test_the_same_labels_give_the_same_bytes_and_none_are_refused() -> None:
    grid = GRIDS["roll-100x50"]
    assert labels(grid) == labels(grid)
    with pytest.raises(SheetError):
        render_labels((), "Labels")


def dots(at_mm: float) -> int:
    return round(at_mm / MM_PER_DOT)


def darkest(line: npt.NDArray[np.float64], near_mm: float) -> float:
    """Return where within 1.5 mm of a spot a line of dots is darkest. [mm]"""
    start = max(0, dots(near_mm - 1.5))
    part = line[start : dots(near_mm + 1.5)]
    low = np.flatnonzero(part <= part.min() + 2.0)
    return float((start + low.mean() + 0.5) * MM_PER_DOT)
