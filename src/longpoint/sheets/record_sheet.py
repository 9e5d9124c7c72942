"""The record of as-found readings: what was read, by what, and how well it fits together."""

from typing import Final

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_tenth, format_with_unit
from longpoint.shape.fitted import FittedOpening, FittedOutline, FittedRoom, Misclosure
from longpoint.sheets.blocks import Block, Column, Heading, Note, Paragraph, Table, Together
from longpoint.sheets.opening_sheet import residual_row
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, say
from longpoint.survey.readings import OpeningReadings

RECORD_TITLE: Final = say("As-found readings")


def record_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the record: every reading of the house, fitted or not."""
    blocks: list[Block] = [
        Paragraph(
            text=say(
                "What was read before anything was cut, and what each reading "
                "differs by from the shape that fits them all. Over its doubt: "
                "how many times the reading's own uncertainty that is; a dash "
                "where no other reading checks it."
            )
        )
    ]
    fitted = {**_by_mark(plan.shapes.openings), **_by_mark(plan.shapes.outlines)}
    for opening in plan.house.openings:
        title = joined(" · ", (part for part in (opening.mark, opening.room) if part))
        shapes = fitted.get(opening.mark, [])
        read = [opening.readings, *([opening.readings_b] if opening.readings_b else [])]
        blocks += _opening(plan, title, shapes, read)
    for room in plan.shapes.rooms:
        blocks += _shape(plan, say("Room {room}", room=room.name), room)
    for run in plan.house.runs:
        if run is plan.house.runs[0]:
            blocks.append(Heading(text=say("Runs read on their own")))
        size = format_with_unit(run.length_mm, plan.house.units)
        where = joined(" · ", (part for part in (run.room, run.wall) if part))
        blocks.append(
            Paragraph(
                lead=say("{mark}:", mark=run.mark),
                text=say(
                    "{where} {size}, tape {tape}.",
                    where=where,
                    size=size,
                    tape=run.tape,
                ),
            )
        )
    return _signed(blocks)


def _signed(blocks: list[Block]) -> tuple[Block, ...]:
    """Return the blocks with the signature, which never stands on a page without a reading."""
    note = Note(
        severity=Severity.NOTE,
        title=say("Signed"),
        text=say("These are the readings as found."),
        ask=say("Read by, date"),
    )
    *before, last = blocks
    kept = last.blocks if isinstance(last, Together) else (last,)
    return (*before, Together(blocks=(*kept, note)))


_Fitted = FittedOpening | FittedOutline | FittedRoom


def _by_mark(
    shapes: tuple[FittedOpening, ...] | tuple[FittedOutline, ...],
) -> dict[str, list[FittedOpening | FittedOutline]]:
    found: dict[str, list[FittedOpening | FittedOutline]] = {}
    for shape in shapes:
        found.setdefault(shape.mark, []).append(shape)
    return found


def _opening(
    plan: HousePlan,
    title: str,
    shapes: list[FittedOpening | FittedOutline],
    read: list[OpeningReadings],
) -> list[Block]:
    by = _by_whom(read)
    if not shapes:
        written = joined(
            ", ",
            (
                say("{place} {written}", place=shown(r.place.value), written=r.written)
                for each in read
                for r in each.written()
            ),
        )
        text = say(
            "{written}. {by} No shape was fitted to them.",
            written=written or say("No length"),
            by=by,
        )
        return [Together(blocks=(Heading(text=title), Paragraph(text=text)))]
    blocks: list[Block] = []
    for shape in shapes:
        face = say(" face {face}", face=shape.face) if shape.face else ""
        blocks += _shape(
            plan,
            say("{title}{face}", title=title, face=face),
            shape,
            say(
                "{by}{plane}",
                by=by,
                plane=_plane(plan, read[0]),
            ),
        )
    return blocks


def _by_whom(read: list[OpeningReadings]) -> str:
    tapes = joined(", ", dict.fromkeys(each.tape for each in read))
    who = joined(", ", dict.fromkeys(each.by for each in read if each.by))
    return say(
        "Tape {tapes}{read}.",
        tapes=tapes,
        read=say(", read by {who}", who=who) if who else "",
    )


def _plane(plan: HousePlan, read: OpeningReadings) -> str:
    if read.plane is None:
        return ""
    bl, br, tr, tl = (format_tenth(mm, plan.house.units) for mm in read.plane.corners_mm())
    return say(
        " Lining against wall: tl {tl}, tr {tr}, br {br}, bl {bl}.",
        tl=tl,
        tr=tr,
        br=br,
        bl=bl,
    )


def _shape(plan: HousePlan, title: str, shape: _Fitted, said: str = "") -> list[Block]:
    rows = tuple(residual_row(each, plan.house.units) for each in shape.residuals)
    parts = (said, _closes(plan, shape.misclosure), _assumed(shape))
    lines = joined(" ", (part for part in parts if part))
    paragraph = (Paragraph(text=lines, is_small=True),) if lines else ()
    if not rows:
        return [Together(blocks=(Heading(text=title), *paragraph))]
    columns = (
        Column(title=say("Reading"), share=3.0),
        Column(title=say("As read"), is_number=True, share=1.4),
        Column(title=say("Off the shape"), is_number=True, share=1.4),
        Column(title=say("Over its doubt"), is_number=True, share=1.4),
    )
    table = Table(columns=columns, rows=rows, is_close=True)
    return [Together(blocks=(Heading(text=title), table, *paragraph))]


def _closes(plan: HousePlan, misclosure: Misclosure | None) -> str:
    if misclosure is None:
        return say("Nothing checks these readings.")
    if misclosure.misclosure_mm is None:
        return say(
            "{spare} spare readings, together {normalised:.1f} doubts off.",
            spare=misclosure.spare,
            normalised=misclosure.normalised,
        )
    off = format_tenth(misclosure.misclosure_mm, plan.house.units)
    return say(
        "They close to {off}, {normalised:.1f} doubts.",
        off=off,
        normalised=misclosure.normalised,
    )


def _assumed(shape: _Fitted) -> str:
    return say("Assumed: {assumed}.", assumed=joined(", ", shape.assumed)) if shape.assumed else ""
