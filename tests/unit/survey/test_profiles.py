import dataclasses
from decimal import Decimal

import pytest

from longpoint.survey.profiles import Offcut, Profile, Stock


def test_a_profile_may_not_be_turned_end_for_end_unless_it_says_so() -> None:
    assert not Profile(name="ogee", width_mm=66.0, thickness_mm=18.0).reversible


def test_stock_without_a_count_is_bought_as_needed() -> None:
    stock = Stock(profile="ogee", length_mm=4200.0)
    assert (stock.count, stock.price) == (None, None)


def test_a_price_keeps_its_cents() -> None:
    price = Stock(profile="ogee", length_mm=4200.0, price=Decimal("19.90")).price
    assert str(price) == "19.90"


def test_an_offcut_is_one_length_unless_more_are_counted() -> None:
    assert Offcut(profile="ogee", length_mm=900.0).count == 1


def test_a_record_cannot_be_changed_in_place() -> None:
    profile = Profile(name="ogee", width_mm=66.0, thickness_mm=18.0)
    with pytest.raises(dataclasses.FrozenInstanceError):
        profile.width_mm = 70.0  # type: ignore[misc]
