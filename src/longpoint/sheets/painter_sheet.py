"""The painter's page: what there is to paint, fill and caulk, what is ready, who does it."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.fixing.handover.painting import PaintLine, paint_lines
from longpoint.fixing.handover.progress import RoomProgress
from longpoint.fixing.nailing import nail_house
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import running_length
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, say
from longpoint.survey.handover import Trade

PAINTER_TITLE: Final = say("For the painter")


def painter_blocks(plan: HousePlan, progress: Sequence[RoomProgress]) -> tuple[Block, ...]:
    """Return what stands on the painter's page."""
    return (*_ready(progress), *_agreed(plan), *_to_paint(plan), *_held(plan))


def _ready(progress: Sequence[RoomProgress]) -> tuple[Block, ...]:
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            each.room or say("No room named"),
            Cell(
                text=say("ready") if each.is_ready else say("NOT YET"),
                picture=mark_picture(Passed.YES if each.is_ready else Passed.NO),
            ),
            why_not(each),
        )
        for each in progress
    )
    if not rows:
        return ()
    columns = (
        Column(title=say("Room"), share=2.4),
        Column(title=say("Ready for you"), share=2.0),
        Column(title=say("Why not yet"), share=5.0),
    )
    return (Heading(text=say("Rooms")), Table(columns=columns, rows=rows))


def why_not(room: RoomProgress) -> str:
    """Return what keeps the painter out of a room; empty where nothing does."""
    parts = []
    if room.held:
        parts.append(say("held: {held}", held=joined(", ", room.held)))
    if room.to_do:
        parts.append(say("still to go up: {to_do}", to_do=joined(", ", room.to_do)))
    if room.mends:
        parts.append(say("{mends} to mend", mends=room.mends))
    if room.is_wet:
        parts.append(say("WET: glue, filler, caulk or paint"))
    return joined("; ", parts)


def _agreed(plan: HousePlan) -> tuple[Block, ...]:
    told = plan.house.handover
    notes = []
    for what, who in (
        (say("Nail holes are filled"), told.fills),
        (say("Edges are caulked"), told.caulks),
    ):
        agreed = "" if who is None else say("{what} by the {who}.", what=what, who=shown(who.value))
        notes.append(
            Note(
                severity=Severity.NOTE if who is not None else Severity.WARNING,
                title=say("AGREED") if who is not None else say("TO AGREE"),
                text=agreed
                or say(
                    "{what} by: {carpenter} or {painter}?",
                    what=what,
                    carpenter=shown(Trade.CARPENTER.value),
                    painter=shown(Trade.PAINTER.value),
                ),
                ask=say("Signed") if who is not None else say("By whom, and signed"),
            )
        )
    return (Heading(text=say("Who fills, who caulks")), *notes)


def _to_paint(plan: HousePlan) -> tuple[Block, ...]:
    lines = paint_lines(nail_house(plan.house, plan.pieces))
    if not lines:
        return (Paragraph(text=say("No piece is planned, so there is nothing to count.")),)
    units = plan.house.units
    rows: list[tuple[str | Cell, ...]] = []
    groups: list[tuple[int, str]] = []
    for line in lines:
        if not groups or groups[-1][1] != (line.room or "No room named"):
            groups.append((len(rows), line.room or say("No room named")))
        rows.append(_line_row(line, units))
    groups.append((len(rows), say("The whole house")))
    profiles = dict.fromkeys(line.profile for line in lines)
    rows += [_line_row(_sum(name, lines), units) for name in profiles]
    area = say("Face, m²") if units is Units.MM else say("Face, sq ft")
    columns = (
        Column(title=say("Profile"), share=3.0),
        Column(title=say("Pieces"), is_number=True, share=1.0),
        Column(title=say("To paint"), is_number=True, share=1.5),
        Column(title=area, is_number=True, share=1.4),
        Column(title=say("Edges to caulk"), is_number=True, share=1.6),
        Column(title=say("Nail holes"), is_number=True, share=1.4),
    )
    return (
        Heading(text=say("To paint, caulk and fill")),
        Table(columns=columns, rows=tuple(rows), groups=tuple(groups), is_close=True),
        Paragraph(
            text=say(
                "Lengths are those of the pieces at their longest edge, face is "
                "length by width: edges, mouldings and backs aren't counted, nor "
                "is waste. Edges to caulk are those that meet the wall. Nail "
                "holes are those of the fixing sheet."
            ),
            is_small=True,
        ),
    )


def _line_row(line: PaintLine, units: Units) -> tuple[str | Cell, ...]:
    if units is Units.MM:
        area = say("{face_mm2:.1f}", face_mm2=line.face_mm2 / 1000000.0)
    else:
        area = say("{face_mm2:.1f}", face_mm2=line.face_mm2 / (12 * MM_PER_INCH) ** 2)
    return (
        line.profile,
        say("{pieces}", pieces=line.pieces),
        running_length(line.paint_mm, units),
        area,
        running_length(line.caulk_mm, units) if line.caulk_mm else "-",
        say("{holes}", holes=line.holes) if line.holes else "-",
    )


def _sum(profile: str, lines: Sequence[PaintLine]) -> PaintLine:
    here = [line for line in lines if line.profile == profile]
    return PaintLine(
        room="",
        profile=profile,
        pieces=sum(line.pieces for line in here),
        paint_mm=sum(line.paint_mm for line in here),
        caulk_mm=sum(line.caulk_mm for line in here),
        holes=sum(line.holes for line in here),
        face_mm2=sum(line.face_mm2 for line in here),
    )


def _held(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    text = say(
        "Held back, so not in these figures: {held}.",
        held=joined(", ", sorted(plan.held)),
    )
    return (Note(severity=Severity.WARNING, title=say("LOOK · not counted"), text=text),)
