"""The cells that a piece has in a table: its two ends with their shape, and the figure between."""

from longpoint.pieces.piece import CutKind, HookEnd, Piece
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Cell
from longpoint.sheets.dialects import Words
from longpoint.sheets.end_pictures import HookEdge, SeenEnd, end_picture
from longpoint.sheets.printed_lengths import PrintedLengths
from longpoint.sheets.saw_settings import NO_BREAK, setting_figure, setting_remarks
from longpoint.sheets.value_words import shown
from longpoint.speech.said import say
from longpoint.sticks.order.saw_setting import SawSetting, end_settings, hold_at_saw
from longpoint.survey.instruments import Saw


def end_cells(
    piece: Piece, saw: Saw, words: Words, *, is_turned: bool = False
) -> tuple[Cell, Cell]:
    """Return the cells of the left and right end of a piece as it lies at the saw.

    Args:
        piece: The piece.
        saw: The saw in use.
        words: The crew's words.
        is_turned: True when it lies turned end for end, its outer edge towards you.
    """
    left, right = end_settings(piece, saw, turned=is_turned)
    return (
        _end_cell(piece, HookEnd.LEFT, left, saw, words, is_turned=is_turned),
        _end_cell(piece, HookEnd.RIGHT, right, saw, words, is_turned=is_turned),
    )


def figure_cell(
    piece: Piece, lengths: PrintedLengths, units: Units, *, is_turned: bool = False
) -> Cell:
    """Return the cell with the big figure, and from which end it is read."""
    figure, how = key_figure(piece, lengths, units, is_turned=is_turned)
    return Cell(text=figure.replace(" ", NO_BREAK), behind=how.replace(" ", NO_BREAK), is_key=True)


def key_figure(
    piece: Piece, lengths: PrintedLengths, units: Units, *, is_turned: bool = False
) -> tuple[str, str]:
    """Return the figure to cut a piece by, and how it is read.

    A mitred piece goes by its hook reading. Skirting goes by the longer of its two sides: the back,
    as the wall was read, or the face where that runs past it.
    """
    if lengths.hook_mm is not None and piece.hook_from is not None:
        end = seen_at(piece.hook_from, is_turned=is_turned)
        return format_length(lengths.hook_mm, units), say("hook {end}", end=shown(end.value))
    if piece.is_along_wall:
        is_back = lengths.back_mm >= lengths.long_mm
        longer_mm = lengths.back_mm if is_back else lengths.long_mm
        return format_length(longer_mm, units), say("back") if is_back else say("face")
    return format_length(lengths.long_mm, units), say("length")


def sum_line(piece: Piece) -> str:
    """Return the sum behind a figure as it stands below a row; empty where there is none."""
    hand_sum = piece.hand_sum
    if not hand_sum or piece.is_along_wall:
        return hand_sum
    return say("Sum: {hand_sum}", hand_sum=hand_sum)


def seen_at(end: HookEnd, *, is_turned: bool) -> HookEnd:
    """Return at which end of the saw bench an end of the piece lies."""
    if not is_turned:
        return end
    return HookEnd.RIGHT if end is HookEnd.LEFT else HookEnd.LEFT


def _end_cell(
    piece: Piece, end: HookEnd, setting: SawSetting, saw: Saw, words: Words, *, is_turned: bool
) -> Cell:
    own_end = seen_at(end, is_turned=is_turned)
    cut = piece.left if own_end is HookEnd.LEFT else piece.right
    edge = HookEdge.NEAR if is_turned else HookEdge.FAR
    seen = SeenEnd(
        end=end,
        setting=setting,
        hold=hold_at_saw(piece, saw),
        is_scribed=cut.kind is CutKind.SCRIBE,
        hook=edge if piece.hook_from is own_end else None,
    )
    return Cell(
        text=setting_figure(setting),
        small=setting_remarks(setting, cut, words),
        picture=end_picture(seen),
        picture_last=end is HookEnd.LEFT,
    )
