"""What to ask the merchant for, what is on the rack already, and how good the plan is."""

from collections import Counter
from collections.abc import Iterable

from longpoint.errors import Severity
from longpoint.house_plan import HousePlan
from longpoint.quantities.formatting import format_length, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Blank, Block, Cell, Column, Heading, Note, Paragraph, Table
from longpoint.sheets.bought import bought, money_of, price_words
from longpoint.sheets.fetch import fetch_blocks
from longpoint.sheets.goal_words import goal_blocks, proved_words
from longpoint.sheets.profile_words import section_words
from longpoint.sheets.rest import rest_mm
from longpoint.sheets.saved_words import saved_sentences
from longpoint.sheets.section_picture import section_picture
from longpoint.sheets.spare_block import spare_blocks
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import CutStick, Proof, StickSource


def order_blocks(plan: HousePlan) -> tuple[Block, ...]:
    """Return what stands on the order sheet."""
    return (
        *_without_stick(plan),
        *_to_buy(plan),
        *_from_the_rack(plan),
        *spare_blocks(plan),
        *_profiles(plan),
        *goal_blocks(plan.cut_plan, plan.house.units),
        *_saved(plan),
        *_left_over(plan),
        *_held_back(plan),
    )


def _to_buy(plan: HousePlan) -> tuple[Block, ...]:
    house = plan.house
    sticks = bought(plan)
    if not sticks:
        return (Heading(text=say("To buy")), Paragraph(text=say("Nothing has to be bought.")))
    names = {profile.name: profile for profile in house.profiles}
    total, is_priced = money_of(sticks)
    spare_total, _ = money_of(row for row in sticks if row.is_spare)
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (
            Cell(
                text=row.profile,
                small=(
                    *((say("SPARE"),) if row.is_spare else ()),
                    section_words(names.get(row.profile), house.units),
                ),
                picture=section_picture(names.get(row.profile)),
                picture_last=True,
            ),
            Cell(text=format_length(row.length_mm, house.units), is_key=True),
            Cell(text=say("{count}", count=row.count), is_key=True),
            running_length(row.length_mm * row.count, house.units),
            "-" if row.each is None else price_words(row.each),
            "-" if row.price is None else say("{price:.2f}", price=row.price),
            Cell(blank=Blank.TICK),
        )
        for row in sticks
    )
    spares = (
        say(", {spare_total:.2f} of it for spares", spare_total=spare_total) if spare_total else ""
    )
    money = (
        say(
            "All together {total:.2f}{spares}, at the prices written in the house file.",
            total=total,
            spares=spares,
        )
        if is_priced
        else say(
            "Not every stick has a price; those that have come to {total:.2f}{spares}.",
            total=total,
            spares=spares,
        )
        if total
        else say("No prices were given, so sticks were chosen by running length.")
    )
    columns = (
        Column(title=say("Profile"), share=3.0),
        Column(title=say("Stick length"), is_number=True, share=1.8),
        Column(title=say("Count"), is_number=True, share=1.1),
        Column(title=say("Together"), is_number=True, share=1.6),
        Column(title=say("Price each"), is_number=True, share=1.4),
        Column(title=say("Sum"), is_number=True, share=1.4),
        Column(title=say("Here"), is_number=True, share=0.9),
    )
    return (
        Heading(text=say("To buy")),
        Table(columns=columns, rows=rows),
        Paragraph(
            text=say(
                "{money} No substitutes: the pieces are worked out for these sections.",
                money=money,
            )
        ),
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
        (
            profile,
            format_length(length_mm, plan.house.units),
            say("{count}", count=count),
            Cell(blank=Blank.TICK),
        )
        for (profile, length_mm), count in sorted(used.items())
    )
    columns = (
        Column(title=say("Profile"), share=3.0),
        Column(title=say("Length"), is_number=True, share=1.8),
        Column(title=say("Count"), is_number=True, share=1.1),
        Column(title=say("Here"), is_number=True, share=0.9),
    )
    heading = Heading(
        text=say("From the rack, without a label") if labelled else say("From the rack")
    )
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
                say("{pieces}", pieces=len(pieces)),
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
        Column(title=say("Profile"), share=2.0),
        Column(title=say("Pieces"), is_number=True, share=1.0),
        Column(title=say("In pieces"), is_number=True, share=1.5),
        Column(title=say("Bought"), is_number=True, share=1.5),
        Column(title=say("At least needed"), is_number=True, share=2.0),
        Column(title=say("How good it is"), share=3.0),
    )
    return (Heading(text=say("How near to the least")), Table(columns=columns, rows=tuple(rows)))


