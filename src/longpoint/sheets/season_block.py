"""What the seasons do to the joints once they are up, and what keeps them shut."""

from typing import Final

from longpoint.forecast.house_season import HouseSeason
from longpoint.forecast.season.joint_opening import JointEnd
from longpoint.forecast.season.seasons import LIMIT_MM, SeasonOpening, SeasonOutlook
from longpoint.forecast.verdicts import in_hundred
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_gap, format_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Column, Heading, Paragraph, Table, Together
from longpoint.sheets.value_words import shown
from longpoint.speech.said import joined, raised, say

NOTHING: Final = say("stays shut")


def season_blocks(plan: HousePlan, season: HouseSeason) -> tuple[Block, ...]:
    """Return how far the joints open in the driest and the dampest season, and what helps.

    Args:
        plan: The planned house.
        season: What the seasons do to its joints.
    """
    if season.trouble:
        heading = Heading(text=say("What the seasons do to it"), level=3)
        return (Together(blocks=(heading, Paragraph(text=season.trouble))),)
    if not season.outlooks:
        return ()
    units = plan.house.units
    columns = (
        Column(title=say("After fitting"), share=2.4),
        Column(title=_column_title(season.outlooks[0].driest), share=2.6),
        Column(title=_column_title(season.outlooks[0].dampest), share=2.6),
    )
    rows = tuple(_row(outlook, units) for outlook in season.outlooks)
    limit = say(
        "{limit} {units}",
        limit=format_gap(LIMIT_MM, units),
        units=format_unit(units),
    )
    said = [
        say(
            "Fitted at {fitted_percent:.0f} % moisture. How far a joint opens if "
            "nothing holds it, and how many in 100 then stand open more than {limit} "
            "with glue or pins alone.",
            fitted_percent=season.fitted_percent,
            limit=limit,
        ),
    ]
    if season.assumed:
        said.append(say("The air of the house is assumed: write [season]."))
    said += [say("{each}.", each=each) for each in season.taken_for_granted]
    blocks: list[Heading | Table | Paragraph] = [
        Heading(text=say("What the seasons do to it"), level=3),
        Table(columns=columns, rows=rows),
        Paragraph(text=joined(" ", said), is_small=True),
    ]
    if season.advice:
        helps = joined(" ", (advice.words for advice in season.advice))
        blocks.append(
            Paragraph(
                text=say(
                    "What helps, the most first, with glue or pins alone: {helps}",
                    helps=helps,
                )
            )
        )
    return (Together(blocks=tuple(blocks)),)


def _column_title(opening: SeasonOpening) -> str:
    season = opening.season
    return say(
        "{season}, {humidity_percent:.0f} % air",
        season=raised(season.name),
        humidity_percent=season.humidity_percent,
    )


def _row(outlook: SeasonOutlook, units: Units) -> tuple[str, ...]:
    return (
        outlook.joint.place,
        _opens(outlook.driest, units),
        _opens(outlook.dampest, units),
    )


def _opens(opening: SeasonOpening, units: Units) -> str:
    if not opening.end.is_seen:
        return NOTHING
    gap = say(
        "{free} {units}",
        free=format_gap(opening.free_mm, units),
        units=format_unit(units),
    )
    end = "" if opening.end is JointEnd.FACE else say(" at the {end}", end=shown(opening.end.value))
    return say(
        "{gap}{end}, {in_hundred}",
        gap=gap,
        end=end,
        in_hundred=in_hundred(opening.chance_over_limit),
    )
