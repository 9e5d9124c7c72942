"""How soon a creeping stop is told, beside the published average run lengths of the CUSUM.

Montgomery and Runger, "Applied Statistics and Probability for Engineers", table 16-9, K = 1/2, read
as quoted in an exercise on the web: with h = 4 an alarm comes after 168 values on average where
nothing moved, after 26.6, 8.38 and 3.34 for shifts of 0.5, 1 and 2 standard deviations; with h = 5
after 465, 38.0, 10.4 and 4.01.

NIST/SEMATECH e-Handbook 6.3.2.3, from memory: its example of twenty values about 325, k = 0.3175
and h = 4.1959, gives its first alarm at the fourteenth, where the upper sum is 4.94.
"""

import random
from itertools import repeat
from math import sqrt
from statistics import fmean, stdev

import pytest

from longpoint.forecast.learning.stop_creep import FALSE_EVERY, SEEN_AFTER, stop_creep

TABLE = [
    (4.0, 0.0, 168.0),
    (4.0, 0.5, 26.6),
    (4.0, 1.0, 8.38),
    (4.0, 2.0, 3.34),
    (5.0, 0.0, 465.0),
    (5.0, 0.5, 38.0),
    (5.0, 1.0, 10.4),
    (5.0, 2.0, 4.01),
]
NIST = (
    *(324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600),
    *(324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350),
)


def run_length(shift: float, decision: float, rng: random.Random) -> int:
    creep = stop_creep((rng.gauss(shift, 1.0) for _ in repeat(None)), 1.0, 0.5, decision)
    assert creep is not None
    return creep.told + 1


@pytest.mark.parametrize(("decision", "shift", "published"), TABLE)
def test_alarms_come_as_often_as_published(decision: float, shift: float, published: float) -> None:
    rng = random.Random(f"{decision} {shift}")
    lengths = [run_length(shift, decision, rng) for _ in range(1000)]

    # Four standard errors of the mean of our draws.
    assert fmean(lengths) == pytest.approx(published, abs=4 * stdev(lengths) / sqrt(1000))


def test_what_the_sheet_says_is_what_the_table_says() -> None:
    said = {(decision, shift): value for decision, shift, value in TABLE}
    assert said[5.0, 0.0] == FALSE_EVERY
    assert said[5.0, 1.0] == SEEN_AFTER


def test_the_example_that_is_remembered() -> None:
    creep = stop_creep((value - 325 for value in NIST), 1.0, 0.3175, 4.1959)

    assert creep is not None
    assert (creep.begins + 1, creep.told + 1) == (13, 14)
    # The sum is what lies above K, over the two pieces of the run.
    assert (creep.by_mm - 0.3175) * 2 == pytest.approx(4.94, abs=0.005)
