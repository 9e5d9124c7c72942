"""What to look at before cutting: first what is held back, then what is in doubt, then the rest."""

from typing import Final

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.pieces.wall_findings import RUN_HELD
from longpoint.sheets.blocks import (
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Table,
)
from longpoint.sheets.dialects import kind_words
from longpoint.sheets.finding_note import finding_note
from longpoint.speech.said import joined, say

FIRST_SHEET: Final = say("Before you cut")
"""Title of the sheet that is read first."""


ELSEWHERE: Final = frozenset({"sticks-bought"})
"""What stands on the order sheet already, and asks for nothing before the saw."""

FOLLOWING: Final = frozenset({RUN_HELD})
"""What follows from another hold: there is nothing to read for it."""


def findings_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the findings sheet."""
    return (
        *_held(plan),
        *_group(plan, Severity.STOP, say("Stop: read again before cutting"), say("New reading")),
        *_group(plan, Severity.WARNING, say("Look at these before cutting"), say("Seen, or read")),
        *_group(plan, Severity.NOTE, say("What was taken for granted"), ""),
    ) or (Paragraph(text=say("Nothing stands out, and nothing had to be assumed.")),)


def _group(plan: HousePlan, severity: Severity, heading: str, ask: str) -> tuple[Block, ...]:
    notes = tuple(
        finding_note(finding, plan.house, ask="" if finding.code in FOLLOWING else ask)
        for finding in plan.findings
        if finding.severity is severity and finding.code not in ELSEWHERE
    )
    return (
        (Heading(text=say("{heading} ({notes})", heading=heading, notes=len(notes))), *notes)
        if notes
        else ()
    )


def _described(plan: HousePlan) -> dict[str, tuple[str, str]]:
    """Return what a place is and in which room, in the order of the house."""
    house = plan.house
    rooms = {
        place: what
        for room in house.rooms
        for place, what in (
            (room.name, (say("room"), "")),
            *((f"{room.name} {wall.mark}", (say("wall"), room.name)) for wall in room.walls),
        )
    }
    return {
        **{o.mark: (kind_words(o.kind), o.room) for o in house.openings},
        **rooms,
        **{run.mark: (say("run"), run.room) for run in house.runs},
        **{f.place: (say("run"), "") for f in plan.findings if f.code == RUN_HELD},
        **{trim.mark: (trim.kind, trim.room) for trim in house.trims},
        **{entry.mark: (entry.kind.value, entry.room) for entry in house.held},
    }


def _held(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return (
            Note(
                severity=Severity.NOTE,
                title=say("Nothing is held back"),
                text=say("Everything that was written has its lengths."),
            ),
        )
    described = _described(plan)
    marks = [mark for mark in described if mark in plan.held]
    marks += sorted(plan.held.difference(described))
    rows: list[tuple[str | Cell, ...]] = []
    for mark in marks:
        kind, room = described.get(mark, ("", ""))
        reasons = [
            say("{read} {wrong}", read=finding.read, wrong=finding.wrong)
            for finding in plan.findings
            if finding.place == mark and finding.severity is Severity.STOP
        ]
        rows.append(
            (
                Cell(text=mark, is_key=True),
                Cell(text=kind, small=(room,) if room else ()),
                joined(" ", reasons) or say("See below."),
                Cell(blank=Blank.TICK),
            )
        )
    columns = (
        Column(title=say("HOLD"), share=1.6),
        Column(title=say("What it is"), share=1.6),
        Column(title=say("Why"), share=5.0),
        Column(title=say("Read"), is_number=True, share=0.8),
    )
    return (
        Heading(text=say("Held back: no length is given ({marks})", marks=len(marks))),
        Table(columns=columns, rows=tuple(rows)),
    )
