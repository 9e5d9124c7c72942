"""Money as text: both adapters of the port pass the same contract."""

import re
from decimal import Decimal

import pytest

from longpoint.pricing.currency import MINOR_DIGITS, currency_of
from longpoint.pricing.money import MoneyText, PlainMoneyText, rounded
from longpoint.render.money_text import BabelMoneyText
from longpoint.survey.house import Dialect

ADAPTERS: list[MoneyText] = [PlainMoneyText(), *(BabelMoneyText(d) for d in Dialect)]
AMOUNTS = ["0", "0.01", "-0.5", "1234.5", "-1234567.891", "1000000"]


def digits_of(text: str) -> Decimal:
    sign = -1 if "-" in text or "\N{MINUS SIGN}" in text else 1
    (figure,) = re.findall(r"\d[\d,.]*", text)
    return sign * Decimal(figure.replace(",", ""))


@pytest.mark.parametrize("adapter", ADAPTERS, ids=repr)
@pytest.mark.parametrize("code", ["GBP", "AUD", "EUR", "USD", "JPY", "KWD", "AFN"])
def test_every_digit_of_the_minor_unit_and_the_sign_stand_in_the_text(
    adapter: MoneyText, code: str
) -> None:
    currency = currency_of(code)
    for amount in AMOUNTS:
        money = rounded(Decimal(amount), currency)
        text = adapter.text(money)
        assert digits_of(text) == money.amount
        behind = text.rpartition(".")[2] if "." in text else ""
        assert len(re.sub(r"\D", "", behind)) == currency.minor_digits


@pytest.mark.parametrize("adapter", ADAPTERS, ids=repr)
def test_two_currencies_never_look_alike(adapter: MoneyText) -> None:
    told = {adapter.text(rounded(5, currency_of(code))) for code in MINOR_DIGITS}
    assert len(told) == len(MINOR_DIGITS)


def test_a_country_writes_its_own_money_with_its_sign() -> None:
    ours = {Dialect.UK: ("GBP", "£"), Dialect.AU: ("AUD", "$"), Dialect.IE: ("EUR", "€")}
    for dialect, (code, sign) in ours.items():
        text = BabelMoneyText(dialect).text(rounded(Decimal("1234.5"), currency_of(code)))
        assert text == f"{sign}1,234.50"
