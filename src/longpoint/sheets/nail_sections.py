"""The kinds of section that are nailed alike: where their lines run, with which nails."""

from longpoint.fixing.cable_zones import cable_rule
from longpoint.fixing.fixing_findings import nail_words
from longpoint.fixing.nail_lines import Into, NailLine, Standing, into_words
from longpoint.fixing.nailing import Nailing, Section, Treatment
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import (
    format_angle,
    format_length,
    format_with_unit,
)
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Beside,
    Block,
    Cell,
    Column,
    Heading,
    Paragraph,
    Table,
    Together,
)
from longpoint.sheets.dialects import Words, words_for
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.sheets.nail_picture import nail_picture
from longpoint.speech.said import raised, say


def section_blocks(plan: HousePlan, nailing: Nailing) -> list[Block]:
    """Return each kind of section with its picture, its nails and how deep they go.

    Args:
        plan: The planned house.
        nailing: How its pieces are nailed.
    """
    words = words_for(plan.house.dialect)
    rule = cable_rule(nailing.wall.country)
    blocks: list[Block] = [
        Heading(text=say("Where the lines run")),
        Paragraph(
            text=say(
                "Each section is drawn in true proportion. Line 1 is the one "
                "nearer to the opening, or to the floor. {said}",
                said=rule.said,
            ),
        ),
    ]
    for section in nailing.sections:
        table = _line_table(plan, nailing, section)
        blocks.append(
            Together(
                blocks=(
                    Heading(text=_section_title(plan, section, words), level=3),
                    Beside(
                        left=(nail_picture(section, nailing.wall, plan.house.units),),
                        right=(table,),
                        left_share=0.46,
                    ),
                )
            )
        )
    return blocks


def _section_title(plan: HousePlan, section: Section, words: Words) -> str:
    units = plan.house.units
    size = say("{width} x ", width=format_length(section.width_mm, units))
    size += format_length(section.thickness_mm, units)
    title = say(
        "{section} · {profile}, {size}",
        section=section.name,
        profile=section.profile,
        size=size,
    )
    match section.treatment:
        case Treatment.SET:
            lining = format_length(section.lining_mm, units)
            quirk = format_length(section.quirk_mm, units)
            return say(
                "{title}, over a lining of {lining}, {quirk} {quirk_2}",
                title=title,
                lining=lining,
                quirk=words.quirk,
                quirk_2=quirk,
            )
        case Treatment.UNDER:
            return say("{title}, onto the lining", title=title)
        case Treatment.CEILING:
            return say(
                "{title}, {thin} at its edges, to wall and ceiling, {spring} degrees off the wall",
                title=title,
                thin=format_length(section.thin_mm, units),
                spring=format_angle(section.spring_deg),
            )
        case Treatment.LINED:
            return say("{title}, through its packers to the stud", title=title)
        case _:
            return say("{title}, to the studs", title=title)


def _line_table(plan: HousePlan, nailing: Nailing, section: Section) -> Table:
    units = plan.house.units
    rows: list[tuple[str | Cell, ...]] = []
    under = []
    for index, line in enumerate(section.lines):
        rows.append(_line_row(plan, line, index + 1, is_in_pairs=section.in_a_row > 1))
        under.append((index, _line_said(nailing, section, line, units)))
    columns = (
        Column(title=say("Line"), share=1.6),
        Column(title=say("Nail"), share=3.0),
        Column(title=say("In from the edge"), is_number=True, share=1.6),
    )
    return Table(columns=columns, rows=tuple(rows), under=tuple(under), under_is_said=True)


def _line_row(
    plan: HousePlan, line: NailLine, number: int, *, is_in_pairs: bool
) -> tuple[str | Cell, ...]:
    units = plan.house.units
    into = into_words(Into.LINING if line.bed.into is Into.UNDER else line.bed.into)
    edge = format_length(line.from_edge_mm, units)
    if is_in_pairs:
        edge = say("{edge}, both edges", edge=edge)
    name = Cell(text=say("{number}", number=number), small=(into,))
    passed, verdict = {
        Standing.HELD: (Passed.YES, say("you have it")),
        Standing.OTHER: (Passed.NO, say("NOT YOURS: get this one")),
        Standing.USUAL: (Passed.NO_NUMBER, say("usual size")),
        Standing.NONE: (Passed.NO, say("glue and pins")),
    }[line.standing]
    nail = say("NO NAIL") if line.nail is None else nail_words(line.nail, units)
    return (name, Cell(text=nail, small=(verdict,), picture=mark_picture(passed)), edge)


def _line_said(nailing: Nailing, section: Section, line: NailLine, units: Units) -> str:
    if line.nail is None:
        return say("{why_none}.", why_none=raised(line.why_none))
    hold = format_with_unit(line.bed.hold_mm(line.nail), units)
    tip_mm = line.bed.tip_mm(line.nail)
    tip = format_with_unit(tip_mm, units)
    if line.bed.into is Into.UNDER or section.treatment is Treatment.LINED:
        return say("{hold} of it hold.", hold=hold)
    if line.bed.into is Into.JOIST:
        return say(
            "{hold} of it hold where a joist, plate or backing is; between joists that run along "
            "the wall put in blocks, or glue that edge.",
            hold=hold,
        )
    said = say(
        "{hold} of it hold; punched, its tip is {tip} below the wall's face",
        hold=hold,
        tip=tip,
    )
    board_mm = nailing.wall.board.value_mm
    if line.bed.into is Into.STUD:
        past = format_with_unit(max(0.0, tip_mm - board_mm), units)
        said += say(", {past} past the board", past=past)
    rule = cable_rule(nailing.wall.country)
    if rule.depth_mm is None:
        return say("{said}.", said=said)
    limit = format_with_unit(rule.depth_mm, units)
    if tip_mm > rule.depth_mm:
        return say(
            "{said}. PAST {limit}: a cable may run there anywhere.",
            said=said,
            limit=limit,
        )
    return say("{said}; less than {limit}.", said=said, limit=limit)
