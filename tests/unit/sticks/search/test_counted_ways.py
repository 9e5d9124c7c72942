import pytest

from longpoint.sticks.lay.lean_states import Lean, State
from longpoint.sticks.search.counted_ways import MANY, count_ways
from longpoint.sticks.search.knapsack import Knapsack
from longpoint.sticks.search.table_sets import Item
from tests.unit.solvers.test_numpy_knapsack import drawn

MOST = 100_000


def listed(knapsack: Knapsack, ends: list[tuple[State, int]], charges: list[int]) -> dict[int, int]:
    """In how many of the sets listed each number stands."""
    found = knapsack.sets_worth(ends, charges, MOST)
    assert found is not None
    numbers = {item.number for item in knapsack.items}
    return {number: sum(number in chosen for _, chosen in found.one_by_one()) for number in numbers}


@pytest.mark.parametrize("seed", range(60))
def test_sets_that_are_worth_the_most_are_counted_as_they_are(seed: int) -> None:
    items, longest = drawn(seed, 1)
    knapsack = Knapsack(items, longest)
    for state in State:
        best = knapsack.value(state, longest)
        if best >= 0:
            ways = knapsack.ways([(state, longest)], [best], MOST)
            assert ways is not None
            assert ways.holding == listed(knapsack, [(state, longest)], [best])


@pytest.mark.parametrize("seed", range(60))
def test_never_fewer_sets_are_counted_than_there_are(seed: int) -> None:
    items, longest = drawn(seed, 1)
    knapsack = Knapsack(items, longest)
    ends = [(state, length) for state in State for length in (longest, longest // 2)]
    charges = [max(0, knapsack.value(*end) - 15) for end in ends]
    ways = knapsack.ways(ends, charges, MOST)
    exact = listed(knapsack, ends, charges)
    assert ways is not None
    assert ways.holding.keys() == exact.keys()
    assert all(ways.holding[number] >= count for number, count in exact.items())
    found = knapsack.sets_worth(ends, charges, MOST)
    assert found is not None
    assert ways.sets >= len(found)


def test_copies_are_told_apart_from_other_pieces() -> None:
    """Four of one length or two of another fill the stick, or two and one."""
    items = [Item(0, 2, 2, Lean.SQUARE)] * 2 + [Item(1, 1, 1, Lean.SQUARE)] * 4
    ways = Knapsack(items, 4).ways([(State.PLAIN, 4)], [4], MOST)
    assert ways is not None
    assert (ways.sets, ways.holding) == (3, {0: 2, 1: 2})


def test_more_ways_than_are_told_apart_are_many() -> None:
    items = [Item(number, 1, 1, Lean.SQUARE) for number in range(30)]
    ways = Knapsack(items, 15).ways([(State.PLAIN, 15)], [15], MOST)
    assert ways is not None
    assert ways.sets == MANY
    assert set(ways.holding.values()) == {MANY}


def test_too_many_steps_are_not_counted() -> None:
    items, longest = drawn(3, 1)
    knapsack = Knapsack(items, longest)
    assert count_ways(knapsack.items, lambda *_: 10**6, [(State.PLAIN, longest)], [0], 3) is None
