"""The most room for so much money, against all numbers of sticks."""

import math
import random
from collections.abc import Sequence
from itertools import product

import pytest

from longpoint.sticks.aims.most_room import Length, RoomForMoney

# Prices that rise a little slower than length, as a merchant's do; rooms in 0.01 mm.
SHELF = (
    Length(209, 239_000),
    Length(258, 299_000),
    Length(307, 359_000),
    Length(406, 479_000),
    Length(455, 539_000),
)


def of_all_numbers(lengths: Sequence[Length], cost: int, sticks: int) -> int:
    """The same by going through every number of every length."""
    numbers = product(
        *(
            range(1 + min(sticks, each.count if each.count is not None else sticks))
            for each in lengths
        )
    )
    return max(
        sum(number * each.room for number, each in zip(taken, lengths, strict=True))
        for taken in numbers
        if sum(taken) <= sticks
        and sum(number * each.cost for number, each in zip(taken, lengths, strict=True)) <= cost
    )


@pytest.mark.parametrize("seed", range(60))
def test_equals_going_through_all_numbers(seed: int) -> None:
    draw = random.Random(seed)
    lengths = [
        Length(
            draw.choice((0, draw.randint(1, 60), draw.randint(400, 600))),
            draw.randint(-5, 600),
            draw.choice((None, None, draw.randint(0, 3))),
        )
        for _ in range(draw.randint(0, 4))
    ]
    usable = [each for each in lengths if each.room > 0]
    cost = draw.choice((0, draw.randint(0, 200), draw.randint(0, 3000)))
    most = 0
    offered = RoomForMoney(lengths, cost)
    for sticks in range(6):
        most = of_all_numbers(usable, cost, sticks)
        assert offered.most(sticks) == most
        assert offered.reaches(sticks, most)
        assert not offered.reaches(sticks, most + 1)
        fewest = (n for n in range(6) if of_all_numbers(usable, cost, n) >= most)
        assert offered.fewest(most, 6) == next(fewest)
    assert offered.fewest(most + 1, 6) == 6


def test_twenty_sticks_of_a_fine_price_list_by_the_table_of_all_costs() -> None:
    cost, sticks = 6_667, 20
    at_cost: list[float] = [0.0, *[-math.inf] * cost]
    for _ in range(sticks):
        at_cost = [
            max(
                at_cost[spent],
                *(at_cost[spent - each.cost] + each.room for each in SHELF if each.cost <= spent),
            )
            if spent >= SHELF[0].cost
            else at_cost[spent]
            for spent in range(cost + 1)
        ]
    assert RoomForMoney(SHELF, cost).most(sticks) == max(at_cost)


def test_where_not_all_numbers_are_gone_through_it_is_never_too_low() -> None:
    exact, hasty = RoomForMoney(SHELF, 6_667), RoomForMoney(SHELF, 6_667, most_numbers=3)
    for sticks in range(1, 25):
        assert hasty.most(sticks) >= exact.most(sticks)
        assert hasty.reaches(sticks, exact.most(sticks))
    assert any(hasty.most(sticks) > exact.most(sticks) for sticks in range(1, 25))
