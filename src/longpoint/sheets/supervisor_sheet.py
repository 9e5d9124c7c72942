"""The supervisor's page: how far each room is, what is held and why, defects, variations."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.fixing.handover.judged import Judged
from longpoint.fixing.handover.progress import RoomProgress, unknown_places
from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.sheets.qa_sheet import defect_blocks
from longpoint.speech.said import joined, say

SUPERVISOR_TITLE: Final = say("For the supervisor")


def supervisor_blocks(
    plan: HousePlan,
    progress: Sequence[RoomProgress],
    judged: Sequence[Judged],
    variations: Sequence[str] = (),
) -> tuple[Block, ...]:
    """Return what stands on the supervisor's page.

    Args:
        plan: The planned house.
        progress: How far each room is.
        judged: What was read of finished work, judged.
        variations: A sentence on each variation, from whoever reckons them.
    """
    return (
        *_unknown(plan),
        *_progress(progress),
        *_held(plan),
        *defect_blocks(plan, judged),
        Heading(text=say("Variations")),
        *(
            tuple(Paragraph(text=each) for each in variations)
            or (Paragraph(text=say("None is written down in the house file.")),)
        ),
    )


def _unknown(plan: HousePlan) -> tuple[Block, ...]:
    named = unknown_places(plan.house, plan.pieces)
    if not named:
        return ()
    return (
        Note(
            severity=Severity.WARNING,
            title=say("LOOK · no such place"),
            text=say(
                "Told to be up or wet, and neither a mark nor a room of this "
                "house: {named}. Look at fixed and wet under [handover].",
                named=joined(", ", named),
            ),
        ),
    )


def _progress(progress: Sequence[RoomProgress]) -> tuple[Block, ...]:
    if not progress:
        return (Paragraph(text=say("No place of this house was read yet.")),)
    rows: list[tuple[str | Cell, ...]] = [_row(each) for each in progress]
    up, to_do, held = (
        sum(len(part) for part in parts)
        for parts in (
            [each.up for each in progress],
            [each.to_do for each in progress],
            [each.held for each in progress],
        )
    )
    mends = sum(each.mends for each in progress)
    rows.append(
        (
            Cell(
                text=say("All together"),
                small=(
                    say(
                        "{up} of {up_2} up",
                        up=up,
                        up_2=up + to_do + held,
                    ),
                ),
            ),
            *(say("{count}", count=count) for count in (up, to_do, held, mends)),
            "",
        )
    )
    columns = (
        Column(title=say("Room"), share=2.6),
        Column(title=say("Up"), is_number=True, share=0.8),
        Column(title=say("To go up"), is_number=True, share=1.0),
        Column(title=say("Held"), is_number=True, share=0.8),
        Column(title=say("To mend"), is_number=True, share=1.0),
        Column(title=say("Stands"), share=4.0),
    )
    return (Heading(text=say("Progress")), Table(columns=columns, rows=tuple(rows)))


def _row(room: RoomProgress) -> tuple[str | Cell, ...]:
    counts = (len(room.up), len(room.to_do), len(room.held), room.mends)
    return (
        room.room or say("No room named"),
        *(say("{count}", count=count) for count in counts),
        _stands(room),
    )


def _stands(room: RoomProgress) -> Cell:
    wet = say("wet") if room.is_wet else ""
    if room.is_ready:
        return Cell(text=say("done"), picture=mark_picture(Passed.YES))
    if room.held:
        small = joined(", ", room.held)
        return Cell(text=say("HELD"), small=(small,), picture=mark_picture(Passed.NO))
    if room.mends:
        return Cell(
            text=say("to mend"), small=(wet,) if wet else (), picture=mark_picture(Passed.NO)
        )
    if not room.to_do:
        return Cell(text=say("up, wet"), picture=mark_picture(Passed.UNKNOWN))
    small = joined(", ", room.to_do)
    return Cell(text=say("to go up"), small=(small,), picture=mark_picture(Passed.UNKNOWN))


def _held(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    stops: dict[str, Finding] = {}
    for finding in plan.findings:
        if finding.severity is Severity.STOP and finding.place in plan.held:
            stops.setdefault(finding.place, finding)
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            mark,
            Cell(text=stops[mark].wrong, small=(stops[mark].do,)) if mark in stops else "-",
        )
        for mark in sorted(plan.held)
    )
    columns = (
        Column(title=say("Held"), share=1.2),
        Column(title=say("Why, and what to do"), share=8.0),
    )
    return (Heading(text=say("Held, and why")), Table(columns=columns, rows=rows))
