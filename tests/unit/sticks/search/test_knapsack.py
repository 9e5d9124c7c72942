import random

import pytest

from longpoint.sticks.lay.lean_states import COUNTED, TURNED, Gaps, Lean, State, gaps_of
from longpoint.sticks.search.knapsack import MOST_VALUE, Knapsack, whole_values
from longpoint.sticks.search.table_sets import Item


def state_of(items: list[Item]) -> State:
    if any(item.lean in COUNTED for item in items):
        opens = sum({Lean.OPENS: 1, Lean.CLOSES: -1}.get(item.lean, 0) for item in items)
        return State(opens % 5)
    plus = sum(item.lean in (Lean.PLUS, Lean.ACROSS) for item in items) % 2
    minus = sum(item.lean in (Lean.MINUS, Lean.ACROSS) for item in items) % 2
    if plus or minus:
        return {(1, 1): State.BOTH, (1, 0): State.PLUS, (0, 1): State.MINUS}[plus, minus]
    leaning = any(item.lean is not Lean.SQUARE for item in items)
    linked = any(item.lean in (Lean.PLUS, Lean.MINUS) for item in items)
    return State.LOOSE if leaning and not linked else State.PLAIN


@pytest.mark.parametrize("seed", range(40))
def test_the_tables_hold_the_best_of_all_subsets_in_every_state(seed: int) -> None:
    draw = random.Random(seed)
    leans = COUNTED if seed % 4 == 3 else TURNED
    items = [
        Item(number, draw.randint(1, 9), draw.randint(0, 20), draw.choice(leans))
        for number in range(draw.randint(1, 8))
    ]
    longest = draw.randint(1, 25)
    best: dict[State, int] = {}
    for mask in range(2 ** len(items)):
        chosen = [item for item in items if mask >> item.number & 1]
        if sum(item.need for item in chosen) <= longest:
            state = state_of(chosen)
            best[state] = max(best.get(state, -1), sum(item.value for item in chosen))
    knapsack = Knapsack(items, longest)
    for state in State:
        assert knapsack.value(state, longest) == best.get(state, -1)
        if state in best:
            chosen = [items[number] for number in knapsack.best_set(state, longest)]
            assert sum(item.value for item in chosen) == best[state]
            assert sum(item.need for item in chosen) <= longest
            assert state_of(chosen) == state


def test_a_set_that_ends_in_a_piece_holds_it() -> None:
    items = [Item(n, 10 + n, 7 * n + 5, Lean.PLUS) for n in range(5)]
    knapsack = Knapsack(items, 40)
    endings = knapsack.endings([(State.PLUS, 40)], [3])
    assert [ending.place for ending in endings] == list(range(5))
    for ending in endings:
        numbers = knapsack.ending_set(ending)
        assert knapsack.items[ending.place].number in numbers
        assert ending.gain == sum(items[number].value for number in numbers) - 3


def test_gaps_part_square_ends_from_leaning_ones() -> None:
    gaps = gaps_of([0, 0, 5, 3290, 3310, -3295, -5])
    assert gaps.plus == (5, 3290)
    assert gaps.minus == (5, 3295)
    assert gaps.lean(0, 3310) is Lean.PLUS
    assert gaps.lean(-3295, 3310) is Lean.ACROSS
    assert gaps.lean(5, -5) is Lean.SQUARE
    assert gaps.cost(State.BOTH) == 3285 + 3290


def test_without_leans_no_state_costs_anything() -> None:
    assert [Gaps(None, None).cost(state) for state in State] == [0, 0, 0, 0, 0]


def test_values_too_large_for_the_tables_are_refused() -> None:
    with pytest.raises(OverflowError):
        Knapsack([Item(0, 1, MOST_VALUE, Lean.PLUS), Item(1, 1, 1, Lean.PLUS)], 5)


def test_whole_values_are_rounded_down_and_fit() -> None:
    values, scale = whole_values([0.3, -1.0, 2.7], [1, 4, 10])
    assert values[1] == 0
    assert values[0] <= 0.3 * scale < values[0] + 1
    assert values[0] + 10 * values[2] <= MOST_VALUE


def test_values_far_above_the_tables_are_scaled_down_to_fit() -> None:
    # 60 sticks of 2100 mm, a whole one to each piece, at prices to the cent.
    values, scale = whole_values([123_456.0, 0.5], [60, 1])
    assert 0 < scale < 1
    assert values[1] == 0
    assert values[0] <= 123_456.0 * scale < values[0] + 1
    assert MOST_VALUE // 4 < 60 * values[0] <= MOST_VALUE


@pytest.mark.parametrize("seed", range(20))
def test_every_set_worth_its_charge_is_listed_once(seed: int) -> None:
    draw = random.Random(seed)
    leans = COUNTED if seed % 4 == 3 else TURNED
    items: list[Item] = []
    for number in range(draw.randint(1, 5)):
        item = Item(number, draw.randint(1, 9), draw.randint(0, 20), draw.choice(leans))
        items += [item] * draw.randint(1, 2)
    longest, charge = draw.randint(5, 25), draw.randint(0, 30)
    wanted: set[tuple[int, tuple[int, ...]]] = set()
    for mask in range(1, 2 ** len(items)):
        chosen = [item for place, item in enumerate(items) if mask >> place & 1]
        worth = sum(item.value for item in chosen)
        if sum(item.need for item in chosen) <= longest and worth >= charge:
            wanted.add((state_of(chosen), tuple(sorted(item.number for item in chosen))))
    ends = [(state, longest) for state in State]
    found = Knapsack(items, longest).sets_worth(ends, [charge] * len(ends), 10_000)
    assert found is not None
    assert list(found.one_by_one()) == sorted(wanted)
