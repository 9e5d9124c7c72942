"""Sums of money, kept to the minor unit."""

from decimal import Decimal
from fractions import Fraction

import pytest

from longpoint.errors import PricingError
from longpoint.pricing.currency import currency_of
from longpoint.pricing.money import Money, rounded, total

GBP, JPY, KWD = (currency_of(code) for code in ("GBP", "JPY", "KWD"))


def money(amount: str) -> Money:
    return Money(amount=Decimal(amount), currency=GBP)


@pytest.mark.parametrize("amount", ["1.005", "NaN", "Infinity"])
def test_a_sum_that_is_no_whole_number_of_minor_units_is_refused(amount: str) -> None:
    with pytest.raises(PricingError):
        money(amount)


def test_two_currencies_are_never_added() -> None:
    with pytest.raises(PricingError, match="two currencies"):
        money("1.00") + Money(amount=Decimal(100), currency=JPY)


@pytest.mark.parametrize(
    ("exact", "currency", "expected"),
    [
        (Fraction(1005, 1000), GBP, "1.01"),
        (Fraction(-1005, 1000), GBP, "-1.01"),
        (Fraction(1004, 1000), GBP, "1.00"),
        (Fraction(1, 3), GBP, "0.33"),
        (Fraction(1, 2), JPY, "1"),
        (Fraction(12345, 10_000_0) * 100, KWD, "12.345"),
    ],
)
def test_halves_go_away_from_zero(exact: Fraction, currency: object, expected: str) -> None:
    assert str(rounded(exact, currency).amount) == expected  # type: ignore[arg-type]


def test_a_quantity_times_a_price_is_rounded_once() -> None:
    assert money("0.05").times(Decimal("0.5")) == money("0.03")
    assert money("5.72").times(Decimal("21.01")) == money("120.18")


def test_all_together_of_nothing_is_nought() -> None:
    assert total((), GBP) == money("0.00")
    assert str(total((), GBP).amount) == "0.00"


def test_there_is_no_minus_nought() -> None:
    assert str(money("5.00").times(0).amount) == "0.00"
    assert str((money("-0.00")).amount) == "0.00"


@pytest.mark.parametrize("amount", ["nan", "inf", "1e400"])
def test_what_is_no_sum_of_money_is_refused(amount: str) -> None:
    currency = currency_of("NZD")
    with pytest.raises(PricingError):
        Money(amount=Decimal(amount), currency=currency)
