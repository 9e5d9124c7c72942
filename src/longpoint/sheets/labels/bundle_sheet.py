"""Which pieces are tied together, opening by opening and room by room."""

from typing import Final

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Blank, Block, Cell, Column, Heading, Note, Sheet, Table
from longpoint.sheets.cautions import common_cautions
from longpoint.sheets.cut_cells import key_figure
from longpoint.sheets.cut_lines import cut_lines
from longpoint.sheets.dialects import role_words, words_for
from longpoint.sheets.labels.label_pages import LabelOrder, bundle_of, labelled
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.speech.said import joined, say, say_many

COLUMNS: Final = (
    Column(title=say("In"), share=1.3),
    Column(title=say("Piece"), share=3.2),
    Column(title=say("What it is"), share=2.4),
    Column(title=say("Profile"), share=1.8),
    Column(title=say("Cut to"), is_number=True, share=1.9),
)
NO_ROOM: Final = say("No room named")


def bundle_sheet(plan: HousePlan) -> Sheet:
    """Return the list by which pieces are tied together and carried to their rooms."""
    unit = say("mm") if plan.house.units is Units.MM else say("inches")
    return Sheet(
        name="bundles",
        title=say("Bundles"),
        house=plan.house.name,
        readings_code=plan.readings_code,
        subtitle=say(
            "All lengths in {unit}. One bundle for each place; tick each "
            "piece as it goes in. The number is that of the cutting list.",
            unit=unit,
        ),
        blocks=(*_held(plan), *_rooms(plan)),
        cautions=common_cautions(),
    )


def _rooms(plan: HousePlan) -> tuple[Block, ...]:
    words, lengths = words_for(plan.house.dialect), printed_lengths(plan.pieces)
    numbers = {line.piece.mark: line.number for line in cut_lines(plan)}
    blocks: list[Block] = []
    ordered = labelled(plan, LabelOrder.BUNDLE)
    for room in dict.fromkeys(piece.room for piece in ordered):
        ours = [piece for piece in ordered if piece.room == room]
        rows: list[tuple[str | Cell, ...]] = []
        groups = []
        bundles = list(dict.fromkeys(bundle_of(piece, words.skirting) for piece in ours))
        for named in bundles:
            tied = [piece for piece in ours if bundle_of(piece, words.skirting) == named]
            groups.append(
                (
                    len(rows),
                    say(
                        "{named}: {counted}",
                        named=named,
                        counted=say_many("{count} piece", "{count} pieces", count=len(tied)),
                    ),
                )
            )
            for piece in tied:
                figure, how = key_figure(piece, lengths[piece.mark], plan.house.units)
                rows.append(
                    (
                        Cell(text=str(numbers[piece.mark]), blank=Blank.TICK),
                        piece.mark,
                        role_words(piece.role, words),
                        piece.profile,
                        Cell(text=figure, behind=how),
                    )
                )
        title = say(
            "{room}: {counted}",
            room=room or NO_ROOM,
            counted=say_many("{count} bundle", "{count} bundles", count=len(bundles)),
        )
        blocks += [
            Heading(text=title),
            Table(columns=COLUMNS, rows=tuple(rows), groups=tuple(groups), is_close=True),
        ]
    return tuple(blocks)


def _held(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    return (
        Note(
            severity=Severity.WARNING,
            title=say("HOLD"),
            text=say(
                "Held back, so without pieces here: {held}.",
                held=joined(", ", sorted(plan.held)),
            ),
        ),
    )
