"""Ranges of hours, timber and cost."""

import math
from decimal import Decimal

import numpy as np
import pytest
from scipy import stats

from longpoint.pricing.estimate import WorkLine, imagined_hours, quantile
from longpoint.pricing.hours import Hours
from longpoint.pricing.work import Rate, WorkKind
from tests.priced_jobs import counted, rates

pytestmark = pytest.mark.no_cover

THREES = {
    WorkKind.SET_UP: (1, ("3", "4", "6")),
    WorkKind.WINDOW_FOUR_SIDES: (12, ("0.5", "0.7", "1.1")),
    WorkKind.DOOR_FACE: (9, ("0.4", "0.6", "0.9")),
    WorkKind.SKIRTING: (60, ("0.08", "0.11", "0.16")),
}


def lines() -> list[WorkLine]:
    return [
        WorkLine(
            kind=kind,
            quantity=Decimal(quantity),
            rate=Rate(
                hours=Hours(least=Decimal(a), likely=Decimal(b), most=Decimal(c)), source="test"
            ),
        )
        for kind, (quantity, (a, b, c)) in THREES.items()
    ]


def triangle(quantity: int, three: tuple[str, str, str]) -> stats.rv_continuous:
    least, likely, most = (float(each) * quantity for each in three)
    width = most - least
    return stats.triang((likely - least) / width, loc=least, scale=width)


def test_kinds_that_share_nothing_add_up_as_an_exact_convolution_does() -> None:
    step = 0.005
    density = np.ones(1)
    start = 0.0
    for quantity, three in THREES.values():
        one = triangle(quantity, three)
        low, high = one.ppf(0.0), one.ppf(1.0)
        edges = np.arange(math.floor(low / step), math.ceil(high / step) + 1) * step
        density = np.convolve(density, np.diff(one.cdf(edges)))
        start += edges[0] + step / 2
    rising = np.cumsum(density)
    drawn = sorted(imagined_hours(lines(), 20_000, 1, shared=0.0))

    for chance in (0.1, 0.5, 0.9):
        exact = start + step * np.searchsorted(rising, chance)
        assert quantile(drawn, chance) == pytest.approx(exact, abs=0.06)


def test_kinds_that_share_all_go_slow_together() -> None:
    drawn = sorted(imagined_hours(lines(), 20_000, 1, shared=1.0))

    for chance in (0.1, 0.5, 0.9):
        exact = sum(triangle(*each).ppf(chance) for each in THREES.values())
        assert quantile(drawn, chance) == pytest.approx(exact, abs=0.1)


def test_the_mean_is_that_of_the_triangles_whatever_is_shared() -> None:
    exact = sum(float(line.mean_hours) for line in lines())
    for shared in (0.0, 0.5, 1.0):
        drawn = imagined_hours(lines(), 20_000, 3, shared=shared)
        assert math.fsum(drawn) / len(drawn) == pytest.approx(exact, rel=0.005)


def test_what_half_is_shared_lies_between_none_and_all() -> None:
    widths = []
    for shared in (0.0, 0.5, 1.0):
        drawn = sorted(imagined_hours(lines(), 5_000, 1, shared=shared))
        widths.append(quantile(drawn, 0.9) - quantile(drawn, 0.1))
    assert widths == sorted(widths)


def test_the_same_seed_gives_the_same_hours_and_another_kind_leaves_them() -> None:
    assert imagined_hours(lines(), 50, 1) == imagined_hours(lines(), 50, 1)
    one, two = imagined_hours(lines()[:1], 50, 1), imagined_hours(lines()[:2], 50, 1)
    assert all(b > a for a, b in zip(one, two, strict=True))


def test_without_rates_there_are_hours_and_sticks_and_no_money() -> None:
    estimate = counted().estimate

    assert estimate.cost is None
    assert estimate.hours.low < estimate.hours.middle < estimate.hours.high
    assert sum(estimate.timber.at(0.5).sticks.values()) > 0


def test_what_has_no_hours_is_named_and_not_counted() -> None:
    job = counted(rates(), running=[{"kind": "other_trim", "length": 4000}])

    assert (WorkKind.OTHER_TRIM, Decimal("4.00")) in job.estimate.without_rate
    assert WorkKind.OTHER_TRIM not in {line.kind for line in job.estimate.lines}


def test_the_quoted_hours_are_the_expected_ones_times_what_makes_them_sure() -> None:
    estimate = counted(rates()).estimate

    charged = float(estimate.mean_hours) * float(estimate.ready)
    assert charged == pytest.approx(estimate.sure_hours, abs=0.01)


def test_where_the_client_buys_the_timber_its_cost_is_left_out() -> None:
    ours, theirs = (counted(rates(timber=who)).estimate.cost for who in ("ours", "clients"))

    assert ours is not None
    assert theirs is not None
    assert theirs.middle < ours.middle
