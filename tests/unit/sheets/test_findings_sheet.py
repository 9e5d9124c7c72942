from dataclasses import replace

from longpoint.errors import Severity
from longpoint.pieces.wall_findings import run_held
from longpoint.sheets.blocks import Cell, Heading, Note, Table
from longpoint.sheets.finding_note import accept_line, finding_note
from longpoint.sheets.findings_sheet import findings_blocks
from longpoint.survey.rooms import Room, Wall
from tests.unit.sheets.sample import HOUSE, PLAN


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


def test_of_a_held_wall_and_its_run_it_is_said_what_they_are() -> None:
    wall = Wall(mark="N", length_mm=4200.0, skirting=True)
    house = replace(HOUSE, rooms=(Room(name="Hall", walls=(wall,), tape="T1"),))
    follows = run_held("Hall-N", "wall N of Hall is held")
    plan = replace(
        PLAN, house=house, held=PLAN.held | {"Hall N", "Hall-N"}, findings=(*PLAN.findings, follows)
    )
    blocks = findings_blocks(plan)
    table = blocks[1]
    assert isinstance(table, Table)
    cells = {row[0].text: row[1] for row in table.rows if isinstance(row[0], Cell)}
    assert cells["Hall N"] == Cell(text="wall", small=("Hall",))
    assert cells["Hall-N"] == Cell(text="run")
    (note,) = (b for b in blocks if isinstance(b, Note) and b.title.startswith("STOP · Hall-N"))
    assert not note.ask, "it follows from its wall: there is nothing to read"


def test_a_house_without_a_hold_says_so() -> None:
    clean = replace(PLAN, held=frozenset(), findings=())
    (only,) = findings_blocks(clean)
    assert isinstance(only, Note)
    assert only.title == "Nothing is held back"


def test_the_reason_of_a_hold_is_told_in_whole_sentences() -> None:
    table = findings_blocks(PLAN)[1]
    assert isinstance(table, Table)
    stop = PLAN.findings[0]
    assert table.rows[0][2] == f"{stop.read} {stop.wrong}"


def test_a_stop_names_its_code_and_how_to_accept_it() -> None:
    note = finding_note(PLAN.findings[0], HOUSE)
    assert note.title == "STOP · W3 · misclosure"
    assert note.small == 'If it is so: accept = ["misclosure"] in W3'


def test_what_cannot_be_accepted_or_need_not_be_says_nothing_of_it() -> None:
    _, warning, note, unreadable = PLAN.findings
    assert finding_note(unreadable, HOUSE).title == "STOP · W4 · unknown-key"
    assert [accept_line(f, HOUSE) for f in (warning, note, unreadable)] == ["", "", ""]


def test_a_stop_at_a_wall_is_accepted_in_its_room() -> None:
    room = Room(name="Loft", tape="T1", walls=(Wall(mark="W", length_mm=4600.0),))
    house = replace(HOUSE, rooms=(room,))
    stop = replace(PLAN.findings[0], code="wall-sum", place="Loft W")
    assert accept_line(stop, house) == 'If it is so: accept = ["wall-sum"] in room Loft'
    elsewhere = replace(stop, place="Loft X")
    assert accept_line(elsewhere, house) == ""
