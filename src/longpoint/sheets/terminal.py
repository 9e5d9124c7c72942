"""The plan in a terminal: plain signs, no colour needed."""

import textwrap
from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Finding, Severity, held_places
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import CutKind, EndCut
from longpoint.quantities.formatting import format_length, format_tenth, format_unit, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.cut_cells import key_figure
from longpoint.sheets.cut_lines import CutLine, cut_lines
from longpoint.sheets.cut_sheet import fixing_line
from longpoint.sheets.dialects import words_for
from longpoint.sheets.fetch import fetch_line
from longpoint.sheets.finding_note import TITLES, accept_line
from longpoint.sheets.findings_sheet import FIRST_SHEET
from longpoint.sheets.outlook_text import outlook_lines
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.saw_settings import NO_BREAK, setting_figure
from longpoint.sheets.spare_block import spare_words
from longpoint.sticks.plan import CutStick, StickSource
from longpoint.sticks.saw_setting import SawSetting, end_settings
from longpoint.survey.house import House

LEAST_WIDTH: Final = 50
MOST_WIDTH: Final = 100
ENDS: Final = ("Left end", "Right end")
"""Titles of the two columns of saw settings."""
SHOWN_MARK: Final = 24
"""A longer mark pushes its own line out instead of every line's."""


def plan_text(plan: HousePlan, width: int = 96) -> str:
    """Return the plan as plain text: what is held or doubtful, what will fit, then the cuts.

    Args:
        plan: The planned house.
        width: Signs in a line; held between 50 and 100.
    """
    width = _held_width(width)
    return _joined(
        [
            *_heading(plan, width),
            *_held(plan.held, width),
            *_shown_findings(plan, width),
            *outlook_lines(plan, width),
            *_cuts(plan, width),
            *_summary(plan, width),
        ]
    )


def pieces_text(plan: HousePlan, mark: str | None = None, width: int = 96) -> str:
    """Return the pieces with both lengths, hook reading, saw settings and the sum behind.

    Args:
        plan: The planned house.
        mark: Only the opening, run or trim of this mark; None: all.
        width: Signs in a line; held between 50 and 100.
    """
    width = _held_width(width)
    pieces = [p for p in plan.pieces if mark is None or mark == p.place]
    lines = _heading(plan, width)
    held = plan.held if mark is None else plan.held & {mark}
    lines += _held(held, width)
    lines += _why_held(plan, mark, width)
    if not pieces and not held:
        lines.append("Nothing to cut.")
    lengths = printed_lengths(plan.pieces)
    units = plan.house.units
    scribe = words_for(plan.house.dialect).scribe
    for piece in pieces:
        printed = lengths[piece.mark]
        left, right = end_settings(piece, plan.house.saw)
        figure, how = key_figure(piece, printed, units)
        facts = (
            f"{how} {figure}",
            f"inner {format_length(printed.inner_mm, units)}",
            f"outer {format_length(printed.outer_mm, units)}",
            f"left {_setting(left, piece.left, scribe)}",
            f"right {_setting(right, piece.right, scribe)}",
        )
        lines += _wrapped(f"{piece.mark} ({piece.profile}): {'; '.join(facts)}", width)
        if piece.hand_sum:
            lines += _wrapped(f"  sum: {piece.hand_sum}", width, indent="       ")
        for note in piece.notes:
            lines += _wrapped(f"  then: {note}", width, indent="        ")
    return _joined(lines)


def findings_text(house: House, findings: Sequence[Finding], width: int = 96) -> str:
    """Return every finding, the ones that stop a place first.

    Args:
        house: The house they are about.
        findings: What is to be said.
        width: Signs in a line; held between 50 and 100.
    """
    width = _held_width(width)
    lines = [*_wrapped(house.name, width), _rule(house.name, width)]
    for severity in (Severity.STOP, Severity.WARNING, Severity.NOTE):
        for finding in findings:
            if finding.severity is severity:
                lines += _finding(finding, house, width)
    stops = len(held_places(findings))
    if not findings:
        lines.append("Nothing stands out, and nothing had to be assumed.")
    elif stops:
        places = "place" if stops == 1 else "places"
        lines += ["", f"{stops} {places} to read again before cutting."]
    return _joined(lines)


