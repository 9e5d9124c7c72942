"""What a plan was made for beside its cost, in words: what it got, and how good that is."""

from collections.abc import Iterator, Sequence
from typing import assert_never

from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Table
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import Goal, Reached


def goal_blocks(reached: tuple[Reached, ...], units: Units) -> tuple[Block, ...]:
    """Return a table of the goals that follow the cost, in their order; nothing without a plan.

    Args:
        reached: How far the plan gets.
        units: In what lengths are written.
    """
    if not reached:
        return ()
    rows = [row for goal in Goal for row in _rows([r for r in reached if r.goal is goal], units)]
    columns = (
        Column(title=say("Goal"), share=3.4),
        Column(title=say("Profile"), share=1.8),
        Column(title=say("Got"), is_number=True, share=1.2),
        Column(title=say("At best"), is_number=True, share=1.2),
        Column(title=say("How good it is"), share=2.4),
    )
    return (
        Heading(text=say("What the plan was made for next")),
        Paragraph(
            text=say(
                "Least cost comes first. Then these in their order, each without "
                "giving up anything of those above it."
            )
        ),
        Table(columns=columns, rows=tuple(rows)),
    )


def _rows(reached: Sequence[Reached], units: Units) -> Iterator[tuple[str | Cell, ...]]:
    """One row for each profile that may be bettered; those that can't be share one."""
    for one in reached:
        if not one.is_proved:
            figures = (_figure(one, one.value, units), _figure(one, one.limit, units))
            yield (_words(one.goal), one.profile or say("all sticks"), *figures, say("best found"))
    proved = [one for one in reached if one.is_proved]
    if proved:
        got = (
            _figure(proved[0], proved[0].value, units) if len(proved) == 1 else say("each its best")
        )
        names = joined(", ", (one.profile or say("all sticks") for one in proved))
        yield (_words(proved[0].goal), names, got, "", say("proved: can't be bettered"))


def _words(goal: Goal) -> str:
    match goal:
        case Goal.FEW_STICKS:
            return say("Few new sticks")
        case Goal.LONG_OFFCUT:
            return say("One long offcut")
        case Goal.BIG_FIRST:
            return say("Big pieces first: sticks out of turn")
        case Goal.TOGETHER:
            return say("An opening from one stick: openings that aren't")
        case Goal.FEW_SETTINGS:
            return say("Few changes of the saw")
        case _:
            assert_never(goal)


def _figure(one: Reached, value: float, units: Units) -> str:
    if one.goal is Goal.LONG_OFFCUT:
        return format_length(value, units)
    return say("{value:.0f}", value=value)
