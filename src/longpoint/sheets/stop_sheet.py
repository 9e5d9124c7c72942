"""The sheet of stop settings: what is cut at each, and the quirk that each opening then gets."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.pieces.piece import Piece
from longpoint.pieces.stop_lengths import SawStop, StopWish
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Sheet, Table
from longpoint.sheets.cautions import saw_cautions
from longpoint.sheets.dialects import Words
from longpoint.speech.said import joined, say, say_many

STOP_TITLE: Final = say("Settings of the stop")


def stop_sheet(
    house: str,
    code: str,
    stops: Sequence[SawStop],
    pieces: Sequence[Piece],
    units: Units,
    words: Words,
) -> Sheet:
    """Return the sheet.

    Args:
        house: Name of the house, or of the houses together.
        code: Of the readings.
        stops: What to set.
        pieces: All pieces of the houses: those at no stop are counted.
        units: Of its lengths.
        words: Of the country.
    """
    return Sheet(
        name="stops",
        title=STOP_TITLE,
        house=house,
        readings_code=code,
        cautions=saw_cautions(pieces, units),
        blocks=(
            *_blocks(stops, units, words),
            *_others(len(pieces) - sum(stop.count for stop in stops)),
        ),
    )


def _others(count: int) -> tuple[Block, ...]:
    if not count:
        return ()
    text = say_many(
        "{count} other piece is cut to its own figure on the cut sheet.",
        "{count} other pieces are cut to their own figures on the cut sheet.",
        count=count,
    )
    return (Paragraph(text=text),)


def _blocks(stops: Sequence[SawStop], units: Units, words: Words) -> tuple[Block, ...]:
    wishes = [wish for stop in stops for wish in stop.wishes]
    if not wishes:
        return (
            Paragraph(
                text=say("No set is made as a frame of 45s here (method bench, or mitres at-stop).")
            ),
        )
    alone = len({(w.profile, w.cuts, round(w.long_mm, 1)) for w in wishes})
    return (
        Paragraph(
            text=say(
                "{stops} settings instead of {alone}: frames of 45s lie a little larger or smaller "
                "over their openings, within the {quirk} that you accept.",
                stops=len(stops),
                alone=alone,
                quirk=words.quirk,
            )
        ),
        Note(
            severity=Severity.NOTE,
            title=say("BEFORE YOU CUT"),
            text=say(
                "Cut one pair at each setting, measure both over the long points, then the rest. "
                "A stop creeps: measure again when you come back to it."
            ),
        ),
        *(
            block
            for profile in dict.fromkeys(wish.profile for wish in wishes)
            for block in _of_profile(profile, stops, units, words)
        ),
    )


def _of_profile(
    profile: str, stops: Sequence[SawStop], units: Units, words: Words
) -> tuple[Block, ...]:
    columns = (
        Column(title=say("Stop, long point to long point"), is_number=True, share=1.6),
        Column(title=say("Pieces"), is_number=True, share=0.8),
        Column(title=say("Which, and the {quirk} they leave", quirk=words.quirk), share=5.0),
    )
    rows = tuple(
        (
            Cell(text=format_length(stop.length_mm, units), is_key=True),
            str(stop.count),
            joined("; ", [_left(wish, stop.length_mm, units) for wish in stop.wishes]),
        )
        for stop in stops
        if stop.wishes[0].profile == profile
    )
    return (Heading(text=profile), Table(columns=columns, rows=rows))


def _left(wish: StopWish, length_mm: float, units: Units) -> str:
    return say(
        "{marks} {quirk}",
        marks=joined(", ", wish.marks),
        quirk=format_with_unit(wish.quirk_at_mm(length_mm), units),
    )
