"""The crew's own rates: what its hours are worth, and what it puts on its paper."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency
from longpoint.pricing.money import Money
from longpoint.pricing.take_off import Limits
from longpoint.pricing.tax import Tax
from longpoint.pricing.work import START_RATES, Rate, WorkKind
from longpoint.quantities.length import Units
from longpoint.speech.said import say

ASSUMED_SURE: float = 0.8
"""A quote is made on hours and timber that are enough so often; ours, no source."""
ASSUMED_VALID_DAYS = 30
ASSUMED_PAY_DAYS = 14


class Timber(StrEnum):
    """Who buys the mouldings."""

    OURS = "ours"
    CLIENTS = "clients"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rates:
    """What a crew charges by.

    Attributes:
        crew: Who quotes, as it stands on the paper.
        currency: Of every sum.
        hour: Price of an hour of one person, before margin and tax.
        markup: What is put on cost, as a share of cost. >= 0
        margin_is_of_price: True when the crew wrote it as a share of the price.
        tax: The tax; None: none is charged.
        sure: A quote's hours and timber are enough with this chance. 0.5 to 0.95
        valid_days: How long a quote holds.
        pay_days: How long after an invoice it is to be paid.
        units: Millimetres: running rates by the metre; inches: by the foot.
        timber: Who buys the mouldings.
        limits: From where on an opening is more work.
        hours: The crew's own hours, by kind of work.
        exclusions: What the price doesn't hold, each as a few words.
        address: Lines of the crew's address and how it is paid; may be empty.
        is_sure_assumed: True when `sure` is ours.
    """

    crew: str
    currency: Currency
    hour: Money
    markup: Fraction
    margin_is_of_price: bool = False
    tax: Tax | None = None
    sure: float = ASSUMED_SURE
    valid_days: int = ASSUMED_VALID_DAYS
    pay_days: int = ASSUMED_PAY_DAYS
    units: Units = Units.MM
    timber: Timber = Timber.OURS
    limits: Limits = field(default_factory=Limits)
    hours: Mapping[WorkKind, Rate] = field(default_factory=dict)
    exclusions: tuple[str, ...] = ()
    address: tuple[str, ...] = ()
    is_sure_assumed: bool = False

    def rate(self, kind: WorkKind) -> Rate | None:
        """Return the hours of a kind of work: the crew's own, else those to start from."""
        return self.hours.get(kind) or start_rate(kind, self.units)

    def price(self, cost: Fraction) -> Fraction:
        """Return the exact price, without tax, of what costs so much."""
        return cost * (1 + self.markup)


def start_rate(kind: WorkKind, units: Units) -> Rate | None:
    """Return the hours to start from, by the metre or by the foot; None where there are none.

    Example:
        >>> start_rate(WorkKind.SHELF, Units.INCH).hours.likely
        Decimal('0.051816')
    """
    rate = START_RATES.get(kind)
    if rate is not None and kind.is_running and units is Units.INCH:
        return rate.per_foot()
    return rate


def markup_of_margin(margin_percent: Decimal) -> Fraction:
    """Return what a margin, a share of the price, is on cost.

    Args:
        margin_percent: Percent of the price. 0 <= margin_percent < 100

    Raises:
        PricingError: It is 100 or more, and nothing could cost so much.

    Example:
        >>> markup_of_margin(Decimal(20))
        Fraction(1, 4)

    References:
        price - cost = margin x price, solved for (price - cost) / cost.
    """
    margin = Fraction(margin_percent) / 100
    if not 0 <= margin < 1:
        raise PricingError(
            say(
                "The margin is written as {margin_percent} percent.",
                margin_percent=margin_percent,
            ),
            say("A margin is a part of the price, so it lies under 100 percent."),
            say("Write it as a part of the price, or write markup for a part of the cost."),
        )
    return margin / (1 - margin)
