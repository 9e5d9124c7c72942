"""One picture and two tables for each opening: what was read, what it means, what to cut."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_length, format_tenth, format_unit
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Residual
from longpoint.sheets.blocks import (
    Beside,
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Plain,
    Table,
    Together,
)
from longpoint.sheets.dialects import Words, kind_words, method_words, words_for
from longpoint.sheets.finding_note import finding_note
from longpoint.sheets.hold_picture import hold_picture
from longpoint.sheets.opening_faces import FittedShape, face_echo, face_pieces, fitted_faces
from longpoint.sheets.piece_table import piece_table
from longpoint.sheets.printed_lengths import PrintedLengths, printed_lengths
from longpoint.sheets.value_words import shown
from longpoint.sheets.verdict_pictures import verdict_picture, verdict_words
from longpoint.speech.said import joined, raised, say, say_many
from longpoint.survey.house import EntryKind
from longpoint.survey.openings import Opening
from longpoint.survey.readings import OpeningReadings

SIGNS_TOGETHER: Final = 1500
"""Signs of notes that surely fit on the page of their opening, on either paper."""
SIGNS_OF_A_ROW: Final = 220
"""What a piece beyond a window's four takes of that room."""
ROWS_OF_A_WINDOW: Final = 4
SIGNS_OF_A_FRAME: Final = 250
"""What a note takes besides its text, in signs of text."""


def opening_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the opening sheet, opening after opening in the house's order."""
    blocks: list[Block] = []
    for opening in plan.house.openings:
        own: list[Block] = []
        if opening.mark in plan.held:
            own += _held(plan, opening)
        else:
            for face in fitted_faces(plan, opening) or (None,):
                own += _face(plan, opening, face)
        notes = [
            finding_note(finding, plan.house)
            for finding in plan.findings
            if finding.place == opening.mark
        ]
        blocks += _with_notes(own, notes)
    for entry in plan.house.held:
        if entry.kind is EntryKind.OPENING:
            blocks += _unread(plan, entry.mark, entry.room)
    return tuple(blocks) or (Paragraph(text=say("There is no opening in this house.")),)


def _with_notes(blocks: Sequence[Block], notes: Sequence[Note]) -> list[Block]:
    """Return an opening with its notes, on one page with it while they are not too long."""
    last = blocks[-1]
    if not isinstance(last, Together):
        return [*blocks, *notes]
    room = SIGNS_TOGETHER - SIGNS_OF_A_ROW * max(0, _rows(last) - ROWS_OF_A_WINDOW)
    kept = 0
    for note in notes:
        room -= len(note.text) + SIGNS_OF_A_FRAME
        if room < 0:
            break
        kept += 1
    return [*blocks[:-1], Together(blocks=(*last.blocks, *notes[:kept])), *notes[kept:]]


def _rows(together: Together) -> int:
    """Return how many rows its tables have, what else is to be done to a piece counted too."""
    tables = [block for block in together.blocks if isinstance(block, Table)]
    return sum(len(t.rows) + sum(len(lines) for _, lines in t.steps) for t in tables)


def _face(plan: HousePlan, opening: Opening, fitted: FittedShape | None) -> tuple[Block, ...]:
    if fitted is None:
        return (
            Heading(text=_title(opening.mark, opening.room, kind_words(opening.kind), "")),
            Paragraph(text=say("No shape could be fitted to it, so there is nothing to cut.")),
        )
    words, units = words_for(plan.house.dialect), plan.house.units
    pieces = face_pieces(plan, fitted)
    echo = face_echo(plan, opening, fitted)
    right: list[Plain] = [
        Heading(text=say("Does it lean this way?"), level=3),
        Paragraph(text=echo.question),
        _readings_table(fitted, units),
    ]
    if fitted.assumed:
        right.append(
            Paragraph(
                text=say(
                    "Assumed, not read: {assumed}.",
                    assumed=joined(", ", fitted.assumed),
                )
            )
        )
    right.append(Paragraph(text=echo.drawing.caption, is_small=True))
    drawing = replace(echo.drawing, caption="")
    lengths = printed_lengths(plan.pieces)
    title = _title(opening.mark, opening.room, kind_words(opening.kind), fitted.face)
    return (
        Together(
            blocks=(
                Heading(text=title),
                *_verdict(plan, opening),
                Beside(left=(drawing,), right=tuple(right), left_share=0.45),
                _pieces_table(plan, opening, pieces, lengths, words),
            )
        ),
    )


def _verdict(plan: HousePlan, opening: Opening) -> tuple[Paragraph, ...]:
    """Return what to do with an opening before it is cut; nothing where it wasn't forecast."""
    advice = plan.outlook.advice_on(opening.mark) if plan.outlook else None
    if advice is None:
        return ()
    words = verdict_words(advice.verdict)
    return (
        Paragraph(
            lead=say("{words}.", words=raised(words)),
            text=advice.why,
            picture=verdict_picture(advice.verdict, 0.6),
        ),
    )


