"""Tax on top of the rows or in them."""

from decimal import Decimal
from fractions import Fraction

import pytest

from longpoint.errors import PricingError
from longpoint.pricing.currency import currency_of
from longpoint.pricing.money import Money
from longpoint.pricing.tax import Tax, TaxRounding, TaxShown, row_price, sums

GBP = currency_of("GBP")


def rows(*amounts: str) -> list[Money]:
    return [Money(amount=Decimal(each), currency=GBP) for each in amounts]


def tax(percent: str, shown: TaxShown, rounding: TaxRounding = TaxRounding.TOTAL) -> Tax:
    return Tax(name="T", percent=Decimal(percent), shown=shown, rounding=rounding)


def test_tax_is_added_below_rows_that_are_without_it() -> None:
    below = sums(rows("100.00", "50.05"), tax("20", TaxShown.ADDED), GBP)
    assert [str(each.amount) for each in (below.net, below.tax, below.gross)] == [
        "150.05",
        "30.01",
        "180.06",
    ]


def test_tax_in_the_rows_is_taken_out_of_them() -> None:
    below = sums(rows("110.00"), tax("10", TaxShown.INCLUDED), GBP)
    assert [str(each.amount) for each in (below.net, below.tax, below.gross)] == [
        "100.00",
        "10.00",
        "110.00",
    ]


def test_rounding_on_each_line_can_come_to_another_sum() -> None:
    amounts = rows("0.12", "0.12", "0.12")
    on_total = sums(amounts, tax("20", TaxShown.ADDED), GBP)
    on_lines = sums(amounts, tax("20", TaxShown.ADDED, TaxRounding.LINE), GBP)
    assert (str(on_total.tax.amount), str(on_lines.tax.amount)) == ("0.07", "0.06")


def test_without_a_tax_net_is_what_is_paid() -> None:
    below = sums(rows("3.10"), None, GBP)
    assert below.net == below.gross
    assert below.tax.amount == 0


def test_a_row_holds_the_tax_where_that_is_said() -> None:
    net = Fraction(100)
    assert row_price(net, tax("12.5", TaxShown.INCLUDED), GBP).amount == Decimal("112.50")
    assert row_price(net, tax("12.5", TaxShown.ADDED), GBP).amount == Decimal("100.00")
    assert row_price(net, None, GBP).amount == Decimal("100.00")


@pytest.mark.parametrize("percent", ["-1", "100.5", "2000"])
def test_a_rate_outside_nought_to_a_hundred_is_refused(percent: str) -> None:
    with pytest.raises(PricingError):
        tax(percent, TaxShown.ADDED)
