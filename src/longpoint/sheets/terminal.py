"""The plan in a terminal: plain signs, no colour needed."""

from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Finding, Severity, held_places
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_tenth, format_unit, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.cut_cells import key_figure
from longpoint.sheets.cut_sheet import fixing_line
from longpoint.sheets.dialects import words_for
from longpoint.sheets.fetch import fetch_line
from longpoint.sheets.finding_note import TITLES, accept_line
from longpoint.sheets.findings_sheet import FIRST_SHEET
from longpoint.sheets.goal_words import goal_sentences
from longpoint.sheets.outlook_text import outlook_lines
from longpoint.sheets.page import Page
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.sheets.saw_settings import NO_BREAK
from longpoint.sheets.spare_block import spare_words
from longpoint.sheets.terminal_cuts import cuts_by_stick, setting_words
from longpoint.speech.said import instead, joined, say, say_many
from longpoint.speech.tongue import ENGLISH, Tongue
from longpoint.sticks.order.saw_setting import end_settings
from longpoint.sticks.plan import StickSource
from longpoint.survey.house import House

LEAST_WIDTH: Final = 50
MOST_WIDTH: Final = 100


def plan_text(plan: HousePlan, width: int = 96, tongue: Tongue = ENGLISH) -> str:
    """Return the plan as plain text: what is held or doubtful, what will fit, then the cuts.

    Args:
        plan: The planned house.
        width: Signs in a line; held between 50 and 100.
        tongue: Language of the text.
    """
    page = Page(_held_width(width), tongue)
    return _joined(
        [
            *_heading(plan, page),
            *_held(plan.held, page),
            *_shown_findings(plan, page),
            *outlook_lines(plan, page),
            *cuts_by_stick(plan, page),
            *_summary(plan, page),
        ]
    )


def pieces_text(
    plan: HousePlan, mark: str | None = None, width: int = 96, tongue: Tongue = ENGLISH
) -> str:
    """Return the pieces with both lengths, hook reading, saw settings and the sum behind.

    Args:
        plan: The planned house.
        mark: Only the opening, run or trim of this mark; None: all.
        width: Signs in a line; held between 50 and 100.
        tongue: Language of the text.
    """
    page = Page(_held_width(width), tongue)
    pieces = [p for p in plan.pieces if mark is None or mark == p.place]
    lines = _heading(plan, page)
    held = plan.held if mark is None else plan.held & {mark}
    lines += _held(held, page)
    lines += _why_held(plan, mark, page)
    if not pieces and not held:
        lines += page.wrapped(say("Nothing to cut."))
    lengths = printed_lengths(plan.pieces)
    units = plan.house.units
    scribe = words_for(plan.house.dialect).scribe
    for piece in pieces:
        printed = lengths[piece.mark]
        left, right = end_settings(piece, plan.house.saw)
        figure, how = key_figure(piece, printed, units)
        facts = (
            say("{how} {figure}", how=how, figure=figure),
            say("inner {inner}", inner=format_length(printed.inner_mm, units)),
            say("outer {outer}", outer=format_length(printed.outer_mm, units)),
            say("left {setting}", setting=setting_words(left, piece.left, scribe)),
            say("right {setting}", setting=setting_words(right, piece.right, scribe)),
        )
        told = page.said(
            say(
                "{mark} ({profile}): {facts}",
                mark=piece.mark,
                profile=piece.profile,
                facts=joined("; ", facts),
            )
        )
        lines += page.wrapped(told.replace(NO_BREAK, " "))
        if piece.hand_sum:
            lines += page.wrapped(
                say("sum: {hand_sum}", hand_sum=piece.hand_sum), first="  ", indent="       "
            )
        for note in piece.notes:
            lines += page.wrapped(say("then: {note}", note=note), first="  ", indent="        ")
    return _joined(lines)


def findings_text(
    house: House, findings: Sequence[Finding], width: int = 96, tongue: Tongue = ENGLISH
) -> str:
    """Return every finding, the ones that stop a place first.

    Args:
        house: The house they are about.
        findings: What is to be said.
        width: Signs in a line; held between 50 and 100.
        tongue: Language of the text.
    """
    page = Page(_held_width(width), tongue)
    lines = [*page.wrapped(house.name), _rule(house.name, page.width)]
    for severity in (Severity.STOP, Severity.WARNING, Severity.NOTE):
        for finding in findings:
            if finding.severity is severity:
                lines += _finding(finding, house, page)
    stops = len(held_places(findings))
    if not findings:
        lines += page.wrapped(say("Nothing stands out, and nothing had to be assumed."))
    elif stops:
        again = say_many(
            "{count} place to read again before cutting.",
            "{count} places to read again before cutting.",
            count=stops,
        )
        lines += ["", page.said(again)]
    return _joined(lines)


