"""The pieces of one place as they lie at the saw: two ends, the figure, and what else to do."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_length
from longpoint.sheets.blocks import Cell, Column, Table
from longpoint.sheets.cut_cells import end_cells, figure_cell, sum_line
from longpoint.sheets.dialects import Words, role_words
from longpoint.sheets.printed_lengths import PrintedLengths
from longpoint.speech.said import say
from longpoint.survey.house import House

PIECE_COLUMNS: Final = (
    Column(title=say("Piece"), share=2.9),
    Column(title=say("Left end"), share=2.7),
    Column(title=say("Cut to"), is_key=True, share=3.1),
    Column(title=say("Right end"), share=2.7),
    Column(title=say("Inner edge"), is_number=True, share=1.4),
    Column(title=say("Outer edge"), is_number=True, share=1.4),
)


def piece_table(
    house: House,
    pieces: Sequence[Piece],
    lengths: Mapping[str, PrintedLengths],
    words: Words,
    caption: str = "",
) -> Table:
    """Return the table of some pieces; those that nothing tells apart stand in one row.

    Args:
        house: Gives the saw and the units.
        pieces: The pieces.
        lengths: Every piece's lengths as printed, by mark.
        words: The crew's words.
        caption: Said above the table.
    """
    alike: dict[Piece, list[str]] = {}
    for piece in pieces:
        alike.setdefault(replace(piece, mark=""), []).append(piece.mark)
    shown = [(replace(piece, mark=marks[0]), marks) for piece, marks in alike.items()]
    return Table(
        columns=PIECE_COLUMNS,
        rows=tuple(_row(house, piece, marks, lengths[piece.mark], words) for piece, marks in shown),
        steps=tuple((index, piece.notes) for index, (piece, _) in enumerate(shown) if piece.notes),
        under=tuple(
            (index, sum_line(piece)) for index, (piece, _) in enumerate(shown) if piece.hand_sum
        ),
        caption=caption,
    )


def _row(
    house: House, piece: Piece, marks: Sequence[str], printed: PrintedLengths, words: Words
) -> tuple[str | Cell, ...]:
    left, right = end_cells(piece, house.saw, words)
    what = role_words(piece.role, words)
    named = (
        say("{mark} to {marks}", mark=piece.mark, marks=marks[-1]) if len(marks) > 1 else piece.mark
    )
    return (
        Cell(
            text=say("{marks} x {what}", marks=len(marks), what=what) if len(marks) > 1 else what,
            small=(say("{named} · {profile}", named=named, profile=piece.profile),),
        ),
        left,
        figure_cell(piece, printed, house.units),
        right,
        format_length(printed.inner_mm, house.units),
        format_length(printed.outer_mm, house.units),
    )
