from dataclasses import replace
from decimal import Decimal

from longpoint.sticks.order_lines import order_lines
from longpoint.survey.profiles import Stock
from tests.random_sticks import house_of


def test_a_stick_that_two_sell_is_ordered_where_it_costs_least() -> None:
    dear = Stock(profile="OG", length_mm=5400.0, price=Decimal(16), supplier="Dear")
    cheap = Stock(profile="OG", length_mm=5400.0, price=Decimal(15), supplier="Cheap", code="C1")
    house = replace(house_of(), stock=(dear, cheap))
    (line,) = order_lines(house, {("OG", 5400.0): 2}, {})
    assert (line.supplier, line.code, line.total) == ("Cheap", "C1", Decimal(30))


def test_a_length_the_stock_list_no_longer_has_is_ordered_without_a_supplier() -> None:
    (line,) = order_lines(house_of(lengths_mm=(2700.0,)), {("OG", 5400.0): 2}, {})
    assert (line.supplier, line.price, line.total, line.count) == ("", None, None, 2)


def test_spares_of_a_length_that_the_plan_does_not_cut_have_their_own_line() -> None:
    lines = order_lines(house_of(), {("OG", 5400.0): 2}, {("OG", 2700.0): 1})
    assert [(x.length_mm, x.count, x.spares) for x in lines] == [(5400.0, 2, 0), (2700.0, 1, 1)]
    assert order_lines(house_of(), {}, {("OG", 2700.0): 0}) == ()