def _heading(plan: HousePlan, width: int) -> list[str]:
    saw = plan.house.saw
    proved = "proved" if saw.is_proved else "NOT PROVED"
    units = plan.house.units
    kerf = f"{format_tenth(saw.kerf_mm, units)} {format_unit(units)}"
    facts = (
        f"readings {plan.readings_code}; lengths in {_unit_words(units)}; "
        f"saw {saw.name}: cut {kerf} wide, {proved}"
    )
    fixing = fixing_line(plan.pieces)
    return [
        *_wrapped(plan.house.name, width),
        _rule(plan.house.name, width),
        *_wrapped(facts, width),
        *(_wrapped(fixing, width) if fixing else []),
        "",
    ]


def _held(held: Iterable[str], width: int) -> list[str]:
    places = ", ".join(sorted(held))
    return [*_wrapped(f"HOLD, no lengths given: {places}", width), ""] if places else []


def _shown_findings(plan: HousePlan, width: int) -> list[str]:
    findings = plan.findings
    lines: list[str] = []
    for severity in (Severity.STOP, Severity.WARNING):
        for finding in findings:
            if finding.severity is severity:
                lines += _finding(finding, plan.house, width)
    notes = sum(1 for finding in findings if finding.severity is Severity.NOTE)
    if notes:
        lines.append(f"{notes} {'note' if notes == 1 else 'notes'} more on the findings sheet.")
    return [*lines, ""] if lines else []


def _finding(finding: Finding, house: House, width: int) -> list[str]:
    mark = {Severity.STOP: "! ", Severity.WARNING: "? ", Severity.NOTE: "- "}[finding.severity]
    code = f" [{finding.code}]" if finding.severity is Severity.STOP else ""
    sentences = f"{finding.read} {finding.wrong} {finding.do}"
    said = textwrap.wrap(
        f"{TITLES[finding.severity]} {finding.place}{code}: {sentences}",
        width,
        initial_indent=mark,
        subsequent_indent="  ",
    )
    accept = accept_line(finding, house)
    return [*said, *(_wrapped(f"  {accept}", width, indent="    ") if accept else [])]


def _why_held(plan: HousePlan, mark: str | None, width: int) -> list[str]:
    """Return the stops of a held place, or of all of them, and where the rest is said."""
    held = plan.held if mark is None else plan.held & {mark}
    if not held:
        return []
    runs = [run for run in plan.house.runs if run.mark in held]
    walls = {place for run in runs for place in (run.room, f"{run.room} {run.wall}")}
    lines: list[str] = []
    for finding in plan.findings:
        if finding.severity is Severity.STOP and finding.place in held | walls:
            lines += _finding(finding, plan.house, width)
    lines.append(f"More is said on the first sheet, {FIRST_SHEET}.")
    return [*lines, ""]


def _cuts(plan: HousePlan, width: int) -> list[str]:
    cuts = cut_lines(plan)
    if not cuts:
        return ["Nothing to cut.", ""]
    shown = min(SHOWN_MARK, max(len(cut.piece.mark) for cut in cuts))
    ends = [_ends(cut, plan) for cut in cuts]
    wide = [max(len(title), *(len(end[side]) for end in ends)) for side, title in enumerate(ENDS)]
    lengths = printed_lengths(plan.pieces)
    units = plan.house.units
    lines = _cut_titles(shown, wide, width)
    for index, cut in enumerate(cuts):
        piece, printed = cut.piece, lengths[cut.piece.mark]
        if index == 0 or cut.stick is not cuts[index - 1].stick:
            lines += ["", *_wrapped(_stick(cut.stick, plan), width)]
        left, right = ends[index]
        figure, how = key_figure(piece, printed, units, is_turned=cut.is_turned)
        name = piece.mark
        if len(name) > shown:
            lines += textwrap.wrap(
                name, width, initial_indent=f"{cut.number:>4}  ", break_on_hyphens=False
            )
            name = ""
        row = (
            f"{cut.number if name else '':>4}  {name:<{shown}}  {left:>{wide[0]}} | {figure:^9} | "
        )
        row += f"{right:<{wide[1]}}  {how}"
        edges = (
            f"{format_length(printed.short_mm, units)} / {format_length(printed.long_mm, units)}"
        )
        full = f"{row}  ({edges}{', turned' if cut.is_turned else ''})"
        lines += _wrapped(full if len(full) <= width else row, width, indent=" " * 6)
    return [*lines, ""]


