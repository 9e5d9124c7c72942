"""Least, likely and most hours."""

from decimal import Decimal

import pytest
from scipy import stats

from longpoint.errors import PricingError
from longpoint.pricing.hours import Hours, spread_of


def hours(least: str, likely: str, most: str) -> Hours:
    return Hours(least=Decimal(least), likely=Decimal(likely), most=Decimal(most))


@pytest.mark.parametrize("three", [("2", "1", "3"), ("1", "3", "2"), ("-1", "0", "1")])
def test_figures_out_of_order_are_refused(three: tuple[str, str, str]) -> None:
    with pytest.raises(PricingError):
        hours(*three)


@pytest.mark.parametrize("three", [("1", "2", "6"), ("1", "1", "2"), ("0", "2", "2")])
def test_what_is_drawn_is_the_triangle_of_another_program(three: tuple[str, str, str]) -> None:
    least, likely, most = map(float, three)
    width = most - least
    triangle = stats.triang((likely - least) / width, loc=least, scale=width)
    ours = hours(*three)
    for chance in (0.0, 0.1, 0.37, 0.5, 0.9, 1.0):
        assert ours.drawn(chance) == pytest.approx(triangle.ppf(chance))
    assert float(ours.mean) == pytest.approx(triangle.mean())


def test_one_figure_without_a_width_is_itself() -> None:
    assert hours("0.5", "0.5", "0.5").drawn(0.9) == 0.5


def test_one_figure_alone_gets_our_spread() -> None:
    assert spread_of(Decimal("0.50")) == hours("0.40", "0.50", "0.75")
