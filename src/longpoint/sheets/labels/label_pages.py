"""Labels on their pages, in the order of sawing or bundle by bundle; and the test print."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from typing import Final

from longpoint.errors import SheetError
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.cut_lines import cut_lines
from longpoint.sheets.dialects import words_for
from longpoint.sheets.labels.grid import LabelGrid, Place
from longpoint.sheets.labels.piece_label import LabelOf, QrMaker, hold_label, piece_label
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.speech.said import say

MINOR_MM: Final = 1
MAJOR_MM: Final = 10


class LabelOrder(StrEnum):
    """In which order labels are peeled off."""

    SAW = "saw"
    """As the pieces come off the saw."""
    BUNDLE = "bundle"
    """Opening by opening, run by run."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelPage:
    """A page of labels, or a test print.

    Attributes:
        width_mm: Width of the paper.
        height_mm: Height of the paper.
        labels: Each drawing with where it stands.
    """

    width_mm: float
    height_mm: float
    labels: tuple[tuple[Place, Drawing], ...]


def label_pages(
    plan: HousePlan,
    grid: LabelGrid,
    qr: QrMaker,
    order: LabelOrder = LabelOrder.SAW,
    skip: int = 0,
) -> tuple[LabelPage, ...]:
    """Return a label for each piece, and one that says HOLD for each place held back.

    Args:
        plan: The plan.
        grid: The label paper.
        qr: Makes the modules of a QR code.
        order: In which order they stand.
        skip: How many labels of the first page are used up already. >= 0

    Raises:
        SheetError: More are used up than a page has.
    """
    if not 0 <= skip < grid.on_page:
        raise SheetError(
            say("{skip} labels of the first page are said to be used up.", skip=skip),
            say("A page of this paper has {on_page}.", on_page=grid.on_page),
            say("Give a number from 0 to {on_page}.", on_page=grid.on_page - 1),
        )
    of = LabelOf(
        readings_code=plan.readings_code,
        saw=plan.house.saw,
        words=words_for(plan.house.dialect),
        units=plan.house.units,
        lengths=dict(printed_lengths(plan.pieces)),
        qr=qr,
    )
    size = (grid.width_mm, grid.height_mm)
    drawings = [piece_label(piece, of, *size) for piece in labelled(plan, order)]
    drawings += [hold_label(mark, *size) for mark in sorted(plan.held)]
    return _paged(drawings, grid, skip)


def labelled(plan: HousePlan, order: LabelOrder) -> tuple[Piece, ...]:
    """Return the pieces in the order of their labels."""
    in_saw_order = tuple(line.piece for line in cut_lines(plan))
    if order is LabelOrder.SAW:
        return in_saw_order
    skirting = words_for(plan.house.dialect).skirting
    bundles = list(dict.fromkeys((p.room, bundle_of(p, skirting)) for p in plan.pieces))
    rooms = list(dict.fromkeys(room for room, _ in bundles))
    return tuple(
        sorted(
            in_saw_order,
            key=lambda p: (
                rooms.index(p.room),
                bundles.index((p.room, bundle_of(p, skirting))),
            ),
        )
    )


def bundle_of(piece: Piece, skirting: str) -> str:
    """Return what a piece is tied up with: its opening's face, its room's skirting, its trim."""
    if piece.run is not None:
        return skirting
    return (
        say("{place} face {face}", place=piece.place, face=piece.face)
        if piece.face
        else piece.place
    )


def _paged(drawings: Sequence[Drawing], grid: LabelGrid, skip: int) -> tuple[LabelPage, ...]:
    slots = [(skip + index, drawing) for index, drawing in enumerate(drawings)]
    pages = (slots[-1][0] // grid.on_page + 1) if slots else 0
    return tuple(
        LabelPage(
            width_mm=grid.paper.width_mm,
            height_mm=grid.paper.height_mm,
            labels=tuple(
                (grid.place(slot % grid.on_page), drawing)
                for slot, drawing in slots
                if slot // grid.on_page == page
            ),
        )
        for page in range(pages)
    )


def trial_page(grid: LabelGrid) -> LabelPage:
    """Return a page with the edge of every label and rulers along the paper's left and top edges.

    Printed on plain paper and held against a sheet of labels, it shows how far to nudge.
    """
    paper = grid.paper
    whole = Place(left_mm=0.0, top_mm=0.0, width_mm=paper.width_mm, height_mm=paper.height_mm)
    marks: list[Mark] = []
    for index in range(grid.on_page):
        marks += _edge(grid.place(index), str(index + 1))
    if grid.on_page > 1:
        marks += _rulers(paper.width_mm, paper.height_mm)
        said = say(
            "{columns} x {rows}, each {width_mm:g} x {height_mm:g} mm; moved "
            "{nudge_x_mm:+g} right, {nudge_y_mm:+g} down. Print at 100 %, not "
            "fitted to the page.",
            columns=grid.columns,
            rows=grid.rows,
            width_mm=grid.width_mm,
            height_mm=grid.height_mm,
            nudge_x_mm=grid.nudge_x_mm,
            nudge_y_mm=grid.nudge_y_mm,
        )
        marks.append(
            Word(x_mm=paper.width_mm / 2, y_mm=paper.height_mm - 3.0, text=said, size_mm=2.6)
        )
    drawing = Drawing(
        width_mm=paper.width_mm,
        height_mm=paper.height_mm,
        marks=tuple(marks),
        described=say("Test print: the edge of every label, and rulers in millimetres"),
    )
    return LabelPage(width_mm=paper.width_mm, height_mm=paper.height_mm, labels=((whole, drawing),))


def _edge(place: Place, number: str) -> list[Mark]:
    left, top = place.left_mm, place.top_mm
    right, bottom = left + place.width_mm, top + place.height_mm
    middle_x, middle_y = (left + right) / 2, (top + bottom) / 2
    return [
        Outline(points=((left, top), (right, top), (right, bottom), (left, bottom)), ink=Ink.MARK),
        Outline(
            points=((middle_x - 3, middle_y), (middle_x + 3, middle_y)), ink=Ink.MARK, closed=False
        ),
        Outline(
            points=((middle_x, middle_y - 3), (middle_x, middle_y + 3)), ink=Ink.MARK, closed=False
        ),
        Word(x_mm=left + 2.0, y_mm=top + 5.0, text=number, size_mm=3.4, anchor=Anchor.START),
    ]


def _rulers(width_mm: float, height_mm: float) -> list[Mark]:
    """Ticks at every millimetre from the page's own corner, every tenth longer and named."""
    marks: list[Mark] = []
    for at in range(MINOR_MM, int(max(width_mm, height_mm)), MINOR_MM):
        long = 3.0 if at % MAJOR_MM == 0 else 2.0 if at % 5 == 0 else 1.2
        if at < width_mm:
            marks.append(Outline(points=((at, 0.0), (at, long)), ink=Ink.MARK, closed=False))
        if at < height_mm:
            marks.append(Outline(points=((0.0, at), (long, at)), ink=Ink.MARK, closed=False))
        if at % MAJOR_MM == 0:
            if at < width_mm:
                marks.append(Word(x_mm=at, y_mm=5.4, text=str(at), size_mm=2.2))
            if at < height_mm:
                marks.append(
                    Word(x_mm=3.4, y_mm=at + 0.8, text=str(at), size_mm=2.2, anchor=Anchor.START)
                )
    return marks