def _heading(plan: HousePlan, page: Page) -> list[str]:
    saw = plan.house.saw
    proved = instead("proved", say("saw proved")) if saw.is_proved else say("NOT PROVED")
    units = plan.house.units
    kerf = say(
        "{kerf} {units}",
        kerf=format_tenth(saw.kerf_mm, units),
        units=format_unit(units),
    )
    facts = say(
        "readings {readings_code}; lengths in {unit}; saw {saw}: cut {kerf} wide, {proved}",
        readings_code=plan.readings_code,
        unit=_unit_words(units),
        saw=saw.name,
        kerf=kerf,
        proved=proved,
    )
    fixing = fixing_line(plan.pieces)
    return [
        *page.wrapped(plan.house.name),
        _rule(plan.house.name, page.width),
        *page.wrapped(facts),
        *(page.wrapped(fixing) if fixing else []),
        "",
    ]


def _held(held: Iterable[str], page: Page) -> list[str]:
    places = joined(", ", sorted(held))
    return (
        [*page.wrapped(say("HOLD, no lengths given: {places}", places=places)), ""]
        if places
        else []
    )


def _shown_findings(plan: HousePlan, page: Page) -> list[str]:
    findings = plan.findings
    lines: list[str] = []
    for severity in (Severity.STOP, Severity.WARNING):
        for finding in findings:
            if finding.severity is severity:
                lines += _finding(finding, plan.house, page)
    notes = sum(1 for finding in findings if finding.severity is Severity.NOTE)
    if notes:
        more = say_many(
            "{count} note more on the findings sheet.",
            "{count} notes more on the findings sheet.",
            count=notes,
        )
        lines += page.wrapped(more)
    return [*lines, ""] if lines else []


def _finding(finding: Finding, house: House, page: Page) -> list[str]:
    mark = {Severity.STOP: "! ", Severity.WARNING: "? ", Severity.NOTE: "- "}[finding.severity]
    code = say(" [{code}]", code=finding.code) if finding.severity is Severity.STOP else ""
    sentences = say(
        "{read} {wrong} {do}",
        read=finding.read,
        wrong=finding.wrong,
        do=finding.do,
    )
    said = page.wrapped(
        say(
            "{titles} {place}{code}: {sentences}",
            titles=TITLES[finding.severity],
            place=finding.place,
            code=code,
            sentences=sentences,
        ),
        first=mark,
    )
    accept = accept_line(finding, house)
    return [*said, *(page.wrapped(accept, first="  ", indent="    ") if accept else [])]


def _why_held(plan: HousePlan, mark: str | None, page: Page) -> list[str]:
    """Return the stops of a held place, or of all of them, and where the rest is said."""
    held = plan.held if mark is None else plan.held & {mark}
    if not held:
        return []
    runs = [run for run in plan.house.runs if run.mark in held]
    walls = {
        place
        for run in runs
        for place in (
            run.room,
            say(
                "{room} {wall}",
                room=run.room,
                wall=run.wall,
            ),
        )
    }
    lines: list[str] = []
    for finding in plan.findings:
        if finding.severity is Severity.STOP and finding.place in held | walls:
            lines += _finding(finding, plan.house, page)
    lines += page.wrapped(
        say(
            "More is said on the first sheet, {first_sheet}.",
            first_sheet=FIRST_SHEET,
        )
    )
    return [*lines, ""]


def _summary(plan: HousePlan, page: Page) -> list[str]:
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
            say(
                "price {cost:.2f}, at least {lower_bound:.2f}",
                cost=proof.cost,
                lower_bound=proof.lower_bound,
            )
            if proof.unit == "price"
            else say(
                "at least {lower_bound} needed",
                lower_bound=running_length(proof.lower_bound * 1000.0, units),
            )
        )
        standing = say("proved the least") if proof.optimal else say("best found")
        lines += page.wrapped(
            say(
                "{profile}: {bought} to buy, {total}; {least}; {standing}.",
                profile=proof.profile,
                bought=len(bought),
                total=total,
                least=least,
                standing=standing,
            ),
            first=_mark(is_proved=proof.optimal),
        )
    for goal in goal_sentences(plan.cut_plan, units):
        lines += page.wrapped(goal.text, first=_mark(is_proved=goal.is_proved))
    fetched = fetch_line(plan)
    lines += page.wrapped(fetched) if fetched else []
    spares = spare_words(plan.spares, units)
    lines += page.wrapped(say("Spare: {spares}.", spares=spares)) if spares else []
    lines += page.wrapped(
        say(
            "{pieces} pieces, {sticks} sticks; figures in {unit}; angles are true, not "
            "those of the saw's scale.",
            pieces=len(plan.pieces),
            sticks=len(plan.cut_plan.sticks),
            unit=_unit_words(units),
        ),
    )
    return lines


def _mark(*, is_proved: bool) -> str:
    return "= " if is_proved else "~ "


def _unit_words(units: Units) -> str:
    return say("mm") if units is Units.MM else say("inches")


def _held_width(width: int) -> int:
    return max(LEAST_WIDTH, min(MOST_WIDTH, width))


def _rule(name: str, width: int) -> str:
    return "=" * min(width, max(8, len(name)))


def _joined(lines: Iterable[str]) -> str:
    return "\n".join(line.rstrip() for line in lines).rstrip()
