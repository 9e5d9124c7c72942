from dataclasses import replace

import pytest

from longpoint.forecast.budget.house_budget import house_budget, proved_saw
from longpoint.forecast.budget.records import BudgetLine, Cause, ErrorName, Standing
from longpoint.forecast.stream import Spread
from longpoint.survey.crew import WallAge
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests import house_documents


def a_house(**changes: object) -> House:
    return read_house(house_documents.house(**changes)).house


UNPROVED = {"S1": {"kerf": 2.4, "end_trim": 10}}


def test_every_way_of_being_out_has_one_line_with_its_word() -> None:
    lines = house_budget(a_house()).lines
    assert [line.name for line in lines] == list(ErrorName)
    assert all(line.u > 0.0 and line.basis and line.unit in ("mm", "deg") for line in lines)


def test_what_the_house_shares_is_saw_tape_and_mark() -> None:
    shared = {line.name for line in house_budget(a_house()).lines if line.is_shared}
    assert shared == {
        ErrorName.SAW_SCALE,
        ErrorName.SAW_FENCE,
        ErrorName.INSIDE_READING,
        ErrorName.MARK_OFFSET,
    }


def test_a_proved_saw_leaves_less_than_one_that_is_not() -> None:
    proved, unproved = house_budget(a_house()), house_budget(a_house(saws=UNPROVED))
    assert proved.u(ErrorName.SAW_SCALE) == pytest.approx(0.03)
    assert unproved.u(ErrorName.SAW_SCALE) == pytest.approx(0.10)
    assert proved_saw(unproved).u(ErrorName.SAW_FENCE) == pytest.approx(0.03)
    assert proved_saw(unproved).u(ErrorName.MARK_AND_CUT) == unproved.u(ErrorName.MARK_AND_CUT)


def test_a_proof_never_makes_a_better_known_saw_worse() -> None:
    known = house_budget(a_house()).changed(ErrorName.SAW_SCALE, u=0.01, bias=0.2)
    after = proved_saw(known).line(ErrorName.SAW_SCALE)
    assert after.u == pytest.approx(0.01)
    assert after.bias == 0.0


def test_walls_and_stop_blocks_change_what_they_change() -> None:
    house = a_house()
    crew = replace(house.crew, walls=WallAge.OLD, stop_block=True)
    plain, other = house_budget(house), house_budget(replace(house, crew=crew))
    assert other.u(ErrorName.LEAN) > plain.u(ErrorName.LEAN)
    assert other.u(ErrorName.MARK_AND_CUT) < plain.u(ErrorName.MARK_AND_CUT)
    changed = {x.name for x, y in zip(plain.lines, other.lines, strict=True) if x != y}
    assert changed == {ErrorName.LEAN, ErrorName.MARK_AND_CUT}


def test_what_finished_work_says_stands_instead_of_the_default() -> None:
    learned = BudgetLine(
        name=ErrorName.SAW_SCALE,
        cause=Cause.SAW,
        u=0.02,
        unit="deg",
        spread=Spread.NORMAL,
        is_shared=True,
        bias=0.12,
        standing=Standing.LEARNED,
        basis="nine frames",
    )
    budget = house_budget(a_house(), (learned,))
    assert budget.line(ErrorName.SAW_SCALE) is learned
    assert len(budget.lines) == len(ErrorName)
