from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest

from longpoint.fixing.nailing import nail_house
from longpoint.fixing.supplies import nails_in
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Role
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import (
    Beside,
    Block,
    Drawing,
    Heading,
    Ink,
    Note,
    Outline,
    Paragraph,
    SheetState,
    Table,
    Together,
    Word,
)
from longpoint.sheets.cautions import nailing_cautions
from longpoint.sheets.fixing_sheet import fixing_blocks, fixing_sheets
from longpoint.sheets.fixing_text import fixing_text
from longpoint.sheets.in_tongue import in_tongue
from longpoint.sheets.nail_picture import nail_picture
from longpoint.survey.fixing import FixingSetup, Nail
from longpoint.survey.house import Dialect
from longpoint.survey.openings import Method
from longpoint.survey.readings import Plane
from tests.country import english
from tests.unit.sheets.sample import HOUSE, PLAN, SKIRTING_PIECES

ONE_NAIL = (Nail(gauge=16, length_mm=50.0),)


def telling(dialect: Dialect = Dialect.UK, **fixing: Any) -> HousePlan:  # noqa: ANN401
    house = replace(HOUSE, dialect=dialect, fixing=FixingSetup(**fixing))
    return replace(PLAN, house=house)


def flat(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        match block:
            case Together():
                yield from flat(block.blocks)
            case Beside():
                yield from flat((*block.left, *block.right))
            case _:
                yield block


def words(plan: HousePlan, way: Method | None = None) -> str:
    said = []
    for block in flat(fixing_blocks(plan, way)):
        match block:
            case Heading() | Paragraph():
                said.append(block.text)
            case Note():
                said += [block.title, block.text]
            case Table():
                said += [block.caption, *(text for _, text in (*block.groups, *block.under))]
                for row in block.rows:
                    for cell in row:
                        said += [cell] if isinstance(cell, str) else [cell.text, *cell.small]
            case _:
                pass
    return "\n".join(said)


def test_the_nails_to_load_in_the_rooms_add_up_to_all_holes() -> None:
    nailing = nail_house(PLAN.house, PLAN.pieces)
    loaded = 0
    for block in flat(fixing_blocks(PLAN)):
        if isinstance(block, Table) and block.columns[-1].title == "Nails":
            loaded += sum(int(row[-1]) for row in block.rows if isinstance(row[-1], str))
    assert loaded == sum(nails_in(nailing, each) for each in nailing.pieces) > 0


def test_a_nail_at_hand_that_does_not_do_is_flagged_by_word_and_shape() -> None:
    text = words(telling(nails=ONE_NAIL))
    assert "NOT YOURS" in text
    assert "too long" in text
    assert "too short" in text
    good = words(telling(nails=(Nail(gauge=18, length_mm=30.0), Nail(gauge=15, length_mm=57.0))))
    assert "you have it" in good
    assert "NOT YOURS" not in good


def test_where_no_nail_does_it_is_said() -> None:
    assert "NO NAIL" in words(telling(lining_mm=9.0))


def test_the_depth_against_50_mm_is_shown_where_that_rule_holds_and_nowhere_else() -> None:
    assert "less than 50 mm" in words(telling(Dialect.UK))
    assert "local code" in words(telling(Dialect.AU))
    assert "less than 50 mm" not in words(telling(Dialect.AU))
    long_nail = (Nail(gauge=15, length_mm=90.0),)
    deep = telling(Dialect.UK, stud_depth_mm=120.0, nails=long_nail)
    assert "PAST 50 mm" in words(deep)


def test_no_force_is_printed() -> None:
    text = words(telling(nails=ONE_NAIL))
    assert "A comparison, not what a nail carries" in text
    for unit in (" N ", " kg", " lbf", " kN"):
        assert unit not in text


def test_each_figure_says_what_it_rests_on() -> None:
    text = words(telling(board_mm=15.0))
    for rests in ("told in the house file", "NHBC Standards 2020", "common practice, no source"):
        assert rests in text
    assert "from memory" in words(telling())


@pytest.mark.parametrize(
    ("way", "said"),
    [
        (Method.BATCH, "tap until the joints close"),
        (Method.IN_PLACE, "held to the head"),
        (Method.BENCH, "on the bench"),
    ],
)
def test_each_way_of_fixing_has_its_order(way: Method, said: str) -> None:
    text = words(PLAN, way)
    assert said in text
    assert ("lengths were made for batch" in text) is (way is not Method.BATCH)


def test_rooms_with_two_ways_get_an_order_for_each() -> None:
    pieces = tuple(replace(p, method=Method.BENCH) if p.opening == "W1" else p for p in PLAN.pieces)
    text = words(replace(PLAN, pieces=pieces))
    assert "(batch)" in text
    assert "(bench)" in text


def test_packers_are_listed_by_opening() -> None:
    first = HOUSE.openings[0]
    plane = Plane(tl_mm=2.0, tr_mm=-1.0)
    read = replace(first, readings=replace(first.readings, plane=plane))
    house = replace(HOUSE, openings=(read, *HOUSE.openings[1:]))
    assert "top left 2" in words(replace(PLAN, house=house))
    assert "top right 1" in words(replace(PLAN, house=house))


def test_what_is_held_is_named_as_not_counted() -> None:
    assert "W3, W4" in words(PLAN)
    assert "Held back, so not counted: W3, W4." in fixing_text(PLAN)


def test_a_house_without_pieces_says_so() -> None:
    empty = replace(PLAN, pieces=())
    assert "no piece to fix" in words(empty)
    assert "no piece to fix" in fixing_text(empty)


def test_the_terminal_gives_one_line_a_room_and_what_is_wrong_above() -> None:
    text = fixing_text(telling(nails=ONE_NAIL))
    assert "too long" in text.splitlines()[0]
    assert any(line.startswith("Kitchen: ") for line in text.splitlines())


def test_a_stale_sheet_is_stale() -> None:
    (sheet,) = fixing_sheets(PLAN, SheetState.STALE)
    assert sheet.state is SheetState.STALE
    assert sheet.cautions


def test_old_paint_and_boards_are_warned_of_by_the_age_of_the_house() -> None:
    unknown, old, young = (
        " ".join(nailing_cautions(telling(built=built).house)) for built in (None, 1931, 2015)
    )
    for text in (unknown, old):
        assert "lead" in text
        assert "asbestos" in text
    assert "lead" not in young
    assert "asbestos" not in young
    for text in (unknown, old, young):
        for word in ("cables and pipes", "sequential trigger", "Dust", "come first"):
            assert word in text


@pytest.mark.parametrize("dialect", [Dialect.UK, Dialect.US])
def test_the_section_is_drawn_in_true_proportion(dialect: Dialect) -> None:
    plan = telling(dialect)
    nailing = nail_house(plan.house, plan.pieces)
    for section in nailing.sections:
        drawing = nail_picture(section, nailing.wall, Units.MM)
        (trim,) = (m for m in drawing.marks if isinstance(m, Outline) and m.ink is Ink.PIECE)
        xs, ys = [x for x, _ in trim.points], [y for _, y in trim.points]
        sides = sorted((max(xs) - min(xs), max(ys) - min(ys)))
        assert sides[1] / sides[0] == pytest.approx(section.width_mm / section.thickness_mm)
        scale = sides[1] / section.width_mm
        nails = [m for m in drawing.marks if isinstance(m, Outline) and m.ink is Ink.HOOK]
        for line, nail in zip(section.lines, nails, strict=True):
            spans = [
                max(p[i] for p in nail.points) - min(p[i] for p in nail.points) for i in (0, 1)
            ]
            assert line.nail is not None
            assert max(spans) == pytest.approx(line.nail.length_mm * scale)
        assert all(
            0 <= x <= drawing.width_mm and 0 <= y <= drawing.height_mm for x, y in points(drawing)
        )


def points(drawing: Drawing) -> Iterator[tuple[float, float]]:
    for mark in drawing.marks:
        if isinstance(mark, Outline):
            yield from mark.points
        else:
            yield (mark.x_mm, mark.y_mm)


def test_a_line_without_a_nail_is_crossed_out() -> None:
    plan = telling(lining_mm=9.0)
    nailing = nail_house(plan.house, plan.pieces)
    drawing = nail_picture(nailing.sections[0], nailing.wall, Units.MM)
    assert sum(isinstance(m, Outline) and m.ink is Ink.CUT for m in drawing.marks) == 2


@pytest.mark.parametrize(
    ("dialect", "said", "others"),
    [(Dialect.US, "Baseboard", "Skirting"), (Dialect.UK, "Skirting", "Baseboard")],
)
def test_the_order_of_work_is_in_the_words_of_the_country(
    dialect: Dialect, said: str, others: str
) -> None:
    steps = [
        cell.text
        for block in in_tongue(tuple(flat(fixing_blocks(telling(dialect)))), english(dialect))
        if isinstance(block, Table)
        for row in block.rows
        for cell in row
        if not isinstance(cell, str)
    ]
    assert any(step.startswith(said) for step in steps)
    assert not any(step.startswith(others) for step in steps)


def test_what_cornices_and_linings_rest_on_is_said_once() -> None:
    crown = replace(SKIRTING_PIECES[0], mark="CN1-N", role=Role.CORNICE, run=None, trim="CN1")
    plan = replace(PLAN, pieces=(*PLAN.pieces, crown))
    said = [b.text for b in flat(fixing_blocks(plan)) if isinstance(b, Paragraph)]
    assert sum("A cornice is nailed square" in text for text in said) == 1
    assert not any("A lining is nailed" in text for text in said)


def test_the_picture_of_an_inch_house_is_described_in_inches() -> None:
    nailing = nail_house(PLAN.house, PLAN.pieces)
    for section in nailing.sections:
        drawing = nail_picture(section, nailing.wall, Units.INCH)
        words = [mark.text for mark in drawing.marks if isinstance(mark, Word)]
        assert " in from the edge" in drawing.described  # "7/16 in from the edge"
        assert "mm" not in " ".join([drawing.described, *words])
        assert "50 deep" not in words, "the rule's 50 mm are 1 31/32"