def _title(mark: str, room: str, kind: str, face: str) -> str:
    parts = [
        mark,
        kind,
        *([say("face {face}", face=face)] if face else []),
        *([room] if room else []),
    ]
    return joined(" · ", parts)


def _readings_table(fitted: FittedShape, units: Units) -> Table:
    columns = (
        Column(title=say("Read"), share=1.3),
        Column(title=say("Reading"), is_number=True, share=1.0),
        Column(title=say("Off the fit"), is_number=True, share=1.1),
        Column(title=say("Times its doubt"), is_number=True, share=1.5),
    )
    rows = tuple(residual_row(residual, units) for residual in fitted.residuals)
    return Table(columns=columns, rows=rows, caption=_fit_words(fitted, units), is_close=True)


def residual_row(residual: Residual, units: Units) -> tuple[str, ...]:
    """Return a reading's name, what was read, what it differs by, and that over its doubt."""
    is_angle = any(
        word in residual.name for word in (say("plumb"), say("level"), say("bevel"), say("corner"))
    )
    if is_angle:
        figures = (
            say("{read:g}°", read=residual.read),
            say(
                "{residual:+.2f}°",
                residual=residual.residual,
            ),
        )
    else:
        figures = (
            format_length(residual.read, units),
            _signed(format_tenth(residual.residual, units)),
        )
    return (
        shown(residual.name),
        *figures,
        _tenths(residual.over_u) if residual.redundancy else "-",
    )


def _tenths(value: float) -> str:
    return "0.0" if abs(value) < 0.05 else say("{value:+.1f}", value=value)


def _signed(text: str) -> str:
    return text if text.startswith("-") or text == "0" else say("+{text}", text=text)


def _fit_words(fitted: FittedShape, units: Units) -> str:
    closing = fitted.misclosure
    if closing is None:
        return say("Nothing checks these readings: there is none to spare.")
    said = say_many("{count} reading to spare", "{count} readings to spare", count=closing.spare)
    if closing.misclosure_mm is not None:
        size = format_tenth(abs(closing.misclosure_mm), units)
        said += say(
            "; the last diagonal is {size} {units} off",
            size=size,
            units=format_unit(units),
        )
    return say("{said}.", said=said)


def _pieces_table(
    plan: HousePlan,
    opening: Opening,
    pieces: Sequence[Piece],
    lengths: Mapping[str, PrintedLengths],
    words: Words,
) -> Table:
    units = plan.house.units
    band = joined(say(" to "), (format_length(value, units) for value in opening.quirk_band_mm))
    quirk = say(
        "{quirk} {quirks} {units}, {band} accepted",
        quirk=words.quirk,
        quirks=_quirks(opening, units),
        units=format_unit(units),
        band=band,
    )
    caption = say(
        "{architrave}, {method}; {quirk}.",
        architrave=raised(words.architrave),
        method=method_words(opening.method),
        quirk=quirk,
    )
    return piece_table(plan.house, pieces, lengths, words, caption)


def _quirks(opening: Opening, units: Units) -> str:
    bottom, right, head, left = opening.quirk_mm.anticlockwise()
    if bottom == right == head == left:
        return format_length(head, units)
    named = (
        (say("head"), head),
        (say("left"), left),
        (say("right"), right),
        (say("bottom"), bottom),
    )
    return joined(
        ", ",
        (
            say("{name} {value}", name=name, value=format_length(value, units))
            for name, value in named
        ),
    )


def _held(plan: HousePlan, opening: Opening) -> tuple[Block, ...]:
    stops = [
        finding
        for finding in plan.findings
        if finding.place == opening.mark and finding.severity is Severity.STOP
    ]
    right: list[Plain] = [_read_again_table(opening.readings, plan.house.units)]
    kind = kind_words(opening.kind)
    return (
        Together(
            blocks=(
                Heading(
                    text=say(
                        "{title} · HOLD",
                        title=_title(opening.mark, opening.room, kind, ""),
                    )
                ),
                Beside(
                    left=(hold_picture(opening.mark, kind),),
                    right=tuple(right),
                    left_share=0.48,
                ),
                *(
                    []
                    if stops
                    else [Paragraph(text=say("It is held back; see the findings sheet."))]
                ),
            )
        ),
    )


def _read_again_table(readings: OpeningReadings, units: Units) -> Table:
    return Table(
        columns=(
            Column(title=say("As written"), share=1.2),
            Column(title=say("Reading"), is_number=True, share=1.0),
            Column(title=say("Read again"), share=1.4),
        ),
        rows=tuple(
            (
                shown(reading.place.value),
                format_length(reading.value_mm, units),
                Cell(blank=Blank.LINE),
            )
            for reading in readings.written()
        ),
    )


def _unread(plan: HousePlan, mark: str, room: str) -> tuple[Block, ...]:
    notes: list[Finding] = [f for f in plan.findings if f.place == mark]
    return (
        Together(
            blocks=(
                Heading(
                    text=say(
                        "{title} · HOLD",
                        title=_title(mark, room, say("could not be read"), ""),
                    )
                ),
                hold_picture(mark, say("opening")),
                *(finding_note(finding, plan.house) for finding in notes),
            )
        ),
    )
