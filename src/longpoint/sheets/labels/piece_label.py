"""One label: the mark large, the place, both ends drawn, the hand, the lengths, and a QR code."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from longpoint.pieces.piece import CutKind, HookEnd, Piece, Role
from longpoint.quantities.formatting import format_length, format_unit, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Anchor, Drawing, Ink, Mark, Outline, Word
from longpoint.sheets.cut_cells import key_figure
from longpoint.sheets.dialects import Words, role_words
from longpoint.sheets.end_pictures import (
    FACE_MM,
    ROOM_MM,
    WIDTH_MM,
    HookEdge,
    SeenEnd,
    end_picture,
)
from longpoint.sheets.labels.piece_code import piece_code
from longpoint.sheets.printed_lengths import PrintedLengths
from longpoint.sheets.text_width import text_width_mm
from longpoint.speech.said import say
from longpoint.sticks.order.saw_setting import end_settings
from longpoint.survey.instruments import Saw

Modules = Sequence[Sequence[bool]]
"""Rows of a QR code without its quiet zone; True is dark."""

QrMaker = Callable[[str], Modules]

QUIET_MODULES: Final = 4
"""Free modules round a QR code: ISO/IEC 18004."""
EDGE_MM: Final = 2.0
"""Free space inside a label's edge: a printer is seldom truer than a millimetre."""
QR_MOST_MM: Final = 22.0
EDGE_WORDS_MM: Final = 2.1
LARGEST: Final = 2.0
"""An end is drawn at most twice as large as on the cut sheet."""

TO_OPENING: Final = say("this edge to the opening")
DOWN: Final = say("this edge to the floor")

