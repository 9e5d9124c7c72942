"""What the fixing sheet rests on: how nails compare, and where its figures come from."""

from longpoint.fixing.fixing_findings import nail_words
from longpoint.fixing.gauges import thinnest_mm
from longpoint.fixing.nail_lines import (
    FRAMING,
    HELD_TIMES,
    INTO_LINING_MM,
    INTO_STUD_MM,
    PUNCHED_MM,
    NailLine,
)
from longpoint.fixing.nailing import Nailing, Treatment
from longpoint.fixing.other_beds import CORNICE_EDGE_MM, PACKED_APART_MM
from longpoint.fixing.wall_behind import Figure, Rests
from longpoint.fixing.withdrawal import ASSUMED_WOOD, REFERENCE_DEPTH_MM, reference_nails
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Table, Together
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, raised, say


def holds_compared(plan: HousePlan, nailing: Nailing) -> tuple[Block, ...]:
    """Return the table that sets each line's nail against a reference nail.

    Args:
        plan: The planned house.
        nailing: How its pieces are nailed.
    """
    rows: list[tuple[str | Cell, ...]] = []
    units, wood = plan.house.units, plan.house.fixing.frame_wood or shown(ASSUMED_WOOD)
    for section in nailing.sections:
        for number, line in enumerate(section.lines, start=1):
            if line.nail is None:
                continue
            hold_mm = line.bed.hold_mm(line.nail)
            worth = reference_nails(thinnest_mm(line.nail), hold_mm, _timber(line, wood))
            asked = format_length(HELD_TIMES * section.thickness_mm, units)
            rows.append(
                (
                    say("{section}{number}", section=section.name, number=number),
                    nail_words(line.nail, units),
                    format_length(hold_mm, units),
                    say("{worth:.1f}", worth=worth),
                    asked,
                )
            )
    if not rows:
        return ()
    columns = (
        Column(title=say("Line"), share=1.0),
        Column(title=say("Nail"), share=3.0),
        Column(title=say("Holds over"), is_number=True, share=1.6),
        Column(title=say("Worth so many reference nails"), is_number=True, share=2.2),
        Column(title=say("Three times the trim"), is_number=True, share=1.8),
    )
    return (
        Together(
            blocks=(
                Heading(text=say("One nail's hold against another's")),
                Table(columns=columns, rows=tuple(rows), is_close=True),
                Paragraph(
                    text=say(
                        "A comparison, not what a nail carries. The published "
                        "formula (USDA FPL-093: density to the power 2.5, times "
                        "diameter, times depth) was found for bright common "
                        "nails; finish nails were not tested. One reference nail: "
                        "16 gauge, {reference_depth} deep in {assumed_wood}. "
                        "Studs are taken as {wood}. The last column is the older "
                        "rule of a nail three times as long as what it holds is "
                        "thick (US Navy manual); finish work seldom keeps it.",
                        reference_depth=format_with_unit(REFERENCE_DEPTH_MM, units),
                        assumed_wood=shown(ASSUMED_WOOD),
                        wood=wood,
                    ),
                    is_small=True,
                ),
            )
        ),
    )


def _timber(line: NailLine, wood: str) -> str:
    """Return the timber that a line holds in; a lining's isn't told, so it is the assumed one."""
    return wood if line.bed.into in FRAMING else ASSUMED_WOOD


def _of_others(nailing: Nailing, units: Units) -> tuple[Paragraph, ...]:
    """Return what the nails of cornices and linings rest on, where there are any."""
    here = {section.treatment for section in nailing.sections}
    said = {
        Treatment.CEILING: say(
            "A cornice is nailed square to wall and ceiling, {edge} in from its edges, which are "
            "taken as half as thick as it is at most where no thin_edge is told: ours, no source.",
            edge=format_with_unit(CORNICE_EDGE_MM, units),
        ),
        Treatment.LINED: say(
            "A lining is nailed through packers no more than {apart} apart: common practice, no "
            "source.",
            apart=format_with_unit(PACKED_APART_MM, units),
        ),
    }
    return tuple(Paragraph(text=text, is_small=True) for key, text in said.items() if key in here)


def what_it_rests_on(plan: HousePlan, nailing: Nailing) -> tuple[Block, ...]:
    """Return the figures that the lines of nails were worked out from, each with its source.

    Args:
        plan: The planned house.
        nailing: How its pieces are nailed.
    """
    units = plan.house.units
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            raised(shown(figure.name)),
            format_length(figure.value_mm, units),
            _source(figure),
        )
        for figure in nailing.wall.figures()
    )
    columns = (
        Column(title=say("What was taken"), share=3.0),
        Column(title=say("Figure"), is_number=True, share=1.2),
        Column(title=say("Rests on"), share=4.0),
    )
    thin = [s.profile for s in nailing.sections if s.thin_mm < s.thickness_mm]
    edge = (
        say("A section is taken as thick at its inner edge as at its thickest")
        + (say(", but for {fromkeys}", fromkeys=joined(", ", dict.fromkeys(thin))) if thin else "")
        + say(": where it is thinner a nail goes deeper, so measure it there (thin_edge).")
    )
    return (
        Together(
            blocks=(
                Heading(text=say("What this rests on")),
                Table(columns=columns, rows=rows, is_close=True),
                Paragraph(
                    text=say(
                        "{edge} At least {into_stud} in a stud: guides to nails. "
                        "That a nail in the lining stays in it even when the "
                        "grain turns it, at least {into_lining} in it, a head "
                        "punched {punched}, the distances from edges, glue, "
                        "filler, discs and caulk: common practice, no source. "
                        "Change the figures under [fixing] in the house file.",
                        edge=edge,
                        into_stud=format_with_unit(INTO_STUD_MM, units),
                        into_lining=format_with_unit(INTO_LINING_MM, units),
                        punched=format_with_unit(PUNCHED_MM, units),
                    ),
                    is_small=True,
                ),
                *_of_others(nailing, units),
            )
        ),
    )


def _source(figure: Figure) -> str:
    if figure.rests is Rests.READ:
        return figure.source
    return shown(figure.rests.value)
