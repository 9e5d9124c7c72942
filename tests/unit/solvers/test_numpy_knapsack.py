import random

import pytest

from longpoint.solvers.highs import HighsSolver
from longpoint.solvers.numpy_knapsack import MOST_VALUE, FineNumpyKnapsack, NumpyKnapsack
from longpoint.sticks.lay.lean_states import COUNTED, TURNED, Lean, State
from longpoint.sticks.search.knapsack import MOST_FINE_VALUE, FineKnapsack, Knapsack, tables_maker
from longpoint.sticks.search.table_sets import Item, Lengths, listed_sets

FINE = (MOST_FINE_VALUE - 1000) // (20 * 36)
"""Values times this hardly fit the fine tables."""

Plain = type[Knapsack]
Quick = type[NumpyKnapsack]
KINDS = pytest.mark.parametrize(
    ("kinds", "scale"),
    [((Knapsack, NumpyKnapsack), 1), ((FineKnapsack, FineNumpyKnapsack), FINE)],
    ids=["usual", "fine"],
)


def drawn(seed: int, scale: int) -> tuple[list[Item], int]:
    draw = random.Random(seed)
    leans = COUNTED if seed % 4 == 3 else TURNED
    items: list[Item] = []
    for number in range(draw.randint(1, 12)):
        # One more or less: coarse tables wouldn't tell.
        value = draw.randint(0, 20) * scale + draw.randint(0, 1)
        item = Item(number, draw.randint(1, 12), value, draw.choice(leans))
        items += [item] * draw.choice((1, 1, 1, 2, 3))
    return items, draw.randint(1, 40)


@KINDS
@pytest.mark.parametrize("seed", range(40))
def test_the_answers_are_those_of_the_tables_in_whole_numbers(
    seed: int, kinds: tuple[Plain, Quick], scale: int
) -> None:
    items, longest = drawn(seed, scale)
    plain, quick = kinds[0](items, longest), kinds[1](items, longest)
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


@KINDS
@pytest.mark.parametrize("seed", range(40))
def test_the_sets_listed_are_those_of_the_tables_in_whole_numbers(
    seed: int, kinds: tuple[Plain, Quick], scale: int
) -> None:
    items, longest = drawn(seed, scale)
    plain, quick = kinds[0](items, longest), kinds[1](items, longest)
    ends = [(state, longest) for state in State]
    charges = [max(0, plain.value(*end) - 15 * scale) for end in ends]
    for most in (5, 100_000):
        assert quick.sets_worth(ends, charges, most) == plain.sets_worth(ends, charges, most)
    exact = Lengths([10 * number for number in range(12)], [60] * len(ends))
    short = quick.sets_worth(ends, charges, 100_000, exact)
    assert short == plain.sets_worth(ends, charges, 100_000, exact)


def test_values_too_large_for_the_tables_are_refused() -> None:
    for kind, most in (
        (NumpyKnapsack, MOST_VALUE),
        (FineNumpyKnapsack, MOST_FINE_VALUE),
        (FineKnapsack, MOST_FINE_VALUE),
    ):
        with pytest.raises(OverflowError):
            kind([Item(0, 1, most, Lean.PLUS), Item(1, 1, 1, Lean.PLUS)], 5)


def test_the_solver_brings_its_tables_along() -> None:
    assert tables_maker(HighsSolver()).make is NumpyKnapsack
    assert tables_maker(object()).make is Knapsack
    assert tables_maker(HighsSolver(), fine=True).make is FineNumpyKnapsack
    assert tables_maker(object(), fine=True).make is FineKnapsack


@KINDS
def test_where_no_set_is_worth_its_charge_the_list_is_empty(
    kinds: tuple[Plain, Quick], scale: int
) -> None:
    items = [Item(0, 3, 5 * scale, Lean.SQUARE), Item(1, 4, 6 * scale, Lean.SQUARE)]
    for kind in kinds:
        assert kind(items, 5).sets_worth([(State.PLAIN, 5)], [7 * scale], 10) == listed_sets(())
