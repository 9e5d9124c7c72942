import math
import random

from longpoint.sticks.search.dive import Limit, Spare, dive, quick_limit
from longpoint.sticks.search.generation import first_bound, generate
from longpoint.sticks.search.master import Master
from longpoint.sticks.search.needs import Needs, least_needs, likely_needs
from longpoint.sticks.search.patterns import Pattern
from tests.random_sticks import house_of, house_pieces
from tests.unit.sticks.nests import nest


def ready() -> tuple[Master, list[int], Needs, Needs, int]:
    master, floor, numbers, cost = nest(house_pieces(9, openings=14), house_of(reversible=True))
    least, likely = least_needs(master.layout, floor), likely_needs(master.layout, floor, 0.4)
    generate(master, numbers, likely, first_bound(master, least, 100), 20, 100)
    return master, numbers, likely, least, cost


def cuts_everything(master: Master, patterns: tuple[Pattern, ...]) -> bool:
    remaining = master.whole
    for pattern in patterns:
        assert remaining.holds(pattern)
        room = master.layout.bars[pattern.bar].room
        assert master.layout.fitting(pattern.counts, room)[0] == pattern.counts
        remaining = remaining.less(pattern)
    return not any(remaining.pieces)


def test_a_dive_finds_a_plan_near_the_linear_cost() -> None:
    master, numbers, likely, least, cost = ready()
    first = master.solve(numbers, master.whole)
    goal = math.ceil(master.pure_cost(numbers, first)) + 1
    assert goal < cost
    for draw in (None, random.Random(1)):
        found = dive(master, numbers, likely, least, first, goal, 0, 100, Limit(200), draw)
        assert found is not None
        assert cuts_everything(master, found)
        assert sum(master.steps[pattern.bar] for pattern in found) <= goal


def test_no_dive_goes_below_the_linear_cost() -> None:
    master, numbers, likely, least, _ = ready()
    first = master.solve(numbers, master.whole)
    goal = math.floor(master.pure_cost(numbers, first)) - 2
    assert dive(master, numbers, likely, least, first, goal, 0, 100, Limit(60)) is None


def test_a_dive_stops_at_its_limit() -> None:
    master, numbers, likely, least, _ = ready()
    first = master.solve(numbers, master.whole)
    goal = math.ceil(master.pure_cost(numbers, first))
    limit = Limit(1)
    assert dive(master, numbers, likely, least, first, goal, 0, 100, limit) is None
    assert limit.masters <= 0


def test_a_dive_below_the_linear_cost_keeps_no_plan() -> None:
    master, numbers, likely, least, cost = ready()
    first = master.solve(numbers, master.whole)
    goal, spare = math.floor(master.pure_cost(numbers, first)) - 2, Spare(cost)
    assert dive(master, numbers, likely, least, first, goal, 0, 100, Limit(60), spare=spare) is None
    assert not spare.patterns


def test_a_dive_that_misses_its_goal_keeps_a_plan_a_little_above() -> None:
    """Where the linear cost lies just below the goal, and no plan of whole sticks was found."""
    kept = 0
    for seed in range(6):
        house = house_of(reversible=True, lengths_mm=(2700.0, 4200.0, 5400.0))
        master, floor, numbers, cost = nest(house_pieces(seed, openings=7), house)
        least, likely = least_needs(master.layout, floor), likely_needs(master.layout, floor, 0.4)
        generate(master, numbers, likely, first_bound(master, least, 100), 40, 100)
        first = master.solve(numbers, master.whole)
        goal, spare = math.ceil(master.pure_cost(numbers, first)), Spare(cost + 1)
        dive(master, numbers, likely, least, first, goal, 0, 100, quick_limit(40), spare=spare)
        if spare.patterns:
            kept += 1
            steps = sum(master.steps[pattern.bar] for pattern in spare.patterns)
            assert goal < steps <= cost
            assert cuts_everything(master, spare.patterns)
    assert kept >= 3
