"""The rates file: what it may say, and what it is refused for."""

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

from longpoint.errors import PricingError
from longpoint.pricing.rates_file import read_rates
from longpoint.pricing.rates_tables import HOURS
from longpoint.pricing.work import START_RATES, WorkKind
from longpoint.quantities.length import Units
from tests.priced_jobs import OUR_RATES, example, rates


def test_the_example_reads() -> None:
    crew = read_rates(example("rates.toml"))

    assert crew.currency.code == "GBP"
    assert crew.tax is not None
    assert crew.markup == Fraction(15, 85)


def test_a_margin_is_of_the_price_and_a_markup_of_the_cost() -> None:
    assert rates(margin=20).markup == Fraction(1, 4)
    assert rates(margin=None, markup=20).markup == Fraction(1, 5)
    assert rates(margin=None).markup == 0
    assert rates(margin=20).price(Fraction(80)) == 100


def test_what_the_crew_does_not_say_starts_from_a_figure_with_its_source() -> None:
    crew = rates(hours={"door_face": 0.6})

    own, start = crew.rate(WorkKind.DOOR_FACE), crew.rate(WorkKind.WINDOW_FOUR_SIDES)
    assert own is not None
    assert "your rates file" in own.source
    assert own.hours.most == Decimal("0.90")
    assert start == START_RATES[WorkKind.WINDOW_FOUR_SIDES]
    assert crew.rate(WorkKind.WINDOW_BOARD) is None


def test_every_kind_of_work_has_a_key_and_every_figure_to_start_from_a_source() -> None:
    assert set(HOURS.by_name) == {kind.value for kind in WorkKind}
    for rate in START_RATES.values():
        assert "no source" in rate.source or "published" in rate.source or "tables" in rate.source


def test_running_work_by_the_foot_takes_what_a_foot_of_a_metre_takes() -> None:
    crew = rates(units="in")

    assert crew.units is Units.INCH
    shelf = crew.rate(WorkKind.SHELF)
    assert shelf is not None
    assert shelf.hours.likely == Decimal("0.17") * Decimal("0.3048")


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"currency": "POUNDS"}, "POUNDS"),
        ({"currency": "XYZ"}, "XYZ"),
        ({"currency": None}, "currency"),
        ({"hour": -3}, "hour"),
        ({"hour": "nan"}, "hour"),
        ({"hour": 38.005}, "38.005"),
        ({"hour": None}, "hour"),
        ({"margin": 100}, "100"),
        ({"markup": 10}, "margin"),
        ({"sure": 0.2}, "sure"),
        ({"format": "longpoint-house/1"}, "format"),
        ({"tax": {"name": "VAT"}}, "percent"),
        ({"tax": {"name": "VAT", "percent": 150}}, "150"),
        ({"tax": {"name": "VAT", "percent": 20, "shown": "hidden"}}, "shown"),
        ({"hours": {"door_face": [1, 2]}}, "door_face"),
        ({"hours": {"door_face": [3, 2, 1]}}, "door_face"),
        ({"hours": {"dor_face": 1}}, "dor_face"),
        ({"hours": {"door_face": "soon"}}, "door_face"),
        ({"hours": {"door_face": True}}, "door_face"),
        ({"hour_rate": 30}, "hour_rate"),
    ],
)
def test_a_bad_figure_is_refused_in_three_sentences_that_name_it(
    changes: dict[str, Any], told: str
) -> None:
    with pytest.raises(PricingError) as refused:
        rates(**changes)

    assert told in str(refused.value)
    for sentence in (refused.value.read, refused.value.wrong, refused.value.do):
        assert sentence.endswith((".", "?"))


def test_a_yen_has_no_digits_behind_its_point() -> None:
    assert str(rates(currency="JPY", hour=4000).hour.amount) == "4000"
    with pytest.raises(PricingError):
        rates(currency="JPY", hour=4000.5)


def test_nothing_is_changed_in_what_was_handed_over() -> None:
    before = repr(OUR_RATES)
    read_rates(OUR_RATES)
    assert repr(OUR_RATES) == before
