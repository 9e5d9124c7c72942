import math
import random

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy import stats

from longpoint.forecast.first_order import (
    combined_u,
    coverage_factor,
    coverage_interval,
    effective_dof,
    expanded_u,
    numerical_tolerance,
    share_within,
    validated,
)
from longpoint.forecast.stream import Spread
from longpoint.solvers.numpy_stream import NumpyStream

# A window of 1200 x 1050 with 70 mm architraves, one reading each way; sizes are assumed.
LEGS_M = (1.2, 1.2, 1.05, 1.05)
SAW_DEG = 0.1
TURN_MM = 2.0 * 70.0 * math.radians(0.1)
ANGLE_SUM_DEG = (
    *[0.05] * 8,
    8.0 * SAW_DEG,
    *(math.degrees(8.0 * 0.15e-3 * leg) for leg in LEGS_M),
)
READING_OFFSET_MM = 0.2
WIDTH_SIZE_MM = (
    0.55,
    0.2,
    0.35 / math.sqrt(2.0),
    0.4 * math.sqrt(2.0),
    0.15 / math.sqrt(2.0),
    TURN_MM,
    TURN_MM,
    70.0 * math.radians(0.05) * math.sqrt(2.0),
)
WORN_HOOK_MM = 1.0

# Their ends then scatter by 0.27 % of u, half the tolerance of a u of 0.8 to 0.9.
DRAWS = 1_000_000
PART = 100_000


def drawn(stream: int, us: tuple[float, ...], spread: Spread) -> NDArray[np.float64]:
    """Return draws of a sum of errors, by their standard uncertainties."""
    spreads, numpy_stream = [spread] * len(us), NumpyStream()
    parts = (np.arange(start, start + PART) for start in range(0, DRAWS, PART))
    return np.concatenate([us @ numpy_stream.draws(101, stream, rows, spreads) for rows in parts])


def interval(sums: NDArray[np.float64]) -> tuple[float, float]:
    return coverage_interval(np.sort(sums).tolist())


@pytest.fixture(scope="module")
def sizes_mm() -> NDArray[np.float64]:
    return drawn(0, WIDTH_SIZE_MM, Spread.NORMAL)


@pytest.fixture(scope="module")
def evens() -> NDArray[np.float64]:
    return drawn(1, (1.0,), Spread.RECTANGULAR)


def test_the_formula_is_valid_for_the_angle_sum() -> None:
    u_deg = combined_u([1.0] * len(ANGLE_SUM_DEG), ANGLE_SUM_DEG)
    record = validated(0.0, u_deg, interval(drawn(2, ANGLE_SUM_DEG, Spread.NORMAL)))
    assert u_deg == pytest.approx(0.827, abs=0.0005)
    assert record.first_order[1] == pytest.approx(1.621, abs=0.0005)
    assert record.tolerance == 0.005
    assert record.valid


def test_the_formula_is_valid_for_the_width_of_a_set(
    sizes_mm: NDArray[np.float64], evens: NDArray[np.float64]
) -> None:
    u_mm = combined_u([1.0] * 9, (*WIDTH_SIZE_MM, READING_OFFSET_MM))
    record = validated(0.0, u_mm, interval(sizes_mm + READING_OFFSET_MM * evens))
    assert u_mm == pytest.approx(0.950, abs=0.0005)
    assert record.tolerance == 0.005
    assert record.valid


def test_the_formula_is_not_valid_once_a_worn_hook_outweighs_the_rest(
    sizes_mm: NDArray[np.float64], evens: NDArray[np.float64]
) -> None:
    """Where the offset of the inside reading is even, of standard uncertainty 1.0 mm."""
    u_mm = combined_u([1.0] * 9, (*WIDTH_SIZE_MM, WORN_HOOK_MM))
    record = validated(0.0, u_mm, interval(sizes_mm + WORN_HOOK_MM * evens))
    assert record.first_order == pytest.approx((-2.674, 2.674), abs=0.001)
    assert record.drawn == pytest.approx((-2.605, 2.605), abs=0.01)
    assert record.tolerance == 0.05
    assert not record.valid


def test_a_hook_worn_within_a_millimetre_either_way_leaves_it_valid(
    sizes_mm: NDArray[np.float64], evens: NDArray[np.float64]
) -> None:
    within_mm = 1.0 / math.sqrt(3.0)
    u_mm = combined_u([1.0] * 9, (*WIDTH_SIZE_MM, within_mm))
    assert validated(0.0, u_mm, interval(sizes_mm + within_mm * evens)).valid


