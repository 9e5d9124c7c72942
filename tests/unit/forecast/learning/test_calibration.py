import math
from random import Random
from statistics import fmean

import pytest
from scipy import stats

from longpoint.errors import QuantityError
from longpoint.forecast.learning.calibration import (
    Outcome,
    Verdict,
    brier,
    enough,
    reliability,
    verdict,
    wilson,
)

pytestmark = pytest.mark.no_cover


def drawn(
    draw: Random, houses: int, each: int, *, off: float = 0.0, alike: float = 0.0
) -> list[Outcome]:
    """Outcomes of houses whose joints go together; `off` is added to what forecasts promise."""
    made = []
    for house in range(houses):
        true = draw.choice((0.65, 0.75, 0.85))
        shared = draw.random() < alike
        all_close = draw.random() < true
        for _ in range(each):
            closed = all_close if shared else draw.random() < true
            made.append(Outcome(house=f"H{house}", chance=true + off, closed=closed))
    return made


@pytest.mark.parametrize(("closed", "count"), [(9, 10), (10, 10), (0, 7), (50, 80)])
def test_the_interval_of_a_share_is_that_of_an_independent_library(closed: int, count: int) -> None:
    theirs = stats.binomtest(closed, count).proportion_ci(0.9, method="wilson")
    z = float(stats.norm.ppf(0.95))
    assert wilson(closed / count, count, z) == pytest.approx((theirs.low, theirs.high))


def test_rows_hold_every_outcome_once_and_in_its_tenth() -> None:
    outcomes = [Outcome(house="H", chance=n / 20, closed=n % 2 == 0) for n in range(21)]
    rows = reliability(outcomes)
    assert [row.count for row in rows] == [2] * 9 + [3]
    for row in rows:
        assert row.chances.lowest <= row.called <= row.chances.highest
    assert rows[-1].closed == pytest.approx(2 / 3)


def test_a_row_by_hand() -> None:
    outcomes = [
        Outcome(house=house, chance=0.82, closed=closed)
        for house, closed in (("A", True), ("A", True), ("B", True), ("B", False))
    ]
    (row,) = reliability(outcomes)
    assert (row.count, row.houses, row.closed) == (4, 2, 0.75)
    assert not row.is_enough
    # Of house A 0.5 over the mean, of B 0.5 under: u^2 = 2 (0.25 + 0.25) / 16, more than 3/64.
    worth = 4 * (3 / 64) / (1 / 16)
    t = float(stats.t.ppf(0.95, 1))
    assert row.clustered == pytest.approx(wilson(0.75, worth, t))


def test_joints_of_one_house_alone_tell_nothing_for_certain() -> None:
    (row,) = reliability([Outcome(house="A", chance=0.9, closed=True)] * 500)
    assert row.clustered == (0.0, 1.0)
    assert row.wilson.lowest > 0.99


def test_houses_where_all_closed_count_as_one_each() -> None:
    outcomes = [Outcome(house=f"H{n % 6}", chance=0.95, closed=True) for n in range(600)]
    (row,) = reliability(outcomes)
    assert row.clustered == pytest.approx(wilson(1.0, 6, float(stats.t.ppf(0.95, 5))))


def test_houses_that_differ_in_nothing_leave_each_joint_worth_one() -> None:
    made = [Outcome(house=h, chance=0.5, closed=closed) for h in "AB" for closed in (True, False)]
    (row,) = reliability(made)
    assert row.clustered == pytest.approx(wilson(0.5, 4, float(stats.t.ppf(0.95, 1))))


def test_intervals_of_houses_that_go_together_hold_where_those_of_single_joints_do_not() -> None:
    draw = Random(11)
    held = {"wilson": 0, "clustered": 0}
    for _ in range(300):
        made = []
        for house in range(12):
            true = draw.betavariate(8.0, 2.0)
            made += [
                Outcome(house=f"H{house}", chance=0.82, closed=draw.random() < true)
                for _ in range(20)
            ]
        (row,) = reliability(made)
        held["wilson"] += row.wilson.lowest <= 0.8 <= row.wilson.highest
        held["clustered"] += row.clustered.lowest <= 0.8 <= row.clustered.highest
    assert held["clustered"] / 300 >= 0.86
    assert held["wilson"] / 300 <= 0.80


