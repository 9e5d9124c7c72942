import math

import pytest

from longpoint.linear.port import LinearSolution, LinearStatus
from longpoint.sticks.search.master import Prices, Remaining, residual_numbers
from longpoint.sticks.search.patterns import Pattern
from tests.random_sticks import architrave_piece, house_of, house_pieces
from tests.unit.sticks.nests import nest


def test_the_linear_master_costs_no_more_than_the_packing_its_patterns_come_from() -> None:
    master, _, numbers, cost = nest(house_pieces(2, openings=8), house_of())
    solution = master.solve(numbers, master.whole)
    assert master.pure_cost(numbers, solution) <= cost + 1e-6
    assert solution.objective <= master.pure_cost(numbers, solution) + master.all_sticks_weigh


def test_prices_pay_for_the_solution_and_no_known_pattern_gains() -> None:
    master, _, numbers, _ = nest(house_pieces(2, openings=8), house_of())
    solution = master.solve(numbers, master.whole)
    prices = master.prices(solution)
    assert prices is not None
    paid = sum(p * n for p, n in zip(prices.pieces, master.whole.pieces, strict=True))
    assert paid == pytest.approx(solution.objective)
    assert all(master.gain(master.patterns[number], prices) <= 1e-6 for number in numbers)


def test_counted_sticks_have_prices_too() -> None:
    house = house_of(lengths_mm=(2700.0, 5400.0), counts=(None, 1))
    pieces = tuple(architrave_piece(f"W{n}-head", 1250.0 + n, 45, 45) for n in range(6))
    master, _, numbers, _ = nest(pieces, house)
    prices = master.prices(master.solve(numbers, master.whole))
    assert prices is not None
    assert prices.sticks[0] == 0.0
    assert prices.sticks[1] <= 0.0


def test_what_remains_shrinks_by_a_pattern_and_no_piece_is_cut_too_often() -> None:
    remaining = Remaining((2, 1), (1, None))
    pattern = Pattern(0, ((0, 2),))
    assert remaining.holds(pattern)
    assert remaining.less(pattern) == Remaining((0, 1), (0, None))
    assert not remaining.less(pattern).holds(pattern)
    assert not Remaining((2, 1), (0, None)).holds(pattern)


def test_only_patterns_that_can_still_be_cut_stay_in_the_master() -> None:
    master, _, numbers, _ = nest(house_pieces(2, openings=8), house_of())
    first = master.patterns[numbers[0]]
    left = residual_numbers(master, numbers, master.whole.less(first))
    assert numbers[0] not in left
    assert set(left) == set(numbers[1:])


def test_without_a_solution_the_cost_is_infinite_and_there_are_no_prices() -> None:
    master, _, numbers, _ = nest(house_pieces(2, openings=2), house_of())
    none = LinearSolution(status=LinearStatus.INFEASIBLE, solver="x")
    assert math.isinf(master.pure_cost(numbers, none))
    assert master.prices(none) is None


def test_mixed_prices_lie_between() -> None:
    one, other = Prices((1.0,), (0.0,)), Prices((3.0,), (-2.0,))
    assert one.mixed(other, 0.25) == Prices((1.5,), (-0.5,))


def test_new_sticks_weigh_no_more_than_is_said_of_what_they_cost() -> None:
    """Against every number of sticks of each length that comes to so much."""
    master, _, _, _ = nest(house_pieces(2, openings=3), house_of(lengths_mm=(2700.0, 4200.0)))
    ticks = [weight - step for weight, step in zip(master.weights, master.steps, strict=True)]
    most_pieces = sum(master.whole.pieces)
    for spend in range(0, 5 * max(master.steps)):
        for pieces in (1, 3, most_pieces):
            weighed = [
                some * ticks[0] + others * ticks[1]
                for some in range(pieces + 1)
                for others in range(pieces + 1 - some)
                if some * master.steps[0] + others * master.steps[1] <= spend
            ]
            assert max(weighed) <= master.most_weight(spend, pieces) + 1e-12
    assert master.most_weight(10**6, most_pieces) < master.all_sticks_weigh
