"""Sets that must be cut are in every plan that reaches the goal; a goal refused can't be reached.

Held to trying every plan, at any prices: good ones only take more sets.
"""

import random
from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from longpoint.sticks.search.generation import first_bound, generate
from longpoint.sticks.search.master import Master, Prices
from longpoint.sticks.search.needs import Needs, least_needs, likely_needs
from longpoint.sticks.search.only_sets import OnlySets, Rest
from longpoint.sticks.search.pricing import Priced
from tests.random_sticks import architrave_piece, house_of
from tests.unit.sticks.nests import nest
from tests.unit.sticks.tight_sticks import (
    STICK,
    PlainTables,
    every_cover,
    fill_sticks,
    stage,
    tight,
)


def held_to_every_plan(master: Master, least: Needs, prices: Prices, goal: int, grid: int) -> int:
    """Check what is taken for a goal; return how many sets are."""
    plans = [Counter(plan) for plan in every_cover(master, goal)]
    found = OnlySets(master, least, grid).counted(Rest(master.whole, goal, ()), prices)
    if found is None:
        assert not plans
        return 0
    taken = Counter(found.rest.taken)
    assert all(taken <= plan for plan in plans)
    rest = master.whole
    for pattern in found.rest.taken:
        rest = rest.less(pattern)
    assert rest == found.rest.remaining
    assert goal - found.rest.goal == sum(master.steps[each.bar] for each in found.rest.taken)
    if found.ways is not None:
        after = [plan - taken for plan in plans]
        for group, copies in enumerate(rest.pieces):
            used = {each for plan in after for each in plan if group in dict(each.counts)}
            assert not copies or found.ways.holding[group] >= len(used)
    return len(found.rest.taken)


def shaken(prices: Prices, seed: int, share: float) -> Prices:
    draw = random.Random(seed)
    pieces = tuple(price * (1 + share * draw.uniform(-1, 1)) for price in prices.pieces)
    return replace(prices, pieces=pieces)


@settings(max_examples=120, deadline=None)
@given(
    seed=st.integers(0, 10**6),
    share=st.sampled_from([0.0, 1e-9, 0.02, 0.3]),
    goal=st.integers(2, 4),
    plain=st.booleans(),
)
def test_square_pieces_without_waste(seed: int, share: float, goal: int, plain: bool) -> None:
    at = stage(tight(seed, sticks=3, pieces=8), PlainTables() if plain else None)
    by_length = Prices(tuple(need / STICK for need in at.least.pieces), (0.0,))
    master = at.master.sharper()
    held_to_every_plan(master, at.least, shaken(by_length, seed, share), goal, 1)


def test_sets_are_taken_from_some_of_those_instances() -> None:
    taken = []
    for seed in range(60):
        instance = tight(seed, sticks=3, pieces=8)
        if fill_sticks(tuple(x for x, count in instance.lengths for _ in range(count))):
            at = stage(instance)
            by_length = Prices(tuple(need / STICK for need in at.least.pieces), (0.0,))
            taken.append(held_to_every_plan(at.master.sharper(), at.least, by_length, 3, 1))
    assert len(taken) >= 5
    assert any(taken)


@settings(max_examples=60, deadline=None)
@given(
    lengths_mm=st.lists(st.integers(300, 2200), min_size=3, max_size=6),
    angles=st.lists(st.sampled_from([0.0, 45.0, 22.5, -45.0]), min_size=12, max_size=12),
    reversible=st.booleans(),
    counted=st.booleans(),
    dearer=st.integers(0, 2),
    fine=st.booleans(),
)
def test_mitred_pieces_on_sticks_of_two_lengths(
    lengths_mm: list[int],
    angles: list[float],
    reversible: bool,
    counted: bool,
    dearer: int,
    fine: bool,
) -> None:
    pieces = tuple(
        architrave_piece(f"W{n}-head", float(length), angles[2 * n], angles[2 * n + 1])
        for n, length in enumerate(lengths_mm)
    )
    house = house_of(
        lengths_mm=(2700.0, 3600.0), reversible=reversible, counts=(1, None) if counted else ()
    )
    master, floor, numbers, cost = nest(pieces, house)
    least = least_needs(master.layout, floor)
    near = first_bound(master, least, 20)
    generate(master, numbers, likely_needs(master.layout, floor, 0.4), near, 20, 20)
    prices = master.prices(master.solve(numbers, master.whole))
    assert prices is not None
    if fine:
        master = master.sharper()
    bound = Priced(master, least, prices, master.whole, 20).bound()
    for goal in {max(0, cost - 1), int(bound) + dearer}:
        held_to_every_plan(master, least, prices, goal, 20)
