"""The rack on paper: what is on it, and labels to stick on what was put up."""

from collections.abc import Sequence
from datetime import date
from typing import Final

from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Blank,
    Block,
    Cell,
    Column,
    Drawing,
    Ink,
    Mark,
    Outline,
    Paragraph,
    Sheet,
    Table,
    Word,
)
from longpoint.speech.said import joined, say, say_many
from longpoint.survey.rack import Rack, RackPiece, Section

LABELS_ACROSS: Final = 3
CARD_WIDE_MM: Final = 58.0
CARD_HIGH_MM: Final = 25.0
CARD_SIGNS: Final = 20
"""So many signs of a name have room on a label beside a length or a day."""
NAME: Final = say("The rack")


def rack_sheets(
    rack: Rack, today: date, labels: Sequence[RackPiece], old_after_days: int | None = None
) -> tuple[Sheet, ...]:
    """Return the list of the rack, and a page of labels where some are asked for.

    Args:
        rack: The rack.
        today: The day it is.
        labels: Offcuts to print labels for.
        old_after_days: From when on an offcut is old; None: as the rack says.
    """
    old_after_days = rack.old_after_days if old_after_days is None else old_after_days
    unit = say("All lengths in mm") if rack.units is Units.MM else say("All lengths in inches")
    sheets = [
        _sheet(
            "rack",
            say("Offcuts on the rack"),
            say("{unit}, square across; a saw cut is lost at each end.", unit=unit),
            _list(rack, today, old_after_days),
            today,
        )
    ]
    if labels:
        said = say("Cut them out and fix each to its offcut; the last sign checks the others.")
        sheets.append(
            _sheet("rack-labels", say("Labels for the rack"), said, _labels(rack, labels), today)
        )
    return tuple(sheets)


def rack_text_lines(rack: Rack, today: date, old_after_days: int | None = None) -> tuple[str, ...]:
    """Return what is on the rack for the screen, section by section, the longest first."""
    old_after_days = rack.old_after_days if old_after_days is None else old_after_days
    lines = [
        say(
            "On the rack: {counted}.",
            counted=say_many("{count} offcut", "{count} offcuts", count=len(rack.there)),
        )
    ]
    for key, section in rack.sections:
        pieces = _of_section(rack, key)
        if pieces:
            lines += ["", say("{key} ({size})", key=key, size=_size(section, rack.units))]
        for piece in pieces:
            length = format_length(piece.length_mm, rack.units)
            ends = say("{left} / {right}", left=piece.left, right=piece.right)
            facts = [ends, _from(piece), _age(piece, today, old_after_days), piece.note]
            lines.append(
                say(
                    "  {label}  {length:>9}  {filter}",
                    label=piece.label,
                    length=length,
                    filter=joined("; ", filter(None, facts)),
                )
            )
    return tuple(lines)


def _sheet(name: str, title: str, said: str, blocks: tuple[Block, ...], today: date) -> Sheet:
    return Sheet(
        name=name,
        title=title,
        house=NAME,
        readings_code=today.isoformat(),
        made_from=say("rack of"),
        subtitle=said,
        blocks=blocks,
    )


def _list(rack: Rack, today: date, old_after_days: int | None) -> tuple[Block, ...]:
    rows: list[tuple[str | Cell, ...]] = []
    groups = []
    for key, section in rack.sections:
        pieces = _of_section(rack, key)
        if pieces:
            groups.append(
                (
                    len(rows),
                    say(
                        "{key}: {size}",
                        key=key,
                        size=_size(section, rack.units),
                    ),
                )
            )
        rows += [_row(piece, rack.units, today, old_after_days) for piece in pieces]
    if not rows:
        return (Paragraph(text=say("There is nothing on the rack.")),)
    columns = (
        Column(title=say("Label"), is_key=True, share=1.5),
        Column(title=say("Length"), is_number=True, share=1.4),
        Column(title=say("Left end"), share=1.7),
        Column(title=say("Right end"), share=1.7),
        Column(title=say("From"), share=3.2),
        Column(title=say("Age"), share=1.7),
        Column(title=say("Here"), is_number=True, share=0.8),
    )
    return (Table(columns=columns, rows=tuple(rows), groups=tuple(groups)),)


def _row(
    piece: RackPiece, units: Units, today: date, old_after_days: int | None
) -> tuple[str | Cell, ...]:
    return (
        piece.label,
        format_length(piece.length_mm, units),
        piece.left,
        piece.right,
        say("{from_}; {note}", from_=_from(piece), note=piece.note) if piece.note else _from(piece),
        _age(piece, today, old_after_days),
        Cell(blank=Blank.TICK),
    )


def _labels(rack: Rack, labels: Sequence[RackPiece]) -> tuple[Block, ...]:
    rows = [labels[start : start + LABELS_ACROSS] for start in range(0, len(labels), LABELS_ACROSS)]
    return tuple(
        Drawing(
            width_mm=LABELS_ACROSS * CARD_WIDE_MM,
            height_mm=CARD_HIGH_MM,
            marks=tuple(
                mark
                for place, piece in enumerate(row)
                for mark in _card(rack, piece, place * CARD_WIDE_MM)
            ),
            described=say("Labels: ") + joined(", ", (piece.label for piece in row)) + ".",
        )
        for row in rows
    )


def _card(rack: Rack, piece: RackPiece, left_mm: float) -> tuple[Mark, ...]:
    """One label with a dashed edge to cut along."""
    right_mm, middle_mm = left_mm + CARD_WIDE_MM, left_mm + CARD_WIDE_MM / 2.0
    corners = (
        (left_mm, 0.0),
        (right_mm, 0.0),
        (right_mm, CARD_HIGH_MM),
        (left_mm, CARD_HIGH_MM),
    )
    length = format_with_unit(piece.length_mm, rack.units)
    small = (
        say(
            "{shortened} · {length}",
            shortened=_shortened(rack.section(piece.section).name),
            length=length,
        ),
        say(
            "{shortened} · {put_up}",
            shortened=_shortened(_from(piece)),
            put_up=piece.put_up.isoformat(),
        ),
    )
    return (
        Outline(points=corners, ink=Ink.LEFT),
        Word(x_mm=middle_mm, y_mm=11.5, text=piece.label, size_mm=9.0, bold=True),
        *(
            Word(x_mm=middle_mm, y_mm=17.0 + 4.5 * line, text=text, size_mm=3.0)
            for line, text in enumerate(small)
        ),
    )


def _shortened(text: str) -> str:
    return text if len(text) <= CARD_SIGNS else say("{text}...", text=text[: CARD_SIGNS - 3])


def _of_section(rack: Rack, key: str) -> list[RackPiece]:
    """Return what is there of a section, the longest first."""
    pieces = [piece for piece in rack.there if piece.section == key]
    return sorted(pieces, key=lambda piece: -piece.length_mm)


def _size(section: Section, units: Units) -> str:
    size = say("{width} x ", width=format_length(section.width_mm, units))
    size += format_with_unit(section.thickness_mm, units)
    return say("{size}, the same from both edges", size=size) if section.reversible else size


def _from(piece: RackPiece) -> str:
    return piece.house or say("put up by hand")


def _age(piece: RackPiece, today: date, old_after_days: int | None) -> str:
    days = piece.age_days(today)
    is_old = old_after_days is not None and days > old_after_days
    return (
        say("OLD: {counted}", counted=say_many("{count} day", "{count} days", count=days))
        if is_old
        else say_many("{count} day", "{count} days", count=days)
    )
