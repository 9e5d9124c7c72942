"""What is still to be cut, piece by piece, as it is shown at the saw."""

from collections.abc import Mapping

from longpoint.house_plan import HousePlan
from longpoint.phone.aloud import aloud, check_word
from longpoint.phone.looked import how_words
from longpoint.phone.messages import CutEnd, CutStep
from longpoint.pieces.piece import Piece
from longpoint.sheets.blocks import Cell
from longpoint.sheets.cut_cells import end_cells, key_figure
from longpoint.sheets.cut_lines import CutLine, cut_lines
from longpoint.sheets.cut_sheet import stick_words
from longpoint.sheets.dialects import Words, piece_words, role_words, words_for
from longpoint.sheets.printed_lengths import PrintedLengths, printed_lengths
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.stick_pictures import Label, scale_of, stick_picture
from longpoint.sheets.svg import drawing_svg
from longpoint.speech.said import say
from longpoint.sticks.plan import CutStick


def cut_steps(plan: HousePlan, rest: HousePlan) -> tuple[CutStep, ...]:
    """Return each piece that is still to be cut, in the order of cutting.

    Args:
        plan: The house as planned: its figures are printed alike for a pair, cut or not.
        rest: What is left of it.
    """
    lengths = printed_lengths(plan.pieces)
    words = words_for(plan.house.dialect)
    lines = cut_lines(rest)
    labels = {
        line.piece.mark: Label(number=str(line.number), words=piece_words(line.piece, words))
        for line in lines
    }
    by_mark = {piece.mark: piece for piece in plan.pieces}
    drawn: dict[str, str] = {}
    steps = []
    for line in lines:
        if line.stick is None:
            continue
        if line.stick.name not in drawn:
            drawn[line.stick.name] = _stick_svg(plan, line.stick, by_mark, labels)
        steps.append(_step(plan, line, lengths[line.piece.mark], words, drawn[line.stick.name]))
    return tuple(steps)


def _stick_svg(
    plan: HousePlan, stick: CutStick, pieces: Mapping[str, Piece], labels: Mapping[str, Label]
) -> str:
    return drawing_svg(
        stick_picture(
            stick,
            pieces,
            labels,
            rest_mm=rest_mm(stick, plan.house.saw),
            scale=scale_of([stick]),
            units=plan.house.units,
        )
    )


def _step(
    plan: HousePlan, line: CutLine, printed: PrintedLengths, words: Words, svg: str
) -> CutStep:
    piece, house = line.piece, plan.house
    figure, how = key_figure(piece, printed, house.units, is_turned=line.is_turned)
    left, right = end_cells(piece, house.saw, words, is_turned=line.is_turned)
    room = f", {piece.room}" if piece.room else ""
    turned = (say("turned end for end: outer edge towards you"),) if line.is_turned else ()
    return CutStep(
        number=line.number,
        piece=piece.mark,
        what=say(
            "{place}{room}: {role}",
            place=piece.place,
            room=room,
            role=role_words(piece.role, words),
        ),
        stick=line.stick.name if line.stick else "",
        stick_words=stick_words(line.stick, house.saw, house.units),
        profile=piece.profile,
        figure=figure,
        how=how,
        how_words=how_words(how),
        left=_end(left),
        right=_end(right),
        remarks=(*turned, *piece.notes),
        svg=svg,
        aloud=f"{role_words(piece.role, words)}: {aloud(figure)}",
        check=check_word(figure),
    )


def _end(cell: Cell) -> CutEnd:
    return CutEnd(
        setting=cell.text,
        remarks=cell.small,
        svg=drawing_svg(cell.picture) if cell.picture else "",
    )
