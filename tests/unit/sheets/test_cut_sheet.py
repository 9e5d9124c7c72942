from dataclasses import replace

from longpoint.errors import Severity
from longpoint.sheets.blocks import Block, Cell, Note, Paragraph, Table
from longpoint.sheets.cut_sheet import cut_blocks, cut_lines, fixing_line
from longpoint.sticks.plan import CutPlan
from longpoint.survey.instruments import Saw
from longpoint.survey.openings import Method
from tests.unit.sheets.sample import PIECES, PLAN, with_house


def table(blocks: tuple[Block, ...]) -> Table:
    (found,) = (block for block in blocks if isinstance(block, Table))
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
    assert fixing_line(PIECES) == "Way of fixing: batch: all cut first, then fixed"
    mixed = (replace(PIECES[0], method=Method.BENCH), *PIECES[1:])
    assert fixing_line(mixed) == "Way of fixing: named at each piece"
    rows = table(cut_blocks(replace(PLAN, pieces=mixed))).rows
    named = [words(row[1]) for row in rows if "fixed: " in words(row[1])]
    assert len(named) == sum(1 for piece in mixed if piece.method)


def test_nothing_to_cut_is_said() -> None:
    empty = replace(PLAN, pieces=(), cut_plan=CutPlan())
    texts = [block.text for block in cut_blocks(empty) if isinstance(block, Paragraph)]
    assert "There is nothing to cut." in texts
