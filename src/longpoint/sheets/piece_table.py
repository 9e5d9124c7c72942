"""The pieces of one place as they lie at the saw: two ends, the figure, and what else to do."""

from collections.abc import Mapping, Sequence
from typing import Final

from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_length
from longpoint.sheets.blocks import Cell, Column, Table
from longpoint.sheets.cut_cells import end_cells, figure_cell, sum_line
from longpoint.sheets.dialects import Words, role_words
from longpoint.sheets.printed_lengths import PrintedLengths
from longpoint.survey.house import House

PIECE_COLUMNS: Final = (
    Column(title="Piece", share=2.9),
    Column(title="Left end", share=2.7),
    Column(title="Hook reading", is_key=True, share=3.1),
    Column(title="Right end", share=2.7),
    Column(title="Inner edge", is_number=True, share=1.4),
    Column(title="Outer edge", is_number=True, share=1.4),
)


def piece_table(
    house: House,
    pieces: Sequence[Piece],
    lengths: Mapping[str, PrintedLengths],
    words: Words,
    caption: str = "",
) -> Table:
    """Return the table of some pieces.

    Args:
        house: Gives the saw and the units.
        pieces: The pieces.
        lengths: Every piece's lengths as printed, by mark.
        words: The crew's words.
        caption: Said above the table.
    """
    return Table(
        columns=PIECE_COLUMNS,
        rows=tuple(_row(house, piece, lengths[piece.mark], words) for piece in pieces),
        steps=tuple((index, piece.notes) for index, piece in enumerate(pieces) if piece.notes),
        under=tuple(
            (index, sum_line(piece)) for index, piece in enumerate(pieces) if piece.hand_sum
        ),
        caption=caption,
    )


def _row(
    house: House, piece: Piece, printed: PrintedLengths, words: Words
) -> tuple[str | Cell, ...]:
    left, right = end_cells(piece, house.saw, words)
    return (
        Cell(text=role_words(piece.role, words), small=(f"{piece.mark} · {piece.profile}",)),
        left,
        figure_cell(piece, printed, house.units),
        right,
        format_length(printed.inner_mm, house.units),
        format_length(printed.outer_mm, house.units),
    )
