from dataclasses import replace

from longpoint.errors import Severity
from longpoint.sheets.blocks import Block, Cell, Note, Paragraph, Table
from longpoint.sheets.cut_lines import cut_lines
from longpoint.sheets.cut_sheet import cut_blocks, fixing_line
from longpoint.sticks.order.saw_order import saw_steps
from longpoint.sticks.plan import CutPlan
from longpoint.survey.instruments import Saw
from longpoint.survey.openings import Method
from tests.unit.sheets.sample import PIECES, PLAN, with_house


def table(blocks: tuple[Block, ...]) -> Table:
    (found,) = (b for b in blocks if isinstance(b, Table) and not b.is_close)
    return found


def words(cell: str | Cell) -> str:
    return cell if isinstance(cell, str) else " ".join((cell.text, cell.behind, *cell.small))


def test_every_piece_has_one_line() -> None:
    rows = table(cut_blocks(PLAN)).rows
    assert sorted(words(row[1]).split(" ")[0] for row in rows) == sorted(p.mark for p in PIECES)


def test_lines_are_numbered_in_the_order_of_sawing() -> None:
    assert [line.number for line in cut_lines(PLAN)] == list(range(1, len(PIECES) + 1))


def test_pieces_without_a_stick_come_last_and_say_so() -> None:
    few = replace(PLAN, cut_plan=CutPlan(sticks=PLAN.cut_plan.sticks[:1]))
    lines = cut_lines(few)
    without = [line for line in lines if line.stick is None]
    assert len(lines) == len(PIECES)
    assert lines[-len(without) :] == tuple(without)
    assert any("No stick" in text for _, text in table(cut_blocks(few)).groups)


def test_a_saw_that_is_not_proved_is_called_so_in_words() -> None:
    blocks = cut_blocks(with_house(saw=Saw(name="S2")))
    (note,) = (b for b in blocks if isinstance(b, Note) and b.severity is Severity.WARNING)
    assert "NOT PROVED" in note.title
    assert note.ask


def test_a_proved_saw_gets_dial_figures() -> None:
    rows = table(cut_blocks(PLAN)).rows
    assert any("dial" in words(cell) for row in rows for cell in row)
    bare = table(cut_blocks(with_house(saw=Saw(name="S2")))).rows
    assert not any("dial" in words(cell) for row in bare for cell in row)


def test_a_piece_too_short_to_hold_is_flagged() -> None:
    rows = table(cut_blocks(PLAN)).rows
    flagged = [words(row[1]).split(" ")[0] for row in rows if "SHORT" in words(row[1])]
    assert flagged == ["S1-return"]


def test_the_way_of_fixing_is_named_once_or_at_each_piece() -> None:
    assert fixing_line(PIECES) == "Way of fixing (batch): all cut first, then fixed"
    mixed = (replace(PIECES[0], method=Method.BENCH), *PIECES[1:])
    assert fixing_line(mixed) == "Way of fixing: named at each piece"
    rows = table(cut_blocks(replace(PLAN, pieces=mixed))).rows
    named = [words(row[1]) for row in rows if "fixed: " in words(row[1])]
    assert len(named) == sum(1 for piece in mixed if piece.method)


def test_nothing_to_cut_is_said() -> None:
    empty = replace(PLAN, pieces=(), cut_plan=CutPlan())
    texts = [block.text for block in cut_blocks(empty) if isinstance(block, Paragraph)]
    assert "There is nothing to cut." in texts


def test_the_head_of_the_list_counts_ends_at_45_square_and_set_by_hand() -> None:
    steps = saw_steps(PLAN.cut_plan, PIECES, PLAN.house.saw)
    figures = [s for step in steps for s in (step.left, step.right)]
    square = sum(s.swing_deg == s.tilt_deg == 0 for s in figures)
    at_45 = sum(sorted((s.swing_deg, s.tilt_deg)) == [0, 45.0] for s in figures)
    odd = 2 * len(PIECES) - square - at_45
    assert odd
    assert square
    assert table(cut_blocks(PLAN)).caption == (
        f"{len(PIECES)} pieces from 5 sticks; {at_45} ends at 45, by the dial figure, "
        f"{square} square, {odd} at angles set by hand."
    )


def test_a_leg_says_where_its_partner_is_when_that_comes_off_another_stick() -> None:
    rows = {words(row[1]).split(" ")[0]: row for row in table(cut_blocks(PLAN)).rows}
    number = words(rows["W2-sill"][0]).strip()
    assert f"pair: no. {number}" in words(rows["W2-head"][1])
    assert "pair:" not in words(rows["W1-left-leg"][1])
    assert "pair:" not in words(rows["D1-head"][1])
