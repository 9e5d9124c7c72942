"""Tax on a job: put on top of the rows, or already in them; on the whole, or row by row."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency
from longpoint.pricing.money import Money, rounded, total
from longpoint.speech.said import say


class TaxShown(StrEnum):
    """Whether the rows of a quote hold the tax."""

    ADDED = "added"
    """Rows are without tax; it is added below them."""
    INCLUDED = "included"
    """Rows hold the tax; how much of them it is stands below."""


class TaxRounding(StrEnum):
    """Where the tax is rounded to minor units."""

    TOTAL = "total"
    """Once, on the sum of the rows."""
    LINE = "line"
    """On each row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tax:
    """A tax, named by who charges it: its rate is never looked up or assumed.

    Attributes:
        name: What it is called where the job is.
        percent: Its rate on the price without tax. 0 <= percent <= 100.
        shown: Whether the rows hold it.
        rounding: Where it is rounded.
        number: Number under which the crew is registered for it; may be empty.

    Raises:
        PricingError: The rate lies outside 0 to 100.
    """

    name: str
    percent: Decimal
    shown: TaxShown = TaxShown.ADDED
    rounding: TaxRounding = TaxRounding.TOTAL
    number: str = ""

    def __post_init__(self) -> None:
        """Check the rate."""
        if not 0 <= self.percent <= 100:
            raise PricingError(
                say(
                    "The tax {self} is written with {percent} percent.",
                    self=self.name,
                    percent=self.percent,
                ),
                say("A tax on a job lies between 0 and 100 percent."),
                say("Write the percent as the law of the place has it, such as 10 or 20."),
            )

    @property
    def share(self) -> Fraction:
        """Return the rate as a fraction of the price without tax."""
        return Fraction(self.percent) / 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Sums:
    """What stands below the rows; `net + tax` is `gross`, to the last minor unit.

    Attributes:
        net: Without tax.
        tax: The tax.
        gross: To be paid.
    """

    net: Money
    tax: Money
    gross: Money


def row_price(net: Fraction, tax: Tax | None, currency: Currency) -> Money:
    """Return a price as it stands in a row: with the tax in it where rows hold it.

    Args:
        net: Exact price without tax.
        tax: The tax; None: none is charged.
        currency: The currency.
    """
    if tax is not None and tax.shown is TaxShown.INCLUDED:
        return rounded(net * (1 + tax.share), currency)
    return rounded(net, currency)


def sums(rows: Sequence[Money], tax: Tax | None, currency: Currency) -> Sums:
    """Return what stands below the rows.

    Args:
        rows: The amounts of the rows, with the tax in them where `tax` says so.
        tax: The tax; None: none is charged.
        currency: The currency.

    Example:
        >>> from longpoint.pricing.currency import currency_of
        >>> gbp = currency_of("GBP")
        >>> rows = [rounded(Decimal(each), gbp) for each in ("10.03", "10.03")]
        >>> vat = Tax(name="VAT", percent=Decimal(20))
        >>> str(sums(rows, vat, gbp).tax.amount)
        '4.01'
        >>> by_line = Tax(name="VAT", percent=Decimal(20), rounding=TaxRounding.LINE)
        >>> str(sums(rows, by_line, gbp).tax.amount)
        '4.02'

    References:
        Tax in a price that holds it: price x rate / (100 + rate).
    """
    listed = total(rows, currency)
    if tax is None:
        return Sums(net=listed, tax=total((), currency), gross=listed)
    share = tax.share if tax.shown is TaxShown.ADDED else tax.share / (1 + tax.share)
    by_line = tax.rounding is TaxRounding.LINE
    taxed = total((row.times(share) for row in (rows if by_line else (listed,))), currency)
    if tax.shown is TaxShown.ADDED:
        return Sums(net=listed, tax=taxed, gross=listed + taxed)
    return Sums(net=listed - taxed, tax=taxed, gross=listed)
