"""What a plan was made for, in words: what it got, and whether that is proved to be the best."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, assert_never

from longpoint.quantities.formatting import format_length, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Block,
    Cell,
    Column,
    Drawing,
    Heading,
    Paragraph,
    Table,
    Together,
)
from longpoint.sheets.mark_pictures import Passed, mark_picture
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import CutPlan, Goal, Proof, Reached, StickSource

_COLUMNS: Final = (
    Column(title=say("Goal"), share=3.6),
    Column(title=say("Profile"), share=1.8),
    Column(title=say("Got"), is_number=True, share=1.4),
    Column(title=say("At best"), is_number=True, share=1.4),
    Column(title=say("How good it is"), share=2.8),
)

_MOST_ROWS: Final = 4
"""Of more profiles than these, what is proved of one goal shares a row."""
_MOST_TOGETHER: Final = 24
"""A table of more rows may go over two pages."""


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalLine:
    """How far a plan gets with one goal for one profile.

    Attributes:
        goal: What was wanted.
        profile: Whose sticks it is about; empty: all of them.
        got: What the plan has.
        best: What no plan can better, as far as is known.
        is_proved: True when no plan can do better.
    """

    goal: str
    profile: str
    got: str
    best: str
    is_proved: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class GoalSentence:
    """One goal in one sentence.

    Attributes:
        text: The sentence.
        is_proved: True when no plan can do better, of any profile.
    """

    text: str
    is_proved: bool


def goal_blocks(
    plan: CutPlan, units: Units, *, with_cost: bool = False, is_close: bool = False
) -> tuple[Block, ...]:
    """Return a table of what a plan was made for, in the order of the goals.

    Args:
        plan: The cut plan.
        units: In what lengths are written.
        with_cost: True where the cost isn't told elsewhere on the sheet: it then comes first.
        is_close: True where the rows are to take little room.
    """
    cost = cost_lines(plan, units) if with_cost else ()
    shown = (*cost, *goal_lines(plan, units))
    if not shown:
        return ()
    heading = say("How good this plan is") if with_cost else say("What the plan was made for next")
    rows = tuple(row for lines in _by_goal(shown) for row in _rows(lines))
    said = say(
        "Least cost comes first. Then these in their order, each without "
        "giving up anything of those above it."
    )
    blocks = (
        Heading(text=heading),
        Paragraph(text=said),
        Table(columns=_COLUMNS, rows=rows, is_close=is_close),
    )
    return (Together(blocks=blocks),) if len(rows) <= _MOST_TOGETHER else blocks


def cost_lines(plan: CutPlan, units: Units) -> tuple[GoalLine, ...]:
    """Return what is bought of each profile, and what is needed at least."""
    return tuple(
        GoalLine(
            goal=say("Least to buy"),
            profile=proof.profile,
            got=_bought(plan, proof, units),
            best=_least(proof, units),
            is_proved=proof.optimal,
        )
        for proof in plan.proofs
    )


def proved_words() -> str:
    """Return what is said of a profile whose plan is proved."""
    return say("proved: no plan buys less")


def cost_words(line: GoalLine) -> str:
    """Return how good the plan of a profile is known to be; how far it may be off, if it isn't."""
    if line.is_proved:
        return proved_words()
    return say("best found: {got}; no plan comes below {best}", got=line.got, best=line.best)


def goal_lines(plan: CutPlan, units: Units) -> tuple[GoalLine, ...]:
    """Return how far the plan gets with the goals that follow the cost, in their order."""
    return tuple(
        GoalLine(
            goal=_words(one.goal),
            profile=one.profile,
            got=_figure(one, one.value, units),
            best=_figure(one, one.limit, units),
            is_proved=one.is_proved,
        )
        for goal in Goal
        for one in plan.reached
        if one.goal is goal
    )


def goal_sentences(plan: CutPlan, units: Units) -> tuple[GoalSentence, ...]:
    """Return a sentence for each goal that follows the cost, in their order."""
    return tuple(
        GoalSentence(
            text=say("{goal}: {said}.", goal=lines[0].goal, said=_said(lines)),
            is_proved=all(line.is_proved for line in lines),
        )
        for lines in _by_goal(goal_lines(plan, units))
    )


def _by_goal(lines: Iterable[GoalLine]) -> tuple[tuple[GoalLine, ...], ...]:
    found: dict[str, list[GoalLine]] = {}
    for line in lines:
        found.setdefault(line.goal, []).append(line)
    return tuple(map(tuple, found.values()))


def _said(lines: Sequence[GoalLine]) -> str:
    """What is only found with what it can't better, then what is proved."""
    found = [
        say("{got} (at best {best})", got=_got(line), best=line.best)
        for line in lines
        if not line.is_proved
    ]
    proved = [_got(line) for line in lines if line.is_proved]
    parts = [say("best found {figures}", figures=joined(", ", found))] if found else []
    parts += [say("proved {figures}", figures=joined(", ", proved))] if proved else []
    return joined("; ", parts)


def _got(line: GoalLine) -> str:
    return say("{profile} {got}", profile=line.profile, got=line.got) if line.profile else line.got


def proof_picture(*, is_proved: bool) -> Drawing:
    """Return a tick for what is proved, a ring for what is only the best found."""
    mark = mark_picture(Passed.YES if is_proved else Passed.UNKNOWN)
    return replace(mark, described=_standing(is_proved=is_proved))


def _standing(*, is_proved: bool) -> str:
    return say("proved") if is_proved else say("best found")


def _rows(lines: Sequence[GoalLine]) -> Iterator[tuple[str | Cell, ...]]:
    """One row for each line of a goal; what is proved shares one where it is of many profiles."""
    shared = [line for line in lines if line.is_proved]
    shared = shared if len(shared) > _MOST_ROWS else []
    for line in lines:
        if line not in shared:
            best = "" if line.is_proved else line.best
            profile = line.profile or say("all sticks")
            yield (line.goal, profile, line.got, best, _standing_cell(is_proved=line.is_proved))
    if shared:
        names = say("all profiles") if len(shared) == len(lines) else say("all the others")
        standing = _standing_cell(is_proved=True)
        yield (shared[0].goal, names, say("each its best"), "", standing)


def _standing_cell(*, is_proved: bool) -> Cell:
    return Cell(text=_standing(is_proved=is_proved), picture=proof_picture(is_proved=is_proved))


def _words(goal: Goal) -> str:
    match goal:
        case Goal.FEW_STICKS:
            return say("Few new sticks")
        case Goal.LONG_OFFCUT:
            return say("One long offcut")
        case Goal.BIG_FIRST:
            return say("Big pieces first, sticks out of turn")
        case Goal.TOGETHER:
            return say("Openings from more than one stick")
        case Goal.FEW_SETTINGS:
            return say("Few changes of the saw")
        case _:
            assert_never(goal)


def _figure(one: Reached, value: float, units: Units) -> str:
    if one.goal is Goal.LONG_OFFCUT:
        return format_length(value, units)
    return say("{value:.0f}", value=value)


def _bought(plan: CutPlan, proof: Proof, units: Units) -> str:
    if proof.unit == "price":
        return say("price {cost:.2f}", cost=proof.cost)
    bought = [
        stick.length_mm
        for stick in plan.sticks
        if stick.profile == proof.profile and stick.source is StickSource.STOCK
    ]
    return running_length(sum(bought), units)


def _least(proof: Proof, units: Units) -> str:
    if proof.unit == "price":
        return say("price {cost:.2f}", cost=proof.lower_bound)
    return running_length(proof.lower_bound * 1000.0, units)
