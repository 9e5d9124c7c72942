import pytest

from longpoint.sticks.search.dive_turns import goal_of, limit_of
from longpoint.sticks.search.last_sticks import QUICK_LAST, SOON_LAST, THOROUGH_LAST

COSTS = (10, 12, 13, 17, 20)


def test_the_first_dive_asks_for_the_least_cost_that_patterns_could_give() -> None:
    assert goal_of(0, COSTS, 0) == 10
    assert goal_of(0, COSTS, 13) == 13
    assert goal_of(0, COSTS, 21) == 20


@pytest.mark.parametrize("least", [0, 13, 21])
def test_the_second_asks_for_any_better_plan_and_later_ones_lie_between(least: int) -> None:
    assert goal_of(1, COSTS, least) == 20
    able = [cost for cost in COSTS if cost >= least] or [20]
    later = {goal_of(turn, COSTS, least) for turn in range(2, 10)}
    assert later <= set(able)
    assert len(able) == 1 or len(later) > 1


def test_the_first_two_dives_are_long_but_for_the_first_where_sets_are_listed_soon() -> None:
    masters = [limit_of(turn, 80, 90, has_many=True).masters for turn in range(3)]
    assert masters == [240, 240, 80]
    soon = [limit_of(turn, 80, 60, has_many=False) for turn in range(3)]
    assert [limit.masters for limit in soon] == [80, 240, 80]
    assert [limit.last for limit in soon] == [SOON_LAST, THOROUGH_LAST, THOROUGH_LAST]


def test_the_last_sticks_of_many_pieces_are_tried_less() -> None:
    assert limit_of(0, 80, 70, has_many=True).last == QUICK_LAST
    alone = limit_of(0, 80, None, has_many=False)
    assert (alone.masters, alone.last) == (240, THOROUGH_LAST)
