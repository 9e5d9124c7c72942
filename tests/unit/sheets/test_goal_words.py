from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Cell, Table, Together
from longpoint.sheets.goal_words import goal_blocks, goal_sentences
from longpoint.sticks.plan import CutPlan, CutStick, Goal, Proof, Reached, StickSource

PROOF = Proof(profile="OG", cost=9.0, lower_bound=8.4, optimal=False)
STICK = CutStick(
    name="OG-1",
    profile="OG",
    length_mm=9000.0,
    source=StickSource.STOCK,
    laid=(),
    used_mm=0.0,
    left_mm=0.0,
)


def table_of(plan: CutPlan, *, with_cost: bool = False) -> Table | None:
    together = goal_blocks(plan, Units.MM, with_cost=with_cost)
    blocks = [one for block in together if isinstance(block, Together) for one in block.blocks]
    return next((block for block in blocks if isinstance(block, Table)), None)


def rows(plan: CutPlan, *, with_cost: bool = False) -> list[tuple[str, ...]]:
    table = table_of(plan, with_cost=with_cost)
    return [
        tuple(cell.text if isinstance(cell, Cell) else cell for cell in row)
        for row in (table.rows if table else ())
    ]


def test_the_goals_stand_in_their_order_whatever_comes_first() -> None:
    plan = CutPlan(
        reached=(
            Reached(goal=Goal.FEW_SETTINGS, value=7, limit=7),
            Reached(goal=Goal.LONG_OFFCUT, profile="OG", value=812.4, limit=1310.0),
            Reached(goal=Goal.FEW_STICKS, profile="OG", value=3, limit=2),
        )
    )
    assert rows(plan) == [
        ("Few new sticks", "OG", "3", "2", "best found"),
        ("One long offcut", "OG", "812.5", "1310", "best found"),
        ("Few changes of the saw", "all sticks", "7", "", "proved"),
    ]
    assert rows(plan, with_cost=True) == rows(plan)


def test_the_cost_comes_first_with_what_is_bought_and_what_is_needed_at_least() -> None:
    plan = CutPlan(sticks=(STICK,), proofs=(PROOF,))
    assert rows(plan) == []
    assert rows(plan, with_cost=True) == [("Least to buy", "OG", "9.0 m", "8.4 m", "best found")]
    priced = replace(PROOF, cost=29.2, lower_bound=29.2, optimal=True, unit="price")
    assert rows(replace(plan, proofs=(priced,)), with_cost=True) == [
        ("Least to buy", "OG", "price 29.20", "", "proved")
    ]


def test_a_sentence_tells_of_every_profile_and_is_proved_when_all_are() -> None:
    both = tuple(Reached(goal=Goal.FEW_STICKS, profile=name, value=3, limit=3) for name in "AB")
    open_one = Reached(goal=Goal.FEW_STICKS, profile="C", value=5, limit=4)
    (proved,) = goal_sentences(CutPlan(reached=both), Units.MM)
    assert (proved.text, proved.is_proved) == ("Few new sticks: proved A 3, B 3.", True)
    (found,) = goal_sentences(CutPlan(reached=(*both, open_one)), Units.MM)
    assert found.text == "Few new sticks: best found C 5 (at best 4); proved A 3, B 3."
    assert not found.is_proved


def test_what_is_proved_of_many_profiles_shares_a_row() -> None:
    many = tuple(Reached(goal=Goal.FEW_STICKS, profile=name, value=3, limit=3) for name in "ABCDE")
    open_one = Reached(goal=Goal.FEW_STICKS, profile="F", value=5, limit=4)
    assert rows(CutPlan(reached=(*many, open_one))) == [
        ("Few new sticks", "F", "5", "4", "best found"),
        ("Few new sticks", "all the others", "each its best", "", "proved"),
    ]


@pytest.mark.parametrize("goal", list(Goal))
def test_what_no_plan_can_better_is_called_proved_and_looks_so(goal: Goal) -> None:
    def standing(value: float) -> Cell:
        plan = CutPlan(reached=(Reached(goal=goal, value=value, limit=2),))
        table = table_of(plan)
        assert table is not None
        cell = table.rows[0][4]
        assert isinstance(cell, Cell)
        return cell

    best = standing(2)
    worse = standing(1 if goal is Goal.LONG_OFFCUT else 3)
    assert (best.text, worse.text) == ("proved", "best found")
    assert best.picture is not None
    assert worse.picture is not None
    assert best.picture.marks != worse.picture.marks


def test_without_a_plan_there_is_no_table() -> None:
    assert goal_blocks(CutPlan(), Units.MM, with_cost=True) == ()


def test_a_long_table_may_go_over_two_pages() -> None:
    many = tuple(
        Reached(goal=Goal.FEW_STICKS, profile=f"P{n}", value=3, limit=2) for n in range(30)
    )
    blocks = goal_blocks(CutPlan(reached=many), Units.MM)
    assert any(isinstance(block, Table) for block in blocks)
