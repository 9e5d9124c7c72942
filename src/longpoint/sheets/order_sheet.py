"""What to ask the merchant for, what is on the rack already, and how good the plan is."""

from collections import Counter
from collections.abc import Iterable

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Blank, Block, Cell, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.bought import bought, money_of
from longpoint.sheets.fetch import fetch_blocks
from longpoint.sheets.goal_words import goal_blocks
from longpoint.sheets.profile_words import section_words
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.saved_words import saved_sentences
from longpoint.sheets.section_picture import section_picture
from longpoint.sheets.spare_block import spare_blocks
from longpoint.sticks.plan import CutStick, Proof, StickSource


def order_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the order sheet."""
    return (
        *_without_stick(plan),
        *_to_buy(plan),
        *_from_the_rack(plan),
        *spare_blocks(plan),
        *_profiles(plan),
        *goal_blocks(plan.cut_plan.reached, plan.house.units),
        *_saved(plan),
        *_left_over(plan),
        *_held_back(plan),
    )


def _to_buy(plan: HousePlan) -> tuple[Block, ...]:
    house = plan.house
    sticks = bought(plan)
    if not sticks:
        return (Heading(text="To buy"), Paragraph(text="Nothing has to be bought."))
    names = {profile.name: profile for profile in house.profiles}
    total, is_priced = money_of(sticks)
    spare_total, _ = money_of(row for row in sticks if row.is_spare)
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            Cell(
                text=row.profile,
                small=(
                    *(("SPARE",) if row.is_spare else ()),
                    section_words(names.get(row.profile), house.units),
                ),
                picture=section_picture(names.get(row.profile)),
                picture_last=True,
            ),
            Cell(text=format_length(row.length_mm, house.units), is_key=True),
            Cell(text=f"{row.count}", is_key=True),
            running_length(row.length_mm * row.count, house.units),
            "-" if row.each is None else f"{row.each:.2f}",
            "-" if row.price is None else f"{row.price:.2f}",
            Cell(blank=Blank.TICK),
        )
        for row in sticks
    )
    spares = f", {spare_total:.2f} of it for spares" if spare_total else ""
    money = (
        f"All together {total:.2f}{spares}, at the prices written in the house file."
        if is_priced
        else f"Not every stick has a price; those that have come to {total:.2f}{spares}."
        if total
        else "No prices were given, so sticks were chosen by running length."
    )
    columns = (
        Column(title="Profile", share=3.0),
        Column(title="Stick length", is_number=True, share=1.8),
        Column(title="Count", is_number=True, share=1.1),
        Column(title="Together", is_number=True, share=1.6),
        Column(title="Price each", is_number=True, share=1.4),
        Column(title="Sum", is_number=True, share=1.4),
        Column(title="Here", is_number=True, share=0.9),
    )
    return (
        Heading(text="To buy"),
        Table(columns=columns, rows=rows),
        Paragraph(text=f"{money} No substitutes: the pieces are worked out for these sections."),
    )


def _from_the_rack(plan: HousePlan) -> tuple[Block, ...]:
    used = Counter(
        (stick.profile, stick.length_mm)
        for stick in plan.cut_plan.sticks
        if stick.source is StickSource.OFFCUT and not stick.label
    )
    labelled = fetch_blocks(plan)
    if not used:
        return labelled
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (profile, format_length(length_mm, plan.house.units), f"{count}", Cell(blank=Blank.TICK))
        for (profile, length_mm), count in sorted(used.items())
    )
    columns = (
        Column(title="Profile", share=3.0),
        Column(title="Length", is_number=True, share=1.8),
        Column(title="Count", is_number=True, share=1.1),
        Column(title="Here", is_number=True, share=0.9),
    )
    heading = Heading(text="From the rack, without a label" if labelled else "From the rack")
    return (*labelled, heading, Table(columns=columns, rows=rows))


def _profiles(plan: HousePlan) -> tuple[Block, ...]:
    rows: list[tuple[str | Cell, ...]] = []
    units = plan.house.units
    proofs = {proof.profile: proof for proof in plan.cut_plan.proofs}
    for profile in plan.house.profiles:
        pieces = [piece for piece in plan.pieces if piece.profile == profile.name]
        sticks = [stick for stick in plan.cut_plan.sticks if stick.profile == profile.name]
        if not pieces and not sticks:
            continue
        net_mm = sum(piece.long_mm for piece in pieces)
        rows.append(
            (
                profile.name,
                f"{len(pieces)}",
                running_length(net_mm, units),
                Cell(
                    text=_bought(sticks, units),
                    small=_spent(proofs.get(profile.name)),
                ),
                _least(proofs.get(profile.name), units),
                standing_words(proofs.get(profile.name)),
            )
        )
    if not rows:
        return ()
    columns = (
        Column(title="Profile", share=2.0),
        Column(title="Pieces", is_number=True, share=1.0),
        Column(title="In pieces", is_number=True, share=1.5),
        Column(title="Bought", is_number=True, share=1.5),
        Column(title="At least needed", is_number=True, share=2.0),
        Column(title="How good it is", share=3.0),
    )
    return (Heading(text="How near to the least"), Table(columns=columns, rows=tuple(rows)))


def _saved(plan: HousePlan) -> tuple[Block, ...]:
    sentences = saved_sentences(plan.cut_plan, plan.house.units)
    if not sentences:
        return ()
    return (
        Heading(text="What turning pieces saved"),
        Paragraph(text=" ".join(sentences)),
        Paragraph(
            text="A plan by long points takes each piece as a rectangle as long as its longest"
            " edge, with the full cut of the mitre beside it. What is said is proved; it may be"
            " more."
        ),
    )


def _bought(sticks: Iterable[CutStick], units: Units) -> str:
    bought_mm = sum(s.length_mm for s in sticks if s.source is StickSource.STOCK)
    return running_length(bought_mm, units)


def _least(proof: Proof | None, units: Units) -> str:
    if proof is None:
        return "-"
    if proof.unit == "price":
        return f"price {proof.lower_bound:.2f}"
    return running_length(proof.lower_bound * 1000.0, units)


def _spent(proof: Proof | None) -> tuple[str, ...]:
    return (f"price {proof.cost:.2f}",) if proof and proof.unit == "price" else ()


def standing_words(proof: Proof | None) -> str:
    """Return how good the plan of a profile is known to be."""
    if proof is None:
        return "not worked out"
    if proof.optimal:
        return "proved: no plan buys less"
    return "best found; not proved to be the least"


def _left_over(plan: HousePlan) -> tuple[Block, ...]:
    left = [stick for stick in plan.cut_plan.sticks if rest_mm(stick, plan.house.saw)]
    if not left:
        return ()
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (stick.profile, stick.name, format_length(stick.left_mm, plan.house.units))
        for stick in sorted(left, key=lambda stick: (stick.profile, -stick.left_mm))
    )
    columns = (
        Column(title="Profile", share=2.0),
        Column(title="Off stick", share=2.0),
        Column(title="Length left", is_number=True, share=1.6),
    )
    return (
        Heading(text="Left over for the rack"),
        Table(columns=columns, rows=rows),
        Paragraph(text="Write profile and length on each before it goes back."),
    )


def _without_stick(plan: HousePlan) -> tuple[Block, ...]:
    laid = {one.piece for stick in plan.cut_plan.sticks for one in stick.laid}
    missing = Counter(piece.profile for piece in plan.pieces if piece.mark not in laid)
    stocked = {stock.profile for stock in plan.house.stock}
    return tuple(
        Note(
            severity=Severity.WARNING,
            title=f"LOOK · {profile}",
            text=f"{count} {'piece has' if count == 1 else 'pieces have'} no stick. "
            + (
                "No stock is written for this profile. Add its stick lengths to the house file."
                if profile not in stocked
                else "The sticks written for this profile are used up or too short."
            ),
        )
        for profile, count in sorted(missing.items())
    )


def _held_back(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    places = ", ".join(sorted(plan.held))
    return (
        Note(
            severity=Severity.WARNING,
            title="LOOK · not counted",
            text=f"Held back and not in this order: {places}. Buy for them once they are read.",
        ),
    )
