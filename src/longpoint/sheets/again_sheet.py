"""The cutting sheet after something went wrong: what changed, then what is still to be cut."""

from collections import Counter
from dataclasses import replace

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.again_words import saving_lines
from longpoint.sheets.blocks import (
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Sheet,
    Table,
)
from longpoint.sheets.cautions import saw_cautions
from longpoint.sheets.cut_sheet import cut_blocks, fixing_line, with_code
from longpoint.sheets.finding_note import finding_note
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.plan_again import PlannedAgain, moved_pieces
from longpoint.sticks.plan import CutPlan, CutStick, StickSource

AGAIN_TITLE = say("Cutting, again")


def again_sheet(plan: HousePlan, before: AtTheSaw, again: PlannedAgain) -> Sheet:
    """Return the sheet of what is still to be cut.

    Args:
        plan: The house as planned, all its pieces.
        before: The state before anything was told, for where its pieces were to come from.
        again: The rest, planned again.
    """
    rest = rest_of(plan, again)
    unit = (
        say("All lengths in mm") if plan.house.units is Units.MM else say("All lengths in inches")
    )
    fixing = fixing_line(rest.pieces)
    return Sheet(
        name="again",
        title=AGAIN_TITLE,
        house=plan.house.name,
        readings_code=plan.readings_code,
        subtitle=with_code(
            say("{unit}. {fixing}.", unit=unit, fixing=fixing)
            if fixing
            else say("{unit}.", unit=unit),
            rest.cut_plan,
        ),
        blocks=(
            *_stands(plan, again),
            *_new(plan, again),
            *_saved(plan, before, again),
            *_moved(before, again),
            *(finding_note(finding, plan.house) for finding in again.findings),
            *cut_blocks(rest),
        ),
        cautions=saw_cautions(rest.pieces, plan.house.units),
    )


def rest_of(plan: HousePlan, again: PlannedAgain) -> HousePlan:
    """Return the plan with only the pieces that are still to be cut, on the sticks as they lie."""
    state = again.state
    waiting = state.open_marks
    return replace(
        plan,
        pieces=tuple(piece for piece in plan.pieces if piece.mark in waiting),
        cut_plan=CutPlan(
            sticks=tuple(_as_cut(plan, stick) for stick in state.sticks if stick.next),
            unplaced=state.loose,
            code=state.code,
        ),
    )


def _as_cut(plan: HousePlan, stick: StickAtSaw) -> CutStick:
    saw = plan.house.saw
    is_stock = stick.source is StickSource.STOCK
    trim_mm = max(saw.end_trim_mm, saw.kerf_mm) if is_stock else saw.kerf_mm
    end_mm = max(laid.end_mm for laid in stick.next)
    return CutStick(
        name=stick.name,
        profile=stick.profile,
        length_mm=stick.length_mm,
        source=stick.source,
        laid=stick.next,
        used_mm=end_mm + trim_mm,
        left_mm=max(0.0, stick.length_mm - trim_mm - end_mm - saw.kerf_mm),
        label=stick.rest.of if stick.rest is not None else stick.label,
    )


def _stands(plan: HousePlan, again: PlannedAgain) -> tuple[Block, ...]:
    state = again.state
    done, waiting = len(state.done), len(state.open_marks)
    lines: list[Block] = [
        Paragraph(
            text=say(
                "{counted} cut and good, {waiting} still to cut. What is cut "
                "stays where it is; throw the older cutting sheet away.",
                counted=say_many("{count} piece", "{count} pieces", count=done),
                waiting=waiting,
            )
        )
    ]
    for stick in state.sticks:
        if stick.is_begun and stick.next:
            spent = format_with_unit(stick.spent_mm, plan.house.units)
            lines.append(
                Paragraph(
                    text=say(
                        "{stick} is cut up to {spent} from its left end.",
                        stick=stick.name,
                        spent=spent,
                    )
                )
            )
        for from_mm, to_mm in stick.bad:
            start, end = (format_length(x, plan.house.units) for x in (from_mm, to_mm))
            lines.append(
                Paragraph(
                    text=say(
                        "{stick} is not used from {start} to {end}.",
                        stick=stick.name,
                        start=start,
                        end=end,
                    )
                )
            )
    return (Heading(text=say("Where the cutting stands")), *lines)


def _new(plan: HousePlan, again: PlannedAgain) -> tuple[Block, ...]:
    new = Counter(
        (stick.profile, stick.length_mm) for stick in again.state.sticks if stick.name in again.new
    )
    if not new:
        text = say("No new stick is needed: what is there is enough.")
        return (Note(severity=Severity.NOTE, title=say("Nothing to buy"), text=text),)
    told = joined(
        ", ",
        (
            say(
                "{count} x {profile} {length}",
                count=count,
                profile=profile,
                length=format_with_unit(length_mm, plan.house.units),
            )
            for (profile, length_mm), count in sorted(new.items())
        ),
    )
    return (
        Note(
            severity=Severity.WARNING,
            title=say("New timber"),
            text=say("Needed beyond what the order had: {told}.", told=told),
        ),
    )


def _saved(plan: HousePlan, before: AtTheSaw, again: PlannedAgain) -> tuple[Block, ...]:
    lines = saving_lines(plan, before, again)
    if not lines:
        return ()
    return (
        Heading(text=say("Without new timber")),
        *(Paragraph(text=line) for line in lines),
    )


def _moved(before: AtTheSaw, again: PlannedAgain) -> tuple[Block, ...]:
    moved = moved_pieces(before, again.state)
    if not moved:
        return ()
    was = {laid.piece: stick.name for stick in before.sticks for laid in stick.next}
    now = {laid.piece: stick.name for stick in again.state.sticks for laid in stick.next}
    return (
        Heading(text=say("What comes off another stick now")),
        Table(
            columns=(
                Column(title=say("Piece"), share=2.0),
                Column(title=say("Was on"), share=1.5),
                Column(title=say("Now on"), is_key=True, share=1.5),
                Column(title="", share=0.6),
            ),
            rows=tuple(
                (mark, was.get(mark, "to be cut again"), now[mark], Cell(blank=Blank.TICK))
                for mark in moved
            ),
            is_close=True,
        ),
    )
