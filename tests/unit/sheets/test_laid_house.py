"""A whole house laid out: each piece once, rooms first, what has no place in a row behind them."""

from itertools import pairwise

from longpoint.house_plan import HousePlan
from longpoint.sheets.laid_house import AS_CUT, IN_A_ROW, group_points, laid_house
from tests.unit.sheets.sample import unproved


def test_each_piece_is_laid_once_and_each_group_says_what_is_known() -> None:
    plan: HousePlan = unproved()
    laid = laid_house(plan, plan.pieces)
    marks = [each.piece.mark for group in laid.groups for each in group.pieces]
    assert sorted(marks) == sorted(piece.mark for piece in plan.pieces)
    assert all(group.said for group in laid.groups)
    assert {group.room for group in laid.groups if group.said in (IN_A_ROW, AS_CUT)} == {""}


def test_what_stands_in_the_row_stands_clear() -> None:
    plan = unproved()
    spans = []
    for group in laid_house(plan, plan.pieces).groups:
        along = [point[0] for point in group_points(group)]
        if along and not group.room:
            spans.append((min(along), max(along)))
    spans.sort()
    assert len(spans) > 1
    assert all(after[0] > before[1] + 500.0 for before, after in pairwise(spans))
