"""Drawn instances keep to the ranges that are published for their classes."""

from functools import cache
from itertools import product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.bench import recipes
from tests.bench.cutting_stock import CuttingStock
from tests.bench.recipes import NO_ROUND_UP, NO_ROUND_UP_STICK

SEEDS = st.integers(0, 10_000)


def items(instance: CuttingStock) -> int:
    return sum(demand for _, demand in instance.lengths)


def within(instance: CuttingStock, shortest: float, longest: float) -> bool:
    return all(shortest <= length <= longest for length, _ in instance.lengths)


def total(instance: CuttingStock) -> int:
    return sum(length * demand for length, demand in instance.lengths)


@given(SEEDS, st.sampled_from((120, 250, 500, 1000)))
def test_uniform_lengths(seed: int, count: int) -> None:
    drawn = recipes.uniform(seed, count)
    assert (drawn.stick, items(drawn)) == (150, count)
    assert within(drawn, 20, 100)


@given(SEEDS, st.sampled_from((60, 120, 249, 501)))
def test_triplets_fill_their_sticks(seed: int, count: int) -> None:
    drawn = recipes.triplets(seed, count)
    assert (drawn.stick, items(drawn)) == (1000, count)
    assert total(drawn) == 1000 * count // 3
    assert within(drawn, 250, 500)
    # No two of them fill a stick, and no four fit one: three on each it is.
    assert max(length for length, _ in drawn.lengths) < 500


@given(
    SEEDS,
    st.sampled_from((50, 500)),
    st.sampled_from((100, 120, 150)),
    st.sampled_from(recipes.SCHOLL_1_SHORTEST),
)
def test_the_first_class_of_scholl(seed: int, count: int, stick: int, shortest: int) -> None:
    drawn = recipes.scholl_1(seed, count, stick, shortest)
    assert (drawn.stick, items(drawn)) == (stick, count)
    assert within(drawn, shortest, 100)


@given(
    SEEDS,
    st.sampled_from((50, 100, 200, 500)),
    st.sampled_from(recipes.SCHOLL_2_PARTS),
    st.sampled_from(recipes.SCHOLL_2_SPREADS),
)
def test_the_second_class_of_scholl(seed: int, count: int, part: int, spread: float) -> None:
    drawn = recipes.scholl_2(seed, count, part, spread)
    assert (drawn.stick, items(drawn)) == (1000, count)
    mean = 1000 / part
    assert within(drawn, mean * (1 - spread) - 0.5, mean * (1 + spread) + 0.5)


@given(SEEDS)
def test_the_third_class_of_scholl(seed: int) -> None:
    drawn = recipes.scholl_3(seed)
    assert (drawn.stick, items(drawn)) == (100_000, 200)
    assert within(drawn, 20_000, 35_000)


@given(SEEDS, st.sampled_from((100, 120)))
def test_schwerin(seed: int, count: int) -> None:
    drawn = recipes.schwerin(seed, count)
    assert (drawn.stick, items(drawn)) == (1000, count)
    assert within(drawn, 150, 200)


@given(SEEDS, st.integers(10, 65), st.sampled_from((0.25, 0.5)))
def test_cutgen(seed: int, kinds: int, longest: float) -> None:
    drawn = recipes.cutgen(seed, kinds, 3.0, longest)
    assert drawn.stick == 10_000
    assert within(drawn, 1, longest * 10_000)
    assert len(drawn.lengths) <= kinds
    # Rounding and demands of at least one move the total by no more than one a kind.
    assert abs(items(drawn) - 3 * kinds) <= kinds


@given(SEEDS, st.sampled_from((160, 180, 200)))
def test_the_sizes_of_hard_28(seed: int, count: int) -> None:
    drawn = recipes.as_hard_28(seed, count)
    assert (drawn.stick, items(drawn)) == (1000, count)
    assert within(drawn, 1, 800)


@given(
    SEEDS,
    st.sampled_from(recipes.RANDOM_COUNTS),
    st.sampled_from(recipes.RANDOM_STICKS),
    st.sampled_from((0.1, 0.2)),
    st.sampled_from((0.7, 0.8)),
)
def test_random(seed: int, count: int, stick: int, shortest: float, longest: float) -> None:
    drawn = recipes.evenly_random(seed, count, stick, shortest, longest)
    assert (drawn.stick, items(drawn)) == (stick, count)
    assert within(drawn, shortest * stick - 0.5, longest * stick + 0.5)


@given(SEEDS, st.integers(1, 70))
def test_full_sticks_leave_nothing_over(seed: int, sticks: int) -> None:
    drawn = recipes.full_sticks(seed, sticks)
    assert items(drawn) == 3 * sticks
    assert total(drawn) == sticks * drawn.stick
    assert within(drawn, 1, 0.9 * drawn.stick)


@given(SEEDS, st.integers(0, 70))
def test_the_bound_of_no_round_up_grows_by_one_a_stick(seed: int, sticks: int) -> None:
    drawn = recipes.no_round_up(seed, sticks)
    assert items(drawn) == 11 + 3 * sticks
    # 259 / 132 = 1.96, which is the linear bound of the small one, too.
    assert total(drawn) * 132 == (259 + 132 * sticks) * drawn.stick


def test_two_sticks_dont_hold_the_small_one() -> None:
    """Its linear bound is 1.96: one kind to a stick fills it, and nothing fits two."""
    lengths, demands = zip(*NO_ROUND_UP, strict=True)
    assert all(NO_ROUND_UP_STICK % length == 0 for length in lengths)
    parts = [demand * length / NO_ROUND_UP_STICK for length, demand in NO_ROUND_UP]
    assert sum(parts) == pytest.approx(1.962, abs=0.001)
    first = product(*(range(demand + 1) for demand in demands))
    for taken in first:
        left = [demand - count for demand, count in zip(demands, taken, strict=True)]
        sums = [
            sum(count * length for count, length in zip(counts, lengths, strict=True))
            for counts in (taken, left)
        ]
        assert max(sums) > NO_ROUND_UP_STICK


@cache
def drawn_sample() -> tuple[tuple[str, CuttingStock], ...]:
    return tuple(recipes.sample(3))


def test_a_sample_has_every_class_and_repeats() -> None:
    classes = [group for group, _ in drawn_sample()]
    assert len(set(classes)) == 11
    assert all(classes.count(group) == 3 for group in classes)
    assert drawn_sample() == tuple(recipes.sample(3))
    names = [instance.name for _, instance in drawn_sample()]
    assert len(set(names)) == len(names)
    for _, instance in drawn_sample():
        assert within(instance, 1, instance.stick)
