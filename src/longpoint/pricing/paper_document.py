"""Quotes and variations as documents that are kept, so that what was given stays as it was."""

from collections.abc import Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any, Final

from longpoint.errors import PricingError
from longpoint.pricing.currency import Currency, currency_of
from longpoint.pricing.money import LARGEST, Money
from longpoint.pricing.quote import Quote, Row
from longpoint.pricing.rates import Timber
from longpoint.pricing.take_off import Limits
from longpoint.pricing.tax import Sums, Tax, TaxRounding, TaxShown, sums
from longpoint.pricing.timber import Stick
from longpoint.pricing.variation import Variation
from longpoint.pricing.work import Task, WorkKind
from longpoint.quantities.length import Units
from longpoint.speech.said import raised, say
from longpoint.survey.house import Dialect

QUOTE_FORMAT: Final = "longpoint-quote/1"
VARIATION_FORMAT: Final = "longpoint-variation/1"


def quote_document(quote: Quote) -> dict[str, Any]:
    """Return a quote as values that JSON can carry; sums are text, so that no digit is lost."""
    return {
        "format": QUOTE_FORMAT,
        "number": quote.number,
        "day": quote.day.isoformat(),
        "valid_until": quote.valid_until.isoformat(),
        "house": quote.house,
        "dialect": quote.dialect.value,
        "units": quote.units.value,
        "running_units": quote.running_units.value,
        "made_from": quote.made_from,
        "is_read": quote.is_read,
        "crew": quote.crew,
        "address": list(quote.address),
        "currency": quote.currency.code,
        "tax": _tax_document(quote.tax),
        "timber": quote.timber.value,
        "rows": [_row_document(row) for row in quote.rows],
        "sums": _sums_document(quote.sums),
        "exclusions": list(quote.exclusions),
        "held": list(quote.held),
        "pay_days": quote.pay_days,
        "sure": quote.sure,
        "limits": {
            "odd_corner": quote.limits.odd_corner_deg,
            "apart": quote.limits.apart_mm,
            "proud": quote.limits.proud_mm,
        },
        "tasks": [_task_document(task) for task in quote.tasks],
        "prices": {kind.value: str(money.amount) for kind, money in quote.prices.items()},
        "stick_prices": [
            [*stick, str(money.amount)] for stick, money in quote.stick_prices.items()
        ],
    }


def read_quote(document: Mapping[str, Any]) -> Quote:
    """Return the quote in a document, its sums reckoned again.

    Raises:
        PricingError: It is none, or its figures don't agree with each other.
    """
    _check_format(document, QUOTE_FORMAT, say("a quote"))
    try:
        quote = _quote(document)
    except (KeyError, TypeError, ValueError, AttributeError, ArithmeticError) as error:
        raise _damaged("quote", error) from None
    _check_sums("quote", quote.rows, quote.sums, quote)
    return quote


def variation_document(variation: Variation) -> dict[str, Any]:
    """Return a variation as values that JSON can carry."""
    return {
        "format": VARIATION_FORMAT,
        "number": variation.number,
        "quote": variation.quote,
        "day": variation.day.isoformat(),
        "made_from": variation.made_from,
        "rows": [_row_document(row) for row in variation.rows],
        "sums": _sums_document(variation.sums),
        "enough": list(variation.enough),
        "held": list(variation.held),
        "tasks": [_task_document(task) for task in variation.tasks],
        "sticks": [[*stick, count] for stick, count in variation.sticks.items()],
    }


def read_variation(document: Mapping[str, Any], quote: Quote) -> Variation:
    """Return the variation in a document, its sums reckoned again.

    Raises:
        PricingError: It is none, or its figures don't agree with each other.
    """
    _check_format(document, VARIATION_FORMAT, say("a variation"))
    currency = quote.currency
    try:
        variation = Variation(
            number=int(document["number"]),
            quote=str(document["quote"]),
            day=date.fromisoformat(document["day"]),
            made_from=str(document["made_from"]),
            rows=tuple(_row(each, currency) for each in document["rows"]),
            sums=_sums(document["sums"], currency),
            enough=tuple(map(str, document["enough"])),
            held=tuple(map(str, document["held"])),
            tasks=tuple(_task(each) for each in document["tasks"]),
            sticks={
                _stick((profile, length)): int(count)
                for profile, length, count in document["sticks"]
            },
        )
    except (KeyError, TypeError, ValueError, AttributeError, ArithmeticError) as error:
        raise _damaged("variation", error) from None
    _check_sums("variation", variation.rows, variation.sums, quote)
    return variation


