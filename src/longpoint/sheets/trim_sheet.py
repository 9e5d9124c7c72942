"""All trim besides sets and skirting: a drawing, the pieces and how they are set, one by one."""

from typing import Final

from longpoint.catalogue.plan_trims import PlannedTrim
from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Block, Heading, Paragraph, Plain, Together
from longpoint.sheets.dialects import in_words, words_for
from longpoint.sheets.finding_note import finding_note
from longpoint.sheets.piece_table import piece_table
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.sheets.sketch_drawing import sketch_drawing
from longpoint.speech.said import joined, say
from longpoint.survey.house import EntryKind

TRIM_TITLE: Final = say("Other trim")


def trim_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the sheet of other trim, entry after entry in the house's order."""
    blocks: list[Block] = []
    for trim in plan.trims:
        blocks += _planned(plan, trim)
    shown = {trim.entry.mark for trim in plan.trims}
    for entry in plan.house.trims:
        if entry.mark not in shown:
            blocks += _held(plan, entry.mark, entry.kind, entry.room)
    for unread in plan.house.held:
        if unread.kind is EntryKind.TRIM:
            blocks += _held(plan, unread.mark, say("could not be read"), unread.room)
    return tuple(blocks) or (Paragraph(text=say("There is no other trim in this house.")),)


def _planned(plan: HousePlan, trim: PlannedTrim) -> list[Block]:
    entry = trim.entry
    words = words_for(plan.house.dialect)
    name = in_words(trim.title.removeprefix("an ").removeprefix("a "), words)
    drawn: list[Plain] = [sketch_drawing(sketch) for sketch in trim.plan.sketches]
    head: tuple[Plain, ...] = (
        Heading(text=_title(entry.mark, name, entry.room, joined(", ", entry.openings))),
        *drawn[:1],
    )
    blocks: list[Block] = [Together(blocks=head), *drawn[1:]]
    blocks += [Paragraph(text=line) for line in trim.plan.lines]
    pieces = [piece for piece in plan.pieces if piece.trim == entry.mark]
    if pieces:
        blocks.append(piece_table(plan.house, pieces, printed_lengths(plan.pieces), words))
    return [*blocks, *_notes(plan, entry.mark)]


def _held(plan: HousePlan, mark: str, kind: str, room: str) -> list[Block]:
    return [
        Heading(text=say("{title} · HOLD", title=_title(mark, kind, room))),
        *_notes(plan, mark),
    ]


def _notes(plan: HousePlan, mark: str) -> list[Plain]:
    return [finding_note(each, plan.house) for each in plan.findings if each.place == mark]


def _title(*parts: str) -> str:
    return joined(" · ", (part for part in parts if part))
