import random

import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.numpy_knapsack import MOST_VALUE, NumpyKnapsack
from longpoint.sticks.knapsack import Knapsack, tables_maker
from longpoint.sticks.lean_states import Lean, State
from longpoint.sticks.table_sets import Item


def drawn(seed: int) -> tuple[list[Item], int]:
    draw = random.Random(seed)
    items: list[Item] = []
    for number in range(draw.randint(1, 12)):
        item = Item(number, draw.randint(1, 12), draw.randint(0, 20), draw.choice(list(Lean)))
        items += [item] * draw.choice((1, 1, 1, 2, 3))
    return items, draw.randint(1, 40)


@pytest.mark.parametrize("seed", range(40))
def test_the_answers_are_those_of_the_tables_in_whole_numbers(seed: int) -> None:
    items, longest = drawn(seed)
    plain, quick = Knapsack(items, longest), NumpyKnapsack(items, longest)
    assert quick.items == plain.items
    ends = [(state, length) for state in State for length in (longest, longest // 2)]
    for state, length in [(state, length) for state in State for length in range(longest + 1)]:
        value = plain.value(state, length)
        assert quick.value(state, length) == value
        if value >= 0:
            assert quick.best_set(state, length) == plain.best_set(state, length)
    charges = list(range(len(ends)))
    endings = plain.endings(ends, charges)
    assert quick.endings(ends, charges) == endings
    assert [quick.ending_set(e) for e in endings] == [plain.ending_set(e) for e in endings]


@pytest.mark.parametrize("seed", range(40))
def test_the_sets_listed_are_those_of_the_tables_in_whole_numbers(seed: int) -> None:
    items, longest = drawn(seed)
    plain, quick = Knapsack(items, longest), NumpyKnapsack(items, longest)
    ends = [(state, longest) for state in State]
    charges = [max(0, plain.value(*end) - 15) for end in ends]
    for most in (5, 100_000):
        assert quick.sets_worth(ends, charges, most) == plain.sets_worth(ends, charges, most)


def test_values_too_large_for_the_tables_are_refused() -> None:
    with pytest.raises(OverflowError):
        NumpyKnapsack([Item(0, 1, MOST_VALUE, Lean.PLUS), Item(1, 1, 1, Lean.PLUS)], 5)


def test_the_solver_brings_its_tables_along() -> None:
    assert tables_maker(HighsSolver()).make is NumpyKnapsack
    assert tables_maker(object()).make is Knapsack
