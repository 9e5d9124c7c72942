"""A quote: rows of work and timber at fixed prices, and what stands below them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency
from longpoint.pricing.estimate import Estimate
from longpoint.pricing.money import Money
from longpoint.pricing.rates import Rates, Timber
from longpoint.pricing.take_off import Limits
from longpoint.pricing.tax import Sums, Tax, row_price, sums
from longpoint.pricing.timber import Stick, stick_prices
from longpoint.pricing.work import Task, WorkKind
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house import Dialect, House


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One priced row; its amount is quantity times each, rounded once.

    Attributes:
        work: What kind of work; None for timber.
        stick: Profile and length of a stick; None for work.
        quantity: How many, or how many metres or feet; negative where something falls away.
        each: Price of one, as rows show it: with the tax in it where the tax is included.
        amount: What stands in the sum.
        why: Reason, where it is a variation; else empty.
    """

    work: WorkKind | None = None
    stick: Stick | None = None
    quantity: Decimal
    each: Money
    amount: Money
    why: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """A quote as it was given; what is read later changes nothing in it.

    Attributes:
        number: The crew's own number of it.
        day: The day it was given.
        valid_until: The last day on which it can be taken up.
        house: Name of the house.
        dialect: Whose words.
        units: Of lengths.
        running_units: Millimetres: running work by the metre; inches: by the foot.
        made_from: Short code of the readings or counts.
        is_read: False where it rests on counts and drawn sizes.
        crew: Who quotes.
        address: Lines below it.
        currency: Of every sum.
        tax: The tax; None: none.
        timber: Who buys the mouldings.
        rows: Work, then timber.
        sums: What stands below.
        exclusions: What isn't in it, in words.
        held: Marks that were in doubt when it was given, and are priced by what was read.
        pay_days: For the invoice.
        sure: Hours and timber were reckoned to be enough so often.
        limits: From where on an opening is more work.
        tasks: The work behind the rows, place by place.
        prices: Price of one of each kind of work, for variations.
        stick_prices: Price of each stick, for variations.
    """

    number: str
    day: date
    valid_until: date
    house: str
    dialect: Dialect
    units: Units
    running_units: Units
    made_from: str
    is_read: bool
    crew: str
    address: tuple[str, ...]
    currency: Currency
    tax: Tax | None
    timber: Timber
    rows: tuple[Row, ...]
    sums: Sums
    exclusions: tuple[str, ...]
    held: tuple[str, ...]
    pay_days: int
    sure: float
    limits: Limits
    tasks: tuple[Task, ...]
    prices: Mapping[WorkKind, Money]
    stick_prices: Mapping[Stick, Money]


def price_row(
    quantity: Decimal,
    each: Money,
    *,
    work: WorkKind | None = None,
    stick: Stick | None = None,
    why: str = "",
) -> Row:
    """Return a row whose amount is quantity times each, rounded once."""
    return Row(
        work=work,
        stick=stick,
        quantity=quantity,
        each=each,
        amount=each.times(quantity),
        why=why,
    )


def work_prices(estimate: Estimate, rates: Rates) -> Mapping[WorkKind, Money]:
    """Return the price of one of every kind of work that has hours, whether the job has it or not.

    An hour of the quote is an expected hour times the estimate's `ready`, times the price of an
    hour, with the margin on it.
    """
    found = {}
    for kind in WorkKind:
        rate = rates.rate(kind)
        if rate is not None:
            cost = rate.hours.mean * Fraction(estimate.ready) * rates.hour.exact
            found[kind] = row_price(rates.price(cost), rates.tax, rates.currency)
    return found


def timber_prices(house: House, rates: Rates) -> Mapping[Stick, Money]:
    """Return the price of each stick with the margin on it; none where the client buys it."""
    if rates.timber is Timber.CLIENTS:
        return {}
    return {
        stick: row_price(rates.price(Fraction(price)), rates.tax, rates.currency)
        for stick, price in stick_prices(house).items()
    }


def priced_rows(
    estimate: Estimate, house: House, rates: Rates, *, work: Mapping[WorkKind, Money]
) -> tuple[Row, ...]:
    """Return the rows of a quote: work in the order of its kinds, then timber.

    Raises:
        PricingError: A stick that is to be bought has no price, or a piece has no stick.
    """
    rows = [price_row(line.quantity, work[line.kind], work=line.kind) for line in estimate.lines]
    if rates.timber is Timber.OURS:
        _refuse_unpriced(estimate)
        prices = timber_prices(house, rates)
        taken = estimate.timber.at(rates.sure).sticks
        for stick in sorted(taken, key=lambda each: (each[0], -each[1])):
            rows.append(price_row(Decimal(taken[stick]), prices[stick], stick=stick))
    return tuple(rows)


def make_quote(
    estimate: Estimate,
    tasks: Iterable[Task],
    house: House,
    rates: Rates,
    *,
    number: str,
    day: date,
    made_from: str,
    is_read: bool,
    exclusions: tuple[str, ...],
    held: Iterable[str] = (),
) -> Quote:
    """Return a quote.

    Args:
        estimate: What the job will take.
        tasks: The work behind it.
        house: The house.
        rates: The crew's rates.
        number: The crew's own number of the quote.
        day: The day it is given.
        made_from: Short code of the readings or counts.
        is_read: False where it rests on counts and drawn sizes.
        exclusions: What isn't in it.
        held: Marks that are in doubt, and counted by what was read.

    Raises:
        PricingError: Timber that has no price or no stick, no work at all, or a day past the end
            of the calendar.
    """
    work = work_prices(estimate, rates)
    rows = priced_rows(estimate, house, rates, work=work)
    if not rows:
        raise PricingError(
            say("{house} was to be priced.", house=house.name),
            say("Nothing in it has a price: no opening, no run and no other trim with hours."),
            say("Write what is to be trimmed, or give hours for it in the rates file."),
        )
    try:
        valid_until = day + timedelta(days=rates.valid_days)
    except OverflowError:
        raise PricingError(
            say(
                "The quote is given on {day} and holds {valid_days} days.",
                day=day,
                valid_days=rates.valid_days,
            ),
            say("That runs past the end of the calendar."),
            say("Give the day it is, with --on."),
        ) from None
    return Quote(
        number=number,
        day=day,
        valid_until=valid_until,
        house=house.name,
        dialect=house.dialect,
        units=house.units,
        running_units=rates.units,
        made_from=made_from,
        is_read=is_read,
        crew=rates.crew,
        address=rates.address,
        currency=rates.currency,
        tax=rates.tax,
        timber=rates.timber,
        rows=rows,
        sums=sums([row.amount for row in rows], rates.tax, rates.currency),
        exclusions=exclusions,
        held=tuple(held),
        pay_days=rates.pay_days,
        sure=rates.sure,
        limits=rates.limits,
        tasks=tuple(tasks),
        prices=work,
        stick_prices=timber_prices(house, rates),
    )


def _refuse_unpriced(estimate: Estimate) -> None:
    timber = estimate.timber
    if timber.unpriced:
        profile, length_mm = timber.unpriced[0]
        raise PricingError(
            say(
                "The job takes sticks of {profile}, {length_mm:g} mm long.",
                profile=profile,
                length_mm=length_mm,
            ),
            say("They have no price, so a quote would give that timber away."),
            say('Write price under [[stock]], or timber = "clients" in the rates file.'),
        )
    if any(draw.without for draw in timber.draws):
        raise PricingError(
            say("Some pieces of the job have no stick they can be cut from."),
            say("A quote without their timber would give it away."),
            say(
                'Write stock long enough for every profile, or timber = "clients" in '
                "the rates file."
            ),
        )
