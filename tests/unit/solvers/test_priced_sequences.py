import random
from collections.abc import Iterator

import numpy as np
import pytest

from longpoint.solvers.items_on_grid import Items, items_on_grid
from longpoint.solvers.priced_sequences import PricedSequences
from longpoint.sticks.batch.parts_of_sticks import ManyPieces, Turned

GRID = 10
SEEDS = pytest.mark.parametrize("seed", range(30))


def drawn(seed: int) -> tuple[ManyPieces, list[float]]:
    """A few pieces, many of them alike on the grid, and prices that a stick may not pay."""
    draw = random.Random(seed)
    classes, count = draw.randint(1, 2), draw.randint(2, 6)

    def lengths(most: int) -> tuple[int, ...]:
        return tuple(draw.randint(0, most) for _ in range(classes))

    def kinds() -> tuple[int, ...]:
        return tuple(draw.randrange(classes) for _ in range(count))

    many = ManyPieces(
        needs=tuple(draw.choice((30, 50)) + draw.randint(0, 9) for _ in range(count)),
        lefts=kinds(),
        rights=kinds(),
        can_turn=tuple(draw.random() < 0.3 for _ in range(count)),
        copies=tuple(draw.randint(1, 3) for _ in range(count)),
        gaps=tuple(lengths(25) for _ in range(classes)),
        left_tips=lengths(15),
        right_tips=lengths(15),
        rooms=(100, 130),
        costs=(10, 12),
        limits=(draw.choice((None, 2)), None),
    )
    return many, [draw.uniform(2.0, 6.0) for _ in range(count)]


def priced(many: ManyPieces, prices: list[float]) -> tuple[Items, PricedSequences]:
    items = items_on_grid(np, many, GRID)
    return items, PricedSequences(np, many, items, np.array(prices))


def sequences(many: ManyPieces, room: int) -> Iterator[tuple[Turned, ...]]:
    """Every sequence that a room holds, all its lengths rounded down."""
    ways = [
        Turned(group, turned)
        for group, can_turn in enumerate(many.can_turn)
        for turned in ((False, True) if can_turn else (False,))
    ]

    def ends(way: Turned) -> tuple[int, int]:
        left, right = many.lefts[way.group], many.rights[way.group]
        return (right, left) if way.turned else (left, right)

    stack: list[tuple[tuple[Turned, ...], int]] = [((), 0)]
    while stack:
        chosen, used = stack.pop()
        if chosen and used + many.right_tips[ends(chosen[-1])[1]] // GRID <= room // GRID:
            yield chosen
        for way in ways:
            left = ends(way)[0]
            joint = many.gaps[ends(chosen[-1])[1]][left] if chosen else many.left_tips[left]
            longer = used + joint // GRID + many.needs[way.group] // GRID
            if longer <= room // GRID:
                stack.append(((*chosen, way), longer))


@SEEDS
def test_the_bound_is_that_of_the_best_of_all_sequences(seed: int) -> None:
    many, prices = drawn(seed)
    _, found = priced(many, prices)
    most = [
        max((sum(prices[n] for n, _ in one) for one in sequences(many, room)), default=0.0)
        for room in many.rooms
    ]
    theta = min(
        1.0,
        *(
            cost / worth
            for cost, limit, worth in zip(many.costs, many.limits, most, strict=True)
            if limit is None and worth
        ),
    )
    bound = theta * sum(price * n for price, n in zip(prices, many.copies, strict=True))
    bound += sum(
        limit * min(0.0, cost - theta * worth)
        for cost, limit, worth in zip(many.costs, many.limits, most, strict=True)
        if limit is not None
    )
    assert float(found.bound) == pytest.approx(max(0.0, bound), rel=1e-6)


@SEEDS
def test_the_best_sequence_with_a_piece_is_that_of_all_that_hold_it(seed: int) -> None:
    many, prices = drawn(seed)
    items, found = priced(many, prices)
    charges = np.array([-0.5, 0.0])

    def gain(bar: int, one: tuple[Turned, ...]) -> float:
        return sum(prices[n] for n, _ in one) - many.costs[bar] + float(charges[bar])

    able = [(bar, one) for bar, room in enumerate(many.rooms) for one in sequences(many, room)]
    for item, (group, turned) in enumerate(zip(items.groups, items.turned, strict=True)):
        way = Turned(int(group), bool(turned))
        holding = [(bar, one) for bar, one in able if way in one]
        if not holding:
            continue
        bar, one = found.best_with(item, charges)
        assert way in one
        assert items.holds(bar, one)
        assert gain(bar, one) == pytest.approx(max(gain(*each) for each in holding), abs=1e-5)


@SEEDS
def test_a_stick_holds_those_sequences_that_keep_within_it(seed: int) -> None:
    many, prices = drawn(seed)
    items, _ = priced(many, prices)
    longer = set(sequences(many, many.rooms[1]))
    shorter = set(sequences(many, many.rooms[0]))
    assert shorter < longer
    for one in longer:
        assert items.holds(1, one)
        assert items.holds(0, one) == (one in shorter)


@SEEDS
def test_of_pieces_alike_on_the_grid_the_dearest_is_looked_at(seed: int) -> None:
    many, prices = drawn(seed)
    items, _ = priced(many, prices)
    values = np.array(prices)[items.groups]
    kinds = [
        (int(need), int(left), int(right))
        for need, left, right in zip(items.needs, items.lefts, items.rights, strict=True)
    ]
    dearest = items.dearest(np, values)
    assert sorted(kinds[one] for one in dearest) == sorted(set(kinds))
    for one in dearest:
        alike = [values[n] for n, kind in enumerate(kinds) if kind == kinds[one]]
        assert values[one] == max(alike)
