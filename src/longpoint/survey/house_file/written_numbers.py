"""Read lengths, angles, counts and prices within the limits of their keys."""

import math
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation
from typing import Final

from longpoint.errors import QuantityError
from longpoint.quantities.formatting import format_angle, format_with_unit
from longpoint.quantities.length import Units, parse_length, parse_signed_length
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.keys import Key
from longpoint.survey.house_file.written_text import LONGEST_TEXT, refuse

LARGEST_NUMBER: Final = 10**12
FINEST_DECIMALS: Final = 9
"""Decimals of a millimetre that are kept, so that a length survives being written and read."""

_FINEST_PRICE: Final = Decimal("0.001")
"""Finer than any coin. A price without tax has as many places as a calculator shows, and a plan is
searched among all sums of prices, to the last place."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WrittenLength:
    """A length and how it was written."""

    value_mm: float
    written: str


def number_text(number: float) -> str:
    """Return a number as digits, without an exponent.

    Example:
        >>> number_text(1187), number_text(1187.5), number_text(1e-3)
        ('1187', '1187.5', '0.001')
    """
    if isinstance(number, int):
        return str(number)
    if abs(number) < 10**-FINEST_DECIMALS:
        return "0"
    return f"{Decimal(repr(number)):f}".removesuffix(".0")


def _number(written: object, path: str, what: str, like: str) -> float:
    if (
        isinstance(written, bool)
        or not isinstance(written, int | float)
        or (isinstance(written, float) and math.isnan(written))
    ):
        refuse(
            path,
            written,
            say("That is not {what}.", what=what),
            say(
                "Write it as a plain number, like {like}.",
                like=like,
            ),
        )
    if not -LARGEST_NUMBER <= written <= LARGEST_NUMBER:
        refuse(
            path,
            written,
            say("That is far too large."),
            say(
                "Write it like {like}.",
                like=like,
            ),
        )
    return written


def _length_text(written: object, path: str) -> str:
    if isinstance(written, str):
        if len(written) > LONGEST_TEXT:
            refuse(
                path,
                written,
                say("That is too long for a length."),
                say("Write it like 1187 or 46 3/4."),
            )
        return written.strip()
    return number_text(_number(written, path, say("a length"), say("1187, or as text like 46 3/4")))


def read_length(key: Key, written: object, units: Units, path: str) -> WrittenLength:
    """Return a length of zero or more, and how it is written.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    text = _length_text(written, path)
    try:
        value_mm = round(parse_length(text, units), FINEST_DECIMALS)
    except QuantityError as error:
        refuse(path, written, error.wrong, error.do)
    _check_length(key, value_mm, written, units, path)
    return WrittenLength(value_mm=value_mm, written=text)


def read_signed_length(key: Key, written: object, units: Units, path: str) -> float:
    """Return a length that may carry a sign, in mm.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    text = _length_text(written, path)
    try:
        value_mm = round(parse_signed_length(text, units), FINEST_DECIMALS) + 0.0
    except QuantityError:
        refuse(
            path,
            written,
            say("That is not a length, with or without a sign, that can be read."),
            say("Write it like 2, -1.5 or -1/16."),
        )
    _check_length(key, value_mm, written, units, path)
    return value_mm


def _check_length(key: Key, value_mm: float, written: object, units: Units, path: str) -> None:
    if value_mm < key.low or (key.above and value_mm <= key.low):
        least = format_with_unit(key.low, units)
        refuse(
            path,
            written,
            say(
                "It has to be {more} {least}.",
                more=say("more than") if key.above else say("at least"),
                least=least,
            ),
            say("Read it again and write what it is."),
        )
    if value_mm > key.high:
        refuse(
            path,
            written,
            say("It can't be more than {high}.", high=format_with_unit(key.high, units)),
            say("Look for a slip of the pen, or for another unit than the house's."),
        )


def read_angle(key: Key, written: object, path: str) -> float:
    """Return an angle in degrees.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    angle_deg = float(_number(written, path, say("an angle in degrees"), "90.5"))
    too_low = angle_deg < key.low or (key.above and angle_deg <= key.low)
    if too_low or angle_deg > key.high:
        refuse(
            path,
            written,
            say(
                "It has to lie between {low} and {high} degrees{that}.",
                low=format_angle(key.low),
                high=format_angle(key.high),
                that=say("; that limit is ours") if key.ours else "",
            ),
            say("Write it in degrees, as the gauge shows it."),
        )
    return angle_deg + 0.0


