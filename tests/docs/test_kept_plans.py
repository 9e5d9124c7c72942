"""What is kept from test to test: the answer to the same question, and to no other."""

from dataclasses import replace
from pathlib import Path

from longpoint.exchange.house_files import load_house
from longpoint.pipeline import plan_house
from longpoint.solvers.highs import HighsSolver
from longpoint.sticks.plan_sticks import plan_sticks
from tests.kept_plans import ABOUT_WHAT_IS_MADE, MOST, kept

EXAMPLE = Path(__file__).parents[2] / "examples" / "wren-house.toml"


class Asked:
    """A step that answers how often it was asked."""

    def __init__(self) -> None:
        self.times = 0

    def __call__(self, question: object, *, more: object = None) -> int:
        self.times += 1
        return self.times


def test_a_question_is_asked_once_and_another_one_anew() -> None:
    step = kept(Asked())

    assert [step("a"), step("a"), step("b"), step("a", more=1), step("a")] == [1, 1, 2, 3, 1]


def test_our_engines_are_told_apart_by_their_kind() -> None:
    step = kept(Asked())

    assert step(HighsSolver()) == step(HighsSolver()) == 1
    assert step(None) == 2


def test_what_has_no_hash_is_asked_each_time() -> None:
    step = kept(Asked())

    assert [step({}), step({})] == [1, 2]


def test_only_so_many_answers_are_kept() -> None:
    step = kept(Asked())

    for question in range(MOST + 1):
        step(question)
    assert step(MOST) == MOST + 1
    assert step(0) == MOST + 2


def test_a_plan_from_what_is_kept_is_the_plan_made_afresh() -> None:
    survey = load_house(EXAMPLE)
    first, again = plan_house(survey), plan_house(load_house(EXAMPLE))

    assert again.cut_plan.sticks is first.cut_plan.sticks
    assert replace(plan_sticks(first.pieces, first.house), findings=()) == first.cut_plan


def test_a_house_with_one_stick_less_is_planned_anew() -> None:
    survey = load_house(EXAMPLE)
    stock = (replace(survey.house.stock[0], count=1), *survey.house.stock[1:])
    other = replace(survey, house=replace(survey.house, stock=stock))

    assert plan_house(other).cut_plan != plan_house(survey).cut_plan


def test_every_folder_where_plans_are_kept_is_there() -> None:
    assert all(folder.is_dir() for folder in ABOUT_WHAT_IS_MADE)
