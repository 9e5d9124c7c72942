from itertools import count
from typing import Any

from longpoint.phone.entries import LineState
from longpoint.phone.fold import decided, fold

WINDOW = {"left": "598", "top": "1178", "right": "599", "bottom": "1178"}


class Journal:
    """A phone's journal, written as the page writes it."""

    def __init__(self) -> None:
        self.entries: list[dict[str, Any]] = []
        self.counter = count(1)
        self.write("house-made", name="Pipit", units="mm", dialect="nz")
        self.write("opening-added", opening="W3", room="Main", kind="window", trim="all-round")

    def write(self, what: str, **said: object) -> dict[str, Any]:
        entry = {"device": "p", "counter": next(self.counter), "at": "", "house": "h"}
        self.entries.append(entry | {"what": what} | said)
        return {"device": "p", "counter": entry["counter"]}

    def read(self, line: str, text: str, *, again: bool = False) -> dict[str, Any]:
        said = {"opening": "W3", "line": line, "value_text": text, "unit": "mm"}
        return self.write("reading", **said, again=again)


def test_the_walk_goes_on_at_the_first_line_that_is_unread() -> None:
    journal = Journal()
    found = fold(journal.entries)
    assert found.openings[0].state is LineState.UNREAD
    assert found.next is not None
    assert (found.next.opening, found.next.line) == ("W3", "left")
    for line, text in WINDOW.items():
        journal.read(line, text)
    found = fold(journal.entries)
    assert found.next is not None
    assert found.next.line == "rising"
    assert (found.read, found.asked, found.openings[0].left) == (4, 6, 2)


def test_a_re_reading_supersedes_and_both_stay_in_the_journal() -> None:
    journal = Journal()
    journal.read("top", "1187")
    journal.read("top", "1178")
    assert fold(journal.entries).document["openings"][0]["top"] == 1178
    assert [e["value_text"] for e in journal.entries if e["what"] == "reading"] == ["1187", "1178"]


def test_two_readings_that_disagree_hold_the_opening_until_a_third_decides() -> None:
    journal = Journal()
    for line, text in {**WINDOW, "rising": "1322", "falling": "1322"}.items():
        journal.read(line, text)
    assert fold(journal.entries).openings[0].state is LineState.READ
    journal.read("top", "1187", again=True)
    found = fold(journal.entries)
    assert found.openings[0].state is LineState.HELD
    assert [said.place for said in found.held] == ["W3"]
    journal.read("top", "1179", again=True)
    found = fold(journal.entries)
    assert found.openings[0].state is LineState.READ
    assert found.held == ()
    assert decided(found.document)["openings"][0]["top"] == [1178, 1179]


def test_undo_takes_the_last_entry_back_and_can_be_undone() -> None:
    journal = Journal()
    first = journal.read("top", "1178")
    taken = journal.write("undo", of=first)
    assert "top" not in fold(journal.entries).document["openings"][0]
    journal.write("undo", of=taken)
    assert fold(journal.entries).document["openings"][0]["top"] == 1178


def test_a_setting_is_put_where_the_house_file_has_it_and_taken_out_again() -> None:
    journal = Journal()
    journal.write("setting", key=["profiles", "AR57"], value={"face": 57, "thickness": 19})
    assert fold(journal.entries).document["profiles"]["AR57"]["face"] == 57
    journal.write("setting", key=["profiles", "AR57"], value=None)
    assert fold(journal.entries).document["profiles"] == {}


def test_an_entry_of_a_newer_app_is_passed_over() -> None:
    journal = Journal()
    journal.write("something-new", opening="W3")
    assert fold(journal.entries).name == "Pipit"


def test_a_figure_that_is_no_number_stays_and_loses_nothing_else() -> None:
    journal = Journal()
    for line, text in {**WINDOW, "top": "12OO"}.items():
        journal.read(line, text)
    opening = fold(journal.entries).document["openings"][0]
    assert (opening["left"], opening["top"], opening["right"]) == (598, "12OO", 599)
