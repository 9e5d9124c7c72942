from dataclasses import replace

from longpoint.house_plan import HousePlan
from longpoint.sheets.blocks import (
    Beside,
    Block,
    Drawing,
    Heading,
    Note,
    Paragraph,
    Table,
    Together,
    Word,
)
from longpoint.sheets.opening_sheet import opening_blocks
from longpoint.sticks.plan import CutPlan
from tests.unit.sheets.outlook_sample import ADVICE
from tests.unit.sheets.sample import FINDINGS, OPENINGS, PLAN, fitted


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


def held_only() -> HousePlan:
    marks = frozenset(opening.mark for opening in OPENINGS)
    return replace(PLAN, pieces=(), cut_plan=CutPlan(), held=marks | {"S1", "W4"})


def test_the_openings_stand_in_the_order_of_the_house() -> None:
    titles = [b.text for b in flat(opening_blocks(PLAN)) if isinstance(b, Heading) and b.level == 2]
    assert [title.split(" ")[0] for title in titles] == ["W1", "W2", "W3", "D1", "W4"]


def test_a_held_opening_has_a_hold_mark_and_no_table_of_pieces() -> None:
    blocks = flat(opening_blocks(held_only()))
    words = [
        mark.text
        for block in blocks
        if isinstance(block, Drawing)
        for mark in block.marks
        if isinstance(mark, Word)
    ]
    assert words == ["HOLD"] * 5
    titles = {c.title for b in blocks if isinstance(b, Table) for c in b.columns}
    assert "Hook reading" not in titles
    assert "Read again" in titles


def test_the_question_is_asked_for_every_opening_that_is_drawn() -> None:
    asked = [b for b in flat(opening_blocks(PLAN)) if isinstance(b, Heading) and b.level == 3]
    assert [heading.text for heading in asked] == ["Does it lean this way?"] * 3


def test_what_was_assumed_is_said() -> None:
    shapes = replace(
        PLAN.shapes, openings=(replace(fitted("W2"), assumed=("square", "right as long as left")),)
    )
    only = replace(PLAN, shapes=shapes, house=replace(PLAN.house, openings=OPENINGS[1:2]))
    texts = [b.text for b in flat(opening_blocks(only)) if isinstance(b, Paragraph)]
    assert "Assumed, not read: square, right as long as left." in texts


def test_findings_stand_with_their_opening() -> None:
    notes = [b.title for b in flat(opening_blocks(PLAN)) if isinstance(b, Note)]
    assert notes == ["LOOK · W1", "STOP · W3 · misclosure", "STOP · W4 · unknown-key"]


def test_every_opening_with_lengths_says_its_verdict_and_why_under_its_title() -> None:
    blocks = flat(opening_blocks(PLAN))
    for mark, lead in (("W1", "Read first."), ("W2", "Cut as planned.")):
        at = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.text[:2] == mark)
        said = blocks[at + 1]
        assert isinstance(said, Paragraph)
        assert (said.lead, said.picture is not None) == (lead, True)
        assert said.text == next(a.why for a in ADVICE if a.mark == mark)


def test_a_held_opening_and_a_plan_without_forecast_say_no_verdict() -> None:
    for plan in (held_only(), replace(PLAN, outlook=None)):
        assert not [b for b in flat(opening_blocks(plan)) if isinstance(b, Paragraph) and b.lead]


def test_notes_stay_with_their_opening_unless_they_would_fill_its_page() -> None:
    def kept(count: int) -> int:
        notes = tuple(replace(FINDINGS[1], read=f"{n} " + "x" * 300) for n in range(count))
        blocks = opening_blocks(replace(PLAN, findings=notes))
        assert sum(isinstance(b, Note) for b in flat(blocks)) == count
        return sum(isinstance(b, Note) for b in flat(blocks[:1]))

    assert (kept(1), kept(2)) == (1, 2)
    assert kept(20) < 4


def test_a_house_without_openings_says_so() -> None:
    bare = replace(PLAN, house=replace(PLAN.house, openings=(), held=()))
    assert opening_blocks(bare) == (Paragraph(text="There is no opening in this house."),)


def test_an_opening_without_a_shape_says_there_is_nothing_to_cut() -> None:
    shapeless = replace(PLAN, shapes=replace(PLAN.shapes, openings=()), pieces=())
    texts = [b.text for b in flat(opening_blocks(shapeless)) if isinstance(b, Paragraph)]
    assert texts == ["No shape could be fitted to it, so there is nothing to cut."] * 3
