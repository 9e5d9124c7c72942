"""Money as each country writes it, through Babel."""

from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from babel import Locale
from babel.numbers import format_currency

from longpoint.pricing.money import Money
from longpoint.survey.house import Dialect

LOCALES: Final = {
    Dialect.AU: "en_AU",
    Dialect.NZ: "en_NZ",
    Dialect.UK: "en_GB",
    Dialect.IE: "en_IE",
    Dialect.US: "en_US",
    Dialect.CA: "en_CA",
}


@dataclass(frozen=True, slots=True)
class BabelMoneyText:
    """The port's adapter: signs and separators of a country, digits of ISO 4217.

    Attributes:
        dialect: The country.
        language: The language that the country's money is written in.
    """

    dialect: Dialect
    language: str = "en"

    def text(self, money: Money) -> str:
        """Return a sum with its currency's sign, as the country writes it."""
        own = self.language != "en"
        locale = Locale.parse(self.language if own else LOCALES[self.dialect])
        digits = money.currency.minor_digits
        behind = f".{'0' * digits}" if digits else ""
        pattern = locale.currency_formats["standard"].pattern.replace(".00", behind)
        return str(
            format_currency(
                Decimal(money.amount),
                money.currency.code,
                format=pattern,
                locale=locale,
                currency_digits=False,
            )
        )
