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
from longpoint.sheets.settings_table import counted

COLUMNS: Final = (
    Column(title="In", share=1.3),
    Column(title="Piece", share=3.2),
    Column(title="What it is", share=2.4),
    Column(title="Profile", share=1.8),
    Column(title="Cut to", is_number=True, share=1.9),
)
NO_ROOM: Final = "No room named"


def bundle_sheet(plan: HousePlan) -> Sheet:
    """Return the list by which pieces are tied together and carried to their rooms."""
    unit = "mm" if plan.house.units is Units.MM else "inches"
    return Sheet(
        name="bundles",
        title="Bundles",
        house=plan.house.name,
        readings_code=plan.readings_code,
        subtitle=f"All lengths in {unit}. One bundle for each place; tick each piece as it goes "
        "in. The number is that of the cutting list.",
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
            groups.append((len(rows), f"{named}: {counted(len(tied), 'piece')}"))
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
        title = f"{room or NO_ROOM}: {counted(len(bundles), 'bundle')}"
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
            title="HOLD",
            text=f"Held back, so without pieces here: {', '.join(sorted(plan.held))}.",
        ),
    )
