"""What phones shared is the house on the laptop, whoever wrote what into it."""

import csv
import io
from html.parser import HTMLParser
from pathlib import Path

import openpyxl
import pytest

from longpoint.errors import SurveyError
from longpoint.exchange.order_files import order_csv, order_xlsx
from longpoint.journal import Entry, Key, seen
from longpoint.journal.entry import key_of
from longpoint.phone import Ports
from longpoint.phone.entries import LineState
from longpoint.phone.fold import fold
from longpoint.phone.messages import Fold
from longpoint.phone.planned import planned, surveyed
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.plain_text import sheet_text
from longpoint.sticks.order_lines import order_lines
from longpoint.store.sqlite_store import open_to_read
from tests.crew_server import Laptop, Phone
from tests.phone_journals import Journal
from tests.saw_states import after_cutting, as_text, begun, from_text

PIPIT = Path(__file__).parents[3] / "scenarios" / "pipit.toml"
SCRIPT = "<script>alert(1)</script>"
FORMULA = '=HYPERLINK("//elsewhere.example")'


def on_the_laptop(laptop: Laptop) -> Fold:
    store = open_to_read(laptop.store)
    try:
        return fold([each.entry for each in store.entries("h")])
    finally:
        store.close()


def exchange(phone: Phone, journal: dict[Key, Entry]) -> None:
    """Share as the page does: give all that is here, take what comes."""
    here = {d: up._asdict() for d, up in seen(map(key_of, journal.values())).items()}
    answer = phone.share("h", list(journal.values()), here)
    assert answer.status_code == 200
    journal |= {key_of(entry): entry for entry in answer.json()["entries"]}


def two_phones(laptop: Laptop, mine: Journal, theirs: Journal) -> tuple[Fold, Fold]:
    """Let two phones share until each has what the other wrote; returns what each shows."""
    journals = []
    phones = []
    for device, journal in (("p", mine), ("q", theirs)):
        phone = Phone(laptop, device)
        phone.come_in(f"{device}'s phone")
        phones.append(phone)
        journals.append(dict[Key, Entry]((key_of(e), e) for e in journal.entries))
    for _ in range(2):
        for phone, journal_of in zip(phones, journals, strict=True):
            exchange(phone, journal_of)
    first, second = (fold(journal_of.values()) for journal_of in journals)
    return first, second


def test_readings_that_two_took_unseen_by_each_other_hold_the_opening(laptop: Laptop) -> None:
    mine, theirs = Journal("p"), Journal("q", seen=2)
    mine.begin()
    mine.write("opening-added", opening="W3", room="Main", kind="window", trim="all-round")
    mine.read("top", "1187", over=[])
    theirs.read("top", "1178", over=[])
    for found in (*two_phones(laptop, mine, theirs), on_the_laptop(laptop)):
        assert found.openings[0].state is LineState.HELD
        assert [said.place for said in found.held] == ["W3"]
        assert found.document["openings"][0]["top"] == [1187, 1178]


def test_readings_within_what_two_tapes_may_differ_hold_nothing(laptop: Laptop) -> None:
    mine, theirs = Journal("p"), Journal("q", seen=2)
    mine.begin()
    mine.write("opening-added", opening="W3", room="Main", kind="window", trim="all-round")
    mine.read("top", "1178", over=[])
    theirs.read("top", "1179", over=[])
    for found in (*two_phones(laptop, mine, theirs), on_the_laptop(laptop)):
        assert found.held == ()
        assert found.document["openings"][0]["top"] == [1178, 1179]


def test_what_anybody_cut_stays_cut_whoever_shares_later(laptop: Laptop) -> None:
    mine, theirs = Journal("p"), Journal("q", seen=5)
    mine.begin()
    for journal, cut in ((mine, "W1-head"), (theirs, "W2-head")):
        state = as_text(after_cutting(begun(), cut))
        journal.write("cut-news", told=f"cut {cut}", state=state)
    # What was known before anything was cut, told last.
    theirs.write("cut-news", told="stick looked at", state=as_text(begun()))
    for found in (*two_phones(laptop, mine, theirs), on_the_laptop(laptop)):
        assert from_text(found.saw).state.done == {"W1-head", "W2-head"}


