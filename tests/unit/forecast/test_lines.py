import math
from collections.abc import Sequence

import numpy as np
import pytest

from longpoint.forecast.lines import Line, LineGroup, LineHouse, LineOpening, Spread
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.stream import draw, normal_quantile

pytestmark = pytest.mark.no_cover

OPENINGS = 6
DRAWS = 36
SEEDS = 250
# One error of the house, two of the opening: fits when 0.1 + 0.5 s + 0.3 p + 0.4 q <= 1.
LINE = Line(offset=0.1, shared=(0.5,), private=(0.3, 0.4))


def like_openings(line: Line, openings: int, draws: int, seed: int) -> LineHouse:
    opening = LineOpening(
        mark="W",
        groups=(LineGroup(name="gaps", lines=(line,)),),
        private=(Spread.NORMAL,) * len(line.private),
    )
    return LineHouse(
        openings=(opening,) * openings,
        shared=(Spread.NORMAL,) * len(line.shared),
        draws=draws,
        seed=seed,
    )


def misfit_chances() -> list[float]:
    """By integration: for a given error of the house the openings fail independently."""
    errors = [normal_quantile((n + 0.5) / 4000) for n in range(4000)]
    fails = [math.erfc((0.9 - 0.5 * s) / 0.5 / math.sqrt(2.0)) / 2.0 for s in errors]
    return [
        math.fsum(math.comb(OPENINGS, k) * q**k * (1.0 - q) ** (OPENINGS - k) for q in fails)
        / len(fails)
        for k in range(OPENINGS + 1)
    ]


def fresh_misfits(seed: int) -> list[int]:
    """Counted with errors of each opening's own, no pool."""
    counts = [0] * (OPENINGS + 1)
    for index in range(DRAWS):
        house = 0.1 + 0.5 * draw(seed, 0, index, 0)
        own = [
            0.3 * draw(seed, 2 + opening, index, 0) + 0.4 * draw(seed, 2 + opening, index, 1)
            for opening in range(OPENINGS)
        ]
        counts[sum(house + error > 1.0 for error in own)] += 1
    return counts


def assert_has_mean(samples: Sequence[Sequence[int]], expected: Sequence[float]) -> None:
    """Each column's mean lies within four standard errors, taken from the samples themselves."""
    columns = np.array(samples, dtype=float)
    error = columns.std(axis=0, ddof=1) / len(columns) ** 0.5
    assert (np.abs(columns.mean(axis=0) - np.array(expected)) < 4.0 * error).all()


def test_the_pool_leaves_the_number_of_misfits_as_it_is() -> None:
    expected = [DRAWS * chance for chance in misfit_chances()]
    pooled = [
        PlainLines().tally(like_openings(LINE, OPENINGS, DRAWS, seed)).misfits
        for seed in range(SEEDS)
    ]
    assert_has_mean(pooled, expected)


def test_so_do_errors_drawn_afresh_for_each_opening() -> None:
    expected = [DRAWS * chance for chance in misfit_chances()]
    assert_has_mean([fresh_misfits(seed) for seed in range(60)], expected)


def test_the_pool_leaves_the_share_of_each_opening_as_it_is() -> None:
    fits = [
        [o.together for o in PlainLines().tally(like_openings(LINE, 3, DRAWS, seed)).openings]
        for seed in range(SEEDS)
    ]
    chance = 1.0 - math.erfc(0.9 / math.sqrt(0.5) / math.sqrt(2.0)) / 2.0
    assert_has_mean(fits, [DRAWS * chance] * 3)
    # Nor is the scatter of one opening's share any other than that of independent draws.
    scatter = np.var(np.array(fits, dtype=float), axis=0, ddof=1)
    assert scatter == pytest.approx([DRAWS * chance * (1.0 - chance)] * 3, rel=0.36)


def test_like_openings_without_shared_errors_fit_in_as_many_draws_but_not_in_the_same() -> None:
    """The price of the pool: their shares scatter together, not each on its own."""
    line = Line(offset=0.0, shared=(), private=(0.8,))
    tally = PlainLines().tally(like_openings(line, 5, 200, 3))
    assert len({opening.together for opening in tally.openings}) == 1
    assert 0 < tally.misfits[1] < 200
    assert sum(k * count for k, count in enumerate(tally.misfits)) == sum(
        200 - opening.together for opening in tally.openings
    )


@pytest.mark.parametrize(("openings", "draws"), [(1, 1), (7, 3), (25, 2000), (25, 26), (3, 100)])
def test_openings_of_one_draw_take_different_rows_of_the_pool(openings: int, draws: int) -> None:
    house = like_openings(LINE, openings, draws, 0)
    for index in (0, draws - 1):
        rows = {(index + house.first_row(k)) % house.pool_rows for k in range(openings)}
        assert len(rows) == openings
    assert all(house.first_row(k) < house.pool_rows for k in range(openings))


def test_a_line_that_misses_an_error_is_refused() -> None:
    with pytest.raises(ValueError, match="gaps"):
        LineOpening(
            mark="W1", groups=(LineGroup(name="gaps", lines=(LINE,)),), private=(Spread.NORMAL,)
        )
    whole = like_openings(LINE, 1, 1, 0)
    with pytest.raises(ValueError, match="shared"):
        LineHouse(openings=whole.openings, shared=(), draws=1, seed=0)
    with pytest.raises(ValueError, match="0 draws"):
        LineHouse(openings=(), shared=(), draws=0, seed=0)