def test_the_clustered_interval_is_never_the_narrower() -> None:
    draw = Random(3)
    for alike in (0.0, 0.5, 1.0):
        for row in reliability(drawn(draw, 15, 8, alike=alike)):
            assert row.clustered.lowest <= row.wilson.lowest
            assert row.clustered.highest >= row.wilson.highest


def test_the_parts_of_the_score_add_up() -> None:
    draw = Random(4)
    made = [
        Outcome(house="H", chance=chance, closed=draw.random() < chance**2)
        for chance in (draw.random() for _ in range(500))
    ]
    found = brier(made)
    assert found is not None
    parts = found.unreliable - found.told_apart + found.uncertain + found.within
    assert found.score == pytest.approx(parts, abs=1e-12)
    assert found.score == pytest.approx(fmean((x.chance - x.closed) ** 2 for x in made))
    assert found.unreliable > 0.01


def test_true_forecasts_are_hardly_unreliable() -> None:
    draw = Random(4)
    made = drawn(draw, 2000, 1)
    found = brier(made)
    assert found is not None
    assert found.unreliable < 0.001
    assert found.within == pytest.approx(0.0, abs=1e-12)


def test_no_forecasts_have_no_score() -> None:
    assert brier([]) is None
    assert reliability([]) == ()
    assert verdict([]) is Verdict.TOO_FEW


@pytest.mark.parametrize(("off", "found"), [(0.14, "TOO_HOPEFUL"), (-0.3, "TOO_GLOOMY")])
def test_forecasts_that_miss_are_told_apart(off: float, found: str) -> None:
    assert verdict(drawn(Random(6), 30, 10, off=off)) is Verdict[found]


def test_forecasts_that_keep_their_word_are_blamed_as_seldom_as_is_said() -> None:
    draw = Random(9)
    kept = sum(verdict(drawn(draw, 20, 6, alike=0.5)) is Verdict.KEPT for _ in range(200))
    # The spread of a share of 0.9 in 200 draws is 0.02.
    assert kept / 200 >= 0.84


@pytest.mark.parametrize(
    ("houses", "each", "misses"),
    [(1, 200, 20), (4, 50, 20), (20, 1, 5), (20, 5, 2), (20, 5, 98)],
    ids=["one house", "four houses", "20 joints", "two missed", "two closed"],
)
def test_on_few_nothing_is_judged(houses: int, each: int, misses: int) -> None:
    made = [
        Outcome(house=f"H{n % houses}", chance=0.9, closed=n >= misses)
        for n in range(houses * each)
    ]
    assert not enough(made)
    assert verdict(made) is Verdict.TOO_FEW


def test_thirty_joints_of_five_houses_are_enough() -> None:
    made = [Outcome(house=f"H{n % 5}", chance=0.9, closed=n >= 3) for n in range(30)]
    assert enough(made)
    assert verdict(made) is Verdict.KEPT


@pytest.mark.parametrize("chance", [-0.1, 1.1, math.nan])
def test_what_is_no_chance_is_no_forecast(chance: float) -> None:
    with pytest.raises(QuantityError):
        Outcome(house="H", chance=chance, closed=True)


def test_houses_that_happen_to_go_all_alike_are_no_proof_by_themselves() -> None:
    # 8 of 10 called 80 closed in each of six houses: no spread between houses, and nothing amiss.
    alike = [
        Outcome(house=f"H{house}", chance=0.8 + 1e-9, closed=joint < 8)
        for house in range(6)
        for joint in range(10)
    ]
    assert verdict(alike) is Verdict.KEPT
