import random

import numpy as np
import pytest

from longpoint.solvers.price_lines import PriceLines

APART = pytest.mark.parametrize("apart", [False, True], ids=["together", "apart"])
KINDS = ("leg", "head", "run")


def lines(knots: int, *, apart: bool) -> PriceLines:
    draw = random.Random(5)
    needs = [draw.randint(20_000, 250_000) for _ in range(300)]
    kinds = [draw.choice(KINDS) for _ in needs]
    return PriceLines(needs, kinds, (268_000, 538_000), knots, apart=apart)


@APART
def test_what_a_piece_is_worth_is_a_sum_over_the_knots(*, apart: bool) -> None:
    some = lines(40, apart=apart)
    numbers = np.random.default_rng(1).uniform(0.0, 9.0, len(some.needs))
    prices = some.prices(numbers)
    for group in range(300):
        assert some.sums([group], [2.0]) @ numbers == pytest.approx(2.0 * prices[group])


@APART
def test_prices_carried_to_more_knots_stay_what_they_were(*, apart: bool) -> None:
    few, many = lines(20, apart=apart), lines(200, apart=apart)
    # By length on one straight line, so that any knots give the same, and more for each kind.
    numbers = 0.5 * few.needs
    numbers[-len(KINDS) :] = (3.0, 7.0, 11.0)
    carried = few.carried(numbers, many)
    assert len(carried) == len(many.needs) > len(few.needs)
    assert many.prices(carried) == pytest.approx(few.prices(numbers))


@APART
def test_a_price_carried_to_a_knot_is_that_of_the_line_there(*, apart: bool) -> None:
    few, many = lines(20, apart=apart), lines(300, apart=apart)
    numbers = np.random.default_rng(2).uniform(10.0, 90.0, len(few.needs))
    numbers[-len(KINDS) :] = 0.0
    before, after = few.prices(numbers), many.prices(few.carried(numbers, many))
    at_knots = np.isin(many.share, (0.0, 1.0)).nonzero()[0]
    assert len(at_knots) > 200
    assert after[at_knots] == pytest.approx(before[at_knots])
