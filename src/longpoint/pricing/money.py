"""Sums of money: whole minor units of one currency, rounded by one stated rule."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Final, Protocol

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency
from longpoint.speech.said import say

ROUNDING = say("to the nearest minor unit, halves away from zero")
"""The one rule, as it is said on every sheet of money."""

LARGEST: Final = Decimal(10) ** 12
"""Sums and quantities are below; far above, a decimal number can't be split into steps."""

Exact = int | Decimal | Fraction
"""What may be multiplied with money without losing anything; a float may not."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Money:
    """A sum of money.

    Attributes:
        amount: In the currency's major unit; a whole number of minor units.
        currency: The currency.

    Raises:
        PricingError: The amount isn't a whole number of minor units, or far above any job's.
    """

    amount: Decimal
    currency: Currency

    def __post_init__(self) -> None:
        """Check the amount, and write it with the currency's digits."""
        step = Decimal(1).scaleb(-self.currency.minor_digits)
        if self.amount.is_finite() and abs(self.amount) >= LARGEST:
            raise PricingError(
                say(
                    "A sum of {amount} {code} was given.",
                    amount=f"{self.amount:.3g}",
                    code=self.currency.code,
                ),
                say("No job comes to so much."),
                say("Look at the figure once more."),
            )
        if not self.amount.is_finite() or self.amount % step != 0:
            raise PricingError(
                say(
                    "A sum of {amount} {code} was given.",
                    amount=self.amount,
                    code=self.currency.code,
                ),
                say(
                    "{code} is counted in steps of {step}, and that is none.",
                    code=self.currency.code,
                    step=step,
                ),
                say(
                    "Write it with at most {minor_digits} digits behind the point.",
                    minor_digits=self.currency.minor_digits,
                ),
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
                say(
                    "{code} and {code_2} were to be reckoned together.",
                    code=self.currency.code,
                    code_2=other.currency.code,
                ),
                say("They are two currencies, and no rate of exchange is known here."),
                say("Keep one job in one currency."),
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
        return say(
            "{code} {amount:,.{minor_digits}f}",
            code=money.currency.code,
            amount=money.amount,
            minor_digits=money.currency.minor_digits,
        )
