from decimal import Decimal

from longpoint.sticks.lay.bars import bars_of
from longpoint.sticks.plan import StickSource
from longpoint.survey.instruments import Saw
from longpoint.survey.profiles import Offcut, Stock

SAW = Saw(name="S1", kerf_mm=2.5, end_trim_mm=10.0)


def test_a_new_stick_loses_the_end_trim_twice_and_an_offcut_two_kerfs() -> None:
    found = bars_of(
        "OG",
        [Stock(profile="OG", length_mm=5400.0)],
        [Offcut(profile="OG", length_mm=1310.0)],
        SAW,
    )
    offcut, new = found.bars
    assert (offcut.source, offcut.room) == (StickSource.OFFCUT, 130500)
    assert (new.source, new.room) == (StickSource.STOCK, 538000)


def test_the_end_trim_is_never_less_than_a_kerf() -> None:
    saw = Saw(name="S1", kerf_mm=3.0, end_trim_mm=0.0)
    assert bars_of("OG", [Stock(profile="OG", length_mm=1000.0)], [], saw).bars[0].trim == 300


def test_prices_become_whole_units_of_the_smallest_step() -> None:
    stock = [
        Stock(profile="OG", length_mm=3000.0, price=Decimal("8.40")),
        Stock(profile="OG", length_mm=5400.0, price=Decimal("14.65")),
    ]
    found = bars_of("OG", stock, [], SAW)
    assert found.unit == "price"
    assert [bar.cost for bar in found.bars] == [840, 1465]
    assert found.per_unit == 100
    assert found.step == 5


def test_one_missing_price_makes_metres_the_cost() -> None:
    stock = [
        Stock(profile="OG", length_mm=3000.0, price=Decimal("8.40")),
        Stock(profile="OG", length_mm=5400.0),
    ]
    found = bars_of("OG", stock, [], SAW)
    assert found.unit == "m"
    assert [bar.cost / found.per_unit for bar in found.bars] == [3.0, 5.4]


def test_other_profiles_and_lengths_that_ran_out_are_left_aside() -> None:
    stock = [Stock(profile="SK", length_mm=3000.0), Stock(profile="OG", length_mm=3000.0, count=0)]
    offcuts = [Offcut(profile="OG", length_mm=900.0, count=0)]
    found = bars_of("OG", stock, offcuts, SAW)
    assert found.bars == ()
    assert found.longest_room == 0
