import itertools
from collections.abc import Callable

import pytest

from longpoint.linear.port import LinearSolver
from longpoint.sticks.search import must_be_cut, only_sets
from longpoint.sticks.search.every_pattern import Outcome
from longpoint.sticks.search.must_be_cut import from_only_sets
from longpoint.sticks.search.sharp_prices import central, first_numbers, sharpen
from tests.unit.sticks.tight_sticks import PlainTables, fill_sticks, stage, tight


def decided(
    seed: int,
    branches: int = 100,
    solver: LinearSolver | None = None,
    stop: Callable[[], bool] | None = None,
) -> tuple[Outcome | None, bool]:
    """What the search says of a plan of four sticks, and whether there is one."""
    instance = tight(seed, sticks=4, pieces=11)
    at = stage(instance, solver)
    sharp, whole = at.master.sharper(), at.master.whole
    numbers = first_numbers(sharp, at.master.patterns, at.bound.prices, whole)
    sharpen(sharp, numbers, at.least, at.bound, 100, 1, whole, 4)
    prices = central(sharp, numbers, at.least, at.bound, 1, whole)
    if stop is not None:
        sharp.stop = stop
    found = from_only_sets(sharp, numbers, at.least, prices, 4, 100, 1, branches)
    return found, fill_sticks(tuple(x for x, count in instance.lengths for _ in range(count)))


@pytest.fixture
def _nothing_listed(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(must_be_cut, "_LISTED", 0)


SEEDS = (*range(30), *range(200, 210))


@pytest.mark.usefixtures("_nothing_listed")
@pytest.mark.parametrize("seed", SEEDS)
def test_a_plan_is_found_where_there_is_one_and_none_where_not(seed: int) -> None:
    found, there_is_one = decided(seed)
    assert found is not None
    assert found.floor == (4 if there_is_one else 5)
    assert len(found.patterns) == (4 if there_is_one else 0)


@pytest.mark.usefixtures("_nothing_listed")
@pytest.mark.parametrize("seed", range(8))
def test_tables_in_whole_numbers_say_the_same(seed: int) -> None:
    found, there_is_one = decided(seed, solver=PlainTables())
    assert found is not None
    assert found.floor == (4 if there_is_one else 5)
    assert len(found.patterns) == (4 if there_is_one else 0)


@pytest.mark.usefixtures("_nothing_listed")
def test_without_a_branch_some_stay_open_and_what_is_said_is_true() -> None:
    said = [decided(seed, branches=0) for seed in SEEDS]
    assert any(found is None for found, _ in said)
    assert {there for found, there in said if found is not None} == {True, False}
    for found, there_is_one in said:
        assert found is None or bool(found.patterns) == there_is_one


@pytest.mark.usefixtures("_nothing_listed")
@pytest.mark.parametrize("seed", range(4))
def test_a_search_stopped_anywhere_says_nothing_that_is_not_so(seed: int) -> None:
    for steps in itertools.count():
        asked = itertools.count()
        found, there_is_one = decided(seed, stop=lambda: next(asked) >= steps)  # noqa: B023
        if found is not None:
            assert bool(found.patterns) == there_is_one
        if next(asked) <= steps:
            assert found is not None
            break
        if steps > 500:
            pytest.fail("a search as small as this is asked so often whether it must stop")


def test_too_many_ways_to_be_counted_are_left_open(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(must_be_cut, "_LISTED", 0)
    monkeypatch.setattr(only_sets, "MOST_STEPS", 5)
    assert any(decided(seed)[0] is None for seed in SEEDS)


def test_too_many_sets_to_be_tried_are_left_open(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(must_be_cut, "_LISTED", 0)
    monkeypatch.setattr(only_sets, "_MOST_LISTED", 0)
    assert any(decided(seed)[0] is None for seed in SEEDS)