def _cut_titles(shown: int, wide: Sequence[int], width: int) -> list[str]:
    left, right = ENDS
    row = f" No.  {'Piece':<{shown}}  {left:>{wide[0]}} |  Cut to   | {right:<{wide[1]}}  Read at"
    full = f"{row}  (short / long edge)"
    return _wrapped(full if len(full) <= width else row, width, indent=" " * 6)


def _ends(cut: CutLine, plan: HousePlan) -> tuple[str, str]:
    piece = cut.piece
    ends = (piece.right, piece.left) if cut.is_turned else (piece.left, piece.right)
    left, right = end_settings(piece, plan.house.saw, turned=cut.is_turned)
    scribe = words_for(plan.house.dialect).scribe
    return _setting(left, ends[0], scribe), _setting(right, ends[1], scribe)


def _setting(setting: SawSetting, cut: EndCut, scribe: str) -> str:
    figure = setting_figure(setting).replace(NO_BREAK, " ")
    return f"{figure}, {scribe}" if cut.kind is CutKind.SCRIBE else figure


def _stick(stick: CutStick | None, plan: HousePlan) -> str:
    if stick is None:
        return "NO STICK for:"
    source = "new" if stick.source is StickSource.STOCK else "offcut"
    source = f"rack piece {stick.label}," if stick.label else source
    units = plan.house.units
    kept_mm = rest_mm(stick, plan.house.saw)
    rest = f", rest {format_length(kept_mm, units)}" if kept_mm else ""
    return f"{stick.name} ({source} {format_length(stick.length_mm, units)}{rest})"


def _summary(plan: HousePlan, width: int) -> list[str]:
    units = plan.house.units
    lines: list[str] = []
    for proof in plan.cut_plan.proofs:
        bought = [
            stick
            for stick in plan.cut_plan.sticks
            if stick.profile == proof.profile and stick.source is StickSource.STOCK
        ]
        total = running_length(sum(stick.length_mm for stick in bought), units)
        least = (
            f"price {proof.cost:.2f}, at least {proof.lower_bound:.2f}"
            if proof.unit == "price"
            else f"at least {running_length(proof.lower_bound * 1000.0, units)} needed"
        )
        standing = "proved the least" if proof.optimal else "best found"
        lines += _wrapped(
            f"{proof.profile}: {len(bought)} to buy, {total}; {least}; {standing}.", width
        )
    fetched = fetch_line(plan)
    lines += _wrapped(fetched, width) if fetched else []
    spares = spare_words(plan.spares, units)
    lines += _wrapped(f"Spare: {spares}.", width) if spares else []
    lines += _wrapped(
        f"{len(plan.pieces)} pieces, {len(plan.cut_plan.sticks)} sticks; figures in "
        f"{_unit_words(units)}; angles are true, not those of the saw's scale.",
        width,
    )
    return lines


def _unit_words(units: Units) -> str:
    return "mm" if units is Units.MM else "inches"


def _held_width(width: int) -> int:
    return max(LEAST_WIDTH, min(MOST_WIDTH, width))


def _rule(name: str, width: int) -> str:
    return "=" * min(width, max(8, len(name)))


def _joined(lines: Iterable[str]) -> str:
    return "\n".join(line.rstrip() for line in lines).rstrip()


def _wrapped(text: str, width: int, *, indent: str = "  ") -> list[str]:
    if len(text) <= width:
        return [text]
    return textwrap.wrap(text, width, subsequent_indent=indent)
