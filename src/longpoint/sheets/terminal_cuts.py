"""The cuts in a terminal: one line for each piece, under its stick."""

import textwrap
from collections.abc import Sequence
from typing import Final

from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import CutKind, EndCut
from longpoint.quantities.formatting import format_length
from longpoint.sheets.cut_cells import key_figure
from longpoint.sheets.cut_lines import CutLine, cut_lines, cut_plan_words
from longpoint.sheets.dialects import words_for
from longpoint.sheets.page import Page
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.saw_settings import NO_BREAK, setting_figure
from longpoint.speech.said import say
from longpoint.sticks.order.saw_setting import SawSetting, end_settings
from longpoint.sticks.plan import CutStick, StickSource

ENDS: Final = (say("Left end"), say("Right end"))
"""Titles of the two columns of saw settings."""
SHOWN_MARK: Final = 24
"""A longer mark pushes its own line out instead of every line's."""


def cuts_by_stick(plan: HousePlan, page: Page) -> list[str]:
    """Return the lines of all cuts, stick by stick, in the order of sawing.

    Args:
        plan: The planned house.
        page: How wide a line is, and in what language.
    """
    cuts = cut_lines(plan)
    if not cuts:
        return [*page.wrapped(say("Nothing to cut.")), ""]
    shown = min(SHOWN_MARK, max(len(cut.piece.mark) for cut in cuts))
    ends = [_ends(cut, plan, page) for cut in cuts]
    titles = [page.said(title) for title in ENDS]
    wide = [max(len(title), *(len(end[side]) for end in ends)) for side, title in enumerate(titles)]
    lengths = printed_lengths(plan.pieces)
    units = plan.house.units
    lines = page.wrapped(cut_plan_words(plan.cut_plan))
    lines += _cut_titles(shown, wide, page)
    for index, cut in enumerate(cuts):
        piece, printed = cut.piece, lengths[cut.piece.mark]
        if index == 0 or cut.stick is not cuts[index - 1].stick:
            lines += ["", *page.wrapped(_stick(cut.stick, plan))]
        left, right = ends[index]
        figure, how = key_figure(piece, printed, units, is_turned=cut.is_turned)
        name = piece.mark
        if len(name) > shown:
            lines += textwrap.wrap(
                name, page.width, initial_indent=f"{cut.number:>4}  ", break_on_hyphens=False
            )
            name = ""
        row = "  ".join(
            (
                f"{cut.number if name else '':>4}",
                f"{name:<{shown}}",
                say(
                    "{left:>{wide}} | {said:^9} | {right:<{wide_2}}",
                    left=left,
                    wide=wide[0],
                    said=page.said(figure),
                    right=right,
                    wide_2=wide[1],
                ),
                page.said(how),
            )
        )
        short, long = (
            page.said(format_length(each, units)) for each in (printed.short_mm, printed.long_mm)
        )
        turned = page.said(say(", turned")) if cut.is_turned else ""
        full = say(
            "{row}  ({short} / {long}{turned})",
            row=row,
            short=short,
            long=long,
            turned=turned,
        )
        lines += page.wrapped(full if len(full) <= page.width else row, indent=" " * 6)
    return [*lines, ""]


def _cut_titles(shown: int, wide: Sequence[int], page: Page) -> list[str]:
    left, right = (page.said(title) for title in ENDS)
    number, piece, cut_to, read_at = map(
        page.said, (say("No."), say("Piece"), say("Cut to"), say("Read at"))
    )
    row = "  ".join(
        (
            say(" {number:<3}", number=number),
            f"{piece:<{shown}}",
            say(
                "{left:>{wide}} | {cut_to:^9} | {right:<{wide_2}}",
                left=left,
                wide=wide[0],
                cut_to=cut_to,
                right=right,
                wide_2=wide[1],
            ),
            read_at,
        )
    )
    full = say("{row}  ({said})", row=row, said=page.said(say("short / long edge")))
    return page.wrapped(full if len(full) <= page.width else row, indent=" " * 6)


def _ends(cut: CutLine, plan: HousePlan, page: Page) -> tuple[str, str]:
    piece = cut.piece
    ends = (piece.right, piece.left) if cut.is_turned else (piece.left, piece.right)
    left, right = end_settings(piece, plan.house.saw, turned=cut.is_turned)
    scribe = words_for(plan.house.dialect).scribe
    return (
        page.said(setting_words(left, ends[0], scribe)).replace(NO_BREAK, " "),
        page.said(setting_words(right, ends[1], scribe)).replace(NO_BREAK, " "),
    )


def setting_words(setting: SawSetting, cut: EndCut, scribe: str) -> str:
    """Return a setting of the saw, and that the end is scribed where it is.

    Args:
        setting: The setting.
        cut: The end's cut.
        scribe: What the house calls it.
    """
    figure = setting_figure(setting)
    return (
        say("{figure}, {scribe}", figure=figure, scribe=scribe)
        if cut.kind is CutKind.SCRIBE
        else figure
    )


def _stick(stick: CutStick | None, plan: HousePlan) -> str:
    if stick is None:
        return say("NO STICK for:")
    source = say("new") if stick.source is StickSource.STOCK else say("offcut")
    source = say("rack piece {label},", label=stick.label) if stick.label else source
    units = plan.house.units
    kept_mm = rest_mm(stick, plan.house.saw)
    rest = say(", rest {kept}", kept=format_length(kept_mm, units)) if kept_mm else ""
    return say(
        "{stick} ({source} {length}{rest})",
        stick=stick.name,
        source=source,
        length=format_length(stick.length_mm, units),
        rest=rest,
    )