AROUND: Final = frozenset(
    {Role.HEAD, Role.LEFT_LEG, Role.RIGHT_LEG, Role.SILL, Role.SIDE, Role.SEGMENT, Role.BACK_BAND}
)
"""Roles whose inner edge lies towards the opening."""
HANDS: Final = {
    Role.LEFT_LEG: (say("LEFT"), HookEnd.RIGHT),
    Role.RIGHT_LEG: (say("RIGHT"), HookEnd.LEFT),
}
"""What a leg is, and which of its ends is the upper one: pieces run clockwise round the opening."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LabelOf:
    """What a house's labels are made from.

    Attributes:
        readings_code: Code of its readings.
        saw: Its saw: how skirting is held.
        words: The crew's words.
        units: Unit of the lengths.
        lengths: Lengths as printed, by mark.
        qr: Makes the modules of a QR code.
    """

    readings_code: str
    saw: Saw
    words: Words
    units: Units
    lengths: dict[str, PrintedLengths]
    qr: QrMaker


def piece_label(piece: Piece, of: LabelOf, width_mm: float, height_mm: float) -> Drawing:
    """Return a piece's label at its size on paper.

    Args:
        piece: The piece.
        of: What the labels of the house share.
        width_mm: Width of the label. >= 50
        height_mm: Its height. >= 25
    """
    qr_mm = min(height_mm - 2 * EDGE_MM - 2.0, 0.32 * width_mm, QR_MOST_MM)
    left_mm, right_mm = EDGE_MM, width_mm - EDGE_MM - qr_mm - 1.5
    # Sizes grow with the label, so that a large one can be read from further off.
    scale = min(1.6, (right_mm - left_mm) / 38.0, height_mm / 27.0)
    mark_mm = _fitting(piece.mark, 5.2 * scale, right_mm - left_mm)
    marks: list[Mark] = [
        Word(
            x_mm=left_mm,
            y_mm=EDGE_MM + mark_mm * 0.82,
            text=piece.mark,
            size_mm=mark_mm,
            bold=True,
            anchor=Anchor.START,
        )
    ]
    y_mm = EDGE_MM + mark_mm * 0.82 + 3.0 * scale
    place = _place_words(piece, of.words)
    marks.append(_line(place, left_mm, y_mm, 2.5 * scale, right_mm - left_mm))
    figures_y_mm = height_mm - EDGE_MM - 0.7
    marks += _picture(
        piece, of, (left_mm, right_mm), (y_mm + 0.7 * scale, figures_y_mm - 5.0 * scale), scale
    )
    marks += _figures(piece, of, (left_mm, right_mm), figures_y_mm, scale)
    marks += _qr(of.qr(piece_code(of.readings_code, piece.mark)), width_mm, qr_mm)
    below = say(
        "{readings_code} · {profile}",
        readings_code=of.readings_code,
        profile=piece.profile,
    )
    size_mm = _fitting(below, 2.1, qr_mm)
    marks.append(
        Word(
            x_mm=width_mm - EDGE_MM - qr_mm / 2,
            y_mm=EDGE_MM + qr_mm + 2.2,
            text=below,
            size_mm=size_mm,
        )
    )
    return Drawing(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=tuple(marks),
        described=say("Label {mark}: {place}", mark=piece.mark, place=place),
    )


def hold_label(mark: str, width_mm: float, height_mm: float) -> Drawing:
    """Return the label of a place that is held back: it has no lengths to print."""
    size_mm = _fitting(say("HOLD {mark}", mark=mark), height_mm / 3.2, width_mm - 2 * EDGE_MM)
    said = say("no lengths: read it again first")
    marks: tuple[Mark, ...] = (
        Outline(
            points=(
                (EDGE_MM, EDGE_MM),
                (width_mm - EDGE_MM, EDGE_MM),
                (width_mm - EDGE_MM, height_mm - EDGE_MM),
                (EDGE_MM, height_mm - EDGE_MM),
            ),
            ink=Ink.CUT,
        ),
        Word(
            x_mm=width_mm / 2,
            y_mm=height_mm / 2 + size_mm * 0.2,
            text=say("HOLD {mark}", mark=mark),
            size_mm=size_mm,
            bold=True,
        ),
        Word(
            x_mm=width_mm / 2,
            y_mm=height_mm - EDGE_MM - 2.6,
            text=said,
            size_mm=_fitting(said, 3.2, width_mm - 3 * EDGE_MM),
        ),
    )
    return Drawing(
        width_mm=width_mm,
        height_mm=height_mm,
        marks=marks,
        described=say(
            "Label HOLD {mark}: {said}",
            mark=mark,
            said=said,
        ),
    )


def _place_words(piece: Piece, words: Words) -> str:
    face = say("face {face} ", face=piece.face) if piece.face else ""
    where = say(" · {room}", room=piece.room) if piece.room else ""
    return say(
        "{place} {face}{role}{where}",
        place=piece.place,
        face=face,
        role=role_words(piece.role, words),
        where=where,
    )


def _figures(
    piece: Piece, of: LabelOf, room_mm: tuple[float, float], y_mm: float, scale: float
) -> list[Mark]:
    """The figure it was cut by, large; beside it how it is read, and both its lengths."""
    printed = of.lengths[piece.mark]
    figure, how = key_figure(piece, printed, of.units)
    short = format_length(printed.short_mm, of.units)
    long = format_length(printed.long_mm, of.units)
    if short != long:
        both = say("short {short} / long {long}", short=short, long=long)
    elif figure != long:
        both = say("face {long}", long=format_with_unit(printed.long_mm, of.units))
    else:
        both = format_unit(of.units)
    left_mm, right_mm = room_mm
    size_mm = _fitting(figure, 4.8 * scale, (right_mm - left_mm) * 0.55)
    start_mm = left_mm + text_width_mm(figure, size_mm) + 1.2
    small_mm, rest_mm = 2.2 * scale, right_mm - start_mm
    return [
        Word(x_mm=left_mm, y_mm=y_mm, text=figure, size_mm=size_mm, bold=True, anchor=Anchor.START),
        _line(how, start_mm, y_mm - small_mm * 1.15, small_mm, rest_mm),
        _line(both, start_mm, y_mm, small_mm, rest_mm),
    ]


def _picture(
    piece: Piece,
    of: LabelOf,
    across_mm: tuple[float, float],
    down_mm: tuple[float, float],
    scale: float,
) -> list[Mark]:
    """Both ends as the piece lies at the saw, cut short between; which edge goes where."""
    (left_mm, right_mm), (top_mm, bottom_mm) = across_mm, down_mm
    has_edge = piece.role in AROUND or piece.is_along_wall
    words_mm = EDGE_WORDS_MM * scale + 0.7 if has_edge else 0.0
    most = (right_mm - left_mm) / (2 * WIDTH_MM)
    shrink = min((bottom_mm - top_mm - words_mm) / (FACE_MM + ROOM_MM), most, LARGEST)
    left_end, right_end = _ends(piece, of.saw)
    ends = (
        _moved(end_picture(left_end), left_mm, top_mm, shrink),
        _moved(end_picture(right_end), right_mm - WIDTH_MM * shrink, top_mm, shrink),
    )
    # An end's own outline is open where the piece goes on: its first and last point.
    left_side, right_side = (tuple(marks[0].points[1:-1]) for marks in ends)
    body = Outline(points=(*right_side, *reversed(left_side)), ink=Ink.PIECE)
    marks: list[Mark] = [body, *ends[0][1:], *ends[1][1:]]
    body_top, body_bottom = top_mm + ROOM_MM * shrink, top_mm + (ROOM_MM + FACE_MM) * shrink
    hand = HANDS.get(piece.role)
    if hand is not None:
        slant_mm = FACE_MM * shrink + 0.8
        marks += _hand(hand, (left_mm + slant_mm, right_mm - slant_mm), (body_top, body_bottom))
    if has_edge:
        said = TO_OPENING if piece.role in AROUND else DOWN
        marks += _edge_words(said, (left_mm + right_mm) / 2, body_bottom, right_mm - left_mm, scale)
    return marks


def _edge_words(
    said: str, middle_mm: float, below_mm: float, room_mm: float, scale: float
) -> list[Mark]:
    """What the edge above them is, between two arrows that point at it."""
    size_mm = _fitting(said, EDGE_WORDS_MM * scale, room_mm - 6.0)
    base_mm = below_mm + size_mm * 0.9 + 0.4
    half_mm = text_width_mm(said, size_mm) / 2 + 0.8
    return [
        Word(x_mm=middle_mm, y_mm=base_mm, text=said, size_mm=size_mm),
        *(
            _arrow(middle_mm + way * half_mm, base_mm - size_mm * 0.8, size_mm * 0.8)
            for way in (-1, 1)
        ),
    ]


def _ends(piece: Piece, saw: Saw) -> tuple[SeenEnd, SeenEnd]:
    """The ends for the piece lying on its back, face up: a label shows the face as it hangs."""
    lying = replace(saw, skirting=type(saw.skirting).FLAT)
    settings = end_settings(piece, lying, turned=False)
    left, right = (
        SeenEnd(
            end=end,
            setting=setting,
            is_scribed=cut.kind is CutKind.SCRIBE,
            hook=HookEdge.FAR if piece.hook_from is end else None,
        )
        for end, setting, cut in zip(HookEnd, settings, (piece.left, piece.right), strict=True)
    )
    return left, right


def _hand(
    hand: tuple[str, HookEnd], across_mm: tuple[float, float], down_mm: tuple[float, float]
) -> list[Mark]:
    """LEFT or RIGHT on the face, and an arrow to the end that goes up."""
    said, up = hand
    (left_mm, right_mm), (top_mm, bottom_mm) = across_mm, down_mm
    size_mm = min((bottom_mm - top_mm) * 0.62, 4.0)
    text = say("{said} UP", said=said)
    if text_width_mm(text, size_mm) > right_mm - left_mm - 2 * size_mm:
        size_mm = max(1.6, (right_mm - left_mm) / (text_width_mm(text, 1.0) + 2.0))
    base_mm = (top_mm + bottom_mm) / 2 + size_mm * 0.36
    middle_mm = (left_mm + right_mm) / 2
    way = 1.0 if up is HookEnd.RIGHT else -1.0
    tip_mm = middle_mm + way * (text_width_mm(text, size_mm) / 2 + size_mm)
    mid_mm = (top_mm + bottom_mm) / 2
    back_mm = tip_mm - way * size_mm * 0.8
    arrow = ((tip_mm, mid_mm), (back_mm, mid_mm - size_mm * 0.5), (back_mm, mid_mm + size_mm * 0.5))
    return [
        Word(x_mm=middle_mm, y_mm=base_mm, text=text, size_mm=size_mm, bold=True),
        Outline(points=arrow, ink=Ink.HOOK),
    ]


def _arrow(x_mm: float, y_mm: float, size_mm: float) -> Outline:
    """A small arrow that points up, to the edge that is meant."""
    half = size_mm / 2
    return Outline(
        points=((x_mm - half, y_mm + size_mm), (x_mm + half, y_mm + size_mm), (x_mm, y_mm)),
        ink=Ink.HOOK,
    )


def _moved(drawing: Drawing, left_mm: float, top_mm: float, shrink: float) -> list[Outline]:
    return [
        replace(
            mark,
            points=tuple((left_mm + x * shrink, top_mm + y * shrink) for x, y in mark.points),
        )
        for mark in drawing.marks
        if isinstance(mark, Outline)
    ]


def _qr(modules: Modules, width_mm: float, size_mm: float) -> list[Mark]:
    """The dark modules, a bar for each run of them along a row; the quiet zone is in the size."""
    count = len(modules) + 2 * QUIET_MODULES
    module_mm = size_mm / count
    left_mm = width_mm - EDGE_MM - size_mm + QUIET_MODULES * module_mm
    top_mm = EDGE_MM + QUIET_MODULES * module_mm
    marks: list[Mark] = []
    for row, dark in enumerate(modules):
        for start, stop in _runs(dark):
            x0, x1 = left_mm + start * module_mm, left_mm + stop * module_mm
            y0 = top_mm + row * module_mm
            y1 = y0 + module_mm
            marks.append(Outline(points=((x0, y0), (x1, y0), (x1, y1), (x0, y1)), ink=Ink.HOOK))
    return marks


def _runs(dark: Sequence[bool]) -> list[tuple[int, int]]:
    """Return (start, stop) of each run of dark modules.

    Example:
        >>> _runs([True, True, False, True])
        [(0, 2), (3, 4)]
    """
    runs: list[tuple[int, int]] = []
    for at, is_dark in enumerate(dark):
        if is_dark and runs and runs[-1][1] == at:
            runs[-1] = (runs[-1][0], at + 1)
        elif is_dark:
            runs.append((at, at + 1))
    return runs


def _line(text: str, x_mm: float, y_mm: float, size_mm: float, room_mm: float) -> Word:
    return Word(
        x_mm=x_mm,
        y_mm=y_mm,
        text=text,
        size_mm=_fitting(text, size_mm, room_mm),
        anchor=Anchor.START,
    )


def _fitting(text: str, size_mm: float, room_mm: float) -> float:
    """Return the size at which a text fits its room, no larger than asked for."""
    wide_mm = text_width_mm(text, size_mm)
    return size_mm if wide_mm <= room_mm else size_mm * room_mm / wide_mm
