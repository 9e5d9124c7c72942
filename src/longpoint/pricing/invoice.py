"""The invoice: what was quoted and agreed, less what is paid."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from longpoint.errors import PricingError
from longpoint.pricing.money import Money, total
from longpoint.pricing.quote import Quote
from longpoint.pricing.tax import Sums
from longpoint.pricing.variation import Variation
from longpoint.speech.said import say


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreed:
    """A variation that was signed, and when."""

    variation: Variation
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Payment:
    """Money that came in, and when."""

    amount: Money
    day: date


@dataclass(frozen=True, slots=True, kw_only=True)
class Invoice:
    """What is to be paid, and how it comes about.

    Attributes:
        number: The crew's own number of it.
        day: The day it is given.
        pay_by: The last day to pay.
        quote: The quote it goes by.
        agreed: Variations that were signed.
        not_agreed: Numbers of variations that were given and not signed: not billed.
        payments: What has come in.
        sums: Quote and agreed variations together.
        paid: All payments together.
        due: What is still to be paid; under nought where too much has come in.
    """

    number: str
    day: date
    pay_by: date
    quote: Quote
    agreed: tuple[Agreed, ...]
    not_agreed: tuple[int, ...]
    payments: tuple[Payment, ...]
    sums: Sums
    paid: Money
    due: Money


def make_invoice(
    quote: Quote,
    agreed: Sequence[Agreed],
    given: Sequence[Variation],
    payments: Sequence[Payment],
    *,
    number: str,
    day: date,
) -> Invoice:
    """Return an invoice.

    Args:
        quote: The quote.
        agreed: Variations that were signed.
        given: All variations that were given.
        payments: What has come in.
        number: The crew's own number of the invoice.
        day: The day it is given.

    Raises:
        PricingError: A variation is named twice or belongs to another quote, a payment isn't more
            than nought, or the day is past the end of the calendar.
    """
    numbers = [each.variation.number for each in agreed]
    for each in agreed:
        if each.variation.quote != quote.number or numbers.count(each.variation.number) > 1:
            raise PricingError(
                say(
                    "Variation {number} was named for quote {number_2}.",
                    number=each.variation.number,
                    number_2=quote.number,
                ),
                say(
                    "It belongs to quote {quote}, or is named twice.",
                    quote=each.variation.quote,
                ),
                say("Name each signed variation of this quote once."),
            )
    nought = total((), quote.currency)
    for payment in payments:
        if payment.amount <= nought:
            raise PricingError(
                say("A payment of {amount} was told.", amount=payment.amount.amount),
                say("A payment is more than nought."),
                say("Leave it out, or write what came in."),
            )
    try:
        pay_by = day + timedelta(days=quote.pay_days)
    except OverflowError:
        raise PricingError(
            say(
                "The invoice is given on {day} and is to be paid in {pay_days} days.",
                day=day,
                pay_days=quote.pay_days,
            ),
            say("That runs past the end of the calendar."),
            say("Give the day it is, with --on."),
        ) from None
    parts = [quote.sums, *(each.variation.sums for each in agreed)]
    together = Sums(
        net=total((part.net for part in parts), quote.currency),
        tax=total((part.tax for part in parts), quote.currency),
        gross=total((part.gross for part in parts), quote.currency),
    )
    paid = total((payment.amount for payment in payments), quote.currency)
    return Invoice(
        number=number,
        day=day,
        pay_by=pay_by,
        quote=quote,
        agreed=tuple(agreed),
        not_agreed=tuple(v.number for v in given if v.number not in numbers),
        payments=tuple(payments),
        sums=together,
        paid=paid,
        due=together.gross - paid,
    )
