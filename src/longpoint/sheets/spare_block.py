"""What to have spare, and what that rests on."""

from collections.abc import Iterable
from typing import Final

from longpoint.house_plan import HousePlan, Spares
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Table
from longpoint.speech.said import joined, say
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.crew import Crew

COLUMNS: Final = (
    Column(title=say("Profile"), share=1.6),
    Column(title=say("Pieces"), is_number=True, share=1.0),
    Column(title=say("Cut again, at most"), is_number=True, share=1.6),
    Column(title=say("Spare"), is_key=True, share=2.6),
    Column(title=say("Enough for any so many up to"), share=2.8),
)
NONE_NEEDED: Final = say("none to buy")


def spare_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what to have spare for each profile; nothing where nothing is cut."""
    spares, units = plan.spares, plan.house.units
    if not spares.sticks:
        return ()
    needed = [one for one in spares.sticks if one.covered or one.missing]
    without = [one.profile for one in spares.sticks if one not in needed]
    rows = tuple(_row(one, plan) for one in needed)
    return (
        Heading(text=say("What to have spare")),
        *((Table(columns=COLUMNS, rows=rows),) if rows else ()),
        *(
            Paragraph(
                text=say(
                    "No spare of {without}: nine times in ten none is spoiled.",
                    without=joined(", ", without),
                )
            )
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
    return joined(
        "; ",
        (
            say("{profile} {sticks}", profile=one.profile, sticks=_sticks_words(one, units))
            for one in spares.sticks
            if one.buy
        ),
    )


def _row(one: SpareSticks, plan: HousePlan) -> tuple[str | Cell, ...]:
    count = plan.spares.count_of(one.profile)
    units = plan.house.units
    covers = (
        say(
            "{covered}, {longest}",
            covered=one.covered[0],
            longest=format_with_unit(one.longest_mm, units),
        )
        if one.covered
        else "-"
    )
    return (
        one.profile,
        say("{pieces}", pieces=count.pieces if count else 0),
        say("{p90}", p90=count.p90 if count else 0),
        Cell(text=_sticks_words(one, units), small=_beside(one, units), is_key=True),
        covers,
    )


def _sticks_words(one: SpareSticks, units: Units) -> str:
    if not one.buy:
        return NONE_NEEDED
    return joined(
        ", ",
        (
            say(
                "{count} x {length}",
                count=count,
                length=format_length(length_mm, units),
            )
            for length_mm, count in one.buy
        ),
    )


def _beside(one: SpareSticks, units: Units) -> tuple[str, ...]:
    lines = []
    if one.rests:
        lines.append(say("keep what is left of {rests}", rests=joined(", ", one.rests)))
    if one.rack:
        named = (
            say("{label} {mm}", label=label, mm=format_length(mm, units)).strip()
            for label, mm in one.rack
        )
        lines.append(say("keep on the rack: {named}", named=joined(", ", named)))
    if one.missing:
        lines.append(say("no stick left for {missing} of them", missing=one.missing))
    return tuple(lines)


def _proved_lines(plan: HousePlan, units: Units) -> Iterable[str]:
    """Say where a proof of the saw would save spares."""
    if plan.spares_if_proved is None:
        return
    now, later = _by_profile(plan.spares), _by_profile(plan.spares_if_proved)
    fewer = [
        say(
            "{profile} {sticks}",
            profile=profile,
            sticks=_sticks_words(later[profile], units),
        )
        for profile, one in now.items()
        if profile in later and sum(n for _, n in later[profile].buy) < sum(n for _, n in one.buy)
    ]
    if fewer:
        yield say(
            "Prove the saw first and fewer will do: {fewer}.",
            fewer=joined("; ", fewer),
        )


def _by_profile(spares: Spares) -> dict[str, SpareSticks]:
    return {one.profile: one for one in spares.sticks}


def _basis(plan: HousePlan) -> str:
    sets = sum(count.sets for count in plan.spares.counts)
    slips = _slips_words(plan.house.crew)
    covers = say(
        "The spares hold the longest pieces of the profile, so any others are "
        "covered too; they are not among the sticks of the cut sheet."
    )
    if plan.outlook is None or not sets:
        why = (
            say("There is no forecast of this house")
            if plan.outlook is None
            else say("No set of this house is forecast")
        )
        return say(
            "{why}, so this counts slips alone: {slips} {covers}",
            why=why,
            slips=slips,
            covers=covers,
        )
    draws = plan.outlook.forecast.draws
    return say(
        "Nine times in ten no more have to be cut again. It counts two things: "
        "sets that don't fit, from the forecast's {draws} imagined houses, each "
        "taken to cost one piece (ours, no source); and slips at the saw or on the "
        "wall, {slips} {covers}",
        draws=draws,
        slips=slips,
        covers=covers,
    )


def _slips_words(crew: Crew) -> str:
    if crew.slips is None:
        return say(
            "{slips_counted:g} piece in a hundred, which is our assumption: the "
            "house file says nothing of it (slips under [crew]).",
            slips_counted=crew.slips_counted,
        )
    return say("{slips:g} in a hundred by the house file.", slips=crew.slips)
