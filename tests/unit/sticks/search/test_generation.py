import math

import pytest

from longpoint.sticks.search.generation import better_bound, first_bound, generate
from longpoint.sticks.search.needs import least_needs, likely_needs
from tests.random_sticks import house_of, house_pieces
from tests.unit.sticks.nests import nest


@pytest.mark.parametrize("reversible", [False, True])
def test_new_patterns_lower_the_linear_cost_and_the_bound_rises_towards_it(
    reversible: bool,
) -> None:
    pieces = house_pieces(9, openings=12)
    master, floor, numbers, cost = nest(pieces, house_of(reversible=reversible))
    least = least_needs(master.layout, floor)
    bound = first_bound(master, least, 100)
    start = bound.exact
    before = master.pure_cost(numbers, master.solve(numbers, master.whole))
    generate(master, numbers, likely_needs(master.layout, floor, 0.4), bound, 20, 100)
    after = master.pure_cost(numbers, master.solve(numbers, master.whole))
    assert after < before
    relaxed = list(numbers)
    reach = better_bound(master, relaxed, least, bound, cost, 40, 20)
    assert start <= bound.exact <= cost
    assert bound.exact <= reach + 0.25
    assert bound.steps == math.ceil(bound.exact) <= math.ceil(after)


def test_a_bound_at_its_goal_is_left_alone() -> None:
    master, floor, numbers, _ = nest(house_pieces(9, openings=4), house_of())
    least = least_needs(master.layout, floor)
    bound = first_bound(master, least, 100)
    known = list(numbers)
    better_bound(master, numbers, least, bound, bound.steps, 5, 100)
    assert numbers == known


def test_with_room_patterns_are_looked_for_below_a_cost_that_is_reached() -> None:
    master, floor, numbers, cost = nest(house_pieces(9, openings=12), house_of(reversible=True))
    likely = likely_needs(master.layout, floor, 0.4)
    bound = first_bound(master, least_needs(master.layout, floor), 100)
    bound.steps = cost - 1
    reached = list[float]()
    for room in (0.0, 0.5):
        known = list(numbers)
        generate(master, known, likely, bound, 40, 100, room)
        reached.append(master.pure_cost(known, master.solve(known, master.whole)))
    assert reached[0] <= cost - 1 + 1e-6
    assert reached[1] <= min(reached[0], cost - 1.5 + 1e-6)
