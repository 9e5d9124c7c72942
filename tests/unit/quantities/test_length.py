import math

import pytest

from longpoint.errors import QuantityError
from longpoint.quantities.length import Units, parse_length, parse_signed_length

MM, INCH = Units.MM, Units.INCH
REFUSED = None

# Written; its millimetres in a house read in mm; in a house read in inches.
WRITTEN: list[tuple[object, float | None, float | None]] = [
    ("1187", 1187.0, 30149.8),
    ("1187.5", 1187.5, 30162.5),
    (" 1187 ", 1187.0, 30149.8),
    ("1187\n", 1187.0, 30149.8),
    ("1187mm", 1187.0, 1187.0),
    ("1187 MM", 1187.0, 1187.0),
    ("118.7 cm", 1187.0, 1187.0),
    ("1.187 m", 1187.0, 1187.0),
    (".5", 0.5, 12.7),
    ("0", 0.0, 0.0),
    ("113", 113.0, 2870.2),
    ("11'3", 3429.0, 3429.0),
    ("11'3\"", 3429.0, 3429.0),
    ("3'", 914.4, 914.4),
    ("3.5'", 1066.8, 1066.8),
    ("3' 6", 1066.8, 1066.8),
    ("3'-6", 1066.8, 1066.8),
    ("3ft 6in", 1066.8, 1066.8),
    ("3 feet 6 inches", 1066.8, 1066.8),
    ("3\u2019 6\u201d", 1066.8, 1066.8),
    ("3′ 6″", 1066.8, 1066.8),
    ("3' 6''", 1066.8, 1066.8),
    ("3' 1/2", 927.1, 927.1),
    ("3' 10 3/4\"", 1187.45, 1187.45),
    ('46"', 1168.4, 1168.4),
    ("46''", 1168.4, 1168.4),
    ("46 in", 1168.4, 1168.4),
    ('46 3/4"', 1187.45, 1187.45),
    ("46 3/4", 1187.45, 1187.45),
    ("46-3/4", 1187.45, 1187.45),
    ("46 - 3/4", 1187.45, 1187.45),
    ("46\u00a03/4", 1187.45, 1187.45),
    ("46\u00be", 1187.45, 1187.45),
    ("46 3\u20444", 1187.45, 1187.45),
    ("46.75", 46.75, 1187.45),
    ("1 1/2", REFUSED, 38.1),
    ("1-1/2", REFUSED, 38.1),
    ("1/2", REFUSED, 12.7),
    ('1/2"', 12.7, 12.7),
    ("1187 1/2", REFUSED, 30162.5),
    (1187, 1187.0, 30149.8),
    (46.75, 46.75, 1187.45),
    (0, 0.0, 0.0),
    ("", REFUSED, REFUSED),
    (" ", REFUSED, REFUSED),
    ("abc", REFUSED, REFUSED),
    ("1e9", REFUSED, REFUSED),
    ("1e3", REFUSED, REFUSED),
    ("0x10", REFUSED, REFUSED),
    ("1_187", REFUSED, REFUSED),
    ("nan", REFUSED, REFUSED),
    ("inf", REFUSED, REFUSED),
    ("-5", REFUSED, REFUSED),
    ("+5", REFUSED, REFUSED),
    ("-1/2", REFUSED, REFUSED),
    ("--3/4", REFUSED, REFUSED),
    ("3'--6", REFUSED, REFUSED),
    ("46-", REFUSED, REFUSED),
    ("1187.", REFUSED, REFUSED),
    ("1,187", REFUSED, REFUSED),
    ("1187,5", REFUSED, REFUSED),
    ("1.187,5", REFUSED, REFUSED),
    ("1 187", REFUSED, REFUSED),
    ("1187 1190", REFUSED, REFUSED),
    ("5/0", REFUSED, REFUSED),
    ("7/4", REFUSED, REFUSED),
    ("4/4", REFUSED, REFUSED),
    ("46 3/44", REFUSED, REFUSED),
    ("46 1/3", REFUSED, REFUSED),
    ("1 3/4 1/2", REFUSED, REFUSED),
    ("1/2/4", REFUSED, REFUSED),
    ("46.5 3/4", REFUSED, REFUSED),
    ("46 3/4 mm", REFUSED, REFUSED),
    ("3/4'", REFUSED, REFUSED),
    ("1'6'", REFUSED, REFUSED),
    ("3' 14", REFUSED, REFUSED),
    ("3.5' 6", REFUSED, REFUSED),
    ("46 in 3", REFUSED, REFUSED),
    ("1187 m", REFUSED, REFUSED),
    ("1187 yd", REFUSED, REFUSED),
    ("9" * 400, REFUSED, REFUSED),
    ("1" * 5000 + "/2", REFUSED, REFUSED),
    (-5, REFUSED, REFUSED),
    (math.nan, REFUSED, REFUSED),
    (math.inf, REFUSED, REFUSED),
    (-math.inf, REFUSED, REFUSED),
    (100_000.1, REFUSED, REFUSED),
    (10**400, REFUSED, REFUSED),
    (-(10**400), REFUSED, REFUSED),
    (True, REFUSED, REFUSED),
    (None, REFUSED, REFUSED),
    ([1187], REFUSED, REFUSED),
]


