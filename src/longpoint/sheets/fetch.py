"""Which offcuts to fetch from the rack, by label."""

from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.sheets.blocks import Blank, Block, Cell, Column, Heading, Paragraph, Table
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import CutStick, StickSource


def fetched(plan: HousePlan) -> tuple[CutStick, ...]:
    """Return the sticks of a plan that are offcuts with a label."""
    return tuple(
        stick
        for stick in plan.cut_plan.sticks
        if stick.label and stick.source is StickSource.OFFCUT
    )


def fetch_line(plan: HousePlan) -> str:
    """Return what to fetch in one line; empty where there is nothing."""
    told = joined(
        ", ",
        (
            say(
                "{label} ({profile} {length})",
                label=stick.label,
                profile=stick.profile,
                length=format_with_unit(stick.length_mm, plan.house.units),
            )
            for stick in fetched(plan)
        ),
    )
    return say("Fetch from the rack: {told}.", told=told) if told else ""


def fetch_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return the list to go to the rack with; nothing where nothing is fetched."""
    sticks = fetched(plan)
    if not sticks:
        return ()
    return (
        Heading(text=say("Fetch from the rack")),
        Table(
            columns=(
                Column(title=say("Label"), is_key=True, share=1.6),
                Column(title=say("Profile"), share=2.2),
                Column(title=say("Length"), is_number=True, share=1.6),
                Column(title=say("Cut as"), share=1.8),
                Column(title=say("Here"), is_number=True, share=0.9),
            ),
            rows=tuple(
                (
                    stick.label,
                    stick.profile,
                    format_length(stick.length_mm, plan.house.units),
                    stick.name,
                    Cell(blank=Blank.TICK),
                )
                for stick in sticks
            ),
        ),
        Paragraph(
            text=say(
                "One that isn't there is told as missing; the plan is then made again without it."
            ),
            is_small=True,
        ),
    )
