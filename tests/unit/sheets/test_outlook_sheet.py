import re
from dataclasses import replace

import pytest

from longpoint.forecast.budget.records import Standing
from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Beside, Block, Cell, Heading, Paragraph, Table, Together
from longpoint.sheets.outlook_sheet import outlook_blocks
from longpoint.sheets.outlook_words import MODEL_LINE
from longpoint.survey.crew import Crew
from longpoint.survey.house import Dialect
from tests.unit.sheets.sample import FORECAST, HOUSE, OPENINGS, OUTLOOK, PLAN, unproved, with_house


def flat(blocks: tuple[Block, ...]) -> list[Block]:
    found: list[Block] = []
    for block in blocks:
        match block:
            case Together():
                found += flat(block.blocks)
            case Beside():
                found += flat((*block.left, *block.right))
            case _:
                found.append(block)
    return found


def texts(plan: HousePlan) -> list[str]:
    """Everything that is printed on the sheet, cell by cell."""
    said: list[str] = []
    for block in flat(outlook_blocks(plan)):
        match block:
            case Heading() | Paragraph():
                said.append(block.text)
            case Table():
                said += [column.title for column in block.columns]
                said += [text for _, text in block.under]
                for cell in (cell for row in block.rows for cell in row):
                    said += [cell.text, *cell.small] if isinstance(cell, Cell) else [cell]
            case _:
                pass
    return [text.replace("\N{NO-BREAK SPACE}", " ") for text in said]


def table(plan: HousePlan, title: str) -> Table:
    """The first table that has a column of this title."""
    return next(
        block
        for block in flat(outlook_blocks(plan))
        if isinstance(block, Table) and title in [column.title for column in block.columns]
    )


def rows(found: Table) -> list[list[str]]:
    return [
        [(c.text if isinstance(c, Cell) else c).replace("\N{NO-BREAK SPACE}", " ") for c in row]
        for row in found.rows
    ]


def test_the_sheet_opens_with_how_many_can_be_cut() -> None:
    first = outlook_blocks(PLAN)[0]
    assert isinstance(first, Heading)
    assert first.text == "1 of 5 openings can be cut as planned."


def test_the_house_stands_in_one_row_and_in_two_while_the_saw_is_not_proved() -> None:
    title = "All fit at the first try"
    assert rows(table(PLAN, title)) == [["as it stands", "1", "62", "0.4", "1"]]
    assert rows(table(unproved(), title)) == [
        ["as it stands", "1", "11", "1.8", "3"],
        ["once the saw is proved", "3", "99", "0.1", "0"],
    ]


def test_few_misfits_are_told_as_so_many_or_less() -> None:
    cell = table(unproved(), "All fit at the first try").rows[1][3]
    assert isinstance(cell, Cell)
    assert (cell.text, cell.behind) == ("0.1", "or less")


def test_the_sheet_says_that_its_figures_are_a_models() -> None:
    assert MODEL_LINE in texts(PLAN)
    assert "not a promise" in MODEL_LINE


@pytest.mark.parametrize("plan", [PLAN, unproved()], ids=["proved", "not proved"])
def test_no_chance_is_over_99_nor_told_to_more_than_two_figures(plan: HousePlan) -> None:
    for text in texts(plan):
        assert not re.search(r"\b\d{3,} in 100|\d\.\d+ in 100", text), text
        assert not re.search(r"\d{3,} %|\d\.\d+ %", text), text


def test_openings_stand_in_house_order_each_with_word_and_shape() -> None:
    found = table(PLAN, "Fits, of 100")
    assert [row[0] for row in rows(found)] == ["W1", "W2", "W3", "D1", "W4"]
    for row in found.rows:
        what = row[1]
        assert isinstance(what, Cell)
        assert what.text
        assert what.picture is not None


def test_a_row_tells_fit_joints_margin_and_faces_apart() -> None:
    found = rows(table(PLAN, "Fits, of 100"))
    assert found[0][2:] == ["87", "89", "88", "98", "bow of the reveal, 55 %"]
    assert found[2][2:] == ["-", "-", "-", "-", "its readings"]


def test_the_reason_stands_under_what_is_not_simply_cut() -> None:
    found = table(PLAN, "Fits, of 100")
    assert [index for index, _ in found.under] == [0, 3]
    assert found.under_is_said


def test_the_worse_of_two_faces_is_shown_and_named() -> None:
    b = replace(FORECAST.faces[2], face="b")
    a = replace(b, face="a", chances=replace(b.chances, fits=0.93))
    two = replace(OUTLOOK, forecast=replace(FORECAST, faces=(*FORECAST.faces[:2], a, b)))
    row = table(replace(PLAN, outlook=two), "Fits, of 100").rows[3]
    name, fits = row[0], row[2]
    assert isinstance(name, Cell)
    assert isinstance(fits, Cell)
    small = tuple(line.replace("\N{NO-BREAK SPACE}", " ") for line in name.small)
    assert (small, fits.text) == (("Hall, face b",), "71")


def test_the_crews_word_for_the_quirk_heads_its_column() -> None:
    assert "Margin" in texts(PLAN)
    assert "Quirk" in texts(with_house(dialect=Dialect.NZ))


def test_all_that_was_supposed_is_listed_with_its_standing() -> None:
    found = [t for t in flat(outlook_blocks(PLAN)) if isinstance(t, Table)][-2:]
    listed = [row for t in found for row in t.rows]
    assert len(listed) == len(FORECAST.budget.lines)
    learned = replace(FORECAST.budget.lines[0], standing=Standing.LEARNED)
    budget = FORECAST.budget.with_line(learned)
    changed = replace(OUTLOOK, forecast=replace(FORECAST, budget=budget))
    assert "learned from your work" in texts(replace(PLAN, outlook=changed))


def test_the_threshold_is_shown_with_the_minutes_it_comes_from() -> None:
    said = texts(with_house(crew=Crew(refit_min=8.0, spoiled_min=4.0, batch_saves_min=3.0)))[-1]
    assert "from 75 in 100 up (your minutes: 12 a misfit, 3 saved an opening)" in said
    assert "our minutes" in texts(with_house(crew=Crew(assumed=True)))[-1]


def test_a_house_that_is_all_held_has_no_chances() -> None:
    marks = frozenset(opening.mark for opening in OPENINGS) | PLAN.held
    none = replace(OUTLOOK, forecast=replace(FORECAST, faces=()), advice=())
    held = replace(PLAN, held=marks, outlook=none)
    said = texts(held)
    assert said[0] == "0 of 5 openings can be cut as planned."
    assert not any("in 100" in text for text in said[:-1])


def test_without_forecast_or_opening_the_sheet_says_so() -> None:
    (none,) = texts(replace(PLAN, outlook=None))
    assert none.startswith("No forecast stands here")
    bare = replace(PLAN, house=replace(HOUSE, openings=(), held=()))
    assert texts(bare) == ["There is no opening in this house, so nothing to forecast."]