def _saved(plan: HousePlan) -> tuple[Block, ...]:
    sentences = saved_sentences(plan.cut_plan, plan.house.units)
    if not sentences:
        return ()
    return (
        Heading(text=say("What turning pieces saved")),
        Paragraph(text=joined(" ", sentences)),
        Paragraph(
            text=say(
                "A plan by long points takes each piece as a rectangle as long as "
                "its longest edge, with the full cut of the mitre beside it. What "
                "is said is proved; it may be more."
            )
        ),
    )


def _bought(sticks: Iterable[CutStick], units: Units) -> str:
    bought_mm = sum(s.length_mm for s in sticks if s.source is StickSource.STOCK)
    return running_length(bought_mm, units)


def _least(proof: Proof | None, units: Units) -> str:
    if proof is None:
        return "-"
    if proof.unit == "price":
        return say("price {lower_bound:.2f}", lower_bound=proof.lower_bound)
    return running_length(proof.lower_bound * 1000.0, units)


def _spent(proof: Proof | None) -> tuple[str, ...]:
    return (say("price {cost:.2f}", cost=proof.cost),) if proof and proof.unit == "price" else ()


def standing_words(proof: Proof | None) -> str:
    """Return how good the plan of a profile is known to be."""
    if proof is None:
        return say("not worked out")
    if proof.optimal:
        return proved_words()
    return say("best found; not proved to be the least")


def _left_over(plan: HousePlan) -> tuple[Block, ...]:
    left = [stick for stick in plan.cut_plan.sticks if rest_mm(stick, plan.house.saw)]
    if not left:
        return ()
    rows: tuple[tuple[str | Cell, ...], ...] = tuple(
        (stick.profile, stick.name, format_length(stick.left_mm, plan.house.units))
        for stick in sorted(left, key=lambda stick: (stick.profile, -stick.left_mm))
    )
    columns = (
        Column(title=say("Profile"), share=2.0),
        Column(title=say("Off stick"), share=2.0),
        Column(title=say("Length left"), is_number=True, share=1.6),
    )
    return (
        Heading(text=say("Left over for the rack")),
        Table(columns=columns, rows=rows),
        Paragraph(text=say("Write profile and length on each before it goes back.")),
    )


def _without_stick(plan: HousePlan) -> tuple[Block, ...]:
    laid = {one.piece for stick in plan.cut_plan.sticks for one in stick.laid}
    missing = Counter(piece.profile for piece in plan.pieces if piece.mark not in laid)
    stocked = {stock.profile for stock in plan.house.stock}
    return tuple(
        Note(
            severity=Severity.WARNING,
            title=say("LOOK · {profile}", profile=profile),
            text=say(
                "{count} {piece} no stick. ",
                count=count,
                piece=say("piece has") if count == 1 else say("pieces have"),
            )
            + (
                say(
                    "No stock is written for this profile. Add its stick lengths to the house file."
                )
                if profile not in stocked
                else say("The sticks written for this profile are used up or too short.")
            ),
        )
        for profile, count in sorted(missing.items())
    )


def _held_back(plan: HousePlan) -> tuple[Block, ...]:
    if not plan.held:
        return ()
    places = joined(", ", sorted(plan.held))
    return (
        Note(
            severity=Severity.WARNING,
            title=say("LOOK · not counted"),
            text=say(
                "Held back and not in this order: {places}. Buy for them once they are read.",
                places=places,
            ),
        ),
    )
