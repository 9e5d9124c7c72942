"""Lengths of each piece as they are printed, a pair rounded alike."""

from collections.abc import Mapping
from dataclasses import dataclass

from longpoint.pieces.pairs import printed_lengths_mm
from longpoint.pieces.piece import Piece


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedLengths:
    """The lengths of one piece before they are written to the half millimetre. [mm]"""

    short_mm: float
    long_mm: float
    inner_mm: float
    outer_mm: float
    back_mm: float
    hook_mm: float | None


def printed_lengths(pieces: tuple[Piece, ...]) -> Mapping[str, PrintedLengths]:
    """Return the lengths to print, by mark."""
    return {piece.mark: _printed(piece, pieces) for piece in pieces}


def _printed(piece: Piece, pieces: tuple[Piece, ...]) -> PrintedLengths:
    values = printed_lengths_mm(piece, pieces)
    return PrintedLengths(
        short_mm=values["short"] or 0.0,
        long_mm=values["long"] or 0.0,
        inner_mm=values["inner"] or 0.0,
        outer_mm=values["outer"] or 0.0,
        back_mm=values["back"] or 0.0,
        hook_mm=values["hook"],
    )
