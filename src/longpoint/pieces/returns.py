"""Small pieces that close the open end of a board back to the wall."""

from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.pieces.boards import Side
from longpoint.pieces.piece import SQUARE_CUT, CutKind, EndCut, Piece, Role
from longpoint.pieces.run_ends import RETURN_BEVEL_DEG
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import say

RETURN_SMALL: Final = "return-small"

RETURN_CUT: Final = EndCut(kind=CutKind.BEVEL, bevel_deg=RETURN_BEVEL_DEG)
"""Cut of both pieces where a return meets its board."""


def return_piece(board: Piece, mark: str, side: Side) -> Piece:
    """Return the small piece that closes an open end, its face as long as the board is thick.

    Args:
        board: The board, or the last part of it; place, profile and way of fixing are its own.
        mark: Mark of the whole board.
        side: The end that is closed.
    """
    thickness_mm = board.thickness_mm
    return replace(
        board,
        mark=f"{mark}-return-{side}",
        role=Role.RETURN,
        inner_mm=thickness_mm,
        outer_mm=thickness_mm,
        back_mm=0.0,
        left=RETURN_CUT if side is Side.RIGHT else SQUARE_CUT,
        right=SQUARE_CUT if side is Side.RIGHT else RETURN_CUT,
        u_mm=0.0,
        hand_sum=say("face as long as {mark} is thick; back comes to a point", mark=mark),
        notes=(),
    )


def return_caution(place: str, mark: str, thickness_mm: float, count: int, units: Units) -> Finding:
    """Return the warning that a return is too small to hold at the saw."""
    thickness = format_with_unit(thickness_mm, units)
    what = say("The return") if count == 1 else say("Each return")
    return Finding(
        code=RETURN_SMALL,
        severity=Severity.WARNING,
        place=place,
        read=say(
            "{what} of {mark} is {thickness} long on the face and comes to a point behind.",
            what=what,
            mark=mark,
            thickness=thickness,
        ),
        wrong=say("That is too small to hold at the saw."),
        do=say(
            "Cut the 45 on the end of a longer stick, then cut the return off it "
            "with a handsaw, or let the blade stop before you reach for it."
        ),
    )
