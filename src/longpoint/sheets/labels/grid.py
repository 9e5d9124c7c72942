"""Label paper as data: any grid is described by its numbers."""

import re
from dataclasses import dataclass, replace
from typing import Final

from longpoint.errors import SheetError

LEAST_WIDTH_MM: Final = 50.0
LEAST_HEIGHT_MM: Final = 25.0
"""On anything smaller the figures couldn't be read at arm's length, nor the QR code by a phone;
ours, no source."""
MOST_ON_PAGE: Final = 500
SLACK_MM: Final = 0.05
MOST_NUDGE_MM: Final = 10.0

_PAIR: Final = r"(\d{1,3}(?:\.\d{1,3})?)x(\d{1,3}(?:\.\d{1,3})?)"
_GRID: Final = re.compile(rf"^(\d{{1,2}})x(\d{{1,2}}) {_PAIR} at {_PAIR} every {_PAIR}$")
_ROLL: Final = re.compile(rf"^{_PAIR}$")


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A sheet of label paper. [mm]"""

    width_mm: float
    height_mm: float


A4: Final = Paper(width_mm=210.0, height_mm=297.0)
"""ISO 216."""
LETTER: Final = Paper(width_mm=215.9, height_mm=279.4)
"""8 1/2 x 11 in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """Where one label stands on its page: top left corner and size. [mm]"""

    left_mm: float
    top_mm: float
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelGrid:
    """How labels stand on a page.

    Attributes:
        paper: The page.
        columns: How many side by side. > 0
        rows: How many one below the other. > 0
        width_mm: Width of a label.
        height_mm: Height of a label.
        left_mm: From the page's left edge to the first label.
        top_mm: From the page's top edge to the first label.
        across_mm: From one label's left edge to the next one's.
        down_mm: From one label's top edge to the next one's.
        nudge_x_mm: How far the print is moved to the right, where a printer pulls the paper askew.
        nudge_y_mm: How far it is moved down.

    Raises:
        SheetError: The labels overlap, run off the page, or are too small to be read.
    """

    paper: Paper
    columns: int
    rows: int
    width_mm: float
    height_mm: float
    left_mm: float = 0.0
    top_mm: float = 0.0
    across_mm: float = 0.0
    down_mm: float = 0.0
    nudge_x_mm: float = 0.0
    nudge_y_mm: float = 0.0

    def __post_init__(self) -> None:
        """Check that the labels stand apart and on the page."""
        wrong = self._wrong()
        if wrong:
            raise SheetError(
                f"Label paper: {self.columns} across and {self.rows} down, each {self.width_mm:g} "
                f"x {self.height_mm:g} mm, on {self.paper.width_mm:g} x "
                f"{self.paper.height_mm:g} mm.",
                wrong,
                "Measure the paper again: size of a label, margins at the left and top, and from "
                "one label's edge to the same edge of the next.",
            )

    def _wrong(self) -> str:
        if self.columns < 1 or self.rows < 1 or self.on_page > MOST_ON_PAGE:
            return f"There must be from 1 to {MOST_ON_PAGE} labels on a page."
        if self.width_mm < LEAST_WIDTH_MM or self.height_mm < LEAST_HEIGHT_MM:
            return (
                f"A label must be at least {LEAST_WIDTH_MM:g} x {LEAST_HEIGHT_MM:g} mm, or it "
                "can't be read."
            )
        if self.columns > 1 and self.across_mm < self.width_mm - SLACK_MM:
            return "Labels side by side overlap."
        if self.rows > 1 and self.down_mm < self.height_mm - SLACK_MM:
            return "Labels one below the other overlap."
        right_mm = self.left_mm + (self.columns - 1) * self.across_mm + self.width_mm
        bottom_mm = self.top_mm + (self.rows - 1) * self.down_mm + self.height_mm
        if right_mm > self.paper.width_mm + SLACK_MM or bottom_mm > self.paper.height_mm + SLACK_MM:
            return f"They reach to {right_mm:g} mm across and {bottom_mm:g} mm down, past the page."
        if max(abs(self.nudge_x_mm), abs(self.nudge_y_mm)) > MOST_NUDGE_MM:
            return f"A print is nudged by {MOST_NUDGE_MM:g} mm at most."
        return ""

    @property
    def on_page(self) -> int:
        """How many labels stand on a page."""
        return self.columns * self.rows

    def place(self, index: int) -> Place:
        """Return where a label stands, counted from 0 along the rows from the top.

        Example:
            >>> GRIDS["a4-3x8"].place(4)
            Place(left_mm=73.2, top_mm=46.8, width_mm=63.5, height_mm=33.9)
        """
        row, column = divmod(index, self.columns)
        return Place(
            left_mm=round(self.left_mm + column * self.across_mm + self.nudge_x_mm, 3),
            top_mm=round(self.top_mm + row * self.down_mm + self.nudge_y_mm, 3),
            width_mm=self.width_mm,
            height_mm=self.height_mm,
        )

    def nudged(self, right_mm: float, down_mm: float) -> "LabelGrid":
        """Return the grid with its print moved.

        Raises:
            SheetError: It is moved too far.
        """
        return replace(self, nudge_x_mm=right_mm, nudge_y_mm=down_mm)