def _name(value: object) -> str | None:
    return repr(value)[:24] if isinstance(value, str | list) else None


@pytest.mark.parametrize(("written", "in_mm", "in_inches"), WRITTEN, ids=_name)
def test_a_length_is_read_as_meant_or_refused(
    written: object, in_mm: float | None, in_inches: float | None
) -> None:
    for units, expected in ((MM, in_mm), (INCH, in_inches)):
        if expected is None:
            with pytest.raises(QuantityError):
                parse_length(written, units)
        else:
            assert parse_length(written, units) == expected


@pytest.mark.parametrize("written", [w for w, in_mm, _ in WRITTEN if in_mm is None], ids=_name)
def test_a_refusal_shows_what_was_read_shortly(written: object) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_length(written, MM)
    assert caught.value.read.startswith("The length is written as ")
    assert len(caught.value.read) < 100
    assert caught.value.wrong
    assert caught.value.do


@pytest.mark.parametrize(
    ("written", "word"),
    [
        ("1,187", "comma"),
        ("46 3/44", "3/44"),
        ("1187 1/2", "half a millimetre"),
        ("9000 m", "hundred metres"),
        ("eleven", "not a length"),
    ],
)
def test_a_refusal_says_what_is_wrong_with_this_one(written: str, word: str) -> None:
    with pytest.raises(QuantityError) as caught:
        parse_length(written, MM)
    assert word in caught.value.wrong


@pytest.mark.parametrize("written", ["1187.5", '46 1/2"', "46 3/4", "3' 10 3/4\""])
def test_what_a_refusal_tells_to_write_can_be_read(written: str) -> None:
    assert parse_length(written, MM) > 0


def test_a_hundred_metres_is_the_longest() -> None:
    assert parse_length("100 m", MM) == 100_000.0
    with pytest.raises(QuantityError):
        parse_length("100.001 m", MM)


def test_zero_has_no_sign() -> None:
    assert math.copysign(1.0, parse_length(-0.0, MM)) == 1.0


@pytest.mark.parametrize(
    ("written", "length_mm"),
    [
        ("-3", -3.0),
        ("−3", -3.0),
        ("- 1.5", -1.5),
        ("+2", 2.0),
        ("2", 2.0),
        ("-1/8", -3.175),
        (-3, -3.0),
        (2.5, 2.5),
        (0, 0.0),
    ],
)
def test_a_plane_reading_may_carry_a_sign(written: object, length_mm: float) -> None:
    assert parse_signed_length(written, MM) == length_mm


@pytest.mark.parametrize(
    "written",
    ["", "-", "--3", "+-1/8", "- -1/8", "3-", "-1/2", True, None, -math.inf, math.nan, -(10**400)],
)
def test_a_signed_length_with_two_signs_or_none_to_read_is_refused(written: object) -> None:
    with pytest.raises(QuantityError):
        parse_signed_length(written, MM)


@pytest.mark.parametrize("sign", [1, -1])
def test_a_number_of_thousands_of_digits_is_refused_like_any_other(sign: int) -> None:
    with pytest.raises(QuantityError, match="over 15 digits"):
        parse_length(sign * 10**5000, MM)
