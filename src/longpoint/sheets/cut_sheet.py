"""The sheet at the saw: what to set, what to cut, in which order."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import (
    format_length,
    format_tenth,
    format_unit,
    format_with_unit,
)
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Beside,
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Table,
    Together,
)
from longpoint.sheets.cut_cells import end_cells, figure_cell, sum_line
from longpoint.sheets.cut_lines import CutLine, cut_lines, cut_plan_words, pairs_apart
from longpoint.sheets.cut_pictures import changes_words, cuts_picture, with_cuts
from longpoint.sheets.dialects import (
    Words,
    method_short,
    method_words,
    piece_words,
    role_words,
    words_for,
)
from longpoint.sheets.fetch import fetch_blocks
from longpoint.sheets.goal_words import goal_blocks
from longpoint.sheets.printed_lengths import PrintedLengths, printed_lengths
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.saw_picture import hook_picture, swings_picture
from longpoint.sheets.settings_table import ends_words, settings_blocks
from longpoint.sheets.stick_pictures import Label, scale_of, stick_picture
from longpoint.speech.said import joined, raised, say, say_many
from longpoint.sticks.order.saw_order import saw_steps, settings_used
from longpoint.sticks.order.stick_cuts import cuts_by_stick
from longpoint.sticks.plan import CutPlan, CutStick, StickSource
from longpoint.survey.instruments import Saw, SkirtingCut

SHORT_PIECE_MM: Final = 150.0
"""A piece under this is flagged to be cut from a longer stick: our choice, no source."""

COLUMNS: Final = (
    Column(title=say("No."), share=1.15),
    Column(title=say("Piece"), share=2.7),
    Column(title=say("Left end"), share=2.75),
    Column(title=say("Hook reading"), is_key=True, share=3.6),
    Column(title=say("Right end"), share=2.75),
    Column(title=say("Short / long"), is_number=True, share=1.5),
    Column(title=say("As cut"), share=1.7),
)


def cut_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the cut sheet."""
    words = words_for(plan.house.dialect)
    lines = cut_lines(plan)
    return (
        *fetch_blocks(plan),
        *_set_up(plan.house.saw, words, plan.house.units, plan.pieces),
        *settings_blocks(settings_used(saw_steps(plan.cut_plan, plan.pieces, plan.house.saw))),
        *_pieces(plan, lines, words),
        *_sticks(plan, lines, words),
        *goal_blocks(plan.cut_plan, plan.house.units, with_cost=True, is_close=True),
    )


def fixing_line(pieces: Iterable[Piece]) -> str:
    """Return what the lengths suppose about the way of fixing; empty where it doesn't matter."""
    methods = sorted({piece.method for piece in pieces if piece.method})
    if not methods:
        return ""
    if len(methods) == 1:
        said = method_words(methods[0])
        return raised(said)
    return say("Way of fixing: named at each piece")


def with_code(subtitle: str, plan: CutPlan) -> str:
    """Return what stands below a cut sheet's title, with the code of its plan."""
    return joined(" ", (subtitle, cut_plan_words(plan))) if plan.code else subtitle


def stick_words(stick: CutStick | None, saw: Saw, units: Units) -> str:
    """Return what a stick is: its name, source, length and what is left of it."""
    if stick is None:
        return say("No stick for these: see the order sheet")
    kept_mm = rest_mm(stick, saw)
    rest = say(", rest {kept}", kept=format_length(kept_mm, units)) if kept_mm else ""
    length = format_with_unit(stick.length_mm, units)
    return say(
        "{stick}: {source} {length}{rest}",
        stick=stick.name,
        source=_source(stick),
        length=length,
        rest=rest,
    )


def _source(stick: CutStick) -> str:
    match stick.source:
        case StickSource.STOCK:
            return say("new stick of")
        case StickSource.OFFCUT:
            return (
                say("rack piece {label},", label=stick.label)
                if stick.label
                else say("offcut from the rack of")
            )
        case StickSource.REST:
            return say("left of {label}, spoiled,", label=stick.label)


def _set_up(saw: Saw, words: Words, units: Units, pieces: Iterable[Piece]) -> tuple[Block, ...]:
    if saw.is_proved:
        left, right = saw.found_left_deg or 45.0, saw.found_right_deg or 45.0
        proof = Note(
            severity=Severity.NOTE,
            title=say("Saw proved"),
            text=say(
                "{saw}: set to 45 it cut {left:g} to the left and {right:g} to "
                "the right. 'Dial' is what to set on its scale to get the true "
                "angle.",
                saw=saw.name,
                left=left,
                right=right,
            ),
        )
    else:
        proof = Note(
            severity=Severity.WARNING,
            title=say("Saw NOT PROVED"),
            text=say(
                "{saw}: nobody has said what a cut set to 45 really gives. Before "
                "the first piece cut two test pieces at L 45 and two at R 45, put "
                "each pair together as a {mitre}, and hold a square to it.",
                saw=saw.name,
                mitre=words.mitre,
            ),
            ask=say("Found at L 45 and at R 45"),
        )
    has_skirting = any(piece.is_along_wall for piece in pieces)
    return (
        Heading(text=say("Set up the {saw}", saw=words.saw)),
        proof,
        Beside(left=(swings_picture(),), right=(hook_picture(),), left_share=0.43),
        *(
            Paragraph(text=line)
            for line in _reading_help(saw, words, units, has_skirting=has_skirting)
        ),
    )


