import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Table
from longpoint.sheets.goal_words import goal_blocks
from longpoint.sticks.plan import Goal, Reached


def rows(*reached: Reached, units: Units = Units.MM) -> list[tuple[object, ...]]:
    blocks = goal_blocks(reached, units)
    return [row for block in blocks if isinstance(block, Table) for row in block.rows]


def test_the_goals_stand_in_their_order_whatever_comes_first() -> None:
    found = rows(
        Reached(goal=Goal.FEW_SETTINGS, value=7, limit=7),
        Reached(goal=Goal.LONG_OFFCUT, profile="OG", value=812.4, limit=1310.0),
        Reached(goal=Goal.FEW_STICKS, profile="OG", value=3, limit=2),
    )
    assert found == [
        ("Few new sticks", "OG", "3", "2", "best found"),
        ("One long offcut", "OG", "812.5", "1310", "best found"),
        ("Few changes of the saw", "all sticks", "7", "", "proved: can't be bettered"),
    ]


def test_profiles_that_can_not_be_bettered_share_a_row() -> None:
    sticks = [Reached(goal=Goal.FEW_STICKS, profile=name, value=3, limit=3) for name in "AB"]
    open_one = Reached(goal=Goal.FEW_STICKS, profile="C", value=5, limit=4)
    assert rows(*sticks, open_one) == [
        ("Few new sticks", "C", "5", "4", "best found"),
        ("Few new sticks", "A, B", "each its best", "", "proved: can't be bettered"),
    ]


@pytest.mark.parametrize("goal", list(Goal))
def test_what_no_plan_can_better_is_called_proved(goal: Goal) -> None:
    (row,) = rows(Reached(goal=goal, value=2, limit=2))
    assert str(row[4]).startswith("proved")
    worse = -1 if goal is Goal.LONG_OFFCUT else 1
    (row,) = rows(Reached(goal=goal, value=2 + worse, limit=2))
    assert row[4] == "best found"


def test_without_a_plan_there_is_no_table() -> None:
    assert goal_blocks((), Units.MM) == ()