def _grid(paper: Paper, across: int, down: int, **sizes_mm: float) -> LabelGrid:
    return LabelGrid(paper=paper, columns=across, rows=down, **sizes_mm)


GRIDS: Final = {
    "a4-3x8": _grid(
        A4, 3, 8, width_mm=63.5, height_mm=33.9, left_mm=7.2, top_mm=12.9, across_mm=66.0,
        down_mm=33.9,
    ),
    "a4-2x7": _grid(
        A4, 2, 7, width_mm=99.1, height_mm=38.1, left_mm=4.65, top_mm=15.15, across_mm=101.6,
        down_mm=38.1,
    ),
    "letter-3x10": _grid(
        LETTER, 3, 10, width_mm=66.675, height_mm=25.4, left_mm=4.763, top_mm=12.7,
        across_mm=69.85, down_mm=25.4,
    ),
    "letter-2x5": _grid(
        LETTER, 2, 5, width_mm=101.6, height_mm=50.8, left_mm=3.969, top_mm=12.7,
        across_mm=106.363, down_mm=50.8,
    ),
    "roll-62x29": _grid(Paper(width_mm=62.0, height_mm=29.0), 1, 1, width_mm=62.0, height_mm=29.0),
    "roll-100x50": _grid(
        Paper(width_mm=100.0, height_mm=50.0), 1, 1, width_mm=100.0, height_mm=50.0
    ),
}  # fmt: skip
"""Grids that label paper is often sold in, by how many labels stand on a page; from memory, so the
test print comes first."""


def read_grid(written: str, paper: Paper = A4) -> LabelGrid:
    """Return the grid of a name, of numbers, or of the one size of a roll.

    Args:
        written: A name in `GRIDS`; "3x8 63.5x33.9 at 7.2x12.9 every 66x33.9", that is labels
            across and down, their size, margins at the left and top, and from edge to edge; or
            "62x29", the size of a label on a roll. [mm]
        paper: Of a grid given in numbers.

    Raises:
        SheetError: It can't be read, or no such paper can be.

    Example:
        >>> read_grid("3x8 63.5x33.9 at 7.2x12.9 every 66x33.9") == GRIDS["a4-3x8"]
        True
        >>> read_grid("80x40").paper
        Paper(width_mm=80.0, height_mm=40.0)
    """
    text = " ".join(written.casefold().split())
    if text in GRIDS:
        return GRIDS[text]
    if roll := _ROLL.match(text):
        width_mm, height_mm = map(float, roll.groups())
        size = Paper(width_mm=width_mm, height_mm=height_mm)
        return LabelGrid(paper=size, columns=1, rows=1, width_mm=width_mm, height_mm=height_mm)
    if grid := _GRID.match(text):
        across, down, *sizes = grid.groups()
        names = ("width_mm", "height_mm", "left_mm", "top_mm", "across_mm", "down_mm")
        sizes_mm = dict(zip(names, map(float, sizes), strict=True))
        return _grid(paper, int(across), int(down), **sizes_mm)
    raise SheetError(
        f"The label paper is given as {written[:80]!r}.",
        "That is no grid this program knows, and no numbers of one.",
        f"Name one of {', '.join(GRIDS)}; or write it like "
        '"3x8 63.5x33.9 at 7.2x12.9 every 66x33.9", in mm; or "62x29" for a roll.',
    )
