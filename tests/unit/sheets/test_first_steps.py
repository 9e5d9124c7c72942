from dataclasses import replace

import pytest

from longpoint.forecast.records import Step
from longpoint.forecast.saw_proof import saw_proof
from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import Beside, Blank, Block, Cell, Heading, Paragraph, Table, Together
from longpoint.sheets.first_steps import first_steps
from tests.unit.sheets.outlook_sample import ADVICE, worth
from tests.unit.sheets.sample import OUTLOOK, PLAN, unproved


def told(plan: HousePlan) -> tuple[Block, ...]:
    assert plan.outlook is not None
    return first_steps(plan, plan.outlook)


def tables(blocks: tuple[Block, ...]) -> dict[str, Table]:
    return {block.columns[1].title: block for block in blocks if isinstance(block, Table)}


def proof(plan: HousePlan) -> tuple[str, Table] | None:
    """The steps of the saw proof in one text, and its table of gaps."""
    for block in told(plan):
        if isinstance(block, Together):
            heading, beside = block.blocks
            assert isinstance(heading, Heading)
            assert isinstance(beside, Beside)
            (gaps,) = beside.right
            assert isinstance(gaps, Table)
            said = " ".join(part.text for part in beside.left if isinstance(part, Paragraph))
            return said, gaps
    return None


def readings(plan: HousePlan) -> list[tuple[str, ...]]:
    table = next((t for t in tables(told(plan)).values() if t.columns[0].title == "Opening"), None)
    rows = table.rows if table else ()
    return [tuple(c.text if isinstance(c, Cell) else c for c in row[:5]) for row in rows]


def test_the_saw_comes_first_and_the_batch_last() -> None:
    table = tables(told(unproved()))["Openings"]
    words = [cell.text for row in table.rows if isinstance(cell := row[0], Cell)]
    assert words == ["prove the saw first", "read first", "held", "cut as planned"]
    assert [row[2] for row in table.rows] == ["D1", "W1", "W3, W4", "W2"]


def test_every_opening_is_counted_once() -> None:
    for plan in (PLAN, unproved()):
        rows = tables(told(plan))["Openings"].rows
        assert sum(int(cell.text) for row in rows if isinstance(cell := row[1], Cell)) == 5


def test_a_proved_saw_is_not_to_be_proved() -> None:
    assert proof(PLAN) is None


def test_a_saw_whose_proof_brings_nothing_is_not_to_be_proved() -> None:
    plan = unproved()
    assert plan.outlook is not None
    no_gain = replace(plan.outlook, advice=OUTLOOK.advice, if_proved=replace(plan.outlook.forecast))
    assert proof(replace(plan, outlook=no_gain)) is None


def test_a_saw_is_to_be_proved_for_the_house_even_when_no_opening_asks() -> None:
    plan = unproved()
    assert plan.outlook is not None
    assert proof(replace(plan, outlook=replace(plan.outlook, advice=OUTLOOK.advice))) is not None


def test_the_proof_leaves_a_line_for_each_of_its_eight_gaps() -> None:
    found = proof(unproved())
    assert found is not None
    blanks = [c for row in found[1].rows for c in row if isinstance(c, Cell)]
    assert [cell.blank for cell in blanks] == [Blank.LINE] * 8


def test_the_limit_of_the_proof_is_that_of_its_gaps() -> None:
    found = proof(unproved())
    assert found is not None
    limit_deg = 2.0 * saw_proof([(0.0, 0.0)] * 4, 57.0).u_deg
    assert f"Over {limit_deg:.2f} either way" in found[0]


@pytest.mark.parametrize("width_mm", [57.0, 70.0, 95.0])
def test_the_sum_by_hand_agrees_with_the_proof_to_a_fiftieth(width_mm: float) -> None:
    """Heels less toes over a fifth of the width, against the exact division."""
    gaps_mm = [(0.4, 0.0), (0.3, 0.1), (0.5, 0.0), (0.2, 0.0)]
    by_hand_deg = sum(heel - toe for heel, toe in gaps_mm) / (width_mm / 5.0)
    assert by_hand_deg == pytest.approx(saw_proof(gaps_mm, width_mm).steep_deg, rel=0.02)


def test_a_reading_stands_with_its_minutes_and_what_it_brings() -> None:
    row = ("W1", "lay a straightedge along the sides", "1.5", "87 in 100", "93 in 100")
    assert row in readings(PLAN)


def test_the_reading_that_saves_most_for_its_minutes_comes_first() -> None:
    quick = replace(ADVICE[0], mark="D1", steps=(worth(Step.REPEAT, 0.5, 0.85, 0.94),))
    both = replace(PLAN, outlook=replace(OUTLOOK, advice=(ADVICE[0], quick)))
    assert [row[0] for row in readings(both)] == ["D1", "W1"]


def test_a_reading_that_does_not_make_it_safe_is_not_asked_for() -> None:
    weak = replace(
        ADVICE[0],
        steps=(worth(Step.REPEAT, 0.5, 0.6, 0.8), worth(Step.DIAGONALS, 1.0, 0.6, 0.95)),
    )
    only = replace(PLAN, outlook=replace(OUTLOOK, advice=(weak,)))
    assert [row[1] for row in readings(only)] == ["read both diagonals"]


def test_another_way_to_set_the_saw_is_named_when_it_makes_it_safe_and_stands_last() -> None:
    way = worth(Step.LEAVE_AT_STOP, 0.0, 0.713, 0.946)
    instead = replace(ADVICE[3], steps=(way,))
    besides = replace(ADVICE[0], steps=(way, *ADVICE[0].steps))
    asked = readings(replace(PLAN, outlook=replace(OUTLOOK, advice=(instead, besides))))
    assert [row[:2] for row in asked] == [
        ("W1", "lay a straightedge along the sides"),
        ("D1", "leave the saw at its 45 stop"),
        ("W1", "or leave the saw at its 45 stop"),
    ]


def test_what_does_not_make_it_safe_is_not_listed() -> None:
    assert [row[0] for row in readings(PLAN)] == ["W1"]


def test_the_proof_of_the_saw_is_no_reading() -> None:
    asked = readings(unproved())
    assert all("prove the saw" not in row[1] for row in asked)
    assert [row[0] for row in asked] == ["W1"]


def test_a_house_with_nothing_written_has_nothing_to_do_first() -> None:
    empty = replace(
        PLAN,
        house=replace(PLAN.house, openings=(), held=()),
        outlook=replace(OUTLOOK, advice=()),
        held=frozenset(),
    )
    assert told(empty) == ()
