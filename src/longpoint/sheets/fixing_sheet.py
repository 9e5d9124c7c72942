"""The fixing sheet: which nail where, how many to load in each room, and in which order."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.fixing.fixing_findings import nail_findings, nail_words
from longpoint.fixing.nailing import NailedPiece, Nailing, Treatment, nail_house
from longpoint.fixing.order_of_work import room_order
from longpoint.fixing.supplies import Packer, Supplies, packers, supplies_for
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import (
    format_length,
    running_length,
)
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Blank,
    Block,
    Cell,
    Column,
    Heading,
    Note,
    Paragraph,
    Sheet,
    SheetState,
    Table,
)
from longpoint.sheets.cautions import nailing_cautions
from longpoint.sheets.dialects import method_short
from longpoint.sheets.finding_note import finding_note
from longpoint.sheets.fixing_basis import holds_compared, what_it_rests_on
from longpoint.sheets.nail_sections import section_blocks
from longpoint.speech.said import joined, raised, say, say_many
from longpoint.survey.fixing import Nail
from longpoint.survey.openings import Method

FIXING_TITLE: Final = say("Fixing")
NO_ROOM: Final = say("No room named")


def fixing_sheets(
    plan: HousePlan, state: SheetState = SheetState.CURRENT, way: Method | None = None
) -> tuple[Sheet, ...]:
    """Return the fixing sheet of a house.

    Args:
        plan: The planned house.
        state: Stale when the readings have changed since the plan was made.
        way: Show the order of work of this way of fixing; None: that of each opening.
    """
    unit = (
        say("All lengths in mm") if plan.house.units is Units.MM else say("All lengths in inches")
    )
    return (
        Sheet(
            name="fixing",
            title=FIXING_TITLE,
            house=plan.house.name,
            readings_code=plan.readings_code,
            state=state,
            subtitle=say("{unit}. Nails are what to try on an offcut first.", unit=unit),
            blocks=fixing_blocks(plan, way),
            cautions=nailing_cautions(plan.house),
        ),
    )


def fixing_blocks(plan: HousePlan, way: Method | None = None) -> tuple[Block, ...]:
    """Return what stands on the fixing sheet."""
    if not plan.pieces:
        return (
            Paragraph(text=say("There is no piece to fix: every place is held, or none was read.")),
        )
    nailing = nail_house(plan.house, plan.pieces)
    return (
        *(finding_note(each, plan.house) for each in nail_findings(plan.house, nailing)),
        *_held(plan),
        *section_blocks(plan, nailing),
        *_not_here(nailing),
        *(block for room in rooms_of(nailing) for block in _room(plan, nailing, room, way)),
        *_packers(plan),
        *holds_compared(plan, nailing),
        *what_it_rests_on(plan, nailing),
    )


def rooms_of(nailing: Nailing) -> tuple[str, ...]:
    """Return the rooms of the pieces in the order of the house."""
    return tuple(dict.fromkeys(each.piece.room for each in nailing.pieces))


def _held(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    places = joined(", ", sorted(plan.held))
    text = say("Held back, so not counted here: {places}.", places=places)
    return (Note(severity=Severity.WARNING, title=say("LOOK · not counted"), text=text),)


def _not_here(nailing: Nailing) -> tuple[Block, ...]:
    """Return which pieces are fixed otherwise than with two lines of nails."""
    said = {
        Treatment.PINNED: say("Glue the back, pins while it sets"),
        Treatment.GLUED: say("Glue alone"),
        Treatment.BACKED: say(
            "Screws or nails through packers: what lies behind a splay isn't known here, so find "
            "it and measure before you choose a length"
        ),
        Treatment.BEDDED: say(
            "Packed level and bedded on adhesive; where it is screwed, through the packers"
        ),
        Treatment.BATTENS: say(
            "On battens screwed to the studs, pinned down to them; what it may carry is for the "
            "makers of screws and board to say"
        ),
        Treatment.BRACKETS: say(
            "On its brackets, each into a stud or backing as its maker says; people lean on it, so "
            "see what the local code asks"
        ),
    }
    found = []
    for treatment, words in said.items():
        marks = [each.piece.mark for each in nailing.pieces if each.treatment is treatment]
        if marks:
            found.append(
                Paragraph(
                    lead=say("{words}:", words=words),
                    text=say(
                        "{marks}.",
                        marks=joined(", ", marks),
                    ),
                )
            )
    return (Heading(text=say("Fixed otherwise")), *found) if found else ()


def _room(plan: HousePlan, nailing: Nailing, room: str, way: Method | None) -> tuple[Block, ...]:
    here = [each for each in nailing.pieces if each.piece.room == room]
    return (
        Heading(text=room or NO_ROOM),
        *_to_load(plan, nailing, here),
        Paragraph(text=_supplies_line(plan, supplies_for(nailing, here))),
        *_orders(plan, here, way),
    )


def _to_load(plan: HousePlan, nailing: Nailing, here: Sequence[NailedPiece]) -> tuple[Block, ...]:
    counts: Counter[tuple[Nail, str]] = Counter()
    marks: dict[tuple[Nail, str], list[str]] = {}
    for nailed in here:
        section = nailing.section(nailed.section)
        if section is None:
            continue
        pairs = zip(section.lines, nailed.counts, strict=True)
        for number, (line, count) in enumerate(pairs, start=1):
            if line.nail is None:
                continue
            key = (line.nail, say("{section}{number}", section=section.name, number=number))
            counts[key] += count
            marks.setdefault(key, []).append(
                say(
                    "{mark} {count}",
                    mark=nailed.piece.mark,
                    count=count,
                )
            )
    if not counts:
        return ()
    per_nail: Counter[Nail] = Counter()
    for (nail, _), count in counts.items():
        per_nail[nail] += count
    ordered = sorted(counts, key=lambda key: (key[0].gauge, key[0].length_mm, key[1]))
    rows: list[tuple[str | Cell, ...]] = []
    groups: list[tuple[int, str]] = []
    last: Nail | None = None
    for key in ordered:
        nail, line_name = key
        if nail != last:
            name = nail_words(nail, plan.house.units)
            groups.append(
                (
                    len(rows),
                    say(
                        "Load {name}: {per_nail}",
                        name=name,
                        per_nail=per_nail[nail],
                    ),
                )
            )
            last = nail
        rows.append(
            (
                line_name,
                Cell(small=(joined(", ", marks[key]),)),
                say(
                    "{counts}",
                    counts=counts[key],
                ),
            )
        )
    columns = (
        Column(title=say("Line"), share=0.8),
        Column(title=say("Pieces and how many in each"), share=8.0),
        Column(title=say("Nails"), is_number=True, share=1.0),
    )
    return (Table(columns=columns, rows=tuple(rows), groups=tuple(groups), is_close=True),)


def _supplies_line(plan: HousePlan, need: Supplies) -> str:
    units = plan.house.units
    parts = []
    if need.mitres:
        joints = say("joint") if need.mitres == 1 else say("joints")
        parts.append(
            say(
                "glue {glue_ml:.1f} ml for {mitres} glued {joints}",
                glue_ml=need.glue_ml,
                mitres=need.mitres,
                joints=joints,
            )
        )
    if need.back_glue_ml >= 0.5:
        parts.append(
            say(
                "{back_glue_ml:.0f} ml more on backs that no nail holds",
                back_glue_ml=need.back_glue_ml,
            )
        )
    if need.pins:
        parts.append(say("{pins} pins", pins=need.pins))
    if need.holes:
        parts.append(
            say(
                "filler {filler_ml:.1f} ml for {holes} holes",
                filler_ml=need.filler_ml,
                holes=need.holes,
            )
        )
    if need.mitres:
        low, high = need.discs
        discs = say("{low}", low=low) if low == high else say("{low} to {high}", low=low, high=high)
        parts.append(
            say_many(
                "{discs} sanding disc (120)",
                "{discs} sanding discs (120)",
                count=high,
                discs=discs,
            )
        )
    if need.caulk_mm:
        caulk = running_length(need.caulk_mm, units)
        parts.append(
            say(
                "caulk {caulk_ml:.0f} ml for {caulk} of edge",
                caulk_ml=need.caulk_ml,
                caulk=caulk,
            )
        )
    if not parts:
        return say("Nothing else is used up here.")
    text = joined("; ", parts)
    return say("{text}.", text=raised(text))


def _orders(plan: HousePlan, here: Iterable[NailedPiece], way: Method | None) -> tuple[Block, ...]:
    pieces = [each.piece for each in here]
    methods = tuple(dict.fromkeys(p.method for p in pieces if p.method is not None))
    blocks: list[Block] = []
    for index, method in enumerate(methods or (Method.BATCH,)):
        if way is not None and index:
            break
        own = [
            piece
            for piece in pieces
            if way is not None or piece.method is method or (piece.method is None and not index)
        ]
        kept = way or method
        rows: tuple[tuple[str | Cell, ...], ...] = tuple(
            (
                Cell(text=say("{number}", number=number), blank=Blank.TICK),
                Cell(text=step.what, small=_marks(step.marks)),
            )
            for number, step in enumerate(room_order(own, kept), start=1)
        )
        columns = (
            Column(title=say("Step"), share=1.0),
            Column(title=say("What is done"), share=9.0),
        )
        caption = say("In this order ({method_short})", method_short=method_short(kept))
        if way is not None and methods and way not in methods:
            caption += say(
                "; the lengths were made for {method_short}",
                method_short=method_short(methods[0]),
            )
        blocks.append(Table(columns=columns, rows=rows, caption=caption, is_close=True))
    return tuple(blocks)


def _marks(marks: tuple[str, ...]) -> tuple[str, ...]:
    return (joined(", ", marks),) if marks else ()


def _packers(plan: HousePlan) -> tuple[Block, ...]:
    found = packers(plan.house)
    if not found:
        return ()
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            mark,
            _corners(plan, mark, found, is_behind_inner=True),
            _corners(plan, mark, found, is_behind_inner=False),
        )
        for mark in dict.fromkeys(packer.opening for packer in found)
    )
    columns = (
        Column(title=say("Opening"), share=1.2),
        Column(title=say("Lining shy: pack between lining and trim"), share=4.0),
        Column(title=say("Lining proud: pack under the outer edge, or relieve the cut"), share=4.0),
    )
    return (
        Heading(text=say("Packers and wedges")),
        Table(columns=columns, rows=rows, is_close=True),
    )


def _corners(plan: HousePlan, mark: str, found: Iterable[Packer], *, is_behind_inner: bool) -> str:
    units = plan.house.units
    return joined(
        ", ",
        (
            say(
                "{corner} {thickness}",
                corner=packer.corner,
                thickness=format_length(packer.thickness_mm, units),
            )
            for packer in found
            if packer.opening == mark and packer.is_behind_inner is is_behind_inner
        ),
    )