def test_correlations_enter_as_in_the_covariance_matrix() -> None:
    draw = random.Random(2)
    for _ in range(20):
        c = [draw.uniform(-2.0, 2.0) for _ in range(4)]
        u = [draw.uniform(0.0, 2.0) for _ in range(4)]
        pairs = [(i, j, draw.uniform(-0.3, 0.3)) for i in range(4) for j in range(i)]
        matrix = np.eye(4)
        for i, j, r in pairs:
            matrix[i, j] = matrix[j, i] = r
        parts = np.array(c) * np.array(u)
        assert combined_u(c, u, pairs) == pytest.approx(math.sqrt(parts @ matrix @ parts))


def test_what_cancels_altogether_leaves_nothing() -> None:
    assert combined_u([1.0, -1.0], [0.1, 0.1], [(0, 1, 1.0)]) == pytest.approx(0.0, abs=1e-9)


@pytest.mark.parametrize("dof", [1.0, 2.0, 3.5, 5.0, 16.0, 16.75, 200.0, 1e5])
@pytest.mark.parametrize("coverage", [0.01, 0.5, 0.9, 0.95, 0.99, 0.9999])
def test_factors_are_those_of_an_independent_library(dof: float, coverage: float) -> None:
    theirs = stats.t.ppf((1.0 + coverage) / 2.0, dof)
    assert coverage_factor(coverage, dof) == pytest.approx(theirs, rel=1e-8)


def test_without_doubt_of_the_uncertainty_the_factor_is_the_normal_one() -> None:
    assert coverage_factor(0.95, 1e9) == pytest.approx(coverage_factor(0.95), rel=1e-6)
    assert expanded_u(2.0, 0.95) == 2.0 * coverage_factor(0.95)
    assert effective_dof([(1.0, math.inf), (2.0, math.inf)]) == math.inf


def test_degrees_of_freedom_lie_between_the_fewest_and_all_together() -> None:
    assert 4.0 < effective_dof([(1.0, 4.0), (0.7, 9.0)]) < 13.0
    assert effective_dof([(1.0, 4.0), (0.0, 9.0)]) == 4.0


@pytest.mark.parametrize(("mean", "u"), [(0.0, 0.5), (0.3, 0.5), (-1.4, 0.2), (4.0, 1.0)])
def test_the_share_within_a_limit_is_that_of_an_independent_library(mean: float, u: float) -> None:
    theirs = stats.norm.cdf(1.0, mean, u) - stats.norm.cdf(-1.0, mean, u)
    assert share_within(1.0, mean, u) == pytest.approx(theirs, abs=1e-14)


def test_what_is_known_exactly_is_within_or_not() -> None:
    assert [share_within(1.0, mean, 0.0) for mean in (-1.0, 0.5, 1.01)] == [1.0, 1.0, 0.0]


@pytest.mark.parametrize(
    ("u", "digits", "tolerance"),
    [(0.827, 2, 0.005), (0.827, 1, 0.05), (12.3, 2, 0.5), (0.0994, 2, 0.0005), (0.0996, 2, 0.005)],
)
def test_the_tolerance_is_half_the_last_digit_stated(
    u: float, digits: int, tolerance: float
) -> None:
    assert numerical_tolerance(u, digits) == pytest.approx(tolerance)


@pytest.mark.parametrize("draws", [1, 2, 3, 10, 999, 1000])
def test_an_interval_lies_within_the_draws_and_holds_its_share(draws: int) -> None:
    values = [float(n) for n in range(draws)]
    low, high = coverage_interval(values, 0.95)
    assert 0.0 <= low <= high <= draws - 1.0
    assert abs(low - (draws - 1.0 - high)) <= 1.0
    if draws >= 10:
        assert abs((high - low) - 0.95 * draws) <= 1.0


def test_one_end_too_far_off_is_enough_to_reject() -> None:
    reach = expanded_u(1.0)
    assert validated(5.0, 1.0, (5.0 - reach, 5.0 + reach)).valid
    record = validated(5.0, 1.0, (5.0 - reach, 5.06 + reach))
    assert record.apart == pytest.approx((0.0, 0.06))
    assert not record.valid
    assert validated(5.0, 1.0, (5.0 - reach, 5.06 + reach), digits=1).valid
