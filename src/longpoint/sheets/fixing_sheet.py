"""The fixing sheet: which nail where, how many to load in each room, and in which order."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.fixing.cable_zones import cable_rule
from longpoint.fixing.fixing_findings import nail_findings, nail_words
from longpoint.fixing.nail_lines import Into, NailLine, Standing
from longpoint.fixing.nailing import NailedPiece, Nailing, Section, Treatment, nail_house
from longpoint.fixing.order_of_work import room_order
from longpoint.fixing.supplies import Packer, Supplies, packers, supplies_for
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Beside,
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
    Together,
)
from longpoint.sheets.cautions import nailing_cautions
from longpoint.sheets.dialects import Words, method_short, words_for
from longpoint.sheets.finding_note import finding_note
from longpoint.sheets.fixing_basis import holds_compared, what_it_rests_on
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.sheets.nail_picture import nail_picture
from longpoint.survey.fixing import Nail
from longpoint.survey.openings import Method

FIXING_TITLE: Final = "Fixing"
NO_ROOM: Final = "No room named"


def fixing_sheets(
    plan: HousePlan, state: SheetState = SheetState.CURRENT, way: Method | None = None
) -> tuple[Sheet, ...]:
    """Return the fixing sheet of a house.

    Args:
        plan: The planned house.
        state: Stale when the readings have changed since the plan was made.
        way: Show the order of work of this way of fixing; None: that of each opening.
    """
    unit = "All lengths in mm" if plan.house.units is Units.MM else "All lengths in inches"
    return (
        Sheet(
            name="fixing",
            title=FIXING_TITLE,
            house=plan.house.name,
            readings_code=plan.readings_code,
            state=state,
            subtitle=f"{unit}. Nails are what to try on an offcut first.",
            blocks=fixing_blocks(plan, way),
            cautions=nailing_cautions(plan.house),
        ),
    )


def fixing_blocks(plan: HousePlan, way: Method | None = None) -> tuple[Block, ...]:
    """Return what stands on the fixing sheet."""
    if not plan.pieces:
        return (Paragraph(text="There is no piece to fix: every place is held, or none was read."),)
    nailing = nail_house(plan.house, plan.pieces)
    return (
        *(finding_note(each, plan.house) for each in nail_findings(plan.house, nailing)),
        *_held(plan),
        *_sections(plan, nailing),
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
    places = ", ".join(sorted(plan.held))
    text = f"Held back, so not counted here: {places}."
    return (Note(severity=Severity.WARNING, title="LOOK · not counted", text=text),)


def _sections(plan: HousePlan, nailing: Nailing) -> list[Block]:
    words = words_for(plan.house.dialect)
    rule = cable_rule(nailing.wall.country)
    blocks: list[Block] = [
        Heading(text="Where the lines run"),
        Paragraph(
            text="Each section is drawn in true proportion. Line 1 is the one nearer to the "
            f"opening, or to the floor. {rule.said}",
        ),
    ]
    for section in nailing.sections:
        table = _line_table(plan, nailing, section)
        blocks.append(
            Together(
                blocks=(
                    Heading(text=_section_title(plan, section, words), level=3),
                    Beside(
                        left=(nail_picture(section, nailing.wall),),
                        right=(table,),
                        left_share=0.46,
                    ),
                )
            )
        )
    return blocks


def _section_title(plan: HousePlan, section: Section, words: Words) -> str:
    units = plan.house.units
    size = f"{format_length(section.width_mm, units)} x "
    size += format_length(section.thickness_mm, units)
    title = f"{section.name} · {section.profile}, {size}"
    match section.treatment:
        case Treatment.SET:
            lining = format_length(section.lining_mm, units)
            quirk = format_length(section.quirk_mm, units)
            return f"{title}, over a lining of {lining}, {words.quirk} {quirk}"
        case Treatment.UNDER:
            return f"{title}, onto the lining"
        case _:
            return f"{title}, to the studs"


def _line_table(plan: HousePlan, nailing: Nailing, section: Section) -> Table:
    units = plan.house.units
    rows: list[tuple[str | Cell, ...]] = []
    under = []
    for index, line in enumerate(section.lines):
        rows.append(_line_row(plan, line, index + 1))
        under.append((index, _line_said(plan, nailing, line, units)))
    columns = (
        Column(title="Line", share=1.6),
        Column(title="Nail", share=3.0),
        Column(title="In from the edge", is_number=True, share=1.6),
    )
    return Table(columns=columns, rows=tuple(rows), under=tuple(under), under_is_said=True)


def _line_row(plan: HousePlan, line: NailLine, number: int) -> tuple[str | Cell, ...]:
    units = plan.house.units
    into = "lining" if line.bed.into is Into.UNDER else line.bed.into.value
    edge = format_length(line.from_edge_mm, units)
    name = Cell(text=f"{number}", small=(into,))
    passed, verdict = {
        Standing.HELD: (Passed.YES, "you have it"),
        Standing.OTHER: (Passed.NO, "NOT YOURS: get this one"),
        Standing.USUAL: (Passed.NO_NUMBER, "usual size"),
        Standing.NONE: (Passed.NO, "glue and pins"),
    }[line.standing]
    nail = "NO NAIL" if line.nail is None else nail_words(line.nail, units)
    return (name, Cell(text=nail, small=(verdict,), picture=mark_picture(passed)), edge)


def _line_said(plan: HousePlan, nailing: Nailing, line: NailLine, units: Units) -> str:
    if line.nail is None:
        return f"{line.why_none[0].upper()}{line.why_none[1:]}."
    hold = format_with_unit(line.bed.hold_mm(line.nail), units)
    tip_mm = line.bed.tip_mm(line.nail)
    tip = format_with_unit(tip_mm, units)
    if line.bed.into is Into.UNDER:
        return f"{hold} of it hold."
    said = f"{hold} of it hold; punched, its tip is {tip} below the wall's face"
    board_mm = nailing.wall.board.value_mm
    if line.bed.into is Into.STUD:
        past = format_with_unit(max(0.0, tip_mm - board_mm), units)
        said += f", {past} past the board"
    rule = cable_rule(nailing.wall.country)
    if rule.depth_mm is None:
        return f"{said}."
    limit = format_with_unit(rule.depth_mm, units)
    if tip_mm > rule.depth_mm:
        return f"{said}. PAST {limit}: a cable may run there anywhere."
    return f"{said}; less than {limit}."


def _not_here(nailing: Nailing) -> tuple[Block, ...]:
    """Return which pieces are fixed otherwise than with two lines of nails."""
    said = {
        Treatment.PINNED: "Glue the back, pins while it sets",
        Treatment.GLUED: "Glue alone",
        Treatment.OTHER: "Screws, brackets or backing, as the maker or the wall asks",
    }
    found = []
    for treatment, words in said.items():
        marks = [each.piece.mark for each in nailing.pieces if each.treatment is treatment]
        if marks:
            found.append(Paragraph(lead=f"{words}:", text=f"{', '.join(marks)}."))
    return (Heading(text="Fixed otherwise"), *found) if found else ()


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
            key = (line.nail, f"{section.name}{number}")
            counts[key] += count
            marks.setdefault(key, []).append(f"{nailed.piece.mark} {count}")
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
            groups.append((len(rows), f"Load {name}: {per_nail[nail]}"))
            last = nail
        rows.append((line_name, Cell(small=(", ".join(marks[key]),)), f"{counts[key]}"))
    columns = (
        Column(title="Line", share=0.8),
        Column(title="Pieces and how many in each", share=8.0),
        Column(title="Nails", is_number=True, share=1.0),
    )
    return (Table(columns=columns, rows=tuple(rows), groups=tuple(groups), is_close=True),)


def _supplies_line(plan: HousePlan, need: Supplies) -> str:
    units = plan.house.units
    parts = []
    if need.mitres:
        joints = "joint" if need.mitres == 1 else "joints"
        parts.append(f"glue {need.glue_ml:.1f} ml for {need.mitres} glued {joints}")
    if need.back_glue_ml >= 0.5:
        parts.append(f"{need.back_glue_ml:.0f} ml more on backs that no nail holds")
    if need.pins:
        parts.append(f"{need.pins} pins")
    if need.holes:
        parts.append(f"filler {need.filler_ml:.1f} ml for {need.holes} holes")
    if need.mitres:
        low, high = need.discs
        discs = f"{low}" if low == high else f"{low} to {high}"
        parts.append(f"{discs} sanding disc{'' if high == 1 else 's'} (120)")
    if need.caulk_mm:
        caulk = running_length(need.caulk_mm, units)
        parts.append(f"caulk {need.caulk_ml:.0f} ml for {caulk} of edge")
    if not parts:
        return "Nothing else is used up here."
    text = "; ".join(parts)
    return f"{text[0].upper()}{text[1:]}."


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
        shown = way or method
        rows: tuple[tuple[str | Cell, ...], ...] = tuple(
            (
                Cell(text=f"{number}", blank=Blank.TICK),
                Cell(text=step.what, small=_marks(step.marks)),
            )
            for number, step in enumerate(room_order(own, shown), start=1)
        )
        columns = (Column(title="Step", share=1.0), Column(title="What is done", share=9.0))
        caption = f"In this order ({method_short(shown)})"
        if way is not None and methods and way not in methods:
            caption += f"; the lengths were made for {method_short(methods[0])}"
        blocks.append(Table(columns=columns, rows=rows, caption=caption, is_close=True))
    return tuple(blocks)


def _marks(marks: tuple[str, ...]) -> tuple[str, ...]:
    return (", ".join(marks),) if marks else ()


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
        Column(title="Opening", share=1.2),
        Column(title="Lining shy: pack between lining and trim", share=4.0),
        Column(title="Lining proud: pack under the outer edge, or relieve the cut", share=4.0),
    )
    return (
        Heading(text="Packers and wedges"),
        Table(columns=columns, rows=rows, is_close=True),
    )


def _corners(plan: HousePlan, mark: str, found: Iterable[Packer], *, is_behind_inner: bool) -> str:
    units = plan.house.units
    return ", ".join(
        f"{packer.corner} {format_length(packer.thickness_mm, units)}"
        for packer in found
        if packer.opening == mark and packer.is_behind_inner is is_behind_inner
    )
