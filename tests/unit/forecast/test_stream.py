import math
import statistics

import numpy as np
import pytest
from scipy.special import ndtri

from longpoint.forecast.stream import (
    PHILOX_4X64,
    Spread,
    draw,
    normal_quantile,
    philox,
    spread_out,
    uniforms,
)

SMALLEST = 2.0**-33


@pytest.mark.parametrize("start", [(0, 0, 0, 0), (4, 5, 6, 7), (2**64 - 2, 1, 2**63, 3)])
def test_with_words_of_64_bits_the_rounds_are_those_of_numpy(
    start: tuple[int, int, int, int],
) -> None:
    key = (8, 2**64 - 9)
    theirs = np.random.Philox(
        counter=np.array(start, dtype=np.uint64), key=np.array(key, dtype=np.uint64)
    ).random_raw(4)
    # numpy counts on before it draws.
    counter = (start[0] + 1, *start[1:])
    assert philox(counter, key, PHILOX_4X64) == tuple(map(int, theirs))


def test_a_normal_quantile_is_that_of_an_independent_library() -> None:
    inner = (np.arange(20_000) + 0.5) / 20_000
    outer = SMALLEST * 2.0 ** np.arange(32)
    for chances in (inner, outer, 1.0 - outer, np.array([1e-20, 1e-100, 1e-300])):
        ours = np.array([normal_quantile(float(chance)) for chance in chances])
        # The two are rational approximations of their own: a last digit or two may differ.
        assert ours == pytest.approx(ndtri(chances), rel=2e-15, abs=1e-18)


def test_a_normal_quantile_is_to_the_last_bit_that_of_the_standard_library() -> None:
    standard = statistics.NormalDist()
    for chance in [SMALLEST, 1.0 - SMALLEST, 0.075, 0.925, *((n + 0.5) / 997 for n in range(997))]:
        assert normal_quantile(chance) == standard.inv_cdf(chance)


def test_a_normal_quantile_mirrors_about_a_half() -> None:
    for word in (0, 1, 77, 2**31 - 1):
        below, above = (word + 0.5) * 2.0**-32, (2**32 - 1 - word + 0.5) * 2.0**-32
        assert normal_quantile(below) == -normal_quantile(above)


def test_no_chance_is_nought_or_one_and_no_error_beyond_six_and_a_half() -> None:
    assert 0.0 < SMALLEST < 1.0 - SMALLEST < 1.0
    assert -6.5 < normal_quantile(SMALLEST) < -6.3
    assert spread_out(Spread.RECTANGULAR, SMALLEST) == pytest.approx(-math.sqrt(3.0))


def test_a_draw_is_the_same_alone_and_among_others() -> None:
    together = uniforms(9, 1, 3, 11)
    assert together[:5] == uniforms(9, 1, 3, 5)
    for term, chance in enumerate(together):
        assert draw(9, 1, 3, term) == normal_quantile(chance)
        assert draw(9, 1, 3, term, Spread.RECTANGULAR) == spread_out(Spread.RECTANGULAR, chance)


def test_seed_stream_index_and_term_each_change_the_draw() -> None:
    changed = [(0, 0, 0, 0), (1, 0, 0, 0), (2**32, 0, 0, 0), (0, 1, 0, 0), (0, 0, 1, 0)]
    changed += [(0, 0, 0, term) for term in range(1, 9)]
    assert len({draw(*numbers) for numbers in changed}) == len(changed)


def test_a_seed_counts_by_its_lower_64_bits() -> None:
    assert uniforms(2**64 + 5, 0, 0, 4) == uniforms(5, 0, 0, 4)
    assert uniforms(-1, 0, 0, 4) == uniforms(2**64 - 1, 0, 0, 4)


@pytest.mark.parametrize("spread", Spread)
def test_errors_have_mean_nought_and_variance_one(spread: Spread) -> None:
    count = 5000
    errors = [spread_out(spread, u) for row in range(count // 4) for u in uniforms(1, 2, row, 4)]
    assert statistics.fmean(errors) == pytest.approx(0.0, abs=4.0 / count**0.5)
    assert statistics.pvariance(errors) == pytest.approx(1.0, abs=4.0 * (2.0 / count) ** 0.5)


def test_terms_of_one_draw_and_draws_of_one_term_go_not_together() -> None:
    rows = np.array([[draw(4, 0, row, term) for term in range(6)] for row in range(2000)])
    between = np.corrcoef(rows.T) - np.eye(6)
    after = [np.corrcoef(column[:-1], column[1:])[0, 1] for column in rows.T]
    assert np.abs(between).max() < 4.0 / 2000**0.5
    assert np.abs(after).max() < 4.0 / 2000**0.5
