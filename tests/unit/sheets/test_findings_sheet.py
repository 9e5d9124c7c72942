from dataclasses import replace

from longpoint.errors import Severity
from longpoint.sheets.blocks import Cell, Heading, Note, Table
from longpoint.sheets.findings_sheet import findings_blocks
from tests.unit.sheets.sample import PLAN


def test_what_stops_a_place_comes_first_and_notes_last() -> None:
    notes = [block for block in findings_blocks(PLAN) if isinstance(block, Note)]
    order = [note.severity for note in notes]
    rank = {Severity.STOP: 0, Severity.WARNING: 1, Severity.NOTE: 2}
    assert order == sorted(order, key=rank.__getitem__)
    assert len(notes) == len(PLAN.findings)


def test_all_three_sentences_are_printed() -> None:
    text = " ".join(block.text for block in findings_blocks(PLAN) if isinstance(block, Note))
    for finding in PLAN.findings:
        assert f"{finding.read} {finding.wrong} {finding.do}" in text


def test_a_stop_leaves_room_for_the_new_reading() -> None:
    for block in findings_blocks(PLAN):
        if isinstance(block, Note) and block.severity is Severity.STOP:
            assert block.ask == "New reading"


def test_all_held_places_are_listed_at_the_top_in_the_order_of_the_house() -> None:
    heading, table = findings_blocks(PLAN)[:2]
    assert isinstance(heading, Heading)
    assert heading.text == "Held back: no length is given (2)"
    assert isinstance(table, Table)
    marks = [row[0].text for row in table.rows if isinstance(row[0], Cell)]
    assert marks == ["W3", "W4"]


def test_a_held_place_that_the_house_does_not_list_is_still_shown() -> None:
    table = findings_blocks(replace(PLAN, held=PLAN.held | {"Hall N"}))[1]
    assert isinstance(table, Table)
    assert [row[0].text for row in table.rows if isinstance(row[0], Cell)][-1] == "Hall N"


def test_a_house_without_a_hold_says_so() -> None:
    clean = replace(PLAN, held=frozenset(), findings=())
    (only,) = findings_blocks(clean)
    assert isinstance(only, Note)
    assert only.title == "Nothing is held back"
