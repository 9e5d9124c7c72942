import math
from decimal import Decimal

import pytest

from longpoint.quantities.length import Units
from longpoint.survey.house_file.keys import Key, Kind
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.house_file.written_numbers import (
    number_text,
    read_angle,
    read_count,
    read_length,
    read_price,
    read_signed_length,
)


def key(kind: Kind, low: float = 0.0, high: float = 1000.0, *, above: bool = False) -> Key:
    return Key(name="k", kind=kind, meaning="A key.", example=1, low=low, high=high, above=above)


def test_a_length_keeps_how_it_was_written() -> None:
    read = read_length(key(Kind.LENGTH), " 3 1/2 ", Units.INCH, "k")

    assert (read.value_mm, read.written) == (88.9, "3 1/2")


@pytest.mark.parametrize(("number", "text"), [(46.75, "46.75"), (46, "46"), (0.1, "0.1")])
def test_a_number_and_the_same_number_as_text_are_the_same_length(number: float, text: str) -> None:
    wide = key(Kind.LENGTH, high=9999.0)

    for units in Units:
        as_number = read_length(wide, number, units, "k")
        assert as_number == read_length(wide, text, units, "k")


@pytest.mark.parametrize(
    "written",
    [True, None, [], math.nan, math.inf, -1, "-1", "abc", "", 10**400, -(10**400), 1e308, "9" * 99],
)
def test_what_is_no_length_is_refused(written: object) -> None:
    with pytest.raises(HouseFileTrouble, match="k is written as"):
        read_length(key(Kind.LENGTH), written, Units.MM, "k")


def test_limits_are_kept_and_told_in_the_units_of_the_house() -> None:
    with pytest.raises(HouseFileTrouble, match="more than 0 mm"):
        read_length(key(Kind.LENGTH, above=True), 0, Units.MM, "k")
    with pytest.raises(HouseFileTrouble, match="can't be more than 1000 mm"):
        read_length(key(Kind.LENGTH), 1001, Units.MM, "k")
    with pytest.raises(HouseFileTrouble, match="can't be more than 4 in"):
        read_length(key(Kind.LENGTH, high=101.6), "4 1/16", Units.INCH, "k")


def test_a_signed_length_may_be_negative() -> None:
    signed = key(Kind.SIGNED_LENGTH, low=-10.0)

    assert read_signed_length(signed, "-1/8", Units.INCH, "k") == -3.175
    assert read_signed_length(signed, -3, Units.MM, "k") == -3.0
    assert math.copysign(1, read_signed_length(signed, -0.0, Units.MM, "k")) == 1
    with pytest.raises(HouseFileTrouble):
        read_signed_length(signed, -11, Units.MM, "k")
    with pytest.raises(HouseFileTrouble):
        read_signed_length(signed, "--1", Units.MM, "k")


def test_an_angle_is_a_number_of_degrees_within_its_limits() -> None:
    gauge = key(Kind.ANGLE, low=1.0, high=179.0)

    assert read_angle(gauge, 90, "k") == 90.0
    for written in (0.5, 180, "90", True, math.nan):
        with pytest.raises(HouseFileTrouble):
            read_angle(gauge, written, "k")


def test_a_count_is_a_whole_number() -> None:
    assert read_count(key(Kind.COUNT), 12, "k") == 12
    assert read_count(key(Kind.COUNT), 12.0, "k") == 12
    for written in (1.5, -1, False, 10**9):
        with pytest.raises(HouseFileTrouble):
            read_count(key(Kind.COUNT), written, "k")


def test_a_count_may_be_written_as_its_digits_in_quotes() -> None:
    assert read_count(key(Kind.COUNT), "12", "k") == 12
    assert read_count(key(Kind.COUNT), " 12 ", "k") == 12
    for written in ("twelve", "1.5", "-1", "", "9" * 20, "9" * 99, "\u0661\u0662", "1e3"):
        with pytest.raises(HouseFileTrouble):
            read_count(key(Kind.COUNT), written, "k")


def test_a_price_is_kept_to_the_last_digit() -> None:
    assert read_price(key(Kind.PRICE), 14.60, "k") == Decimal("14.6")
    assert read_price(key(Kind.PRICE), "14.60", "k") == Decimal("14.60")


@pytest.mark.parametrize(
    ("written", "price"),
    [
        (14.166666666666666, "14.167"),
        ("0.00001", "0.001"),
        ("1e-400", "0.001"),
        ("0e-400", "0"),
        ("14.1000000", "14.1"),
    ],
)
def test_a_price_finer_than_any_coin_is_rounded_and_never_to_nothing(
    written: float | str, price: str
) -> None:
    found = read_price(key(Kind.PRICE), written, "k")
    assert found == Decimal(price)
    assert int(found.as_tuple().exponent) >= -3


def test_what_is_no_price_is_refused() -> None:
    for written in (-0.01, "free", "NaN", "Infinity", 2000, None, "1" * 99):
        with pytest.raises(HouseFileTrouble):
            read_price(key(Kind.PRICE), written, "k")


def test_numbers_are_written_without_an_exponent() -> None:
    assert number_text(1e-5) == "0.00001"
    assert number_text(1e-12) == "0"
    assert number_text(1187.0) == "1187"
    assert number_text(-2.5) == "-2.5"
