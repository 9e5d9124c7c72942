"""Sums of money: whole minor units of one currency, rounded by one stated rule."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Protocol

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency

ROUNDING = "to the nearest minor unit, halves away from zero"
"""The one rule, as it is said on every sheet of money."""

Exact = int | Decimal | Fraction
"""What may be multiplied with money without losing anything; a float may not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Money:
    """A sum of money.

    Attributes:
        amount: In the currency's major unit; a whole number of minor units.
        currency: The currency.

    Raises:
        PricingError: The amount isn't a whole number of minor units.
    """

    amount: Decimal
    currency: Currency

    def __post_init__(self) -> None:
        """Check the amount, and write it with the currency's digits."""
        step = Decimal(1).scaleb(-self.currency.minor_digits)
        if not self.amount.is_finite() or self.amount % step != 0:
            raise PricingError(
                f"A sum of {self.amount} {self.currency.code} was given.",
                f"{self.currency.code} is counted in steps of {step}, and that is none.",
                f"Write it with at most {self.currency.minor_digits} digits behind the point.",
            )
        object.__setattr__(self, "amount", self.amount.quantize(step) + 0)

    def __add__(self, other: "Money") -> "Money":
        return Money(amount=self.amount + self._same(other), currency=self.currency)

    def __sub__(self, other: "Money") -> "Money":
        return Money(amount=self.amount - self._same(other), currency=self.currency)

    def __lt__(self, other: "Money") -> bool:
        return self.amount < self._same(other)

    def __le__(self, other: "Money") -> bool:
        return self.amount <= self._same(other)

    @property
    def exact(self) -> Fraction:
        """Return the amount as a fraction, for sums that are rounded once at their end."""
        return Fraction(self.amount)

    def times(self, quantity: Exact) -> "Money":
        """Return this many times the sum, rounded once."""
        return rounded(self.exact * Fraction(quantity), self.currency)

    def _same(self, other: "Money") -> Decimal:
        if other.currency != self.currency:
            raise PricingError(
                f"{self.currency.code} and {other.currency.code} were to be reckoned together.",
                "They are two currencies, and no rate of exchange is known here.",
                "Keep one job in one currency.",
            )
        return other.amount


def rounded(amount: Exact, currency: Currency) -> Money:
    """Return an exact amount to the nearest minor unit, halves away from zero.

    Example:
        >>> from longpoint.pricing.currency import currency_of
        >>> rounded(Fraction(1, 8), currency_of("GBP")).amount
        Decimal('0.13')
        >>> rounded(Fraction(-1, 8), currency_of("GBP")).amount
        Decimal('-0.13')
        >>> rounded(Decimal("2.5"), currency_of("JPY")).amount
        Decimal('3')
    """
    units = Fraction(amount) * 10**currency.minor_digits
    whole = (2 * abs(units.numerator) + units.denominator) // (2 * units.denominator)
    signed = whole if units >= 0 else -whole
    return Money(
        amount=Decimal(signed).scaleb(-currency.minor_digits),
        currency=currency,
    )


def total(sums: Iterable[Money], currency: Currency) -> Money:
    """Return all sums together; nought of the currency where there is none."""
    whole = Money(amount=Decimal(0), currency=currency)
    for each in sums:
        whole += each
    return whole


class MoneyText(Protocol):
    """The port through which sheets write money: one method, an adapter in a shell."""

    def text(self, money: Money) -> str:
        """Return a sum as it stands on a sheet, with its currency and every minor digit."""
        ...


@dataclass(frozen=True, slots=True)
class PlainMoneyText:
    """Money with its code in front and thousands apart, in any country.

    Example:
        >>> from longpoint.pricing.currency import currency_of
        >>> PlainMoneyText().text(rounded(Decimal("-1234.5"), currency_of("NZD")))
        'NZD -1,234.50'
    """

    def text(self, money: Money) -> str:
        """Return a sum with the code of its currency."""
        return f"{money.currency.code} {money.amount:,.{money.currency.minor_digits}f}"