def _reading_help(saw: Saw, words: Words, units: Units, *, has_skirting: bool) -> tuple[str, ...]:
    first = say(
        "Saw cut {kerf} {units} wide. Each piece lies on its back, face up, outer "
        "edge at the fence, as it is drawn. Hook reading: tape over the long point "
        "with the black hook, read on the slant at the inner edge of the other end.",
        kerf=format_tenth(saw.kerf_mm, units),
        units=format_unit(units),
    )
    if not has_skirting:
        return (first,)
    held = (
        say(
            "The {skirting} stands upright at the fence, face towards you, and is "
            "drawn from above.",
            skirting=words.skirting,
        )
        if saw.skirting is SkirtingCut.STANDING
        else say(
            "The {skirting} lies flat, top edge at the fence. Tilt L: the top of "
            "the blade leans to the left; tilt R: to the right.",
            skirting=words.skirting,
        )
    )
    return (
        first,
        say(
            "{held} It has no point to hook on: its figure is the longer of back and face.",
            held=held,
        ),
    )


def _pieces(plan: HousePlan, lines: Sequence[CutLine], words: Words) -> tuple[Block, ...]:
    if not lines:
        return (Paragraph(text=say("There is nothing to cut.")),)
    lengths = printed_lengths(plan.pieces)
    names_method = len({line.piece.method for line in lines if line.piece.method}) > 1
    settings = settings_used(saw_steps(plan.cut_plan, plan.pieces, plan.house.saw))
    pairs = pairs_apart(plan, lines)
    groups = [
        (index, stick_words(line.stick, plan.house.saw, plan.house.units))
        for index, line in enumerate(lines)
        if index == 0 or line.stick is not lines[index - 1].stick
    ]
    return (
        Heading(text=say("Cut in this order")),
        Table(
            columns=COLUMNS,
            rows=tuple(
                _row(
                    line,
                    lengths,
                    plan.house.saw,
                    words,
                    plan.house.units,
                    remarks=_remarks(
                        line, words, names_method=names_method, pair=pairs.get(line.number)
                    ),
                )
                for line in lines
            ),
            groups=tuple(groups),
            caption=say(
                "{counted} from {counted_2}; {ends}.",
                counted=say_many("{count} piece", "{count} pieces", count=len(lines)),
                counted_2=say_many(
                    "{count} stick", "{count} sticks", count=len(plan.cut_plan.sticks)
                ),
                ends=ends_words(settings),
            ),
            steps=tuple(
                (index, line.piece.notes) for index, line in enumerate(lines) if line.piece.notes
            ),
            under=tuple(
                (index, sum_line(line.piece))
                for index, line in enumerate(lines)
                if line.piece.hand_sum
            ),
        ),
    )


def _row(
    line: CutLine,
    lengths: Mapping[str, PrintedLengths],
    saw: Saw,
    words: Words,
    units: Units,
    *,
    remarks: tuple[str, ...],
) -> tuple[str | Cell, ...]:
    piece = line.piece
    printed = lengths[piece.mark]
    left, right = end_cells(piece, saw, words, is_turned=line.is_turned)
    short, long = format_length(printed.short_mm, units), format_length(printed.long_mm, units)
    return (
        Cell(text=str(line.number), blank=Blank.TICK),
        Cell(text=piece.mark, small=remarks),
        left,
        figure_cell(piece, printed, units, is_turned=line.is_turned),
        right,
        Cell(text=short, small=(long,) if short != long else ()),
        Cell(blank=Blank.LINE),
    )


def _remarks(
    line: CutLine, words: Words, *, names_method: bool, pair: int | None
) -> tuple[str, ...]:
    piece = line.piece
    what = role_words(piece.role, words)
    remarks = [say("{what} · {room}", what=what, room=piece.room) if piece.room else what]
    if pair is not None:
        remarks.append(say("pair: no. {pair}", pair=pair))
    if names_method and piece.method:
        remarks.append(say("fixed: {method_short}", method_short=method_short(piece.method)))
    if line.is_turned:
        remarks.append(say("turned: outer edge towards you"))
    if piece.long_mm < SHORT_PIECE_MM:
        remarks.append(say("SHORT: cut it off a longer stick"))
    return tuple(remarks)


def _sticks(plan: HousePlan, lines: Sequence[CutLine], words: Words) -> tuple[Block, ...]:
    sticks = list(dict.fromkeys(line.stick for line in lines if line.stick is not None))
    if not sticks:
        return ()
    labels = {
        line.piece.mark: Label(number=str(line.number), words=piece_words(line.piece, words))
        for line in lines
    }
    by_mark = {piece.mark: piece for piece in plan.pieces}
    saw = plan.house.saw
    scale = scale_of(sticks)
    cuts = cuts_by_stick(saw_steps(plan.cut_plan, plan.pieces, saw))
    drawn: list[Block] = [
        Together(
            blocks=(
                Heading(text=stick_words(stick, saw, plan.house.units), level=3),
                with_cuts(
                    stick_picture(
                        stick,
                        by_mark,
                        labels,
                        rest_mm=rest_mm(stick, saw),
                        scale=scale,
                        units=plan.house.units,
                    ),
                    cuts_picture(stick, cuts[stick.name], scale),
                ),
            )
        )
        for stick in sticks
    ]
    return (
        Heading(text=say("The sticks, to scale")),
        Paragraph(
            text=say(
                "All at 1 : {scale:.0f}, every lean as it is, the edge at the "
                "fence on top. Numbers are those of the list; the black point "
                "marks the end to hook on. Hatched is lost; the dashed rest is "
                "kept.",
                scale=1 / scale,
            )
        ),
        Paragraph(
            text=say(
                "Below each stick stand its cuts in order, from its left end. "
                "What is kept is filled; the black strip is the width of the saw "
                "cut, on the side of the mark where the blade goes. A cut filled "
                "on both sides serves two pieces. A diamond: set the saw anew. "
                "Dotted: where a tilted blade comes out below."
            )
        ),
        Paragraph(text=changes_words(plan.cut_plan, cuts)),
        *drawn,
    )
