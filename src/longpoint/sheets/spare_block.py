"""What to have spare, and what that rests on."""

from collections.abc import Iterable
from typing import Final

from longpoint.house_plan import HousePlan, Spares
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Table
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.crew import Crew

COLUMNS: Final = (
    Column(title="Profile", share=1.6),
    Column(title="Pieces", is_number=True, share=1.0),
    Column(title="Cut again, at most", is_number=True, share=1.6),
    Column(title="Spare", is_key=True, share=2.6),
    Column(title="Enough for any so many up to", share=2.8),
)
NONE_NEEDED: Final = "none to buy"


def spare_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what to have spare for each profile; nothing where nothing is cut."""
    spares, units = plan.spares, plan.house.units
    if not spares.sticks:
        return ()
    needed = [one for one in spares.sticks if one.covered or one.missing]
    without = [one.profile for one in spares.sticks if one not in needed]
    rows = tuple(_row(one, plan) for one in needed)
    return (
        Heading(text="What to have spare"),
        *((Table(columns=COLUMNS, rows=rows),) if rows else ()),
        *(
            Paragraph(text=f"No spare of {', '.join(without)}: nine times in ten none is spoiled.")
            for _ in without[:1]
        ),
        *(Paragraph(text=line) for line in _proved_lines(plan, units)),
        Paragraph(text=_basis(plan), is_small=True),
    )


def bought_spares(spares: Spares) -> list[tuple[str, float, int]]:
    """Return the spares to buy: profile, length [mm] and count."""
    return [
        (one.profile, length_mm, count) for one in spares.sticks for length_mm, count in one.buy
    ]


def spare_words(spares: Spares, units: Units) -> str:
    """Return the spares to buy in one line; empty where none is.

    Example:
        >>> one = SpareSticks(profile="OG57", buy=((2700.0, 1),))
        >>> spare_words(Spares(sticks=(one,)), Units.MM)
        'OG57 1 x 2700'
    """
    return "; ".join(
        f"{one.profile} {_sticks_words(one, units)}" for one in spares.sticks if one.buy
    )


def _row(one: SpareSticks, plan: HousePlan) -> tuple[str | Cell, ...]:
    count = plan.spares.count_of(one.profile)
    units = plan.house.units
    covers = f"{one.covered[0]}, {format_with_unit(one.longest_mm, units)}" if one.covered else "-"
    return (
        one.profile,
        f"{count.pieces if count else 0}",
        f"{count.p90 if count else 0}",
        Cell(text=_sticks_words(one, units), small=_beside(one, units), is_key=True),
        covers,
    )


def _sticks_words(one: SpareSticks, units: Units) -> str:
    if not one.buy:
        return NONE_NEEDED
    return ", ".join(f"{count} x {format_length(length_mm, units)}" for length_mm, count in one.buy)


def _beside(one: SpareSticks, units: Units) -> tuple[str, ...]:
    lines = []
    if one.rests:
        lines.append(f"keep what is left of {', '.join(one.rests)}")
    if one.rack:
        named = (f"{label} {format_length(mm, units)}".strip() for label, mm in one.rack)
        lines.append(f"keep on the rack: {', '.join(named)}")
    if one.missing:
        lines.append(f"no stick left for {one.missing} of them")
    return tuple(lines)


def _proved_lines(plan: HousePlan, units: Units) -> Iterable[str]:
    """Say where a proof of the saw would save spares."""
    if plan.spares_if_proved is None:
        return
    now, later = _by_profile(plan.spares), _by_profile(plan.spares_if_proved)
    fewer = [
        f"{profile} {_sticks_words(later[profile], units)}"
        for profile, one in now.items()
        if profile in later and sum(n for _, n in later[profile].buy) < sum(n for _, n in one.buy)
    ]
    if fewer:
        yield f"Prove the saw first and fewer will do: {'; '.join(fewer)}."


def _by_profile(spares: Spares) -> dict[str, SpareSticks]:
    return {one.profile: one for one in spares.sticks}


def _basis(plan: HousePlan) -> str:
    sets = sum(count.sets for count in plan.spares.counts)
    slips = _slips_words(plan.house.crew)
    covers = (
        "The spares hold the longest pieces of the profile, so any others are covered too; they "
        "are not among the sticks of the cut sheet."
    )
    if plan.outlook is None or not sets:
        why = (
            "There is no forecast of this house"
            if plan.outlook is None
            else "No set of this house is forecast"
        )
        return f"{why}, so this counts slips alone: {slips} {covers}"
    draws = plan.outlook.forecast.draws
    return (
        "Nine times in ten no more have to be cut again. It counts two things: sets that don't "
        f"fit, from the forecast's {draws} imagined houses, each taken to cost one piece (ours, no "
        f"source); and slips at the saw or on the wall, {slips} {covers}"
    )


def _slips_words(crew: Crew) -> str:
    if crew.slips is None:
        return (
            f"{crew.slips_counted:g} piece in a hundred, which is our assumption: the house file "
            "says nothing of it (slips under [crew])."
        )
    return f"{crew.slips:g} in a hundred by the house file."
