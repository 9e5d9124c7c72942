"""Currencies by their codes."""

import pytest
from babel.numbers import get_currency_precision, list_currencies

from longpoint.errors import PricingError
from longpoint.pricing.currency import MINOR_DIGITS, currency_of

# Where the public table gives the digits that prices are shown with, not those of the minor unit.
SHOWN_WITHOUT = frozenset(
    ("AFN", "ALL", "IRR", "KPW", "LAK", "LBP", "MGA", "MMK", "RSD", "SOS", "SYP", "YER", "IQD")
)


def test_every_code_is_known_to_the_public_table_with_as_many_digits() -> None:
    known = list_currencies()
    for code, digits in MINOR_DIGITS.items():
        assert code in known
        if code in SHOWN_WITHOUT:
            assert get_currency_precision(code) == 0
        else:
            assert get_currency_precision(code) == digits, code


@pytest.mark.parametrize("code", ["", "POUND", "XYZ", "£", "GB P"])
def test_what_is_no_code_is_refused(code: str) -> None:
    with pytest.raises(PricingError):
        currency_of(code)
