"""Currencies by their code, with how many digits stand behind the point."""

from dataclasses import dataclass
from typing import Final

from longpoint.errors import PricingError
from longpoint.speech.said import say

_TWO: Final = say(
    "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BRL BSD BTN BWP "
    "BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD "
    "FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS "
    "KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR "
    "MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD "
    "RUB SAR SBD SCR SDG SEK SGD SHP SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP "
    "TRY TTD TWD TZS UAH USD UYU UZS VED VES WST XCD YER ZAR ZMW"
)
_NONE: Final = say("BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF")
_THREE: Final = say("BHD IQD JOD KWD LYD OMR TND")

MINOR_DIGITS: Final = {
    code: digits for digits, codes in ((2, _TWO), (0, _NONE), (3, _THREE)) for code in codes.split()
}
"""Digits of the minor unit of each code: ISO 4217, from memory; held beside a public table in a
test. Fund codes, metals and testing codes are left out: nobody is paid in them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Currency:
    """A currency.

    Attributes:
        code: Its three letters, ISO 4217.
        minor_digits: Digits behind the point in which sums are kept: 2 for pence or cents.
    """

    code: str
    minor_digits: int


def currency_of(code: str) -> Currency:
    """Return the currency of a code.

    Args:
        code: Three letters, large or small.

    Raises:
        PricingError: There is no such code.

    Example:
        >>> currency_of("GBP").minor_digits, currency_of("jpy").minor_digits
        (2, 0)

    References:
        ISO 4217, from memory.
    """
    plain = code.strip().upper()
    if plain not in MINOR_DIGITS:
        raise PricingError(
            say('The currency is written as "{code}".', code=code[:20]),
            say("Money is told by the three letters of ISO 4217, and these are none of them."),
            say("Write for example AUD, NZD, GBP, EUR, USD or CAD."),
        )
    return Currency(code=plain, minor_digits=MINOR_DIGITS[plain])