def test_an_entry_that_says_a_piece_was_cut_cannot_be_put_otherwise(laptop: Laptop) -> None:
    mine = Journal("p")
    mine.begin()
    mine.write("cut-news", told="cut W1-head", state=as_text(after_cutting(begun(), "W1-head")))
    phone = Phone(laptop, "p")
    phone.come_in()
    phone.share("h", mine.entries)
    otherwise = {**mine.entries[-1], "state": as_text(begun())}
    assert phone.share("h", [otherwise]).status_code == 409
    assert from_text(on_the_laptop(laptop).saw).state.done == {"W1-head"}


def shared_file(laptop: Laptop, name: str) -> Fold:
    """Let a phone share a house in which whatever has a name is called so."""
    text = PIPIT.read_text(encoding="utf-8")
    told = name.replace("\\", "\\\\").replace('"', '\\"')
    for kept in ('name = "Pipit"', 'room = "Main"', 'material = "primed pine"'):
        text = text.replace(kept, f'{kept.split(" = ")[0]} = "{told}"')
    text = text.replace("price = 14.60", f'price = 14.60\nsupplier = "{told}"\ncode = "{told}"')
    journal = Journal("p")
    journal.write("opened-file", text=text)
    phone = Phone(laptop, "p")
    phone.come_in()
    assert phone.share("h", journal.entries).status_code == 200
    return on_the_laptop(laptop)


class Tags(HTMLParser):
    """Notes the tags of a page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.seen: set[str] = set()
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen.add(tag)
        assert not any(name.startswith("on") for name, _ in attrs)


def test_script_in_names_is_text_on_every_sheet(laptop: Laptop) -> None:
    house = shared_file(laptop, f"{SCRIPT}\"'><img src=x onerror=alert(2)>")
    plan = planned(house.document, house.held, "", Ports(), forecast=False).plan
    sheets = list(house_sheets(plan))
    for sheet in sheets:
        assert not {"script", "img"} & Tags(sheet_html(sheet)).seen
    assert any(SCRIPT in sheet_text(sheet) for sheet in sheets)


def test_formulas_in_names_are_text_in_what_is_exported(laptop: Laptop) -> None:
    house = surveyed(shared_file(laptop, FORMULA).document).house
    lines = order_lines(house, {("AR57", 5400.0): 2}, {})
    (row,) = csv.DictReader(io.StringIO(order_csv(lines), newline=""))
    assert [row[key] for key in ("supplier", "material", "supplier_code")] == [f"'{FORMULA}"] * 3
    sheet = openpyxl.load_workbook(io.BytesIO(order_xlsx(lines))).active
    assert sheet is not None
    assert {cell.data_type for row in sheet.iter_rows() for cell in row} <= {"s", "n"}


@pytest.mark.parametrize("name", ["\x1b[2J", "\x07", "\u202eeman", "a\nb", "\u200b"])
def test_signs_that_steer_a_terminal_never_come_to_one(laptop: Laptop, name: str) -> None:
    journal = Journal("p")
    journal.begin()
    journal.write("house-named", name=name)
    journal.write("opening-added", opening="W3", room=name, kind="window", trim="all-round")
    phone = Phone(laptop, "p")
    phone.come_in()
    assert phone.share("h", journal.entries).status_code == 200
    house = on_the_laptop(laptop)
    try:
        plan = planned(house.document, house.held, "", Ports(), forecast=False).plan
        text = "".join(sheet_text(sheet) for sheet in house_sheets(plan))
    except SurveyError as refused:
        text = str(refused)
    assert all(sign.isprintable() or sign == "\n" for sign in text), text
    body = {"token": laptop.doors.new_token(), "name": name, "device": "t"}
    assert Phone(laptop, "t").post("/crew/knock", body).status_code == 422