def _quote(document: Mapping[str, Any]) -> Quote:
    currency = currency_of(document["currency"])
    limits = document["limits"]
    return Quote(
        number=str(document["number"]),
        day=date.fromisoformat(document["day"]),
        valid_until=date.fromisoformat(document["valid_until"]),
        house=str(document["house"]),
        dialect=Dialect(document["dialect"]),
        units=Units(document["units"]),
        running_units=Units(document["running_units"]),
        made_from=str(document["made_from"]),
        is_read=bool(document["is_read"]),
        crew=str(document["crew"]),
        address=tuple(map(str, document["address"])),
        currency=currency,
        tax=_tax(document["tax"]),
        timber=Timber(document["timber"]),
        rows=tuple(_row(each, currency) for each in document["rows"]),
        sums=_sums(document["sums"], currency),
        exclusions=tuple(map(str, document["exclusions"])),
        held=tuple(map(str, document["held"])),
        pay_days=int(document["pay_days"]),
        sure=float(_number(document["sure"])),
        limits=Limits(
            odd_corner_deg=float(_number(limits["odd_corner"])),
            apart_mm=float(_number(limits["apart"])),
            proud_mm=float(_number(limits["proud"])),
        ),
        tasks=tuple(_task(each) for each in document["tasks"]),
        prices={
            WorkKind(kind): _money(amount, currency) for kind, amount in document["prices"].items()
        },
        stick_prices={
            _stick((profile, length)): _money(amount, currency)
            for profile, length, amount in document["stick_prices"]
        },
    )


def _row_document(row: Row) -> dict[str, Any]:
    return {
        "work": row.work.value if row.work else None,
        "stick": list(row.stick) if row.stick else None,
        "quantity": str(row.quantity),
        "each": str(row.each.amount),
        "amount": str(row.amount.amount),
        "why": row.why,
    }


def _row(document: Mapping[str, Any], currency: Currency) -> Row:
    return Row(
        work=WorkKind(document["work"]) if document["work"] is not None else None,
        stick=_stick(document["stick"]) if document["stick"] is not None else None,
        quantity=_number(document["quantity"]),
        each=_money(document["each"], currency),
        amount=_money(document["amount"], currency),
        why=str(document["why"]),
    )


def _task_document(task: Task) -> list[str]:
    return [task.kind.value, str(task.quantity), task.place, task.room, task.why]


def _task(written: Sequence[str]) -> Task:
    kind, quantity, place, room, why = written
    return Task(kind=WorkKind(kind), quantity=_number(quantity), place=place, room=room, why=why)


def _tax_document(tax: Tax | None) -> dict[str, str] | None:
    if tax is None:
        return None
    return {
        "name": tax.name,
        "percent": str(tax.percent),
        "shown": tax.shown.value,
        "rounding": tax.rounding.value,
        "number": tax.number,
    }


def _tax(document: Mapping[str, Any] | None) -> Tax | None:
    if document is None:
        return None
    return Tax(
        name=str(document["name"]),
        percent=_number(document["percent"]),
        shown=TaxShown(document["shown"]),
        rounding=TaxRounding(document["rounding"]),
        number=str(document["number"]),
    )


def _sums_document(below: Sums) -> dict[str, str]:
    return {
        "net": str(below.net.amount),
        "tax": str(below.tax.amount),
        "gross": str(below.gross.amount),
    }


def _sums(document: Mapping[str, Any], currency: Currency) -> Sums:
    net, tax, gross = (_money(document[key], currency) for key in ("net", "tax", "gross"))
    return Sums(net=net, tax=tax, gross=gross)


def _stick(written: Sequence[Any]) -> Stick:
    profile, length_mm = written
    return str(profile), float(_number(length_mm))


def _money(amount: object, currency: Currency) -> Money:
    return Money(amount=_number(amount), currency=currency)


def _number(written: object) -> Decimal:
    """Return a number; Python takes "nan" and "inf" for numbers too, and no paper holds one."""
    number = Decimal(str(written))
    if not number.is_finite() or abs(number) >= LARGEST:
        raise ValueError(f"{number:.3g} is no figure of a paper")
    return number


def _check_format(document: Mapping[str, Any], wanted: str, what: str) -> None:
    if document.get("format") != wanted:
        raise PricingError(
            say("{what} was to be read.", what=raised(what)),
            say('The file isn\'t of format "{wanted}".', wanted=wanted),
            say("Name the folder that `longpoint quote` wrote."),
        )


def _check_sums(what: str, rows: Sequence[Row], below: Sums, quote: Quote) -> None:
    again = sums([row.amount for row in rows], quote.tax, quote.currency)
    if below != again or any(row.each.times(row.quantity) != row.amount for row in rows):
        raise PricingError(
            say(
                "The {what} in the folder says {amount} {code}.",
                what=what,
                amount=below.gross.amount,
                code=quote.currency.code,
            ),
            say("Its rows don't come to that, so the file was changed after it was given."),
            say("Take the file from your own copy, or give a new quote in another folder."),
        )


def _damaged(what: str, error: Exception) -> PricingError:
    return PricingError(
        say("The {what} in the folder was to be read.", what=what),
        say(
            "A part of it is missing or can't be read: {name} {error}.",
            name=type(error).__name__,
            error=str(error)[:60],
        ),
        say("Take the file from your own copy, or give a new quote in another folder."),
    )
