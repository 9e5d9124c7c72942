import pytest

from longpoint.sticks.lay.lean_states import Lean, State
from longpoint.sticks.search.table_sets import Item
from tests.unit.solvers.test_numpy_knapsack import KINDS, Plain, Quick, drawn


@KINDS
@pytest.mark.parametrize("seed", range(40))
def test_the_ways_counted_are_those_of_the_tables_in_whole_numbers(
    seed: int, kinds: tuple[Plain, Quick], scale: int
) -> None:
    items, longest = drawn(seed, scale)
    plain, quick = kinds[0](items, longest), kinds[1](items, longest)
    ends = [(state, length) for state in State for length in (longest, longest // 2)]
    charges = [plain.value(*end) - 15 * scale for end in ends]
    for most in (5, 40, 100_000):
        assert quick.ways(ends, charges, most) == plain.ways(ends, charges, most)


@KINDS
def test_where_no_set_is_worth_its_charge_there_is_no_way(
    kinds: tuple[Plain, Quick], scale: int
) -> None:
    items = [Item(0, 3, 5 * scale, Lean.SQUARE), Item(1, 4, 6 * scale, Lean.SQUARE)]
    for kind in kinds:
        for charge in (7 * scale, 1 << 80):
            ways = kind(items, 5).ways([(State.PLAIN, 5)], [charge], 10)
            assert ways is not None
            assert (ways.sets, ways.holding) == (0, {0: 0, 1: 0})


@KINDS
def test_many_ways_are_as_many_either_way(kinds: tuple[Plain, Quick], scale: int) -> None:
    items = [Item(number, 1, scale, Lean.SQUARE) for number in range(20)]
    items += [Item(20, 2, 2 * scale, Lean.SQUARE)] * 3
    plain, quick = (kind(items, 14).ways([(State.PLAIN, 14)], [14 * scale], 9999) for kind in kinds)
    assert plain is not None
    assert quick == plain
