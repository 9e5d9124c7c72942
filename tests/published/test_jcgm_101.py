"""Sums of four errors, the first worked example of JCGM 101.

Source: JCGM 101:2008, 9.2.2 to 9.2.4, with a million draws as in 7.2.1. NOT read: every figure here
is what somebody remembers of it, though 9.2.3 and 9.2.4 were found again by convolution, and are
here, by the distribution of a sum of even errors.

- 9.2.2: four normal errors of u 1: u 2.00, 95 % within +/- 3.92; the formula agrees.
- 9.2.3: four even errors of u 1: u 2.00, 95 % within +/- 3.88; the formula says 3.92.
- 9.2.4: four even errors, one of u 10: u 10.1, 95 % within +/- 17.0; the formula says 19.9.
"""

import math
from collections.abc import Callable, Sequence
from itertools import product
from pathlib import Path

import numpy as np
import pytest

from longpoint.forecast.first_order import (
    combined_u,
    coverage_interval,
    expanded_u,
    validated,
)
from longpoint.forecast.stream import Spread
from longpoint.solvers.numpy_stream import NumpyStream
from tests.published.reference import rows

NORMAL = (Spread.NORMAL,) * 4
EVEN = (Spread.RECTANGULAR,) * 4
LIKE = (1.0, 1.0, 1.0, 1.0)
ONE_LARGE = (1.0, 1.0, 1.0, 10.0)
PART = 100_000


def drawn(us: Sequence[float], spreads: Sequence[Spread]) -> tuple[float, tuple[float, float]]:
    stream = NumpyStream()
    parts = (np.arange(start, start + PART) for start in range(0, 1_000_000, PART))
    total = np.concatenate([np.array(us) @ stream.draws(2008, 9, rows, spreads) for rows in parts])
    total.sort()
    return float(total.std()), coverage_interval(total.tolist())


def share_below(us: Sequence[float]) -> Callable[[float], float]:
    """Distribution of a sum of even errors: the volume that a plane cuts off a box."""
    halves = [math.sqrt(3.0) * u for u in us]
    volume = math.prod(2.0 * half for half in halves) * math.factorial(len(halves))

    def share(limit: float) -> float:
        corners = product((1.0, -1.0), repeat=len(halves))
        return (
            math.fsum(
                math.prod(signs)
                * max(0.0, limit + sum(s * h for s, h in zip(signs, halves, strict=True)))
                ** len(halves)
                for signs in corners
            )
            / volume
        )

    return share


def half_interval(us: Sequence[float]) -> float:
    share, low, high = share_below(us), 0.0, 10.0 * max(us)
    for _ in range(60):
        middle = (low + high) / 2.0
        low, high = (middle, high) if share(middle) < 0.975 else (low, middle)
    return high


@pytest.mark.parametrize(
    ("us", "spreads", "u", "reach", "digits_u", "within"),
    [
        (LIKE, NORMAL, 2.00, 3.92, 0.01, 0.02),
        (LIKE, EVEN, 2.00, 3.88, 0.01, 0.02),
        (ONE_LARGE, EVEN, 10.1, 17.0, 0.1, 0.1),
    ],
    ids=["9.2.2", "9.2.3", "9.2.4"],
)
def test_a_million_draws_give_the_remembered_figures(
    us: Sequence[float],
    spreads: Sequence[Spread],
    u: float,
    reach: float,
    digits_u: float,
    within: float,
) -> None:
    drawn_u, (low, high) = drawn(us, spreads)
    assert drawn_u == pytest.approx(u, abs=digits_u)
    assert (low, high) == pytest.approx((-reach, reach), abs=within)


@pytest.mark.parametrize(("us", "reach"), [(LIKE, 3.879), (ONE_LARGE, 17.016)])
def test_the_distribution_of_the_sum_gives_them_too(us: Sequence[float], reach: float) -> None:
    assert half_interval(us) == pytest.approx(reach, abs=0.0005)
    assert drawn(us, EVEN)[1][1] == pytest.approx(half_interval(us), abs=0.02)


@pytest.mark.parametrize(
    ("us", "spreads", "reach", "valid"),
    [(LIKE, NORMAL, 3.92, True), (LIKE, EVEN, 3.92, True), (ONE_LARGE, EVEN, 19.9, False)],
)
def test_the_formula_is_held_against_the_draws(
    us: Sequence[float], spreads: Sequence[Spread], reach: float, valid: bool
) -> None:
    """To the two digits of u 2.0 and 10 that are stated."""
    u = combined_u([1.0] * 4, us)
    assert expanded_u(u) == pytest.approx(reach, abs=0.05)
    assert validated(0.0, u, drawn(us, spreads)[1]).valid is valid


def test_the_reference_values_say_that_these_are_from_memory(shared: Path) -> None:
    known = rows(shared)
    assert {known[row].how_known for row in ("GUM-16", "GUM-17", "GUM-18")} == {"memory"}
    assert known["GUM-16"].numbers() == [2.00, 3.88]
    assert known["GUM-17"].numbers() == [10.1, 17.0]
    assert known["GUM-18"].numbers() == [2.00, 3.92]
