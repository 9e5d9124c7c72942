from decimal import Decimal

import pytest

from longpoint.sheets.bought import Bought, money_of, price_words


def sticks(count: int, each: str | None) -> Bought:
    price = None if each is None else Decimal(each)
    return Bought(profile="OG57", length_mm=5400.0, count=count, each=price)


@pytest.mark.parametrize(
    ("rows", "money"),
    [
        ((sticks(3, "14.60"), sticks(2, "9.10")), (Decimal("62.00"), True)),
        ((sticks(3, "14.60"), sticks(2, None)), (Decimal("43.80"), False)),
        ((), (Decimal(0), True)),
    ],
)
def test_money_counts_what_has_a_price_and_says_whether_all_have(
    rows: tuple[Bought, ...], money: tuple[Decimal, bool]
) -> None:
    assert money_of(rows) == money


@pytest.mark.parametrize(
    ("each", "words"), [("14.6", "14.60"), ("14.167", "14.167"), ("14.160", "14.16"), ("0", "0.00")]
)
def test_a_price_is_written_as_finely_as_sums_are_made_of_it(each: str, words: str) -> None:
    assert price_words(Decimal(each)) == words
