import math
from random import Random

import pytest
from scipy import integrate, stats

from longpoint.errors import QuantityError
from longpoint.forecast.learning.belief import Belief, Prior, Weighed, belief_of

pytestmark = pytest.mark.no_cover

START = belief_of(Prior(mean_sd=0.1, spread=0.02))
VALUES = [Weighed(x) for x in (0.11, 0.14, 0.12, 0.09)]


def test_nothing_seen_changes_nothing() -> None:
    assert START.updated([]) == START


def test_a_belief_by_hand() -> None:
    # k 1 + 2; mean (0 + 0.1 + 0.3) / 3; a 2.5 + 1; b 1.3 x 2.5 x 0.01 + (0.02 + 2/3 x 0.04) / 2.
    belief = belief_of(Prior(mean_sd=0.1, spread=0.1)).updated([Weighed(0.1), Weighed(0.3)])
    assert belief.k == pytest.approx(3.0)
    assert belief.mean == pytest.approx(0.4 / 3.0)
    assert belief.a == pytest.approx(3.5)
    assert belief.b == pytest.approx(0.0325 + (0.02 + 0.08 / 3.0) / 2.0)


def test_the_next_frame_lies_as_the_belief_integrated_by_an_independent_library_says() -> None:
    belief = START.updated(VALUES)

    def density(variance: float) -> float:
        sd = math.sqrt(variance * (1.0 + 1.0 / belief.k))
        below = stats.norm.cdf(0.15, belief.mean, sd)
        return float(below * stats.invgamma.pdf(variance, belief.a, scale=belief.b))

    chance, _ = integrate.quad(density, 0.0, 0.05, points=[1e-4, 1e-3], limit=200)
    ours = stats.t.cdf((0.15 - belief.mean) / belief.next_scale, belief.dof)
    assert float(ours) == pytest.approx(chance, abs=1e-6)


def test_intervals_hold_as_often_as_they_say_where_the_prior_is_true() -> None:
    draw = Random(5)
    held_mean = held_next = 0
    for _ in range(1000):
        sd = math.sqrt(START.b / draw.gammavariate(START.a, 1.0))
        mean = draw.gauss(START.mean, sd / math.sqrt(START.k))
        belief = START.updated(Weighed(draw.gauss(mean, sd)) for _ in range(3))
        low, high = belief.mean_within(0.8)
        held_mean += low <= mean <= high
        low, high = belief.next_within(0.8)
        held_next += low <= draw.gauss(mean, sd) <= high
    # The spread of a share of 0.8 in 1000 draws is 0.013.
    assert held_mean / 1000 == pytest.approx(0.8, abs=0.04)
    assert held_next / 1000 == pytest.approx(0.8, abs=0.04)


def test_a_frame_of_half_weight_moves_the_mean_by_less() -> None:
    full, half = START.updated([Weighed(0.1)]), START.updated([Weighed(0.1, 0.5)])
    assert half.mean < full.mean
    assert half.mean_u > full.mean_u


def test_two_frames_of_half_weight_weigh_as_one() -> None:
    one, two = START.updated([Weighed(0.1)]), START.updated([Weighed(0.1, 0.5)] * 2)
    assert (two.mean, two.k) == pytest.approx((one.mean, one.k))


def test_spread_and_uncertainty_are_those_of_the_student_t() -> None:
    belief = Belief(mean=0.0, k=4.0, a=3.0, b=0.08)
    assert belief.spread == pytest.approx(0.2)
    sd = float(stats.t.std(belief.dof, scale=belief.mean_scale))
    assert belief.mean_u == pytest.approx(sd)


@pytest.mark.parametrize(
    ("mean_sd", "spread"), [(0.0, 0.1), (0.1, 0.0), (-0.1, 0.1), (math.nan, 0.1), (0.1, math.inf)]
)
def test_a_prior_has_a_spread(mean_sd: float, spread: float) -> None:
    with pytest.raises(QuantityError):
        Prior(mean_sd=mean_sd, spread=spread)
