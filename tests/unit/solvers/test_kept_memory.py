import random

import numpy as np
import pytest

from longpoint.solvers import kept_memory
from longpoint.solvers.kept_memory import give_back, kept_rows
from longpoint.solvers.numpy_knapsack import NumpyKnapsack
from longpoint.sticks.lay.lean_states import COUNTED, TURNED, State
from longpoint.sticks.search.knapsack import Knapsack
from longpoint.sticks.search.table_sets import Item


@pytest.fixture(autouse=True)
def nothing_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kept_memory, "_KEPT", [])


def test_what_is_given_back_is_handed_out_again() -> None:
    block, rows = kept_rows(np, (3, 5), "int64")
    assert rows.shape == (3, 5)
    rows[:] = 7
    give_back(block)
    again, fewer = kept_rows(np, (2, 5), "int32")
    assert again is block
    assert fewer.shape == (2, 5)
    assert fewer.dtype == np.int32


def test_what_is_too_small_is_given_up_and_what_is_in_use_is_left_alone() -> None:
    small, _ = kept_rows(np, (1, 2), "int64")
    give_back(small)
    large, rows = kept_rows(np, (100, 100), "int64")
    rows[:] = 1
    other, more = kept_rows(np, (100, 100), "int64")
    more[:] = 2
    assert large is not small
    assert other is not large
    assert (rows == 1).all()


def test_few_blocks_are_kept_and_none_that_is_very_large(monkeypatch: pytest.MonkeyPatch) -> None:
    blocks = [kept_rows(np, (1, 10), "int64")[0] for _ in range(5)]
    for block in blocks:
        give_back(block)
    assert len(kept_memory._KEPT) == 2
    monkeypatch.setattr(kept_memory, "_KEPT", [])
    monkeypatch.setattr(kept_memory, "_LARGEST", 50)
    give_back(blocks[0])
    assert not kept_memory._KEPT


def test_tables_in_memory_that_was_used_before_hold_what_others_hold() -> None:
    """Against the tables in whole numbers, one set of items after the other."""
    draw = random.Random(3)
    for turn in range(20):
        leans = COUNTED if turn % 4 == 3 else TURNED
        items = [
            Item(number, draw.randint(3, 30), draw.randint(0, 50), draw.choice(leans))
            for number in range(draw.randint(1, 9))
        ]
        longest = draw.randint(10, 70)
        ours, theirs = NumpyKnapsack(items, longest), Knapsack(items, longest)
        for state in State:
            for length in range(longest + 1):
                assert ours.value(state, length) == theirs.value(state, length)
    assert kept_memory._KEPT
