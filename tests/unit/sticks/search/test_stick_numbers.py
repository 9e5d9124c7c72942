import itertools
import random

import pytest

from longpoint.sticks.search.stick_numbers import Condition, cost_of_numbers, possible_numbers

COUNTS = (None, 2, 1)


def drawn(seed: int) -> tuple[list[int], list[int | None], list[Condition]]:
    """Return costs, counts and conditions of two to four lengths, some of which cost nothing."""
    draw = random.Random(seed)
    lengths = draw.randint(2, 4)
    steps = [draw.choice((0, *range(5, 12))) for _ in range(lengths)]
    counts = [draw.choice(COUNTS) if step else draw.choice(COUNTS[1:]) for step in steps]
    conditions = [
        Condition(
            tuple(draw.randint(0 if draw.random() < 0.2 else 8, 14) for _ in steps),
            draw.randint(20, 60),
        )
        for _ in range(draw.randint(1, 9))
    ]
    return steps, counts, conditions


@pytest.mark.parametrize("seed", range(60))
def test_all_numbers_that_keep_the_conditions_are_listed_the_cheapest_first(seed: int) -> None:
    steps, counts, conditions = drawn(seed)
    low, high = 20, 20 + random.Random(seed).randint(1, 40)
    found = possible_numbers(steps, counts, conditions, low, high, 100_000)
    ranges = [
        [count or 0] if not step else range(high // step + 2 if count is None else count + 1)
        for step, count in zip(steps, counts, strict=True)
    ]
    every = [
        numbers
        for numbers in itertools.product(*ranges)
        if low <= cost_of_numbers(steps, numbers) < high
        and all(condition.keeps(numbers) for condition in conditions)
    ]
    assert found is not None
    assert sorted(found) == sorted(every)
    costs = [cost_of_numbers(steps, numbers) for numbers in found]
    assert costs == sorted(costs)


def test_of_equal_costs_that_with_more_to_spare_comes_first() -> None:
    condition = Condition((3, 4), 10)
    found = possible_numbers((5, 5), (None, None), [condition], 15, 16, 1000)
    assert found == [(0, 3), (1, 2), (2, 1)]
    assert [condition.spare(numbers) for numbers in found] == [2, 1, 0]


def test_too_many_numbers_are_not_listed() -> None:
    condition = Condition((3, 4, 5), 300)
    assert possible_numbers((5, 6, 7), (None,) * 3, [condition], 400, 600, 500) is None


def test_sticks_free_without_end_leave_nothing_to_count() -> None:
    assert possible_numbers((0, 5), (None, None), [Condition((3, 4), 10)], 0, 9, 500) is None
