"""The sheet to check a delivery by, and how dry the timber should be."""

from collections.abc import Sequence
from typing import Final

from longpoint.errors import QuantityError, Severity
from longpoint.forecast.season.emc import equilibrium_moisture_percent
from longpoint.quantities.formatting import format_length
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
    Table,
)
from longpoint.sheets.cautions import common_cautions
from longpoint.sheets.profile_words import section_words
from longpoint.speech.said import joined, say
from longpoint.sticks.order_lines import OrderLine
from longpoint.survey.house import House
from longpoint.survey.season import Air

COLUMNS: Final = (
    Column(title=say("Profile"), share=2.6),
    Column(title=say("Length"), is_number=True, is_key=True, share=1.5),
    Column(title=say("Ordered"), is_number=True, share=1.2),
    Column(title=say("Came"), share=1.2),
    Column(title=say("Face x thickness"), share=2.2),
    Column(title=say("Most bowed"), share=1.5),
    Column(title=say("Moisture %"), share=1.4),
    Column(title=say("Good"), is_number=True, share=0.8),
)


def delivery_sheet(house: House, lines: Sequence[OrderLine], readings_code: str) -> Sheet:
    """Return the sheet by which a delivery is checked, with room for what is found.

    Args:
        house: The house.
        lines: What was ordered.
        readings_code: Code of the readings that the plan was made from.
    """
    unit = say("mm") if house.units is Units.MM else say("inches")
    return Sheet(
        name="delivery",
        title=say("Delivery"),
        house=house.name,
        readings_code=readings_code,
        subtitle=say(
            "All lengths in {unit}. Check before it is unloaded; write what you find.",
            unit=unit,
        ),
        blocks=_blocks(house, lines),
        cautions=common_cautions(),
    )


def moisture_range(house: House) -> tuple[float, float] | None:
    """Return what solid timber settles at in the driest and dampest air of the house. [%]

    None where the air is outside the published table.
    """
    seasons = house.seasons
    try:
        return _settles(seasons.driest), _settles(seasons.dampest)
    except QuantityError:
        return None


def _settles(air: Air) -> float:
    return equilibrium_moisture_percent(air.temperature_c, air.humidity_percent)


def _blocks(house: House, lines: Sequence[OrderLine]) -> tuple[Block, ...]:
    if not lines:
        return (Paragraph(text=say("Nothing was ordered.")),)
    blocks: list[Block] = []
    for supplier in dict.fromkeys(line.supplier for line in lines):
        ours = [line for line in lines if line.supplier == supplier]
        blocks += [
            Heading(text=supplier or say("Supplier not named")),
            Table(columns=COLUMNS, rows=tuple(_row(line, house.units) for line in ours)),
        ]
    return (*blocks, Heading(text=say("How to check")), *_how(house, lines[0]))


def _row(line: OrderLine, units: Units) -> tuple[str | Cell, ...]:
    line_blank = Cell(blank=Blank.LINE)
    return (
        Cell(text=line.profile.name, small=(section_words(line.profile, units),)),
        format_length(line.length_mm, units),
        Cell(
            text=say("{count}", count=line.count),
            small=(say("{spares} spare", spares=line.spares),) if line.spares else (),
        ),
        line_blank,
        line_blank,
        line_blank,
        line_blank,
        Cell(blank=Blank.TICK),
    )


def _how(house: House, line: OrderLine) -> tuple[Block, ...]:
    blocks: list[Block] = [
        Paragraph(
            lead=say("Count."),
            text=say("Each length by itself; measure the first of every bundle."),
        ),
        Paragraph(
            lead=say("Profile."),
            text=say(
                "Face and thickness of one stick of each bundle, and its shape "
                "against an offcut. A near profile is no substitute: every piece "
                "is worked out for this section."
            ),
        ),
        Paragraph(
            lead=say("Straight."),
            text=say(
                "Sight along each stick; on the worst, draw a string from end to "
                "end and write the largest gap, over the length of the stick. No "
                "figure is set here: a bow that two fingers press out is taken up "
                "by the nails, a stick that is bent in its face isn't; common "
                "practice, no source."
            ),
        ),
    ]
    between = moisture_range(house)
    if between is None:
        said = say("Read with a meter, in the middle of a stick.")
    else:
        assumed = say(" (assumed: write [season])") if house.seasons.assumed else ""
        said = say(
            "Read with a meter, in the middle of a stick. In the air of this "
            "house{assumed} solid timber settles between {between:.0f} % and "
            "{between_2:.0f} %; wetter than that, it shrinks after it is up. MDF "
            "settles at other figures.",
            assumed=assumed,
            between=between[0],
            between_2=between[1],
        )
    blocks.append(Paragraph(lead=say("Moisture."), text=said))
    blocks.append(
        Note(
            severity=Severity.NOTE,
            title=say("Tell what you found"),
            text=say(
                "longpoint delivery SHEETS {told}: the rest is planned with what is there.",
                told=_told(line, house.units),
            ),
        )
    )
    return tuple(blocks)


def _told(line: OrderLine, units: Units) -> str:
    """Return sentences that could be told of a line, each in quotes."""
    name, length = line.profile.name, format_length(line.length_mm, units)
    section = joined(
        " ",
        (
            format_length(each_mm, units)
            for each_mm in (line.profile.width_mm, line.profile.thickness_mm)
        ),
    )
    told = (
        say("came {name} {length} {count}", name=name, length=length, count=line.count),
        say("crooked {name} {length} 1", name=name, length=length),
        say("section {name} {section}", name=name, section=section),
        say("moisture {name} 16", name=name),
    )
    return joined(" ", (say('"{each}"', each=each) for each in told))
