"""An order as plain text, to be pasted into a message."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from longpoint.quantities.formatting import format_with_unit, running_length
from longpoint.quantities.length import Units
from longpoint.sheets.bought import price_words
from longpoint.sheets.profile_words import section_words
from longpoint.speech.said import joined, say
from longpoint.sticks.order_lines import OrderLine


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderHead:
    """What stands above an order.

    Attributes:
        number: Number of the order.
        house: Name of the house it is for.
        on: The day it is written.
        buyer: Who orders; may be empty.
        deliver_to: Where to; may be empty.
        wanted_by: By when; None: not said.
        currency: Code of the currency of the prices, ISO 4217; empty: not said.
    """

    number: str
    house: str
    on: date
    buyer: str = ""
    deliver_to: str = ""
    wanted_by: date | None = None
    currency: str = ""


def order_text(head: OrderHead, supplier: str, lines: Sequence[OrderLine], units: Units) -> str:
    """Return the order to one supplier as text.

    Args:
        head: What stands above it.
        supplier: Who it goes to; empty: not said.
        lines: Its lines, those of one profile together.
        units: Unit of the lengths.

    Returns:
        Lines of text, none longer than needed; the last ends with a line break.
    """
    said = [
        say("Order {number}, {on}", number=head.number, on=head.on.isoformat()),
        say("To: {supplier}", supplier=supplier) if supplier else "",
        say("From: {buyer}", buyer=head.buyer) if head.buyer else "",
        say("For: {house}", house=head.house),
        say("Deliver to: {deliver_to}", deliver_to=head.deliver_to) if head.deliver_to else "",
        say("Wanted by: {wanted_by}", wanted_by=head.wanted_by.isoformat())
        if head.wanted_by
        else "",
    ]
    text = [line for line in said if line]
    before = ""
    for line in lines:
        if line.profile.name != before:
            before = line.profile.name
            text += [
                "",
                say(
                    "{before} - {section}",
                    before=before,
                    section=section_words(line.profile, units),
                ),
            ]
        text.append(_line(line, units, head.currency))
    text += ["", *_together(lines, units, head.currency), *TERMS]
    return joined("\n", text) + "\n"


TERMS = (
    say("No substitutes, please: the pieces are worked out for these sections and lengths."),
    say("Straight lengths, dry, one batch of each profile; ring before sending anything else."),
)


def _line(line: OrderLine, units: Units, currency: str) -> str:
    length = format_with_unit(line.length_mm, units)
    text = (
        say("  {count} lengths of {length}", count=line.count, length=length)
        if line.count > 1
        else say(
            "  1 length of {length}",
            length=length,
        )
    )
    if line.spares:
        text += (
            say(" ({spares} of them spare)", spares=line.spares)
            if line.count > line.spares
            else say(" (spare)")
        )
    if line.code:
        text += say(", your code {code}", code=line.code)
    if line.price is not None and line.total is not None:
        text += say(
            ", {price} each, {total:.2f} {currency}",
            price=price_words(line.price),
            total=line.total,
            currency=currency,
        ).rstrip()
    return text


def _together(lines: Sequence[OrderLine], units: Units, currency: str) -> list[str]:
    count = sum(line.count for line in lines)
    running = running_length(sum(line.running_mm for line in lines), units)
    text = [say("Together {count} lengths, {running}.", count=count, running=running)]
    totals = [line.total for line in lines]
    priced = [total for total in totals if total is not None]
    if priced:
        worth = say(
            "{priced:.2f} {currency}",
            priced=sum(priced, Decimal(0)),
            currency=currency,
        ).rstrip()
        if len(priced) == len(totals):
            text.append(
                say(
                    "By our price list that comes to {worth}; please confirm.",
                    worth=worth,
                )
            )
        else:
            text.append(
                say(
                    "The lines with a price come to {worth}; please confirm the others.",
                    worth=worth,
                )
            )
    return text