def read_number(key: Key, written: object, path: str) -> float:
    """Return a plain number.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    number = float(_number(written, path, say("a number"), str(key.example)))
    if not key.low <= number <= key.high:
        refuse(
            path,
            written,
            say(
                "It has to lie between {low:g} and {high:g} {unit}{that}.",
                low=key.low,
                high=key.high,
                unit=key.unit,
                that=say("; that limit is ours") if key.ours else "",
            ),
            say("Look for a slip of the pen, or for another unit."),
        )
    return number + 0.0


def read_count(key: Key, written: object, path: str) -> int:
    """Return a whole number, written as a number or as its digits in quotes.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    number = _number(from_digits(written), path, say("a whole number"), "2")
    if number != int(number) or not key.low <= number <= key.high:
        refuse(
            path,
            written,
            say(
                "It has to be a whole number from {low:g} to {high:g}.",
                low=key.low,
                high=key.high,
            ),
            say("Write how many there are."),
        )
    return int(number)


def from_digits(written: object) -> object:
    """Return the number that text of digits alone stands for; anything else as it is.

    Example:
        >>> from_digits(" 12 "), from_digits("1.5"), from_digits(2)
        (12, '1.5', 2)
    """
    if isinstance(written, str) and len(written) <= LONGEST_TEXT:
        digits = written.strip()
        if digits.isascii() and digits.isdecimal():
            return int(digits)
    return written


def read_price(key: Key, written: object, path: str) -> Decimal:
    """Return a price, rounded to the thousandth where it is written finer.

    Raises:
        HouseFileTrouble: It isn't one, or lies outside the key's limits.
    """
    if isinstance(written, str) and len(written) <= LONGEST_TEXT:
        try:
            price = Decimal(written.strip())
        except InvalidOperation:
            price = Decimal("NaN")
    else:
        price = Decimal(str(_number(written, path, say("a price"), "14.60")))
    if not price.is_finite() or not 0 <= price <= Decimal(key.high):
        refuse(
            path,
            written,
            say("That is not a price of zero or more."),
            say("Write it as a plain number, like 14.60, without the sign of the currency."),
        )
    # Zeros at the end count as places too.
    rounded = price.quantize(_FINEST_PRICE)
    if price and not rounded:
        return _FINEST_PRICE
    return min(price, rounded, key=_places)


def _places(number: Decimal) -> int:
    exponent = number.as_tuple().exponent
    return -exponent if isinstance(exponent, int) else 0


def read_least_likely_most(key: Key, written: object, path: str) -> tuple[Decimal, ...]:
    """Return three numbers in rising order, or one alone.

    Raises:
        HouseFileTrouble: They aren't, or lie outside the key's limits.
    """
    if not isinstance(written, list | tuple):
        return (_decimal(key, written, path),)
    if len(written) != 3:
        refuse(
            path,
            written,
            say("It has to be three numbers: least, likely and most."),
            say(
                "Write it like {example}, or the likely one alone, no brackets.",
                example=key.example,
            ),
        )
    three = tuple(_decimal(key, one, path) for one in written)
    if sorted(three) != list(three):
        refuse(
            path,
            joined(" ", (str(one) for one in three)),
            say("They have to rise: least, likely, most."),
            say("Put them in that order."),
        )
    return three


def _decimal(key: Key, written: object, path: str) -> Decimal:
    """Return a plain number with the digits that were written."""
    return Decimal(str(read_number(key, written, path)))
