import math
import random

from longpoint.sticks.search.dive import Limit, dive
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
