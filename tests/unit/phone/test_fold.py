from longpoint.phone.entries import LineState
from longpoint.phone.fold import fold
from tests.phone_journals import Journal

WINDOW = {"left": "598", "top": "1178", "right": "599", "bottom": "1178"}


def begun() -> Journal:
    """Return the journal of a house with one window."""
    journal = Journal()
    journal.begin()
    journal.write("opening-added", opening="W3", room="Main", kind="window", trim="all-round")
    return journal


def test_the_walk_goes_on_at_the_first_line_that_is_unread() -> None:
    journal = begun()
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
    journal = begun()
    journal.read("top", "1187")
    journal.read("top", "1178")
    assert fold(journal.entries).document["openings"][0]["top"] == 1178
    assert [e["value_text"] for e in journal.entries if e["what"] == "reading"] == ["1187", "1178"]


def test_two_readings_that_disagree_hold_the_opening_until_a_third_decides() -> None:
    journal = begun()
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
    assert 1187 in found.document["openings"][0]["top"]


def test_undo_takes_the_last_entry_back_and_can_be_undone() -> None:
    journal = begun()
    first = journal.read("top", "1178")
    taken = journal.write("undo", of=first)
    assert "top" not in fold(journal.entries).document["openings"][0]
    journal.write("undo", of=taken)
    assert fold(journal.entries).document["openings"][0]["top"] == 1178


def test_what_can_be_taken_back_is_said_in_the_words_of_the_house() -> None:
    journal = begun()
    journal.write("setting", key=["dialect"], value="us")
    journal.write("setting", key=["defaults", "quirk"], value=5)
    undo = fold(journal.entries).undo
    assert undo is not None
    assert undo.words == "reveal changed"


def test_a_setting_is_put_where_the_house_file_has_it_and_taken_out_again() -> None:
    journal = begun()
    journal.write("setting", key=["profiles", "AR57"], value={"face": 57, "thickness": 19})
    assert fold(journal.entries).document["profiles"]["AR57"]["face"] == 57
    journal.write("setting", key=["profiles", "AR57"], value=None)
    assert fold(journal.entries).document["profiles"] == {}


def test_an_entry_of_a_newer_app_is_passed_over() -> None:
    journal = begun()
    journal.write("something-new", opening="W3")
    assert fold(journal.entries).name == "Pipit"


def test_a_figure_that_is_no_number_stays_and_loses_nothing_else() -> None:
    journal = begun()
    for line, text in {**WINDOW, "top": "12OO"}.items():
        journal.read(line, text)
    opening = fold(journal.entries).document["openings"][0]
    assert (opening["left"], opening["top"], opening["right"]) == (598, "12OO", 599)


def test_a_reading_takes_the_place_of_what_its_author_saw_and_nothing_else() -> None:
    mine = begun()
    first = mine.read("top", "1187", over=[])
    theirs = Journal("q", seen=len(mine.entries) - 1)
    theirs.read("top", "1178", over=[])
    both = [*mine.entries, *theirs.entries]
    assert fold(both).document["openings"][0]["top"] == [1187, 1178]
    assert fold(both).held[0].place == "W3"
    chosen = Journal("p", seen=10)
    line = next(each for each in fold(both).openings[0].lines if each.line == "top")
    over = [{"device": by.device, "counter": by.counter} for by in line.by]
    assert first in over
    chosen.read("top", "1178", over=over)
    assert fold([*chosen.entries, *both]).document["openings"][0]["top"] == 1178


def test_a_second_phone_that_adds_the_same_opening_adds_no_second_one() -> None:
    mine, theirs = begun(), Journal("q", seen=1)
    theirs.write("opening-added", opening="W3", room="Loft", kind="window", trim="all-round")
    assert len(fold([*theirs.entries, *mine.entries]).openings) == 1
