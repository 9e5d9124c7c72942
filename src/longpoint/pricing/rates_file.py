"""Read a rates file: all of it or nothing, since a price rests on every figure."""

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Any

from longpoint.pricing.currency import currency_of
from longpoint.pricing.hours import Hours, spread_of
from longpoint.pricing.money import Money
from longpoint.pricing.rates import (
    ASSUMED_PAY_DAYS,
    ASSUMED_SURE,
    ASSUMED_VALID_DAYS,
    Rates,
    Timber,
    markup_of_margin,
)
from longpoint.pricing.rates_tables import RATES, RATES_FORMAT
from longpoint.pricing.take_off import Limits
from longpoint.pricing.tax import Tax, TaxRounding, TaxShown
from longpoint.pricing.whole_file import read_whole
from longpoint.pricing.work import CREWS_OWN, Rate, WorkKind
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.trouble import HouseFileTrouble


def read_rates(document: Mapping[str, object]) -> Rates:
    """Return the rates in a document.

    Args:
        document: The parsed TOML or JSON file.

    Raises:
        PricingError: It is no rates file, or anything in it can't be used.

    Example:
        >>> rates = read_rates(
        ...     {"format": "longpoint-rates/1", "crew": "Us", "currency": "NZD", "hour": 60}
        ... )
        >>> str(rates.hour.amount), rates.tax is None
        ('60.00', True)
    """
    kept = say(
        'Rates are kept in a file of format "{rates_format}".',
        rates_format=RATES_FORMAT,
    )
    return read_whole(document, RATES, RATES_FORMAT, kept, _rates)


def _rates(values: Mapping[str, Any], units: Units) -> Rates:
    currency = currency_of(values["currency"])
    return Rates(
        crew=values["crew"],
        address=values.get("address", ()),
        currency=currency,
        hour=Money(amount=values["hour"], currency=currency),
        markup=_markup(values),
        margin_is_of_price="margin" in values,
        tax=_tax(values.get("tax")),
        sure=values.get("sure", ASSUMED_SURE),
        is_sure_assumed="sure" not in values,
        valid_days=values.get("valid_days", ASSUMED_VALID_DAYS),
        pay_days=values.get("pay_days", ASSUMED_PAY_DAYS),
        units=units,
        timber=Timber(values.get("timber", Timber.OURS.value)),
        limits=_limits(values.get("limits", {})),
        hours={WorkKind(key): _rate(three) for key, three in values.get("hours", {}).items()},
        exclusions=values.get("exclusions", ()),
    )


def _markup(values: Mapping[str, Any]) -> Fraction:
    if {"margin", "markup"} <= values.keys():
        raise HouseFileTrouble(
            say(
                "The file gives a margin of {values} and a markup of {values_2}.",
                values=values["margin"],
                values_2=values["markup"],
            ),
            say(
                "One is a part of the price, the other a part of the cost; which "
                "counts can't be told."
            ),
            say("Take one of them out."),
        )
    if "margin" in values:
        return markup_of_margin(values["margin"])
    return Fraction(values.get("markup", 0)) / 100


def _tax(values: Mapping[str, Any] | None) -> Tax | None:
    if values is None:
        return None
    return Tax(
        name=values["name"],
        percent=values["percent"],
        shown=TaxShown(values.get("shown", TaxShown.ADDED.value)),
        rounding=TaxRounding(values.get("rounding", TaxRounding.TOTAL.value)),
        number=values.get("number", ""),
    )


def _limits(values: Mapping[str, Any]) -> Limits:
    ours = Limits()
    return Limits(
        odd_corner_deg=values.get("odd_corner", ours.odd_corner_deg),
        apart_mm=values.get("apart", ours.apart_mm),
        proud_mm=values.get("proud", ours.proud_mm),
    )


def _rate(three: tuple[Decimal, ...]) -> Rate:
    if len(three) == 1:
        return Rate(
            hours=spread_of(three[0]),
            source=say(
                "{crews_own}; its spread ours",
                crews_own=CREWS_OWN,
            ),
        )
    least, likely, most = three
    return Rate(hours=Hours(least=least, likely=likely, most=most), source=CREWS_OWN)
